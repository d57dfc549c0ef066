import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingOf } from '../../../src/core/cloth/repeat';
import { cutLines, demandOf, type CutLine } from '../../../src/core/rolls/cutting';
import { RollBound } from '../../../src/core/rolls/bound';
import { Filling, inOrder, takes, type Load } from '../../../src/core/rolls/takes';
import { cutPlan } from '../../../src/core/rolls/rolls';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import type { Length } from '../../../src/core/exact/length';
import { fewestRolls, leastCloth, type Piece } from './every-order';
import { faultsOf } from './plan-faults';

/** So many cuts of one length, a's and b's, of a cloth of one repeat. */
interface Kind {
  readonly cut: number;
  readonly a: number;
  readonly b: number;
}

const linesOf = (kinds: readonly Kind[], repeat: number): CutLine[] =>
  kinds.flatMap(({ cut, a, b }) => {
    const match = b > 0 || kinds.some((one) => one.b > 0) ? 'half-drop' : 'straight';
    const cutting = cuttingOf(cut as Length, repeat as Length, match, DEFAULT_RULES);
    return cutLines(cutting, { a, b, shared: 0 }).filter(({ count }) => count > 0);
  });

const piecesOf = (kinds: readonly Kind[], repeat: number): Piece[] =>
  kinds.flatMap(({ cut, a, b }) => [
    ...Array.from({ length: a }, () => ({ cut, repeat, down: false })),
    ...Array.from({ length: b }, () => ({ cut, repeat, down: true })),
  ]);

const few = fc.integer({ min: 0, max: 2 });
const kind = fc.record({ cut: fc.integer({ min: 5, max: 60 }), a: few, b: few });
const kinds = fc
  .array(kind, { minLength: 1, maxLength: 3 })
  .filter((all) => all.some(({ a, b }) => a + b > 0) && all.reduce((sum, { a, b }) => sum + a + b, 0) <= 8)
  // Two of one length are one kind.
  .filter((all) => new Set(all.map(({ cut }) => cut)).size === all.length);
const straight = kinds
  .map((all) => all.map((one) => ({ ...one, b: 0 })))
  .filter((all) => all.some(({ a }) => a > 0));
const repeat = fc.integer({ min: 1, max: 20 }).map((half) => 2 * half);

const whole = (lines: readonly CutLine[]): Load => demandOf(lines).counts.map((count, type) => [type, count]);

describe('the cloth that cuts take off a roll', () => {
  it('112 up to 135: fourteen lie on 52¼ yd, since the last needs 112 (common practice, no source)', () => {
    const lines = linesOf([{ cut: 112, a: 14, b: 0 }], 27.0);
    expect(takes(whole(lines), demandOf(lines))).toBe(13 * 135 + 112);
    expect(13 * 135 + 112).toBeLessThanOrEqual(52.25 * 36);
  });

  it('is the least of every order, straight or half-drop', () => {
    fc.assert(
      fc.property(fc.oneof(straight, kinds), repeat, (all, tall) => {
        const lines = linesOf(all, tall);
        const pieces = piecesOf(all, tall);
        expect(takes(whole(lines), demandOf(lines))).toBe(leastCloth(pieces)((1 << pieces.length) - 1));
      }),
      { seed: 13, numRuns: 400 },
    );
  });

  it('is what the cuts take one after the other', () => {
    fc.assert(
      fc.property(fc.oneof(straight, kinds), repeat, (all, tall) => {
        const lines = linesOf(all, tall);
        const demand = demandOf(lines);
        const runs = inOrder(whole(lines), demand);
        expect(runs.reduce((sum, { length, count }) => sum + length * count, 0)).toBe(
          takes(whole(lines), demand),
        );
        const counts = demand.counts.map((_, type) =>
          runs.reduce((sum, run) => sum + (run.type === type ? run.count : 0), 0),
        );
        expect(counts).toEqual(demand.counts);
      }),
      { seed: 13, numRuns: 200 },
    );
  });

  it('a stretch filled bit by bit takes one more as long as it fits, and not one beyond', () => {
    fc.assert(
      fc.property(
        fc.oneof(straight, kinds),
        repeat,
        fc.integer({ min: 10, max: 300 }),
        (all, tall, stretch) => {
          const demand = demandOf(linesOf(all, tall));
          const filling = new Filling(stretch, demand);
          demand.counts.forEach((count, type) => {
            const room = filling.room(type, count);
            const with_ = (more: number): number =>
              takes([...filling.load.filter(([, many]) => many > 0), [type, more]], demand);
            if (room > 0) expect(with_(room)).toBeLessThanOrEqual(stretch);
            if (room < count) expect(with_(room + 1)).toBeGreaterThan(stretch);
            filling.add(type, room);
          });
          if (filling.load.length > 0) expect(filling.free).toBe(stretch - takes(filling.load, demand));
        },
      ),
      { seed: 13, numRuns: 300 },
    );
  });
});

describe('a plan of cuts with a repeat', { timeout: 60_000 }, () => {
  const rolls = fc.array(fc.integer({ min: 60, max: 200 }), { minLength: 2, maxLength: 4 });

  it('has no fault, opens no fewer rolls than every order of cutting needs, and its bound is true', () => {
    fc.assert(
      fc.property(fc.oneof(straight, kinds), repeat, rolls, (all, tall, lengths) => {
        const lines = linesOf(all, tall);
        fc.pre(lines.every(({ bare = 0 }) => lengths.some((length) => length >= bare)));
        const job = {
          cuts: lines,
          rolls: lengths.map((length) => ({ length: length as Length })),
          supply: 'in hand',
        } as const;
        const plan = cutPlan(job, DEFAULT_RULES).value;
        const truth = fewestRolls(piecesOf(all, tall), lengths);
        expect(faultsOf(job, plan)).toEqual([]);
        if (truth === undefined) expect(plan.short.length).toBeGreaterThan(0);
        else {
          expect(plan.surelyShort).toBe(false);
          expect(plan.lowerBound).toBeLessThanOrEqual(truth);
          if (plan.short.length === 0) expect(plan.rolls.length).toBeGreaterThanOrEqual(truth);
        }
      }),
      { seed: 13, numRuns: 400 },
    );
  });

  it('no weighting’s bound is above the fewest rolls there are', () => {
    fc.assert(
      fc.property(fc.oneof(straight, kinds), repeat, rolls, (all, tall, lengths) => {
        const truth = fewestRolls(piecesOf(all, tall), lengths);
        fc.pre(truth !== undefined);
        const bound = new RollBound(
          demandOf(linesOf(all, tall)),
          lengths.map((length) => [length]),
          false,
        );
        for (const weights of bound.weightings()) {
          const { rolls: least, short } = bound.byWeights(weights);
          expect(least).toBeLessThanOrEqual(truth ?? 0);
          expect(short).toBe(false);
        }
      }),
      { seed: 13, numRuns: 300 },
    );
  });
});
