/** The cutting plans of a floor, cloth by cloth, as they are made and told. */
import { cutLengthOf, type CuttingJob } from '../../core/rolls/cutting';
import type { PlannedRoll } from '../../core/rolls/plan';
import { clothFindings, clothJob, type Cloth, type RollSupply } from '../../core/floor/floor-cuts';
import { exact, toUnit, type Length } from '../../core/exact/length';
import type { Tally } from '../../core/floor/tally';
import { orderOf } from '../../core/rolls/rolls';
import { showLength, showRemnant, showYardage, type Unit } from '../../core/exact/unit';
import { bestPlan, type BestPlan } from '../../solve/best-plan';
import { loadSolver } from '../../solve/load';
import type { Io } from '../command';
import { asUsage, type Values } from './options';
import { counted, Problem, USAGE } from '../problem';

export interface PlannedCloth {
  readonly cloth: Cloth;
  readonly job: CuttingJob;
  readonly best: BestPlan;
}

/** Plans each cloth, one after the other; Ctrl-C keeps the best so far. */
export async function planCloths(
  cloths: readonly Cloth[],
  supplyOf: (cloth: Cloth) => RollSupply,
  values: Values,
  unit: Unit,
  io: Io,
): Promise<readonly PlannedCloth[]> {
  const seconds = values.seconds === undefined ? 10 : Number(values.seconds);
  if (!(seconds > 0))
    throw new Problem(`--seconds reads “${values.seconds ?? ''}”. Write a number above 0.`, USAGE);
  const jobs = cloths
    .filter(({ cuts }) => cuts.length > 0)
    .map((cloth) => ({ cloth, job: asUsage(() => clothJob(cloth, supplyOf(cloth), unit)) }));
  const stop = new AbortController();
  const interrupt = (): void => stop.abort();
  process.once('SIGINT', interrupt);
  try {
    const highs = await loadSolver();
    const planned: PlannedCloth[] = [];
    for (const { cloth, job } of jobs) {
      const best = await bestPlan(job, {
        highs,
        seconds,
        stop: stop.signal,
        progress: ({ plan, doing }) =>
          io.progress(`… ${cloth.name}: ${counted(plan.rolls.length, 'roll')}, ${doing}`),
      });
      planned.push({ cloth, job, best });
    }
    return planned;
  } finally {
    process.removeListener('SIGINT', interrupt);
  }
}

const cutsInWords = (cuts: readonly { length: Length; count: number }[], unit: Unit): string => {
  const byLength = new Map<Length, number>();
  for (const { length, count } of cuts) byLength.set(length, (byLength.get(length) ?? 0) + count);
  return [...byLength].map(([length, count]) => `${count} × ${showLength(length, unit)}`).join(' + ');
};

/** What is cut from a roll, and what is left of it. */
function rollInWords(roll: PlannedRoll, unit: Unit): string {
  const stretches = roll.stretches.filter(({ cuts }) => cuts.length > 0);
  const cuts = stretches.flatMap((stretch) => stretch.cuts);
  const toStart = stretches.reduce((sum, one) => exact(sum + (one.toStart ?? 0)), exact(0));
  const left = exact(roll.length - toStart - cutLengthOf(cuts));
  const lot = roll.lot === undefined ? '' : `, lot ${roll.lot}`;
  const given = toStart === 0 ? '' : `${showLength(toStart, unit)} to the pattern’s start + `;
  const order = orderOf(roll);
  const inTurn = order === undefined ? '' : `, cut as ${order}`;
  return `of ${showYardage(roll.length, unit)}${lot}: ${given}${cutsInWords(cuts, unit)}, remnant ${showRemnant(left, unit)}${inTurn}`;
}

/** A line a roll; rolls cut alike that follow one another share a line. */
function rollLines(rolls: readonly PlannedRoll[], unit: Unit): string[] {
  const runs: { first: number; last: number; words: string }[] = [];
  for (const roll of rolls) {
    const words = rollInWords(roll, unit);
    const run = runs.at(-1);
    if (run?.words === words && run.last === roll.number - 1) run.last = roll.number;
    else runs.push({ first: roll.number, last: roll.number, words });
  }
  return runs.map(({ first, last, words }) =>
    first === last ? `  roll ${first} ${words}` : `  rolls ${first} to ${last}, each ${words}`,
  );
}

function planLines({ cloth, best: { plan, gap, seconds } }: PlannedCloth, unit: Unit): string[] {
  const proof = plan.proven
    ? 'proven fewest'
    : plan.short.length > 0
      ? 'not all cuts fit'
      : `no plan needs fewer than ${plan.lowerBound}; gap ${gap}`;
  const used = (plan.utilisation / 100).toFixed(1);
  return [
    `${cloth.name}: ${counted(plan.rolls.length, 'roll')}, ${proof}; ${used} % of the cloth opened is cut (${seconds.toFixed(1)} s)`,
    ...rollLines(plan.rolls, unit),
  ];
}

export function tellPlans(plans: readonly PlannedCloth[], unit: Unit, io: Io): void {
  for (const one of plans) {
    for (const line of planLines(one, unit)) io.out(line);
    for (const found of clothFindings(one.cloth, one.job, one.best.plan, unit))
      io.err(`${found.weight} ${one.cloth.name}: ${found.sentence}`);
  }
}

/** The plans as data, lengths in the house's units. */
export function plansAsData(plans: readonly PlannedCloth[], total: Tally, { small, large }: Unit) {
  const yards = (length: Length): number => toUnit(length, large);
  return plans.map(({ cloth, best: { plan, gap, seconds } }) => {
    const totals = cloth.layer === 'face' ? total.face : total.behind;
    const counted = totals.find(({ name }) => name === cloth.name);
    return {
      fabric: cloth.name,
      layer: cloth.layer,
      cuts: cloth.cuts.reduce((sum, { count }) => sum + count, 0),
      /** As the windows' cuts come to, nothing rounded. */
      cloth: yards(cloth.cloth),
      yardage: counted === undefined ? undefined : yards(counted.yardage),
      rolls: plan.rolls.map((roll) => ({
        roll: roll.number,
        length: yards(roll.length),
        lot: roll.lot,
        cuts: roll.stretches.flatMap(({ cuts, from, toStart }) =>
          cuts.map(({ length, count, room, label, start }) => ({
            length: toUnit(length, small),
            count,
            room: room ?? label,
            ...(start !== undefined && { start }),
            stretchFrom: toUnit(from, small),
            ...(toStart !== undefined && { toStart: toUnit(toStart, small) }),
          })),
        ),
      })),
      lowerBound: plan.lowerBound,
      proven: plan.proven,
      gap,
      seconds,
      short: plan.short.map(({ length, count, room }) => ({ length: toUnit(length, small), count, room })),
    };
  });
}
