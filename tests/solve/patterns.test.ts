import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadLength } from '../../src/core/rolls/takes';
import { dearest, everyFilling, everyPattern, gives } from '../../src/solve/patterns';

const types = fc
  .uniqueArray(fc.integer({ min: 3, max: 30 }), { minLength: 1, maxLength: 4 })
  .map((lengths) => lengths.sort((one, other) => other - one));

/** Every choice of counts there is, by plain counting. */
function everyChoice(counts: readonly number[]): number[][] {
  return counts.reduce<number[][]>(
    (choices, most) =>
      choices.flatMap((choice) => Array.from({ length: most + 1 }, (_, count) => [...choice, count])),
    [[]],
  );
}
const sum = (choice: readonly number[], lengths: readonly number[]): number =>
  choice.reduce((all, count, type) => all + count * (lengths[type] ?? 0), 0);

describe('every filling of a stretch', () => {
  it('60 into cuts of 25 and 10, three of each: 2 × 25 + 10 and 25 + 3 × 10', () => {
    const found = everyFilling(60, { lengths: [25, 10], counts: [3, 3] }, 10);
    expect(found?.map((load) => gives([load], 2))).toEqual([
      [2, 1],
      [1, 3],
    ]);
  });

  it('are those no further cut goes into, each once, as plain counting finds them', () => {
    fc.assert(
      fc.property(
        types,
        fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 30, max: 90 }),
        (lengths, all, stretch) => {
          const counts = lengths.map((_, type) => all[type] ?? 0);
          const fitting = everyChoice(counts).filter((choice) => sum(choice, lengths) <= stretch);
          const full = fitting.filter((choice) =>
            choice.every(
              (count, type) =>
                count === counts[type] || sum(choice, lengths) + (lengths[type] ?? 0) > stretch,
            ),
          );
          const found = everyFilling(stretch, { lengths, counts }, 1_000)?.map((load) =>
            gives([load], lengths.length),
          );
          expect(found?.map(String).sort()).toEqual(full.map(String).sort());
        },
      ),
      { seed: 4 },
    );
  });

  it('are not listed where there are more than asked for', () => {
    const demand = { lengths: [25, 10], counts: [3, 3] };
    expect(everyFilling(60, demand, 1)).toBeUndefined();
    expect(everyPattern([60, 60], demand, 3)).toBeUndefined();
    expect(everyPattern([60, 60], demand, 4)).toHaveLength(4);
  });
});

describe('the dearest filling', () => {
  it('fits, and is worth what plain counting finds', () => {
    fc.assert(
      fc.property(
        types,
        fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 30, max: 90 }),
        (lengths, all, stretch) => {
          const prices = lengths.map((_, type) => all[type] ?? 0);
          const { load, price } = dearest(90, { lengths }, 1, prices)(stretch);
          const most = everyChoice(lengths.map((length) => Math.floor(stretch / length)))
            .filter((choice) => sum(choice, lengths) <= stretch)
            .reduce((best, choice) => Math.max(best, sum(choice, prices)), 0);
          expect(price).toBe(most);
          expect(loadLength(load, { lengths })).toBeLessThanOrEqual(stretch);
          expect(load.reduce((worth, [type, count]) => worth + count * (prices[type] ?? 0), 0)).toBe(most);
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });
});
