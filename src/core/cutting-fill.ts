/**
 * Filling stretches with cuts. The work is counted in steps, never by the clock, so that the same
 * cuts and rolls always give the same plan.
 */
import type { Demand } from './cutting';

/** How many cuts of each length a stretch gets. */
export type Load = readonly (readonly [type: number, count: number])[];

export interface Packing {
  /** One for each stretch, in the order given. */
  readonly loads: readonly Load[];
  /** How many of each length found no place. */
  readonly left: readonly number[];
}

/** Steps that may still be spent. */
export class Effort {
  constructor(public steps: number) {}
}

export const loadLength = (load: Load, lengths: readonly number[]): number =>
  load.reduce((sum, [type, count]) => sum + count * (lengths[type] ?? 0), 0);

export const leftLength = (packing: Packing, lengths: readonly number[]): number =>
  packing.left.reduce((sum, count, type) => sum + count * (lengths[type] ?? 0), 0);

/** Longest cuts first, each into the first stretch that takes it. */
export function firstFit(stretches: readonly number[], { lengths, counts }: Demand): Packing {
  const free = [...stretches];
  const loads = stretches.map((): [number, number][] => []);
  const left = [...counts];
  lengths.forEach((length, type) => {
    let wanted = counts[type] ?? 0;
    for (let at = 0; at < free.length && wanted > 0; at++) {
      const room = free[at] as number;
      if (room < length) continue;
      const taken = Math.min(wanted, Math.floor(room / length));
      free[at] = room - taken * length;
      (loads[at] as [number, number][]).push([type, taken]);
      wanted -= taken;
    }
    left[type] = wanted;
  });
  return { loads, left };
}

/** Longest cuts first, each into the stretch it fills best. */
export function bestFit(stretches: readonly number[], { lengths, counts }: Demand): Packing {
  const free = [...stretches];
  const taken = stretches.map(() => new Map<number, number>());
  const left = [...counts];
  lengths.forEach((length, type) => {
    for (let piece = counts[type] ?? 0; piece > 0; piece--) {
      let best = -1;
      for (let at = 0; at < free.length; at++) {
        const room = free[at] as number;
        if (room >= length && (best < 0 || room < (free[best] as number))) best = at;
      }
      if (best < 0) break;
      free[best] = (free[best] as number) - length;
      const load = taken[best] as Map<number, number>;
      load.set(type, (load.get(type) ?? 0) + 1);
      left[type] = (left[type] ?? 0) - 1;
    }
  });
  return { loads: taken.map((load) => [...load]), left };
}

/** Steps one stretch may cost. */
const EACH = 4_000;

/**
 * The fullest filling of one stretch, found depth first with the longest cuts first; ends early
 * where no more than `spare` is left over.
 */
export function fullest(
  stretch: number,
  lengths: readonly number[],
  left: readonly number[],
  spare: number,
  effort: Effort,
): Load {
  let steps = Math.min(EACH, effort.steps);
  effort.steps -= steps;
  const types = lengths.flatMap((length, type) => (length <= stretch && (left[type] ?? 0) > 0 ? [type] : []));
  const sizes = types.map((type) => lengths[type] as number);
  let best: Load = [];
  let bestFree = stretch;
  const taken: [number, number][] = [];
  const search = (from: number, free: number): boolean => {
    if (free < bestFree) {
      bestFree = free;
      best = taken.map(([type, count]) => [type, count] as const);
      if (free <= spare) return true;
    }
    for (let at = firstWithin(sizes, from, free); at < sizes.length; at++) {
      const length = sizes[at] as number;
      const type = types[at] as number;
      const most = Math.min(left[type] as number, Math.floor(free / length));
      for (let count = most; count > 0; count--) {
        if (steps-- <= 0) return true;
        taken.push([type, count]);
        if (search(at + 1, free - count * length)) return true;
        taken.pop();
      }
    }
    return false;
  };
  search(0, stretch);
  effort.steps += Math.max(0, steps);
  return best;
}

/** The first length, at or after `from`, that is no longer than `free`; lengths fall. */
function firstWithin(lengths: readonly number[], from: number, free: number): number {
  let low = from;
  let high = lengths.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lengths[middle] as number) <= free) high = middle;
    else low = middle + 1;
  }
  return low;
}

interface Filling {
  /** The longest cut still to be placed goes in first. */
  readonly longestFirst: boolean;
  /** What a stretch can be filled to at best. */
  readonly holds: (stretch: number) => number;
}

/** One stretch after another, each as full as it goes; a pattern is repeated while it lasts. */
export function fillInTurn(
  stretches: readonly number[],
  { lengths, counts }: Demand,
  { longestFirst, holds }: Filling,
  effort: Effort,
): Packing {
  const left = [...counts];
  let waiting = lengths.reduce((sum, length, type) => sum + length * (left[type] ?? 0), 0);
  let before: { stretch: number; load: Load } | undefined;
  const take = (load: Load): Load => {
    for (const [type, count] of load) left[type] = (left[type] as number) - count;
    waiting -= loadLength(load, lengths);
    return load;
  };
  const loads = stretches.map((stretch): Load => {
    if (waiting === 0) return [];
    if (waiting <= stretch) {
      return take(left.flatMap((count, type) => (count > 0 ? [[type, count] as const] : [])));
    }
    if (
      before?.stretch === stretch &&
      before.load.every(([type, count]) => (left[type] as number) >= count)
    ) {
      return take(before.load);
    }
    const first = longestFirst
      ? lengths.findIndex((length, type) => length <= stretch && (left[type] as number) > 0)
      : -1;
    const spare = stretch - holds(stretch);
    let load: Load;
    if (first < 0) load = fullest(stretch, lengths, left, spare, effort);
    else {
      const rest = left.map((count, type) => (type === first ? count - 1 : count));
      load = withOne(first, fullest(stretch - (lengths[first] as number), lengths, rest, spare, effort));
    }
    before = { stretch, load };
    return take(load);
  });
  return { loads, left };
}

const withOne = (first: number, load: Load): Load => {
  const more = load.find(([type]) => type === first)?.[1] ?? 0;
  return [[first, more + 1], ...load.filter(([type]) => type !== first)];
};

/** The stretches in another order, the loads back in the given one. */
function ordered(
  stretches: readonly number[],
  order: readonly number[],
  pack: (s: number[]) => Packing,
): Packing {
  const packed = pack(order.map((at) => stretches[at] as number));
  const loads: Load[] = stretches.map(() => []);
  order.forEach((at, turn) => (loads[at] = packed.loads[turn] ?? []));
  return { loads, left: packed.left };
}

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
  const longFirst = stretches
    .map((_, at) => at)
    .sort((a, b) => (stretches[b] ?? 0) - (stretches[a] ?? 0) || a - b);
  const shortFirst = [...longFirst].reverse();
  const fill = (longestFirst: boolean) => (s: readonly number[]) =>
    fillInTurn(s, demand, { longestFirst, holds }, effort);
  const ways: (() => Packing)[] = [
    () => ordered(stretches, longFirst, (s) => firstFit(s, demand)),
    () => ordered(stretches, longFirst, fill(false)),
    () => ordered(stretches, shortFirst, fill(false)),
    () => ordered(stretches, longFirst, fill(true)),
    () => ordered(stretches, shortFirst, fill(true)),
  ];
  // Looking at every stretch for every cut is for what a person would still oversee.
  const pieces = demand.counts.reduce((sum, count) => sum + count, 0);
  if (pieces * stretches.length < 1_000_000)
    ways.push(() => ordered(stretches, longFirst, (s) => bestFit(s, demand)));
  let best: Packing | undefined;
  let least = Infinity;
  for (const way of ways) {
    const packing = way();
    const over = leftLength(packing, demand.lengths);
    if (over < least) [best, least] = [packing, over];
    if (least === 0) break;
  }
  return best as Packing;
}
