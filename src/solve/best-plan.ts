/**
 * The cutting plan, best or honestly bounded. The quick plan and its bound come first; where they
 * do not meet, an integer programme over cutting patterns goes on: over all of them where they can
 * be listed, which proves the best, else over those the prices of its relaxation call for.
 */
import type { Highs } from 'highs';
import { cleanStretches, demandOf, type CuttingJob, type Demand, type Roll } from '../core/rolls/cutting';
import { commonMeasure, RollBound } from '../core/rolls/bound';
import { Filling, type Load } from '../core/rolls/takes';
import { lotsMatter, quickLayout, toPlan, type CutPlan, type Layout } from '../core/rolls/plan';
import { roomGroups } from '../core/rolls/by-room';
import { toShorterRolls } from '../core/rolls/stretches';
import { modelOf, readSolution, rowOfKind, rowOfType, type Column, type RollKind, type Task } from './master';
import { placeShares, shareRooms, weightsOf } from './lots';
import { dearest, everyPattern, type Pattern } from './patterns';
import type { Search } from './search';

export interface BestPlan {
  readonly plan: CutPlan;
  /** How many rolls fewer a better plan could open at most; 0 where this one is proven best. */
  readonly gap: number;
  readonly seconds: number;
  /** Why the search ended. */
  readonly ended: 'proven' | 'out of time' | 'stopped' | 'searched';
}

const SECONDS = 20;
/** More patterns than this are not listed. */
const LISTED = 12_000;
/** How full the lots may be in the sharing of rooms: first to the brim, then with room for placing. */
const TIGHT = [1, 0.997, 0.993, 0.985, 0.97];
/** Rounds of pricing. */
const ROUNDS = 80;
/** Seconds a round may take at most: prices of an unfinished round still give a true bound. */
const EACH_ROUND = 1;
/** Prices as whole numbers, for a bound without rounding. */
const PRICE_PARTS = 100_000;

const clothOf = (cuts: CutPlan['short']): number =>
  cuts.reduce((sum, { length, count }) => sum + length * count, 0);

/** The aims in their order: the least left uncut, the fewest rolls, the least cloth opened. */
function isBetter(one: CutPlan, other: CutPlan): boolean {
  const short = clothOf(one.short) - clothOf(other.short);
  if (short !== 0) return short < 0;
  const rolls = one.rolls.length - other.rolls.length;
  return rolls === 0 ? one.opened < other.opened : rolls < 0;
}

const settled = (plan: CutPlan): boolean => plan.proven || (plan.short.length > 0 && plan.surelyShort);

export async function bestPlan(job: CuttingJob, search: Search): Promise<BestPlan> {
  const from = performance.now();
  const elapsed = (): number => (performance.now() - from) / 1000;
  const allowed = search.seconds ?? SECONDS;
  const over = (): boolean => elapsed() >= allowed || search.stop?.aborted === true;

  let best: Layout = quickLayout(job);
  let plan = toPlan(job, best);
  const report = (doing: string): void => search.progress?.({ plan, seconds: elapsed(), doing });
  const take = (layout: Layout): void => {
    const found = toPlan(job, { ...layout, lowerBound: best.lowerBound });
    if (!isBetter(found, plan)) return;
    best = { ...layout, lowerBound: best.lowerBound, surelyShort: best.surelyShort };
    plan = toPlan(job, best);
  };
  const raise = (lowerBound: number, surelyShort: boolean): void => {
    best = {
      ...best,
      lowerBound: Math.max(best.lowerBound, lowerBound),
      surelyShort: best.surelyShort || surelyShort,
    };
    plan = toPlan(job, best);
  };
  const end = (ended: BestPlan['ended']): BestPlan => ({
    plan,
    gap: plan.proven ? 0 : Math.max(0, plan.rolls.length - plan.lowerBound),
    seconds: elapsed(),
    ended: settled(plan)
      ? 'proven'
      : search.stop?.aborted === true
        ? 'stopped'
        : over()
          ? 'out of time'
          : ended,
  });

  report('quick plan');
  // A turn for whoever wants to stop: the solver itself does not give way.
  const turn = (): Promise<void> => new Promise((go) => setTimeout(go, 0));
  await turn();
  if (settled(plan) || over()) return end('searched');

  const task = taskOf(job, plan);
  if (task.lots > 1) {
    const weights = weightsOf(task);
    for (const tight of TIGHT) {
      const sharing = shareRooms(search, task, weights, tight, (allowed - elapsed()) / 2);
      if (tight === 1) raise(sharing.rolls, sharing.short);
      const loads = sharing.shares === undefined ? undefined : placeShares(task, sharing, job.rolls.length);
      if (loads !== undefined) {
        take(finished(job, task, [...job.rolls], loads, sharing.shares ?? []));
      }
      report('rooms shared among the lots');
      await turn();
      if (settled(plan) || over()) return end('searched');
      if (loads !== undefined || sharing.shares === undefined) break;
    }
  }
  const listed = listPatterns(task);
  const columns = listed ?? seedColumns(task, best);
  if (listed === undefined) {
    const prices = priceColumns(search.highs, task, columns, over);
    const bound = pricesBound(task, prices);
    raise(bound.rolls, bound.short);
    report('bound from prices');
    await turn();
    if (settled(plan) || over()) return end('searched');
  }
  const solved = solveWhole(search, task, columns, allowed - elapsed(), (values) => {
    take(layoutOf(job, task, columns, values));
    report('better plan');
  });
  if (solved.values !== undefined) take(layoutOf(job, task, columns, solved.values));
  if (listed !== undefined && (solved.optimal || !task.mayFallShort)) {
    // With every pattern listed, what the programme cannot do, no plan can.
    const short = task.mayFallShort && plan.short.length > 0;
    raise(short ? 0 : Math.ceil(solved.bound - 1e-6), short);
  }
  report('done');
  return end('searched');
}

/** The job as the programme sees it: rolls alike together, rooms alike together. */
function taskOf(job: CuttingJob, plan: CutPlan): Task {
  const cuts = job.cuts.filter(({ count }) => count > 0);
  const demand = demandOf(cuts);
  const apart = lotsMatter(job);
  const lots = apart ? [...new Set(job.rolls.map(({ lot }) => lot ?? ''))] : [''];
  const kinds = new Map<string, { lot: number; stretches: number[]; rolls: number[] }>();
  job.rolls.forEach((roll, at) => {
    const lot = apart ? lots.indexOf(roll.lot ?? '') : 0;
    const stretches = cleanStretches(roll, at).map(({ length }) => length as number);
    const key = [lot, ...stretches].join(' ');
    const kind = kinds.get(key) ?? { lot, stretches, rolls: [] };
    kind.rolls.push(at);
    kinds.set(key, kind);
  });
  return {
    demand,
    kinds: [...kinds.values()],
    endless: job.supply === 'as many as it takes',
    lots: lots.length,
    groups: roomGroups(apart ? cuts : cuts.map((line) => ({ ...line, room: undefined })), demand),
    mayFallShort: plan.short.length > 0,
  };
}

function listPatterns(task: Task): Column[] | undefined {
  const columns: Column[] = [];
  for (const [kind, { stretches }] of task.kinds.entries()) {
    const patterns = everyPattern(stretches, task.demand, LISTED - columns.length);
    if (patterns === undefined) return undefined;
    columns.push(...patterns.map((pattern) => ({ kind, pattern })));
  }
  return columns;
}

/** What the quick plan cuts, and every length by itself. */
function seedColumns(task: Task, layout: Layout): Column[] {
  const columns = new Map<string, Column>();
  const add = (kind: number, pattern: Pattern): void => {
    if (pattern.some((load) => load.length > 0))
      columns.set(JSON.stringify([kind, pattern]), { kind, pattern });
  };
  task.kinds.forEach(({ stretches, rolls }, kind) => {
    const own = task.endless ? layout.loads.keys() : rolls;
    for (const roll of own) add(kind, layout.loads[roll] ?? []);
    task.demand.counts.forEach((wanted, type) => {
      const alone = stretches.map((stretch): Load => {
        const count = new Filling(stretch, task.demand).room(type, wanted);
        return count > 0 ? [[type, count]] : [];
      });
      add(kind, alone);
    });
  });
  return [...columns.values()];
}

/** Adds the patterns the relaxation's prices call for, until none is worth more than its roll; the prices. */
function priceColumns(highs: Highs, task: Task, columns: Column[], over: () => boolean): number[] {
  const { lengths } = task.demand;
  const measure = Math.max(1, commonMeasure(lengths));
  const longest = Math.max(...task.kinds.flatMap(({ stretches }) => stretches));
  let prices: number[] = lengths.map(() => 0);
  for (let round = 0; round < ROUNDS && !over(); round++) {
    const duals = highs.withModel(modelOf(highs, task, columns, false), (model) => {
      model.options.set({ output_flag: false, time_limit: EACH_ROUND });
      model.run();
      return model.getSolution().rowDual;
    });
    let added = 0;
    const byLot = Array.from({ length: task.lots }, (_, lot) =>
      lengths.map((_, type) => Math.max(0, duals[rowOfType(task, lot, type)] ?? 0)),
    );
    // A length is worth what the lot that values it most would pay.
    prices = lengths.map((_, type) => Math.max(...byLot.map((own) => own[type] ?? 0)));
    const search = byLot.map((own) => dearest(longest, task.demand, measure, own));
    task.kinds.forEach(({ lot, stretches }, kind) => {
      const found = stretches.map((stretch) => search[lot]?.(stretch) ?? { load: [], price: 0 });
      const worth = found.reduce((sum, { price }) => sum + price, 0);
      const fee = 1 - (duals[rowOfKind(task, kind)] ?? 0);
      if (worth <= fee + 1e-7) return;
      columns.push({ kind, pattern: found.map(({ load }) => load) });
      added++;
    });
    if (added === 0) break;
  }
  return prices;
}

/** The prices as weights: a bound in whole numbers, whatever the solver's rounding. */
function pricesBound(task: Task, prices: readonly number[]): { rolls: number; short: boolean } {
  const rolls = task.kinds.flatMap(({ stretches, rolls: own }) => own.map(() => stretches));
  const bound = new RollBound(task.demand, rolls, task.endless);
  return bound.byWeights(prices.map((price) => Math.max(0, Math.floor(price * PRICE_PARTS))));
}

interface Solved {
  readonly values?: Float64Array;
  readonly optimal: boolean;
  /** No choice of these patterns costs less. */
  readonly bound: number;
}

function solveWhole(
  { highs, stop }: Search,
  task: Task,
  columns: readonly Column[],
  seconds: number,
  improved: (values: Float64Array) => void,
): Solved {
  const { mipInterrupt, mipImprovingSolution } = highs.constants.callbackType;
  return highs.withModel(modelOf(highs, task, columns, true), (model): Solved => {
    // Costs are whole: what is less than one roll from the best is the best.
    model.options.set({
      output_flag: false,
      time_limit: Math.max(0.05, seconds),
      mip_abs_gap: 0.999,
      mip_rel_gap: 0,
    });
    model.run({
      [mipInterrupt](event) {
        if (stop?.aborted === true) event.interrupt();
      },
      [mipImprovingSolution](event) {
        if (event.data.mip_solution !== undefined) improved(event.data.mip_solution);
      },
    });
    const { optimal, infeasible } = highs.constants.modelStatus;
    const status = model.getModelStatus();
    const found = Number(model.info.get('primal_solution_status')) === 2;
    const bound = status === infeasible ? 0 : Number(model.info.get('mip_dual_bound'));
    return {
      ...(found ? { values: model.getSolution().colValue } : {}),
      optimal: status === optimal,
      bound: Number.isFinite(bound) ? bound : 0,
    };
  });
}

/** A solution as loads on the very rolls; what the patterns give beyond the wanted is left on the roll. */
function layoutOf(job: CuttingJob, task: Task, columns: readonly Column[], values: Float64Array): Layout {
  const { demand, groups } = task;
  const { times, shares } = readSolution(task, columns, values);
  const waiting = Array.from({ length: task.lots }, (_, lot) =>
    demand.lengths.map((_, type) =>
      groups.reduce((sum, { wants }, group) => sum + (wants[type] ?? 0) * (shares[group]?.[lot] ?? 0), 0),
    ),
  );
  const rolls = task.endless ? [] : [...job.rolls];
  const loads: (readonly Load[])[] = rolls.map(() => []);
  const next = task.kinds.map(() => 0);
  columns.forEach(({ kind, pattern }, at) => {
    const { lot, rolls: own } = task.kinds[kind] as RollKind;
    const left = waiting[lot] ?? [];
    for (let time = 0; time < (times[at] ?? 0); time++) {
      const cut = pattern.map((load) =>
        load.flatMap(([type, count]): [number, number][] => {
          const taken = Math.min(count, left[type] ?? 0);
          left[type] = (left[type] ?? 0) - taken;
          return taken > 0 ? [[type, taken]] : [];
        }),
      );
      const turn = next[kind] ?? 0;
      next[kind] = turn + 1;
      if (task.endless) {
        rolls.push(job.rolls[0] as Roll);
        loads.push(cut);
      } else loads[own[turn] ?? -1] = cut;
    }
  });
  return finished(job, task, rolls, loads, shares);
}

/** Loads on rolls as a layout, with the lot of every room, and shorter rolls where they do. */
function finished(
  job: CuttingJob,
  task: Task,
  rolls: readonly Roll[],
  loads: readonly (readonly Load[])[],
  shares: readonly (readonly number[])[],
): Layout {
  const { demand, groups } = task;
  const names = [...new Set(job.rolls.map(({ lot }) => lot ?? ''))];
  const lotOf = new Map<string, string>();
  groups.forEach(({ rooms }, group) => {
    let dealt = 0;
    shares[group]?.forEach((count, lot) => {
      for (const room of rooms.slice(dealt, dealt + count)) lotOf.set(room, names[lot] ?? '');
      dealt += count;
    });
  });
  const full = loads.map((own, at) =>
    own.length > 0 ? [...own] : cleanStretches(rolls[at] as Roll, at).map(() => []),
  );
  if (!task.endless) {
    for (let lot = 0; lot < task.lots; lot++) toShorterOfLot(task, lot, full, demand);
  }
  return { rolls, loads: full, lowerBound: 0, surelyShort: false, ...(task.lots > 1 ? { lotOf } : {}) };
}

/** Loads go to shorter rolls of their own lot where they fit. */
function toShorterOfLot(task: Task, lot: number, loads: Load[][], demand: Demand): void {
  const own = task.kinds.flatMap((kind) =>
    kind.lot === lot ? kind.rolls.map((roll) => ({ roll, kind })) : [],
  );
  const some = own.map(({ roll }) => loads[roll] ?? []);
  toShorterRolls(
    some,
    own.map(({ kind }) => kind.stretches),
    demand,
  );
  own.forEach(({ roll }, at) => (loads[roll] = some[at] ?? []));
}
