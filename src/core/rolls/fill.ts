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

/** Steps one stretch may cost; after a tenth of them a filling that is good enough will do. */
const MOST = 4_000;
/** Enough for a plain filling once the effort is spent. */
const LEAST = 40;

/** What of a stretch may be left over: at best, and where looking further is not worth it. */
export interface Spare {
  readonly best: number;
  readonly goodEnough: number;
}

/**
 * The fullest filling of one stretch, found depth first with the longest cuts first; ends early
 * where no more than `spare` is left over.
 */
export function fullest(
  stretch: number,
  lengths: readonly number[],
  left: readonly number[],
  spare: Spare,
  effort: Effort,
  most = MOST,
): Load {
  const types: number[] = [];
  const sizes: number[] = [];
  for (let type = firstWithin(lengths, 0, stretch); type < lengths.length; type++) {
    if ((left[type] as number) === 0) continue;
    types.push(type);
    sizes.push(lengths[type] as number);
  }
  effort.steps -= lengths.length >> 4;
  const allowed = Math.max(LEAST, Math.min(most, effort.steps));
  const early = allowed / 10;
  let steps = 0;
  let best: Load = [];
  let bestFree = stretch;
  const taken: [number, number][] = [];
  const keep = (free: number, ...more: readonly number[]): void => {
    if (free >= bestFree) return;
    bestFree = free;
    best = [...taken, ...more.map((at): [number, number] => [types[at] as number, 1])];
  };
  const smallest = sizes[sizes.length - 1] ?? Infinity;

  /** The last one or two cuts, from both ends of the lengths at once. */
  const finish = (from: number, free: number): void => {
    let long = firstWithin(sizes, from, free);
    if (long < sizes.length) keep(free - (sizes[long] as number), long);
    let short = sizes.length - 1;
    steps += (sizes.length - long) >> 3;
    while (long <= short) {
      const over = free - (sizes[long] as number) - (sizes[short] as number);
      if (over < 0) long++;
      else {
        if (long < short || (left[types[long] as number] as number) > 1) keep(over, long, short);
        short--;
      }
    }
  };
  const enough = (): boolean =>
    bestFree <= spare.best || steps >= allowed || (steps > early && bestFree <= spare.goodEnough);

  const search = (from: number, free: number): boolean => {
    keep(free);
    if (free < 3 * smallest) {
      finish(from, free);
      return enough();
    }
    for (let at = firstWithin(sizes, from, free); at < sizes.length; at++) {
      const length = sizes[at] as number;
      const type = types[at] as number;
      const most = Math.min(left[type] as number, Math.floor(free / length));
      for (let count = most; count > 0; count--) {
        if (enough()) return true;
        steps++;
        taken.push([type, count]);
        if (search(at + 1, free - count * length)) return true;
        taken.pop();
      }
    }
    return false;
  };
  search(0, stretch);
  effort.steps -= steps;
  return merged(best);
}

/** One entry for each length. */
function merged(load: readonly (readonly [number, number])[]): Load {
  const counts = new Map<number, number>();
  for (const [type, count] of load) counts.set(type, (counts.get(type) ?? 0) + count);
  return [...counts];
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
  /** No stretch is given more than its share of any length, so that none is left to the end. */
  readonly even: boolean;
  /** What a stretch can be filled to at best. */
  readonly holds: (stretch: number) => number;
}

/** One stretch after another, each as full as it goes; a pattern is repeated while it lasts. */
export function fillInTurn(
  stretches: readonly number[],
  { lengths, counts }: Demand,
  { even, holds }: Filling,
  effort: Effort,
): Packing {
  const left = [...counts];
  const each = Math.min(MOST, Math.floor(effort.steps / stretches.length / 2));
  let waiting = lengths.reduce((sum, length, type) => sum + length * (left[type] ?? 0), 0);
  let cloth = stretches.reduce((sum, stretch) => sum + stretch, 0);
  let before: { stretch: number; load: Load } | undefined;
  const take = (load: Load): Load => {
    for (const [type, count] of load) left[type] = (left[type] as number) - count;
    waiting -= loadLength(load, lengths);
    return load;
  };
  const loads = stretches.map((stretch, at): Load => {
    if (waiting === 0) return [];
    // A fair share of all that may be left over is good enough for this stretch.
    const goodEnough = (cloth - waiting) / (stretches.length - at) / 4;
    if (waiting <= stretch) {
      return take(left.flatMap((count, type) => (count > 0 ? [[type, count] as const] : [])));
    }
    if (
      before?.stretch === stretch &&
      before.load.every(([type, count]) => (left[type] as number) >= count)
    ) {
      cloth -= stretch;
      return take(before.load);
    }
    const spare = { best: stretch - holds(stretch), goodEnough };
    const share = Math.min(1, (stretch / cloth) * 1.5);
    const offered = even ? left.map((count) => Math.ceil(count * share)) : left;
    const load = fullest(stretch, lengths, offered, spare, effort, each);
    cloth -= stretch;
    before = { stretch, load };
    return take(load);
  });
  return { loads, left };
}
