import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  inTurn,
  leastOrder,
  takesOf,
  type Group,
  type Order,
  type Start,
} from '../../../src/core/cloth/half-drop';
import { exact, inches } from '../../../src/core/exact/length';

/** Cuts of one length with a repeat, in inches; the last goes up to whole repeats or is left as it is. */
function groupsOf(cut: number, repeat: number, a: number, b: number, exactLast = false): Group[] {
  const takes = takesOf(2 * inches(cut), inches(repeat));
  const last = exactLast ? inches(cut) : takes.like;
  return (['A', 'B'] as const).map((start) => ({ ...takes, start, last, count: start === 'A' ? a : b }));
}
const cloth = (order: Order): number => order.twice / 2 / inches(1);
const letters = (groups: readonly Group[], order: Order): string =>
  [...inTurn(groups, order)].map(({ at }) => groups[at]?.start ?? '?').join('');

describe('the order of cutting of a half-drop', () => {
  it('of six widths A-B-A twice, cut 112, repeat 20: 120 × 3 + 130 + 120 + 120 = 730, all A’s first', () => {
    const groups = groupsOf(112, 20, 4, 2);
    const order = leastOrder(groups);
    expect(cloth(order)).toBe(730);
    expect(letters(groups, order)).toBe('AAAABB');
    expect([...inTurn(groups, order)].map(({ length }) => length / inches(1))).toEqual([
      120, 120, 120, 130, 120, 120,
    ]);
  });

  it('of the same with a repeat of 25¼: 113⅝ × 4 + 126¼ × 2 = 707, in turn while both are left', () => {
    const groups = groupsOf(112, 25.25, 4, 2);
    const order = leastOrder(groups);
    expect(cloth(order)).toBe(707);
    expect(letters(groups, order)).toBe('ABABAA');
  });

  it('with the last cut at its plain length: 692¾', () => {
    expect(cloth(leastOrder(groupsOf(112, 25.25, 4, 2, true)))).toBe(692.75);
  });

  it('of one start alone is as a straight match, and of no cuts nothing', () => {
    expect(cloth(leastOrder(groupsOf(112, 20, 5, 0)))).toBe(600);
    expect(cloth(leastOrder(groupsOf(112, 20, 0, 0)))).toBe(0);
  });

  it('goes up to an odd number of half repeats between unlike starts', () => {
    const unlike = (cut: number): number => takesOf(2 * inches(cut), inches(20)).unlikeTwice / 2 / inches(1);
    expect([110, 110.015625, 112, 120, 130, 130.015625].map(unlike)).toEqual([110, 130, 130, 130, 130, 150]);
  });
});

/** Every order of these cuts, cut by cut; the least of them. */
function leastByTrying(groups: readonly Group[]): number {
  let least = Infinity;
  const left = groups.map(({ count }) => count);
  const all = left.reduce((sum, one) => sum + one, 0);
  const go = (taken: number, before: Group | undefined, twice: number): void => {
    if (taken === all) {
      least = Math.min(least, twice + (before === undefined ? 0 : 2 * before.last));
      return;
    }
    groups.forEach((group, at) => {
      if (left[at] === 0) return;
      left[at] = (left[at] ?? 0) - 1;
      const took =
        before === undefined ? 0 : before.start === group.start ? 2 * before.like : before.unlikeTwice;
      go(taken + 1, group, twice + took);
      left[at] = (left[at] ?? 0) + 1;
    });
  };
  go(0, undefined, 0);
  return least;
}

describe('any cuts of two starts', () => {
  const cuts = fc.record({
    cut: fc.integer({ min: 1, max: 60 }),
    start: fc.constantFrom<Start>('A', 'B'),
    count: fc.integer({ min: 0, max: 3 }),
    exactLast: fc.boolean(),
  });
  const jobs = fc
    .record({ repeat: fc.integer({ min: 1, max: 40 }), cuts: fc.array(cuts, { maxLength: 3 }) })
    .map(({ repeat, cuts: some }) =>
      some.map(({ cut, start, count, exactLast }): Group => {
        const takes = takesOf(2 * cut, exact(repeat));
        return { ...takes, start, count, last: exactLast ? cut : takes.like };
      }),
    );

  it('are bought in the order that takes least of all there are', () => {
    fc.assert(
      fc.property(jobs, (groups) => {
        expect(leastOrder(groups).twice).toBe(leastByTrying(groups));
      }),
      { numRuns: 400, seed: 8 },
    );
  });

  it('stand in that order cut by cut, each once, and add up to it', () => {
    fc.assert(
      fc.property(jobs, (groups) => {
        const order = leastOrder(groups);
        const turn = [...inTurn(groups, order)];
        groups.forEach(({ count }, at) => expect(turn.filter((one) => one.at === at)).toHaveLength(count));
        expect(turn.reduce((sum, { length }) => sum + length, 0)).toBe(Math.ceil(order.twice / 2));
        // The changes of start that the order counts are those that it has.
        const starts = turn.map(({ at }) => groups[at]?.start);
        const changes = starts.filter((start, at) => at > 0 && start !== starts[at - 1]).length;
        expect(changes).toBe(order.unlike.reduce((sum, one) => sum + one, 0));
      }),
      { numRuns: 400, seed: 8 },
    );
  });
});
