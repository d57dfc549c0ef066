/**
 * How few rolls any plan can do with. Give every cut a weight; a roll can hold no more weight than
 * its heaviest filling, so the rolls must be enough for the whole weight. Every set of weights gives
 * a true bound, whatever it is; good ones give a close one. All in whole numbers.
 */
import type { Demand } from './cutting';

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

  /** `rolls`: the clean stretches of each; one roll alone is as many as it takes. */
  constructor(
    readonly demand: Demand,
    readonly rolls: readonly (readonly number[])[],
    readonly endless: boolean,
  ) {
    this.longest = rolls.reduce((most, stretches) => Math.max(most, ...stretches), 0);
    const measure = Math.max(1, commonMeasure(demand.lengths));
    const pieces = demand.lengths.reduce((sum, length) => sum + Math.log2(this.longest / length + 2), 0);
    const finest = Math.max(64, Math.floor(WORK / Math.max(1, pieces)));
    // A coarser measure takes cuts a little shorter than they are: still a true bound.
    this.mark = Math.max(measure, Math.ceil(this.longest / finest));
    this.cells = Math.floor(this.longest / this.mark);
  }

  /** Cloth against cloth, to the nanometre. */
  material(): Bound {
    const { lengths, counts } = this.demand;
    const need = lengths.reduce((sum, length, type) => sum + length * (counts[type] ?? 0), 0);
    return this.enough(need, (stretch) => stretch);
  }

  /** The heaviest filling of every length up to the longest stretch, in marks. */
  private heaviest(weights: readonly number[]): Float64Array {
    const { lengths, counts } = this.demand;
    const best = new Float64Array(this.cells + 1);
    lengths.forEach((length, type) => {
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

  /** The most weight a stretch can hold. */
  holding(weights: readonly number[]): (stretch: number) => number {
    const best = this.heaviest(weights);
    return (stretch) => best[Math.floor(stretch / this.mark)] ?? 0;
  }

  byWeights(weights: readonly number[]): Bound {
    const need = this.demand.counts.reduce((sum, count, type) => sum + count * (weights[type] ?? 0), 0);
    return this.enough(need, this.holding(weights));
  }

  /** The longest filling of a stretch, where the table is exact; else the stretch itself. */
  fillings(): (stretch: number) => number {
    if (this.demand.lengths.some((length) => length % this.mark !== 0)) return (stretch) => stretch;
    const best = this.heaviest(this.demand.lengths.map((length) => length / this.mark));
    return (stretch) => (best[Math.floor(stretch / this.mark)] ?? 0) * this.mark;
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
    const { lengths } = this.demand;
    const marks = lengths.map((length) => Math.floor(length / this.mark));
    yield marks;
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
}
