import { describe, expect, it } from 'vitest';
import { cleanStretches, demandOf, fromHalfWidths, sparesOf } from '../../../src/core/rolls/cutting';
import { inches } from '../../../src/core/exact/length';
import { money } from '../../../src/core/exact/money';

const flaw = (from: number, length: number) => ({ from: inches(from), length: inches(length) });
const stretches = (length: number, ...flaws: ReturnType<typeof flaw>[]) =>
  cleanStretches({ length: inches(length), flaws }, 0).map((one) => [one.from / 25.4e6, one.length / 25.4e6]);

describe('the clean stretches of a roll', () => {
  it('without a flaw: the roll', () => expect(stretches(100)).toEqual([[0, 100]]));
  it('a flaw in the middle: two', () =>
    expect(stretches(100, flaw(40, 5))).toEqual([
      [0, 40],
      [45, 55],
    ]));
  it('a point is a flaw too', () =>
    expect(stretches(100, flaw(40, 0))).toEqual([
      [0, 40],
      [40, 60],
    ]));
  it('flaws at both ends: one', () => expect(stretches(100, flaw(0, 5), flaw(90, 10))).toEqual([[5, 85]]));
  it('flaws that overlap, in any order, are one flaw', () =>
    expect(stretches(100, flaw(45, 10), flaw(40, 30))).toEqual([
      [0, 40],
      [70, 30],
    ]));
  it('flawed throughout: none', () => expect(stretches(100, flaw(0, 100))).toEqual([]));
});

describe('what is wanted', () => {
  const line = (length: number, count: number, room?: string) => ({ length: inches(length), count, room });

  it('is told by length, longest first', () => {
    expect(demandOf([line(90, 2), line(108, 1), line(90, 3)])).toEqual({
      lengths: [inches(108), inches(90)],
      counts: [1, 5],
    });
  });

  it('5 % spares of 46 and of 10 cuts are 3 and 1, and belong to no room', () => {
    const spares = sparesOf([line(108, 46, '401'), line(90, 10), line(80, 0)], money('0.05'));
    expect(spares.map(({ count, room, label }) => [count, room, label])).toEqual([
      [3, undefined, 'spare'],
      [1, undefined, 'spare'],
    ]);
  });

  it('5 and 5 half widths are 3 and 3 cuts alone, 3 and 2 where windows share one', () => {
    const halves = [line(108, 5), line(108, 5)];
    expect(fromHalfWidths(halves, false).map(({ count }) => count)).toEqual([3, 3]);
    expect(fromHalfWidths(halves, true).map(({ count }) => count)).toEqual([3, 2]);
  });

  it('halves of two lengths or two rooms are never one cut', () => {
    expect(fromHalfWidths([line(108, 1), line(90, 1)], true).map(({ count }) => count)).toEqual([1, 1]);
    expect(
      fromHalfWidths([line(108, 1, '401'), line(108, 1, '402')], true).map(({ count }) => count),
    ).toEqual([1, 1]);
  });

  it('shared halves are never more cuts than their sum, rounded up', () => {
    const counts = [1, 3, 4, 1, 0, 1, 7];
    const shared = fromHalfWidths(
      counts.map((count) => line(108, count)),
      true,
    );
    expect(shared.reduce((sum, { count }) => sum + count, 0)).toBe(Math.ceil(17 / 2));
  });
});
