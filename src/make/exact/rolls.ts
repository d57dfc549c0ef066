/** What rolls give: a cut never crosses from one roll to the next, and the last needs only its own length. */
import { NONE, ONE, below, sumOf, type Exact } from './figures';

export interface RollCut {
  /** What hangs and is turned over: all that the last cut of a roll needs. */
  readonly bare: Exact;
  /** The cut up to its repeat: how far the next cut starts on. */
  readonly repeated: Exact;
  /** Given up at the start of each roll. */
  readonly start: Exact;
}

export function cutsOfRoll(roll: Exact, { bare, repeated, start }: RollCut): Exact {
  const after = roll.sub(start).sub(bare);
  return below(after, NONE) ? NONE : after.div(repeated).floor().add(ONE);
}

export const cutsOfRolls = (rolls: readonly Exact[], cut: RollCut): Exact =>
  sumOf(rolls.map((roll) => cutsOfRoll(roll, cut)));
