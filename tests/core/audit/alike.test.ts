import { expect, it } from 'vitest';
import { alike } from '../../../src/core/audit/alike';
import { told } from '../../../src/core/audit/finding';
import { finding } from '../../../src/core/cell/answer';

it('sums of one column are alike whatever the figures, words where they are the same, cautions never', () => {
  const sum = (total: string) => told(2, finding('partsDoNotAdd', 'Net', 'Net', total, 'a', '1'));
  const word = (text: string) => told(2, finding('unknownChoice', 'Pleat', 'Pleat', text, 'pinch'));
  expect(alike(sum('3.00'))).toBe(alike(sum('4.00')));
  expect(alike(word('ruched'))).toBe(alike(word('ruched')));
  expect(alike(word('ruched'))).not.toBe(alike(word('smocked')));
  expect(alike(told(2, finding('cordInReach', 'Draw', 'cord')))).toBeUndefined();
});
