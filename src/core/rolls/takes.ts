/**
 * What cuts take off a stretch of a roll. A cut with a repeat takes its length where another follows, so
 * that the next one begins at the motif; the last needs only its bare length. Cuts of a half-drop take by
 * the start of the cut that follows, and are cut in the order that takes least.
 */
import { inTurn, leastOrder, type Group } from '../cloth/half-drop';
import type { Demand } from './cutting';

/** How many cuts of each type a stretch gets. */
export type Load = readonly (readonly [type: number, count: number])[];

/** What cuts take, whatever their number. */
export type Sizes = Pick<Demand, 'lengths' | 'bare' | 'halfDrop'>;

export const bareOf = ({ lengths, bare }: Sizes, type: number): number => (bare ?? lengths)[type] ?? 0;

/** What a cut takes at least where another follows. */
export const leastOf = ({ lengths, halfDrop }: Sizes, type: number): number =>
  Math.min(lengths[type] ?? 0, Math.floor((halfDrop?.[type]?.unlikeTwice ?? Infinity) / 2));

/** What a cut leaves out at most where it is the last. */
export const sparedOf = (sizes: Sizes, type: number): number =>
  Math.max(0, leastOf(sizes, type) - bareOf(sizes, type));

/** The most that any last cut leaves out: cuts of their least lengths fit only into a stretch so much longer. */
export const mostSpared = (sizes: Sizes): number =>
  sizes.bare === undefined
    ? 0
    : sizes.lengths.reduce((most, _, type) => Math.max(most, sparedOf(sizes, type)), 0);

export const loadLength = (load: Load, { lengths }: Pick<Demand, 'lengths'>): number =>
  load.reduce((sum, [type, count]) => sum + count * (lengths[type] ?? 0), 0);

function groupsOf(load: Load, sizes: Sizes): Group[] {
  return load.map(([type, count]): Group => {
    const like = sizes.lengths[type] ?? 0;
    const { start, unlikeTwice } = sizes.halfDrop?.[type] ?? { start: 'A', unlikeTwice: 2 * like };
    return { start, count, like, unlikeTwice, last: bareOf(sizes, type) };
  });
}

/** The cloth a load takes off its stretch, in the order that takes least. */
export function takes(load: Load, sizes: Sizes): number {
  if (sizes.halfDrop !== undefined) return Math.ceil(leastOrder(groupsOf(load, sizes)).twice / 2);
  return loadLength(load, sizes) - load.reduce((most, [type]) => Math.max(most, sparedOf(sizes, type)), 0);
}

/** Cuts alike that follow one another, with what each takes. */
export interface Run {
  readonly type: number;
  readonly length: number;
  readonly count: number;
}

/** A load in the order it is cut: the longest first, and last the one that leaves most out. */
export function inOrder(load: Load, sizes: Sizes): readonly Run[] {
  const runs: { type: number; length: number; count: number }[] = [];
  const add = (type: number, length: number, count: number): void => {
    const before = runs.at(-1);
    if (before?.type === type && before.length === length) before.count += count;
    else if (count > 0) runs.push({ type, length, count });
  };
  if (sizes.halfDrop !== undefined) {
    const groups = groupsOf(load, sizes);
    for (const { at, length } of inTurn(groups, leastOrder(groups))) add(load[at]?.[0] ?? 0, length, 1);
    return runs;
  }
  const sorted = [...load].sort(([one], [other]) => one - other);
  const last = sorted.reduce<(typeof sorted)[number] | undefined>(
    (best, one) => (best === undefined || sparedOf(sizes, one[0]) >= sparedOf(sizes, best[0]) ? one : best),
    undefined,
  );
  for (const [type, count] of sorted)
    add(type, sizes.lengths[type] ?? 0, count - (type === last?.[0] ? 1 : 0));
  if (last !== undefined) add(last[0], bareOf(sizes, last[0]), 1);
  return runs;
}

/** A stretch that is filled bit by bit. */
export class Filling {
  private readonly counts = new Map<number, number>();
  private length = 0;
  private spared = 0;

  constructor(
    readonly stretch: number,
    private readonly sizes: Sizes,
  ) {}

  copy(): Filling {
    const same = new Filling(this.stretch, this.sizes);
    for (const [type, count] of this.counts) same.add(type, count);
    return same;
  }

  get load(): Load {
    return [...this.counts];
  }

  /** Left of the stretch after what lies on it. */
  get free(): number {
    if (this.sizes.halfDrop !== undefined) return this.stretch - takes(this.load, this.sizes);
    return this.stretch - this.length + this.spared;
  }

  /** How many more cuts of a type go on it, `wanted` at most. */
  room(type: number, wanted: number): number {
    if (this.sizes.halfDrop !== undefined) return this.roomInOrder(type, wanted);
    const free = this.stretch - this.length + Math.max(this.spared, sparedOf(this.sizes, type));
    return Math.max(0, Math.min(wanted, Math.floor(free / (this.sizes.lengths[type] ?? Infinity))));
  }

  /** More cuts never take less, so that the number is found by halving. */
  private roomInOrder(type: number, wanted: number): number {
    const others = this.load.filter(([one]) => one !== type);
    const own = this.counts.get(type) ?? 0;
    const fits = (more: number): boolean =>
      takes([...others, [type, own + more]], this.sizes) <= this.stretch;
    const spared = mostSpared(this.sizes);
    let none = 1 + Math.min(wanted, Math.floor((this.stretch + spared) / leastOf(this.sizes, type)));
    let some = 0;
    while (none - some > 1) {
      const middle = (some + none) >> 1;
      if (fits(middle)) some = middle;
      else none = middle;
    }
    return some;
  }

  add(type: number, count: number): void {
    if (count <= 0) return;
    this.counts.set(type, (this.counts.get(type) ?? 0) + count);
    this.length += count * (this.sizes.lengths[type] ?? 0);
    this.spared = Math.max(this.spared, sparedOf(this.sizes, type));
  }
}
