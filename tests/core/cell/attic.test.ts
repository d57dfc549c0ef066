import { describe, expect, it } from 'vitest';
import { ATTIC_STOCK, atticCuts } from '../../../src/core/cell/attic';
import { INCHES } from '../../../src/core/exact/unit';

const read = (text: unknown) => ATTIC_STOCK.read(text, { name: 'attic stock', unit: INCHES });

describe('attic stock', () => {
  it.each([
    ['5 %', '5 %', 3],
    [0.05, '5 %', 3],
    ['100 %', '100 %', 60],
    [2, 2, 2],
    ['2 cuts', 2, 2],
    [25, 25, 25],
  ])('%s of 60 cuts', (raw, written, cuts) => {
    expect(ATTIC_STOCK.write?.(read(raw)!, INCHES)).toBe(written);
    expect(atticCuts(60, read(raw))).toBe(cuts);
  });
  it('takes a part of a cut for a whole one, and keeps nothing of a fabric that is not cut', () => {
    expect(atticCuts(41, read('5 %'))).toBe(3);
    expect(atticCuts(0, read(2))).toBe(0);
  });
  it('is none where 0 or blank', () => {
    expect([read(0), read('0 %'), read('')]).toEqual([undefined, undefined, undefined]);
  });
  it.each(['2.5', '120 %', 'a bit', '-1'])('“%s” is refused', (text) => {
    expect(() => read(text)).toThrow(/^attic stock reads /);
  });
});
