/** The rod pocket. */
import { answer, lengthFigure, step, type Answer } from '../cell/answer';
import { exact, type Length } from '../exact/length';
import type { Rules } from '../house/rules';

/** Flat depth of a rod pocket between its stitching lines: half of the rod's round and the ease. */
export function pocket(given: { rodAround: Length | undefined }, rules: Rules): Answer<Length> {
  const around = given.rodAround ?? rules.rodAround;
  const value = exact(Math.ceil((around + rules.pocketEase) / 2));
  return answer(value, () => [
    step(
      'pocket',
      '({} round + {} ease) ÷ 2',
      [lengthFigure(around), lengthFigure(rules.pocketEase)],
      lengthFigure(value),
    ),
  ]);
}
