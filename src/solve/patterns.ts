/** Cutting patterns: what one roll may be cut into. */
import type { Demand } from '../core/rolls/cutting';
import type { Load } from '../core/rolls/fill';

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

/**
 * Every filling of a stretch that has no place for one more cut, unless there are more than `most`:
 * a plan made of these can be as good as any.
 */
export function everyFilling(stretch: number, { lengths, counts }: Demand, most: number): Load[] | undefined {
  const found: Load[] = [];
  let steps = STEPS_EACH * most;
  const taken: (readonly [number, number])[] = [];
  /** The shortest cut that was left out though wanted: the free rest must be shorter than it. */
  const search = (type: number, free: number, shortest: number): boolean => {
    if (found.length > most || steps-- <= 0) return false;
    const length = lengths[type];
    if (length === undefined) {
      if (free < shortest) found.push([...taken]);
      return true;
    }
    const wanted = counts[type] ?? 0;
    const fitting = Math.min(wanted, Math.floor(free / length));
    for (let count = fitting; count >= 0; count--) {
      if (count > 0) taken.push([type, count]);
      const left = count < wanted ? Math.min(shortest, length) : shortest;
      const going = search(type + 1, free - count * length, left);
      if (count > 0) taken.pop();
      if (!going) return false;
    }
    return true;
  };
  return search(0, stretch, Infinity) && found.length <= most ? found : undefined;
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

/** The dearest filling of any stretch up to the longest, each cut having a price. */
export function dearest(
  longest: number,
  lengths: readonly number[],
  measure: number,
  prices: readonly number[],
): (stretch: number) => { readonly load: Load; readonly price: number } {
  const mark = Math.max(measure, Math.ceil(longest / CELLS));
  // Rounded up where the mark is coarse: what is found surely fits.
  const sizes = lengths.map((length) => Math.ceil(length / mark));
  const cells = Math.floor(longest / mark);
  const best = new Float64Array(cells + 1);
  const last = new Int32Array(cells + 1).fill(-1);
  const worth = sizes
    .map((size, type) => ({ size, type, price: prices[type] ?? 0 }))
    .filter(({ price }) => price > 0);
  for (let cell = 1; cell <= cells; cell++) {
    best[cell] = best[cell - 1] as number;
    for (const { size, type, price } of worth) {
      if (size > cell) continue;
      const with_ = (best[cell - size] as number) + price;
      if (with_ <= (best[cell] as number)) continue;
      best[cell] = with_;
      last[cell] = type;
    }
  }
  return (stretch) => {
    let cell = Math.floor(stretch / mark);
    const price = best[cell] ?? 0;
    const counts = new Map<number, number>();
    while (cell > 0) {
      const type = last[cell] as number;
      if (type < 0) cell--;
      else {
        counts.set(type, (counts.get(type) ?? 0) + 1);
        cell -= sizes[type] as number;
      }
    }
    return { load: [...counts], price };
  };
}
