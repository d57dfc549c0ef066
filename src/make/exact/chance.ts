/** Chance that a seed repeats, so that a difference can be looked at twice. */
export interface Chance {
  /** A whole number below the bound. */
  below(bound: number): number;
  /** One of a list. */
  pick<T>(list: readonly T[]): T;
  /** True so often in a hundred. */
  inHundred(times: number): boolean;
}

export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (bound: number): number => Math.floor(next() * bound);
  return {
    below,
    pick<T>(list: readonly T[]): T {
      if (list.length === 0) throw new Error('nothing to pick from');
      return list[below(list.length)] as T;
    },
    inHundred: (times) => next() * 100 < times,
  };
}
