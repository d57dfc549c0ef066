import { expect, it } from 'vitest';
import { isSaidOnce, repeatKey, sameDifferences } from '../../../src/core/audit/repeated';
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

it('a difference is the same by its amount or its share, and none where the row’s own amount was left out', () => {
  const sum = (found: number, expected: number) =>
    told(2, finding('partsDoNotAdd', 'Net', 'Net', '', '', ''), { found, expected });
  expect(sameDifferences(sum(665.5, 605), [605])).toEqual([
    { key: 'partsDoNotAdd Net by 60.5', by: 60.5, share: false },
    { key: 'partsDoNotAdd Net by 0.1 of it', by: 0.1, share: true },
  ]);
  // 95 of 100 of 617.40 is 586.53, up to the whole 587.
  expect(sameDifferences(sum(587, 617.4), []).map(({ by, share }) => share && by)).toEqual([false, -0.05]);
  expect(sameDifferences(sum(552, 600), [552, 48])).toEqual([]);
  expect(sameDifferences(sum(1200, 600), [1])).toHaveLength(1);
  expect(isSaidOnce(new Set(['partsDoNotAdd Net by 65']), sum(665, 600), [])).toBe(true);
  expect(isSaidOnce(new Set(['partsDoNotAdd Net by 65']), sum(664, 600), [])).toBe(false);
});
