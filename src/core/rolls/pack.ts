/** Placing every cut on given stretches, by several ways in turn. */
import type { Demand } from './cutting';
import { bestFit, Effort, fillInTurn, firstFit, leftLength, type Packing } from './fill';
import { rework } from './rework';
import { mostSpared, type Load } from './takes';

/** The stretches in another order, the loads back in the given one. */
function ordered(
  stretches: readonly number[],
  order: readonly number[],
  pack: (stretches: readonly number[]) => Packing,
): Packing {
  const packed = pack(order.map((at) => stretches[at] as number));
  const loads: Load[] = stretches.map(() => []);
  order.forEach((at, turn) => (loads[at] = packed.loads[turn] ?? []));
  return { loads, left: packed.left };
}

/** What one packing may take of the effort that is left. */
const SHARE = 3;

/**
 * Places every cut on these stretches if it can: several ways in turn, the first that leaves
 * nothing over wins; otherwise the one that leaves the least cloth uncut.
 */
export function pack(
  stretches: readonly number[],
  demand: Demand,
  holds: (stretch: number) => number,
  effort: Effort,
): Packing {
  const allowed = Math.ceil(Math.max(0, effort.steps) / SHARE);
  const own = new Effort(allowed);
  own.steps -= (demand.lengths.length * stretches.length) >> 6;
  const longFirst = stretches
    .map((_, at) => at)
    .sort((one, other) => (stretches[other] ?? 0) - (stretches[one] ?? 0) || one - other);
  const shortFirst = [...longFirst].reverse();
  const fill = (even: boolean) => (s: readonly number[]) => fillInTurn(s, demand, { even, holds }, own);
  const ways: (() => Packing)[] = [() => ordered(stretches, longFirst, fill(false))];
  if (stretches[longFirst[0] ?? 0] !== stretches[shortFirst[0] ?? 0])
    ways.push(() => ordered(stretches, shortFirst, fill(false)));
  ways.push(() => ordered(stretches, longFirst, fill(true)));
  ways.push(() => ordered(stretches, longFirst, (s) => firstFit(s, demand)));
  // Looking at every stretch for every cut is for what a person would still oversee.
  const pieces = demand.counts.reduce((sum, count) => sum + count, 0);
  if (demand.halfDrop === undefined && pieces * stretches.length < 1_000_000)
    ways.push(() => ordered(stretches, longFirst, (s) => bestFit(s, demand)));

  let best: Packing | undefined;
  let least = Infinity;
  const keep = (packing: Packing): boolean => {
    const over = leftLength(packing, demand.lengths);
    if (over < least) [best, least] = [packing, over];
    return least === 0;
  };
  const done = ways.some((way) => keep(way()));
  const found = best as Packing;
  const longer = mostSpared(demand);
  const cloth = stretches.reduce((sum, one) => sum + one + longer, 0);
  const wanted = demand.lengths.reduce((sum, one, type) => sum + one * (demand.counts[type] ?? 0), 0);
  // Mending is for cuts that could all find a place.
  if (!done && wanted <= cloth) keep(rework(stretches, found, demand, holds, own));
  effort.steps -= allowed - own.steps;
  return best as Packing;
}
