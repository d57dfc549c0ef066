import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonMeasure, RollBound } from '../../../src/core/rolls/bound';

/** The fewest rolls for a handful of cuts, by trying every place for every cut. */
function fewest(cuts: readonly number[], rolls: readonly number[]): number | undefined {
  let best: number | undefined;
  const free = [...rolls];
  const place = (at: number): void => {
    const used = free.filter((one, roll) => one < (rolls[roll] as number)).length;
    if (best !== undefined && used >= best) return;
    const cut = cuts[at];
    if (cut === undefined) {
      best = used;
      return;
    }
    const seen = new Set<number>();
    free.forEach((one, roll) => {
      if (one < cut || seen.has(one)) return;
      seen.add(one);
      free[roll] = one - cut;
      place(at + 1);
      free[roll] = one;
    });
  };
  place(0);
  return best;
}

describe('the lower bound', () => {
  it('the common measure of 117, 90 and 63 in is 9 in', () => expect(commonMeasure([117, 90, 63])).toBe(9));

  it('by cloth alone: 24 cuts of 108 in from 60 yd need 2 rolls; by cuts to a roll, 40 cuts of 112 in need 3', () => {
    const bound = (length: number, count: number) =>
      new RollBound({ lengths: [length], counts: [count] }, [[2160]], true);
    expect(bound(108, 24).material().rolls).toBe(2);
    // 40 × 112 = 4,480 in is 2.07 rolls of cloth; but a roll holds 19: 3 rolls, and 58 cuts need 4.
    expect(bound(112, 40).byWeights([1]).rolls).toBe(3);
    expect(bound(112, 58).material().rolls).toBe(4);
    expect(bound(1090, 4).material().rolls).toBe(3);
    expect(bound(1090, 4).byWeights([1]).rolls).toBe(4);
  });

  it('is never above the fewest rolls there are, whatever the weights; nor calls short what is not', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 5, max: 40 }), { minLength: 1, maxLength: 3 }),
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.integer({ min: 20, max: 70 }), { minLength: 2, maxLength: 4 }),
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
        (some, numbers, rolls, chosen) => {
          const lengths = some.sort((one, other) => other - one);
          const counts = lengths.map((_, type) => numbers[type] ?? 1);
          const cuts = lengths.flatMap((length, type) =>
            Array.from({ length: counts[type] ?? 0 }, () => length),
          );
          const truth = fewest(cuts, rolls);
          const bound = new RollBound(
            { lengths, counts },
            rolls.map((roll) => [roll]),
            false,
          );
          const found = [
            bound.material(),
            bound.byWeights(chosen),
            ...[...bound.weightings()].map((weighting) => bound.byWeights(weighting)),
          ];
          if (truth === undefined) return;
          for (const { rolls: least, short } of found) {
            expect(least).toBeLessThanOrEqual(truth);
            expect(short).toBe(false);
          }
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it('a coarse measure, as for lengths to the nanometre, takes cuts no longer than they are', () => {
    // All three take 4,999,999,991 nm: one roll.
    const lengths = [2_000_000_011, 1_999_999_973, 1_000_000_007];
    const bound = new RollBound({ lengths, counts: [1, 1, 1] }, [[5_000_000_000]], true);
    for (const weighting of bound.weightings())
      expect(bound.byWeights(weighting).rolls).toBeLessThanOrEqual(1);
    expect(bound.material().rolls).toBe(1);
    expect(bound.fillings()(5_000_000_000)).toBeLessThanOrEqual(5_000_000_000);
  });
});
