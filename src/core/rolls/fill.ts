/**
 * Filling stretches with cuts. The work is counted in steps, never by the clock, so that the same
 * cuts and rolls always give the same plan.
 */
import type { Demand } from './cutting';
import { Filling, loadLength, mostSpared, sparedOf, takes, type Load, type Sizes } from './takes';

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

export const leftLength = (packing: Packing, lengths: readonly number[]): number =>
  packing.left.reduce((sum, count, type) => sum + count * (lengths[type] ?? 0), 0);

/** Longest cuts first, each into the first stretch that takes it. */
export function firstFit(stretches: readonly number[], demand: Demand): Packing {
  const fillings = stretches.map((stretch) => new Filling(stretch, demand));
  const left = [...demand.counts];
  demand.lengths.forEach((_, type) => {
    for (const filling of fillings) {
      const wanted = left[type] ?? 0;
      if (wanted === 0) break;
      const taken = filling.room(type, wanted);
      filling.add(type, taken);
      left[type] = wanted - taken;
    }
  });
  return { loads: fillings.map(({ load }) => load), left };
}

/** Longest cuts first, each into the stretch it fills best. */
export function bestFit(stretches: readonly number[], demand: Demand): Packing {
  const fillings = stretches.map((stretch) => new Filling(stretch, demand));
  const left = [...demand.counts];
  demand.lengths.forEach((_, type) => {
    for (let piece = left[type] ?? 0; piece > 0; piece--) {
      let best: Filling | undefined;
      for (const filling of fillings)
        if (filling.room(type, 1) > 0 && (best === undefined || filling.free < best.free)) best = filling;
      if (best === undefined) break;
      best.add(type, 1);
      left[type] = (left[type] ?? 0) - 1;
    }
  });
  return { loads: fillings.map(({ load }) => load), left };
}

interface Ways {
  /** No stretch is given more than its share of any length, so that none is left to the end. */
  readonly even: boolean;
  /** What a stretch can be filled to at best. */
  readonly holds: (stretch: number) => number;
}

/** Steps one stretch may cost; after a tenth of them a filling that is good enough will do. */
const MOST = 4_000;
/** Enough for a plain filling once the effort is spent. */
const LEAST = 40;

/**
 * What of a stretch may be left over: at best, and where looking further is not worth it. Counted as if
 * the stretch were longer by the most that a last cut leaves out.
 */
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
  cuts: Sizes,
  left: readonly number[],
  spare: Spare,
  { effort, most = MOST }: { readonly effort: Effort; readonly most?: number },
): Load {
  const { lengths } = cuts;
  const longer = mostSpared(cuts);
  const whole = stretch + longer;
  const types: number[] = [];
  const sizes: number[] = [];
  for (let type = firstWithin(lengths, 0, whole); type < lengths.length; type++) {
    if ((left[type] as number) === 0) continue;
    types.push(type);
    sizes.push(lengths[type] as number);
  }
  const spared = longer === 0 ? types.map(() => 0) : types.map((type) => sparedOf(cuts, type));
  effort.steps -= lengths.length >> 4;
  const allowed = Math.max(LEAST, Math.min(most, effort.steps));
  const early = allowed / 10;
  let steps = 0;
  let best: Load = [];
  let bestFree = whole;
  const taken: [at: number, count: number][] = [];
  /** What the last cut leaves out must make up for the length that the stretch has not. */
  const fits = (free: number, more: readonly number[]): boolean => {
    const needed = longer - free;
    if (needed <= 0) return true;
    return (
      more.some((at) => (spared[at] as number) >= needed) ||
      taken.some(([at]) => (spared[at] as number) >= needed)
    );
  };
  const keep = (free: number, ...more: readonly number[]): void => {
    if (free >= bestFree || !fits(free, more)) return;
    bestFree = free;
    best = [...taken, ...more.map((at): [number, number] => [at, 1])];
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
      const most = Math.min(left[types[at] as number] as number, Math.floor(free / length));
      for (let count = most; count > 0; count--) {
        if (enough()) return true;
        steps++;
        taken.push([at, count]);
        if (search(at + 1, free - count * length)) return true;
        taken.pop();
      }
    }
    return false;
  };
  search(0, whole);
  effort.steps -= steps;
  return merged(best.map(([at, count]) => [types[at] as number, count] as const));
}

/** One entry for each length. */
function merged(load: Load): Load {
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

/** One stretch after another, each as full as it goes; a pattern is repeated while it lasts. */
export function fillInTurn(
  stretches: readonly number[],
  demand: Demand,
  { even, holds }: Ways,
  effort: Effort,
): Packing {
  const { lengths, counts } = demand;
  const left = [...counts];
  const longer = mostSpared(demand);
  const each = Math.min(MOST, Math.floor(effort.steps / stretches.length / 2));
  let waiting = lengths.reduce((sum, length, type) => sum + length * (left[type] ?? 0), 0);
  let cloth = stretches.reduce((sum, stretch) => sum + stretch + longer, 0);
  let before: { stretch: number; load: Load } | undefined;
  const take = (load: Load): Load => {
    for (const [type, count] of load) left[type] = (left[type] as number) - count;
    waiting -= loadLength(load, demand);
    return load;
  };
  const all = (): Load => left.flatMap((count, type) => (count > 0 ? [[type, count] as const] : []));
  const loads = stretches.map((stretch, at): Load => {
    if (waiting === 0) return [];
    const whole = stretch + longer;
    // A fair share of all that may be left over is good enough for this stretch.
    const goodEnough = (cloth - waiting) / (stretches.length - at) / 4;
    if (waiting <= whole && takes(all(), demand) <= stretch) return take(all());
    const share = Math.min(1, (whole / cloth) * 1.5);
    cloth -= whole;
    if (
      before?.stretch === stretch &&
      before.load.every(([type, count]) => (left[type] as number) >= count)
    ) {
      return take(before.load);
    }
    const offered = even ? left.map((count) => Math.ceil(count * share)) : left;
    const load =
      demand.halfDrop === undefined
        ? fullest(
            stretch,
            demand,
            offered,
            { best: whole - holds(stretch), goodEnough },
            { effort, most: each },
          )
        : inShares(stretch, { ...demand, counts: left }, offered, effort);
    before = { stretch, load };
    return take(load);
  });
  return { loads, left };
}

/** What an order of cutting costs to be found, in steps for each pair of types. */
const ORDER = 4;

/** A half-drop's stretch: its share of every type first, then of each whatever still goes. */
function inShares(stretch: number, demand: Demand, offered: readonly number[], effort: Effort): Load {
  const filling = new Filling(stretch, demand);
  for (const shares of [offered, demand.counts]) {
    demand.lengths.forEach((_, type) => {
      const lying = filling.load.find(([one]) => one === type)?.[1] ?? 0;
      const wanted = (shares[type] ?? 0) - lying;
      if (wanted <= 0) return;
      effort.steps -= ORDER * (filling.load.length + 1) ** 2;
      filling.add(type, filling.room(type, wanted));
    });
  }
  return filling.load;
}
