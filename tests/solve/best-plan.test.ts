import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { CuttingJob } from '../../src/core/rolls/cutting';
import { fromUnit, inches } from '../../src/core/exact/length';
import { cutPlan } from '../../src/core/rolls/rolls';
import { DEFAULT_RULES } from '../../src/core/house/house';
import { bestPlan } from '../../src/solve/best-plan';
import { loadSolver } from '../../src/solve/load';
import type { SearchReport } from '../../src/solve/search';
import { faultsOf } from '../core/rolls/plan-faults';
import { jobOf } from './job-of';
import { programmeOf, type Instance } from './programme';
import { hasGlpsol, proveByGlpsol, proveByHighs } from './provers';

const FOLDER = new URL('./instances/', import.meta.url);
const INSTANCES: readonly Instance[] = readdirSync(FOLDER)
  .sort()
  .map((file) => JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Instance);

/** The quick bound stops short of the truth here: it says 7 rolls. */
const LONG_CUTS: CuttingJob = {
  cuts: (
    [
      [683, 5],
      [647, 8],
      [579, 2],
      [596, 3],
    ] as const
  ).map(([length, count]) => ({ length: inches(length), count })),
  rolls: [{ length: fromUnit(50, 'yd') }],
  supply: 'as many as it takes',
};

describe('the best cutting plan', { timeout: 60_000 }, () => {
  beforeAll(async () => void (await loadSolver()));

  it.each(INSTANCES.map((instance) => [instance.name, instance] as const))(
    '%s: as two solvers proved',
    async (_, instance) => {
      expect(instance.provenBy).toEqual(['highs', 'glpsol']);
      const job = jobOf(instance);
      const { plan, gap, ended } = await bestPlan(job, { highs: await loadSolver(), seconds: 20 });
      expect(faultsOf(job, plan)).toEqual([]);
      if ('short' in instance.best) {
        expect(plan.short.length).toBeGreaterThan(0);
        return;
      }
      expect(plan.short).toEqual([]);
      expect(plan.rolls).toHaveLength(instance.best.rolls);
      expect(plan.lowerBound).toBe(instance.best.rolls);
      expect([gap, ended, plan.proven]).toEqual([0, 'proven', true]);
    },
  );

  it('is never fewer rolls than the bound of the quick plan, nor more than its rolls', async () => {
    for (const instance of INSTANCES) {
      const quick = cutPlan(jobOf(instance), DEFAULT_RULES).value;
      if ('short' in instance.best) expect(quick.short.length).toBeGreaterThan(0);
      else {
        expect(quick.lowerBound).toBeLessThanOrEqual(instance.best.rolls);
        if (quick.short.length === 0) expect(quick.rolls.length).toBeGreaterThanOrEqual(instance.best.rolls);
      }
    }
  });

  it('reports on the way, and keeps its best when it is stopped', async () => {
    const reports: SearchReport[] = [];
    const halted = new AbortController();
    const found = await bestPlan(LONG_CUTS, {
      highs: await loadSolver(),
      stop: halted.signal,
      progress: (report) => {
        reports.push(report);
        halted.abort();
      },
    });
    expect(reports.map(({ doing }) => doing)).toEqual(['quick plan']);
    expect(found.ended).toBe('stopped');
    expect(found.gap).toBe(found.plan.rolls.length - found.plan.lowerBound);
    expect(found.gap).toBeGreaterThan(0);
    expect(faultsOf(LONG_CUTS, found.plan)).toEqual([]);
  });

  it('says the gap where the time did not suffice', async () => {
    const found = await bestPlan(LONG_CUTS, { highs: await loadSolver(), seconds: 0 });
    expect(found.ended).toBe('out of time');
    expect(found.plan.proven).toBe(false);
    expect(found.gap).toBeGreaterThan(0);
  });

  it('goes on to prove what the quick bound leaves open', async () => {
    const found = await bestPlan(LONG_CUTS, { highs: await loadSolver() });
    expect([found.ended, found.gap]).toEqual(['proven', 0]);
    expect(found.plan.lowerBound).toBeGreaterThan(cutPlan(LONG_CUTS, DEFAULT_RULES).value.lowerBound);
  });
});

describe('the instances’ values, proven anew', { timeout: 60_000 }, () => {
  const answerOf = ({ best }: Instance): number | 'short' => ('short' in best ? 'short' : best.rolls);
  const some = INSTANCES.filter((_, at) => at % 4 === 0);

  it.each(some.map((instance) => [instance.name, instance] as const))('%s, by highs', async (_, instance) => {
    expect(await proveByHighs(programmeOf(instance), 30)).toBe(answerOf(instance));
  });

  it.runIf(hasGlpsol()).each(some.map((instance) => [instance.name, instance] as const))(
    '%s, by glpsol',
    (_, instance) => {
      expect(proveByGlpsol(programmeOf(instance), 30)).toBe(answerOf(instance));
    },
  );
});
