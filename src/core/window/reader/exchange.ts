/** Columns headed alike of which either may be what the other is taken for: both are asked. */
import type { Arithmetic, Sums } from './arithmetic';
import { asAssigned, MANY, TAKEN_BY } from './assign';
import type { Candidate } from './candidates';
import { isOurs, type MeaningKey } from './meanings';

interface Reading {
  readonly score: number;
  readonly picks: readonly Candidate[];
  readonly sums: Sums;
}

interface Columns {
  readonly candidates: readonly (readonly Candidate[])[];
  readonly arithmetic: Arithmetic;
  readonly headedAlike: (one: number, other: number) => boolean;
}

/** The figures of the rows may speak for one of two columns by so much. */
const BY_FIGURES = 0.7;

export class Exchange {
  constructor(
    private readonly best: Reading,
    private readonly columns: Columns,
  ) {}

  /** The meaning of ours that this column and one headed alike could both have; undefined where it is told. */
  asGoodFor(at: number): MeaningKey | undefined {
    const own = this.best.picks[at]?.key;
    for (const other of this.best.picks.keys()) {
      if (other === at || !this.columns.headedAlike(at, other)) continue;
      const key = this.best.picks[other]?.key;
      if (own === undefined && key !== undefined && isOurs(key) && this.changesPlaces(other, at)) return key;
      if (own !== undefined && key === undefined && isOurs(own) && this.changesPlaces(at, other)) return own;
    }
    return undefined;
  }

  /** Whether the meaning of one column fits another, taken for nothing, as well. */
  private changesPlaces(taken: number, left: number): boolean {
    const { candidates, arithmetic } = this.columns;
    const [one, other] = [this.best.picks[taken], this.best.picks[left]];
    if (one === undefined || other === undefined || one.key === undefined || MANY.has(one.key)) return false;
    const instead = candidates[left]?.find(({ key }) => key === one.key);
    const nothing = candidates[taken]?.find(({ key }) => key === undefined);
    if (instead === undefined || nothing === undefined) return false;
    const behind = one.score + other.score - instead.score - nothing.score;
    if (behind >= TAKEN_BY + BY_FIGURES) return false;
    const picks = [...this.best.picks];
    picks[taken] = nothing;
    picks[left] = instead;
    return behind + this.best.sums.score - arithmetic.judge(asAssigned(picks)).score < TAKEN_BY;
  }
}
