/** The fewest rolls that take the cuts, where any cut may come from any of them. */
import { RollBound } from './bound';
import type { Demand } from './cutting';
import { firstFit, leftLength, type Effort, type Packing } from './fill';
import { pack } from './pack';
import { Filling, takes, type Load } from './takes';

export interface Laid {
  /** A load for every stretch of every roll, in the order given; an unopened roll's are empty. */
  readonly loads: readonly (readonly Load[])[];
  readonly left: readonly number[];
  readonly used: number;
  readonly lower: number;
  /** All the rolls together surely cannot hold the cuts. */
  readonly surelyShort: boolean;
}

const clean = (stretches: readonly number[]): number => stretches.reduce((sum, one) => sum + one, 0);

/** Rolls of one length, as many as a plain first fit takes: no better plan needs more. */
export function rollsOnOrder(roll: readonly number[], demand: Demand): (readonly number[])[] {
  const most = demand.counts.reduce((sum, count, type) => {
    const each = roll.reduce((cuts, stretch) => cuts + new Filling(stretch, demand).room(type, count), 0);
    return sum + Math.ceil(count / Math.max(1, each));
  }, 0);
  return Array.from({ length: most }, () => roll);
}

/** Rolls tried beyond the bound before the plain plan stands. */
const TRIES = 12;

export function layOnRolls(
  rolls: readonly (readonly number[])[],
  demand: Demand,
  effort: Effort,
  endless = false,
): Laid {
  const bound = new RollBound(demand, endless ? rolls.slice(0, 1) : rolls, endless);
  const holds = bound.fillings();
  const order = rolls.map((_, at) => at);
  order.sort((one, other) => clean(rolls[other] ?? []) - clean(rolls[one] ?? []) || one - other);
  const over = (packing: Packing): number => leftLength(packing, demand.lengths);

  /** The longest `number` rolls, as one row of stretches. */
  const stretchesOf = (number: number): number[] => order.slice(0, number).flatMap((at) => rolls[at] ?? []);
  const opened = (number: number, packing: Packing): number => {
    let at = 0;
    return order
      .slice(0, number)
      .filter((roll) =>
        (rolls[roll] ?? []).map(() => packing.loads[at++] ?? []).some((load) => load.length > 0),
      ).length;
  };

  let { rolls: lower, short: surelyShort } = bound.material();
  const raise = (by: { rolls: number; short: boolean }): void => {
    lower = Math.max(lower, by.rolls);
    surelyShort ||= by.short;
  };
  let number = rolls.length;
  let best = firstFit(stretchesOf(number), demand);
  let used = opened(number, best);
  let rest = over(best);

  const better = (tried: number): boolean => {
    const packing = pack(stretchesOf(tried), demand, holds, effort);
    const left = over(packing);
    const takes = opened(tried, packing);
    if (left > rest || (left === rest && takes >= used)) return false;
    [number, best, used, rest] = [tried, packing, takes, left];
    return left === 0;
  };
  const weightings = bound.weightings();
  const weigh = (most: number): void => {
    while (most-- > 0 && (rest > 0 ? !surelyShort : used > lower)) {
      const next = weightings.next();
      if (next.done === true) return;
      raise(bound.byWeights(next.value));
    }
  };
  const settled = (): boolean => rest === 0 && used <= lower;

  if (!settled()) weigh(2);
  if (!settled() && !surelyShort && !better(lower)) {
    weigh(Infinity);
    let step = 1;
    let tries = 0;
    for (let tried = lower; tries < TRIES && effort.steps > 0; tried += step) {
      if (tried >= (rest === 0 ? used : rolls.length)) break;
      if (tries++ >= TRIES / 2) step *= 2;
      if (better(tried)) break;
    }
  }
  if (rest > 0) better(rolls.length);

  const loads = rolls.map((stretches): Load[] => stretches.map(() => []));
  let at = 0;
  for (const roll of order.slice(0, number)) {
    loads[roll] = (rolls[roll] ?? []).map(() => best.loads[at++] ?? []);
  }
  if (!endless) toShorterRolls(loads, rolls, demand);
  return { loads, left: best.left, used, lower, surelyShort };
}

/** What lies on a roll goes to the shortest unopened one that takes it: less cloth is opened. */
export function toShorterRolls(loads: Load[][], rolls: readonly (readonly number[])[], demand: Demand): void {
  const plain = rolls
    .map((stretches, at) => ({ at, stretches, cloth: clean(stretches) }))
    .filter(({ stretches }) => stretches.length === 1)
    .sort((one, other) => one.cloth - other.cloth || one.at - other.at);
  const isOpen = (at: number): boolean => (loads[at] ?? []).some((load) => load.length > 0);
  for (const from of [...plain].reverse()) {
    if (!isOpen(from.at)) continue;
    const load = loads[from.at]?.[0] ?? [];
    const needed = takes(load, demand);
    const to = plain.find(({ at, cloth }) => cloth >= needed && !isOpen(at));
    if (to === undefined || to.cloth >= from.cloth) continue;
    loads[to.at] = [load];
    loads[from.at] = [[]];
  }
}
