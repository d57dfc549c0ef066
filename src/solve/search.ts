/** What a search is given: the solver, its time, who may stop it and who is told how it goes. */
import type { Highs } from 'highs';
import type { CutPlan } from '../core/rolls/plan';

/** An AbortSignal is one; a worker may read a shared flag instead. */
export interface Stop {
  readonly aborted: boolean;
}

export interface SearchReport {
  readonly plan: CutPlan;
  readonly seconds: number;
  readonly doing: string;
}

export interface Search {
  readonly highs: Highs;
  /** When to be content with the best so far. */
  readonly seconds?: number;
  readonly stop?: Stop;
  readonly progress?: (report: SearchReport) => void;
}
