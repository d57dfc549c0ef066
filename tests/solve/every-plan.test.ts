/** The best plan of small jobs against every way of cutting them, told from the trade's words alone. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { cuttingOf } from '../../src/core/cloth/repeat';
import { exact } from '../../src/core/exact/length';
import { DEFAULT_RULES } from '../../src/core/house/house';
import { cutLines, type CuttingJob } from '../../src/core/rolls/cutting';
import { bestPlan } from '../../src/solve/best-plan';
import { loadSolver } from '../../src/solve/load';
import { fewestRolls, type Piece } from '../core/rolls/every-order';
import { faultsOf } from '../core/rolls/plan-faults';

interface Small {
  readonly cuts: readonly { readonly cut: number; readonly a: number; readonly b: number }[];
  /** An even number; 0 is a plain cloth. */
  readonly repeat: number;
  readonly halfDrop: boolean;
  readonly rolls: readonly number[];
  readonly inHand: boolean;
}

const small = fc
  .record({
    cuts: fc.array(
      fc.record({
        cut: fc.integer({ min: 3, max: 30 }),
        a: fc.integer({ min: 0, max: 3 }),
        b: fc.integer({ min: 0, max: 2 }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    repeat: fc.constantFrom(0, 0, 4, 6, 10, 14),
    halfDrop: fc.boolean(),
    rolls: fc.array(fc.integer({ min: 30, max: 90 }), { minLength: 1, maxLength: 4 }),
    inHand: fc.boolean(),
  })
  .filter(({ cuts }) => {
    const count = cuts.reduce((sum, { a, b }) => sum + a + b, 0);
    return count > 0 && count <= 8;
  });

const jobOf = ({ cuts, repeat, halfDrop, rolls, inHand }: Small): CuttingJob => ({
  cuts: cuts.flatMap(({ cut, a, b }) => {
    const pattern = repeat === 0 ? undefined : exact(repeat);
    const match = halfDrop ? ('half-drop' as const) : ('straight' as const);
    const cutting = cuttingOf(exact(cut), pattern, match, DEFAULT_RULES);
    return cutLines(cutting, { a, b, shared: 0 }).filter(({ count }) => count > 0);
  }),
  rolls: (inHand ? rolls : rolls.slice(0, 1)).map((length) => ({ length: exact(length) })),
  supply: inHand ? 'in hand' : 'as many as it takes',
});

const piecesOf = ({ cuts, repeat, halfDrop }: Small): readonly Piece[] =>
  cuts.flatMap(({ cut, a, b }) => [
    ...Array.from({ length: a }, () => ({ cut, repeat, down: false })),
    ...Array.from({ length: b }, () => ({ cut, repeat, down: halfDrop && repeat > 0 })),
  ]);

describe('the best plan of a small job', { timeout: 120_000 }, () => {
  beforeAll(async () => void (await loadSolver()));

  it('opens as few rolls as any way of cutting does, or is short where every way is', async () => {
    const highs = await loadSolver();
    const met = { plain: 0, straight: 0, halfDrop: 0, short: 0 };
    await fc.assert(
      fc.asyncProperty(small, async (given) => {
        const job = jobOf(given);
        const pieces = piecesOf(given);
        const rolls = given.inHand ? given.rolls : pieces.map(() => given.rolls[0] as number);
        const fewest = fewestRolls(pieces, rolls);
        const { plan, ended } = await bestPlan(job, { highs, seconds: 10 });
        expect(faultsOf(job, plan)).toEqual([]);
        expect(ended).toBe('proven');
        expect(plan.short.length > 0 ? undefined : plan.rolls.length).toBe(fewest);
        met[given.repeat === 0 ? 'plain' : given.halfDrop ? 'halfDrop' : 'straight'] += 1;
        if (fewest === undefined) met.short += 1;
      }),
      { numRuns: 250, seed: 14 },
    );
    for (const [kind, times] of Object.entries(met)) expect(times, kind).toBeGreaterThan(15);
  });
});
