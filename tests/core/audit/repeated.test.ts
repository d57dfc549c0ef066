import { expect, it } from 'vitest';
import { repeatKey } from '../../../src/core/audit/repeated';
import { told } from '../../../src/core/audit/finding';
import { finding } from '../../../src/core/cell/answer';

it('sums of one column are alike whatever the figures, words where they are the same, cautions never', () => {
  const sum = (total: string) => told(2, finding('partsDoNotAdd', 'Net', 'Net', total, 'a', '1'));
  const word = (text: string) => told(2, finding('unknownChoice', 'Pleat', 'Pleat', text, 'pinch'));
  expect(repeatKey(sum('3.00'))).toBe(repeatKey(sum('4.00')));
  expect(repeatKey(word('ruched'))).toBe(repeatKey(word('ruched')));
  expect(repeatKey(word('ruched'))).not.toBe(repeatKey(word('smocked')));
  expect(repeatKey(told(2, finding('cordInReach', 'Draw', 'cord')))).toBeUndefined();
});
