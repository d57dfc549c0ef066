/**
 * How few rolls any plan can do with. Give every cut a weight; a roll can hold no more weight than
 * its heaviest filling, so the rolls must be enough for the whole weight. Every set of weights gives
 * a true bound, whatever it is; good ones give a close one. All in whole numbers.
 */
import type { Demand } from './cutting';
import { bareOf, leastOf, mostSpared } from './takes';

export function commonMeasure(lengths: readonly number[]): number {
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  return lengths.reduce(divisor, 0);
}

/** What a set of weights shows. */
export interface Bound {
  /** No plan can do with fewer rolls. */
  readonly rolls: number;
  /** All the rolls together cannot hold the cuts. */
  readonly short: boolean;
}

/** Table cells a bound may cost: some milliseconds. */
const WORK = 1_500_000;

export class RollBound {
  private readonly mark: number;
  private readonly cells: number;
  private readonly longest: number;
  /** What each cut takes at least where another follows, and how much a last cut may take less. */
  private readonly sizes: readonly number[];
  private readonly longer: number;

  /** `rolls`: the clean stretches of each; one roll alone is as many as it takes. */
  constructor(
    readonly demand: Demand,
    readonly rolls: readonly (readonly number[])[],
    readonly endless: boolean,
  ) {
    this.sizes = demand.lengths.map((_, type) => leastOf(demand, type));
    this.longer = mostSpared(demand);
    this.longest = rolls.reduce((most, stretches) => Math.max(most, ...stretches), 0) + this.longer;
    const measure = Math.max(1, commonMeasure(this.sizes));
    const pieces = this.sizes.reduce((sum, size) => sum + Math.log2(this.longest / size + 2), 0);
    const finest = Math.max(64, Math.floor(WORK / Math.max(1, pieces)));
    // A coarser measure takes cuts a little shorter than they are: still a true bound.
    this.mark = Math.max(measure, Math.ceil(this.longest / finest));
    this.cells = Math.floor(this.longest / this.mark);
  }

  /** Cloth against cloth, to the nanometre. */
  material(): Bound {
    const { counts } = this.demand;
    const need = this.sizes.reduce((sum, size, type) => sum + size * (counts[type] ?? 0), 0);
    return this.enough(need, (stretch) => stretch + this.longer);
  }

  /** The heaviest filling of every length up to the longest stretch, in marks; every cut takes its size. */
  private heaviest(weights: readonly number[]): Float64Array {
    const { counts } = this.demand;
    const best = new Float64Array(this.cells + 1);
    this.sizes.forEach((length, type) => {
      const weight = weights[type] ?? 0;
      if (weight <= 0) return;
      const size = Math.floor(length / this.mark);
      let pieces = Math.min(counts[type] ?? 0, Math.floor(this.longest / length));
      for (let batch = 1; pieces > 0; batch *= 2) {
        const taken = Math.min(batch, pieces);
        pieces -= taken;
        const step = size * taken;
        const gain = weight * taken;
        for (let cell = this.cells; cell >= step; cell--) {
          const with_ = (best[cell - step] as number) + gain;
          if (with_ > (best[cell] as number)) best[cell] = with_;
        }
      }
    });
    return best;
  }

  /** The same with a last cut in its bare length after what `best` holds. */
  private withLast(best: Float64Array, weights: readonly number[]): Float64Array {
    const found = new Float64Array(this.cells + 1);
    this.sizes.forEach((_, type) => {
      const bare = Math.floor(bareOf(this.demand, type) / this.mark);
      const weight = weights[type] ?? 0;
      for (let cell = bare; cell <= this.cells; cell++) {
        const with_ = (best[cell - bare] as number) + weight;
        if (with_ > (found[cell] as number)) found[cell] = with_;
      }
    });
    return found;
  }

  /** The heaviest order of cutting of a half-drop, as if there were cuts without end; none where the mark is too coarse. */
  private heaviestOrder(weights: readonly number[]): Float64Array | undefined {
    const { halfDrop, lengths } = this.demand;
    const cuts = (halfDrop ?? []).map(({ start, unlikeTwice }, type) => ({
      own: start === 'A' ? 0 : 1,
      weight: weights[type] ?? 0,
      bare: Math.floor(bareOf(this.demand, type) / this.mark),
      like: Math.floor((lengths[type] ?? 0) / this.mark),
      unlike: Math.floor(unlikeTwice / 2 / this.mark),
    }));
    if (cuts.length === 0 || cuts.some(({ like, unlike }) => Math.min(like, unlike) < 1)) return undefined;
    const from = [new Float64Array(this.cells + 1), new Float64Array(this.cells + 1)];
    const held = (start: number, cell: number): number => (cell < 0 ? 0 : (from[start]?.[cell] ?? 0));
    for (let cell = 0; cell <= this.cells; cell++) {
      for (const { own, weight, bare, like, unlike } of cuts) {
        if (bare > cell) continue;
        const with_ = weight + Math.max(held(own, cell - like), held(1 - own, cell - unlike));
        const best = from[own] as Float64Array;
        if (with_ > (best[cell] as number)) best[cell] = with_;
      }
    }
    return from[0]?.map((one, cell) => Math.max(one, held(1, cell)));
  }

  /** The most weight a stretch can hold: the least of what is shown in several ways. */
  holding(weights: readonly number[]): (stretch: number) => number {
    const best = this.heaviest(weights);
    const { longer, mark } = this;
    if (longer === 0 && this.demand.halfDrop === undefined)
      return (stretch) => best[Math.floor(stretch / mark)] ?? 0;
    const last = this.withLast(best, weights);
    const order = this.heaviestOrder(weights);
    return (stretch) => {
      const cell = Math.floor(stretch / mark);
      const plain = best[Math.floor((stretch + longer) / mark)] ?? 0;
      return Math.min(plain, last[cell] ?? 0, order?.[cell] ?? Infinity);
    };
  }

  byWeights(weights: readonly number[]): Bound {
    const need = this.demand.counts.reduce((sum, count, type) => sum + count * (weights[type] ?? 0), 0);
    return this.enough(need, this.holding(weights));
  }

  /** The longest filling of a stretch, where the table is exact; else the stretch itself, lengthened by what a last cut leaves out. */
  fillings(): (stretch: number) => number {
    if (this.sizes.some((size) => size % this.mark !== 0)) return (stretch) => stretch + this.longer;
    const holds = this.holding(this.sizes.map((size) => size / this.mark));
    return (stretch) => holds(stretch) * this.mark;
  }

  private enough(need: number, holds: (stretch: number) => number): Bound {
    const held = this.rolls.map((stretches) => stretches.reduce((sum, one) => sum + holds(one), 0));
    if (this.endless) {
      const each = held[0] ?? 0;
      return each > 0 ? { rolls: Math.ceil(need / each), short: false } : { rolls: 0, short: need > 0 };
    }
    held.sort((one, other) => other - one);
    let sum = 0;
    let rolls = 0;
    while (sum < need && rolls < held.length) sum += held[rolls++] ?? 0;
    return { rolls, short: sum < need };
  }

  /** Weights worth trying, the most telling first. */
  *weightings(): Generator<readonly number[]> {
    const lengths = this.sizes;
    const marks = lengths.map((length) => Math.floor(length / this.mark));
    yield marks;
    yield* this.byStart();
    yield lengths.map(() => 1);
    const most = Math.floor(this.longest / (lengths[lengths.length - 1] ?? 1));
    const shown = lengths.slice(0, 16);
    // Only the longer cuts: by number and by length.
    for (const least of shown) yield lengths.map((length) => (length >= least ? 1 : 0));
    for (const least of shown) yield marks.map((mark, type) => ((lengths[type] ?? 0) >= least ? mark : 0));
    // The dual feasible step functions: a cut counts as so many whole parts of a roll.
    for (let parts = 2; parts <= Math.min(most + 1, 40); parts++) {
      yield lengths.map((length) => Math.floor((length * (parts + 1)) / this.longest));
    }
    // Martello and Toth: what lies beside a long cut is lost to anything not below `least`.
    for (const least of shown) {
      if (2 * least > this.longest) continue;
      yield lengths.map((length, type) => {
        if (length < least) return 0;
        return length > this.longest - least ? this.cells : (marks[type] ?? 0);
      });
    }
  }

  /** A half-drop's cuts by what one more of its start takes: as if it stood alone between unlike ones, or among like ones. */
  private *byStart(): Generator<readonly number[]> {
    const { halfDrop, lengths } = this.demand;
    if (halfDrop === undefined) return;
    for (const alone of ['B', 'A'] as const) {
      yield halfDrop.map(({ start, unlikeTwice }, type) => {
        const like = lengths[type] ?? 0;
        const taken = start === alone ? unlikeTwice - like : like;
        return Math.max(0, Math.floor(taken / this.mark));
      });
    }
  }
}
