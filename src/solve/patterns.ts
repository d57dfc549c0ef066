/** Cutting patterns: what one roll may be cut into. */
import type { Demand } from '../core/rolls/cutting';
import { bareOf, leastOf, sparedOf, takes, type Load, type Sizes } from '../core/rolls/takes';

/** A load for each stretch of the roll. */
export type Pattern = readonly Load[];

/** How many of each length a pattern gives. */
export function gives(pattern: Pattern, types: number): number[] {
  const counts = Array.from({ length: types }, () => 0);
  for (const load of pattern) for (const [type, count] of load) counts[type] = (counts[type] ?? 0) + count;
  return counts;
}

/** Steps spent on each filling allowed, the vain ones among them. */
const STEPS_EACH = 100;
/** What looking for the best order of a half-drop's cuts costs, in steps. */
const ORDER = 20;

/**
 * Every filling of a stretch that has no place for one more cut, unless there are more than `most`:
 * a plan made of these can be as good as any.
 */
export function everyFilling(stretch: number, demand: Demand, most: number): Load[] | undefined {
  const { counts } = demand;
  const sizes = counts.map((_, type) => leastOf(demand, type));
  const spared = sizes.map((_, type) => sparedOf(demand, type));
  const found: Load[] = [];
  let steps = STEPS_EACH * most;
  const taken: (readonly [number, number])[] = [];
  const more = (type: number): Load => {
    const own = taken.find(([one]) => one === type)?.[1] ?? 0;
    return [...taken.filter(([one]) => one !== type), [type, own + 1]];
  };
  const fits = (load: Load): boolean => {
    if (demand.halfDrop !== undefined) steps -= ORDER;
    return takes(load, demand) <= stretch;
  };
  const isFull = (): boolean =>
    counts.every((wanted, type) => {
      const own = taken.find(([one]) => one === type)?.[1] ?? 0;
      return own >= wanted || !fits(more(type));
    });
  /** The most that a cut of this type or a later one leaves out. */
  const sparedFrom = spared.map((_, type) => Math.max(...spared.slice(type)));
  /** `free`: of the stretch, each cut taking its size, and none yet leaving anything out. */
  const search = (type: number, free: number, least: number): boolean => {
    if (found.length > most || steps-- <= 0) return false;
    const size = sizes[type];
    if (size === undefined) {
      if (fits(taken) && isFull()) found.push([...taken]);
      return true;
    }
    const longer = Math.max(least, sparedFrom[type] ?? 0);
    const fitting = Math.max(0, Math.min(counts[type] ?? 0, Math.floor((free + longer) / size)));
    for (let count = fitting; count >= 0; count--) {
      if (count > 0) taken.push([type, count]);
      const going = search(
        type + 1,
        free - count * size,
        count > 0 ? Math.max(least, spared[type] ?? 0) : least,
      );
      if (count > 0) taken.pop();
      if (!going) return false;
    }
    return true;
  };
  return search(0, stretch, 0) && found.length <= most ? found : undefined;
}

/** Every pattern of a roll with these clean stretches, unless there are too many. */
export function everyPattern(
  stretches: readonly number[],
  demand: Demand,
  most: number,
): Pattern[] | undefined {
  let patterns: Pattern[] = [[]];
  for (const stretch of stretches) {
    const fillings = everyFilling(stretch, demand, Math.floor(most / patterns.length));
    if (fillings === undefined) return undefined;
    patterns = patterns.flatMap((pattern) => fillings.map((filling) => [...pattern, filling]));
  }
  return patterns;
}

/** Cells of the table a price search fills. */
const CELLS = 20_000;

/** The dearest filling of any stretch up to the longest, each cut having a price; cut by cut, from the last to the first. */
export function dearest(
  longest: number,
  cuts: Sizes,
  measure: number,
  prices: readonly number[],
): (stretch: number) => { readonly load: Load; readonly price: number } {
  const mark = Math.max(measure, Math.ceil(longest / CELLS));
  // Rounded up where the mark is coarse: what is found surely fits.
  const marks = (length: number): number => Math.max(1, Math.ceil(length / mark));
  const cells = Math.floor(longest / mark);
  const worth = cuts.lengths
    .map((length, type) => {
      const { start, unlikeTwice } = cuts.halfDrop?.[type] ?? { start: 'A', unlikeTwice: Infinity };
      const own = start === 'A' ? 0 : 1;
      const price = prices[type] ?? 0;
      const bare = marks(bareOf(cuts, type));
      return { type, own, price, bare, next: [marks(length), marks(unlikeTwice / 2)] };
    })
    .filter(({ price }) => price > 0);
  // By the start of the first cut; `last` says which cut that is, `after` where what follows it stands.
  const table = [0, 1].map(() => ({
    best: new Float64Array(cells + 1),
    first: new Int32Array(cells + 1).fill(-1),
    after: new Int32Array(cells + 1).fill(-1),
  }));
  const bestAt = (start: number, cell: number): number => table[start]?.best[cell] ?? 0;
  for (let cell = 1; cell <= cells; cell++) {
    for (const { best, first, after } of table) {
      best[cell] = best[cell - 1] as number;
      first[cell] = first[cell - 1] as number;
      after[cell] = after[cell - 1] as number;
    }
    for (const { type, own, price, bare, next } of worth) {
      if (bare > cell) continue;
      const own_ = table[own] as (typeof table)[number];
      let [with_, after] = [price, -1];
      next.forEach((size, unlike) => {
        const start = unlike === 0 ? own : 1 - own;
        const left = cell - size;
        if (left <= 0 || price + bestAt(start, left) <= with_) return;
        [with_, after] = [price + bestAt(start, left), 2 * left + start];
      });
      if (with_ <= bestAt(own, cell)) continue;
      own_.best[cell] = with_;
      own_.first[cell] = type;
      own_.after[cell] = after;
    }
  }
  return (stretch) => {
    const from = Math.floor(stretch / mark);
    const start = bestAt(1, from) > bestAt(0, from) ? 1 : 0;
    const counts = new Map<number, number>();
    let at = 2 * from + start;
    while (at > 1) {
      const own = table[at % 2];
      const type = own?.first[at >> 1] ?? -1;
      if (type < 0) break;
      counts.set(type, (counts.get(type) ?? 0) + 1);
      at = own?.after[at >> 1] ?? -1;
    }
    return { load: [...counts], price: bestAt(start, from) };
  };
}
