/** How a house's own figure differs from the rules' alike in nearly all its orders: so many times as much, up to a step, at least so much. */
import type { FigureKey } from '../window/figures';
import type { Rules } from '../house/rules';
import type { Window } from '../window/columns';
import type { Facts } from '../window/facts';
import type { OwnCloth } from './cut-orders';

export interface Practice {
  readonly factor: number;
  /** So much more on the line. */
  readonly plus?: number;
  /** In the figure's own measure; 0 leaves it exact. */
  readonly step: number;
  readonly up: boolean;
  readonly least: number;
}
/** An order as a habit's condition sees it. */
export interface Conditioned {
  readonly window: Window;
  readonly ordered: Readonly<Partial<Record<FigureKey, number>>>;
  readonly facts?: Facts | undefined;
}

/** What a house does beside its rules in one order (habits.ts). */
export interface KeptHabits {
  readonly rules: Rules;
  practiceOf(key: FigureKey, practice: Practice | undefined): Practice | undefined;
}

export type Practices = Readonly<Partial<Record<FigureKey, Practice>>> & {
  /** How it buys its cloth. */
  readonly cloth?: OwnCloth;
  /** What it does in some of its orders; undefined in one that has none of it. */
  readonly habits?: (order: Conditioned, rules: Rules) => KeptHabits | undefined;
};

export const NO_PRACTICE: Practice = { factor: 1, step: 0, up: true, least: 0 };

/** A figure of the rules as the house has it. */
export function practised(figure: number, practice: Practice | undefined): number {
  if (practice === undefined) return figure;
  const { factor, plus = 0, step, up, least } = practice;
  const more = figure * factor + plus;
  // A hair above a step is the step: money and lengths are compared to less.
  const stepped =
    step === 0 ? more : (up ? Math.ceil(more / step - 1e-6) : Math.floor(more / step + 0.5 + 1e-6)) * step;
  return Math.max(stepped, least);
}
