/**
 * The slip behind figures that disagree: the row is read again as if one thing had gone otherwise,
 * and the reading that makes most figures agree is the one suggested.
 */
import { Refusal, type Finding } from '../cell/answer';
import { Compared, type Comparison, type Wrong } from './compared';
import type { Sure } from './finding';
import { Guesses, type Guess, type Row } from './guesses';
import type { CellOut } from '../cell/fields';
import { TooLarge } from '../exact/length';
import type { Rules } from '../house/rules';

export interface Explained {
  readonly finding: Finding;
  readonly sure: Sure;
  readonly found: CellOut;
  readonly expected: CellOut;
  /** Figures that still disagree under it. */
  readonly left: readonly Wrong[];
  /** The yardage the row should have had. */
  readonly yardage: number | undefined;
}

/** The slip that makes most of the wrong figures agree and none of the right ones disagree. */
export function explain(row: Row, rules: Rules, { wrong, right }: Comparison): Explained | undefined {
  let best: { guess: Guess; agreeing: Wrong[]; left: Wrong[]; compared: Compared } | undefined;
  for (const guess of new Guesses(row, rules, wrong).all()) {
    const compared = new Compared(
      { ...row.window, ...guess.window },
      { ...row.ordered, ...guess.ordered },
      rules,
      row.turned,
    );
    const now = compared.compare(wrong.map(({ key }) => key)).right;
    const left = wrong.filter(({ key }) => !now.includes(key));
    const agreeing = wrong.filter(({ key }) => now.includes(key));
    if (agreeing.length < (guess.least ?? 1)) continue;
    const { shows } = guess;
    if (shows !== undefined && !agreeing.some(({ key }) => shows.includes(key))) continue;
    if (best !== undefined && left.length >= best.left.length) continue;
    // A figure that was reckoned from the very slip may agree with it either way.
    if (guess.asIf !== true && compared.compare(right).wrong.length > 0) continue;
    best = { guess, agreeing, left, compared };
    if (left.length === 0) break;
  }
  if (best === undefined) return undefined;
  const { guess, agreeing, left } = best;
  const sure: Sure = left.length > 0 ? 'possible' : agreeing.length > 1 ? 'sure' : 'likely';
  const corrected =
    guess.asIf === true ? new Compared(row.window, row.ordered, rules, row.turned) : best.compared;
  return {
    finding: guess.say(sure, agreeing),
    sure,
    left,
    ...guess.cells(agreeing),
    yardage: yardageOf(corrected),
  };
}

/** The yardage a reading of the row takes, where it can be worked out. */
export function yardageOf(compared: Compared): number | undefined {
  try {
    return compared.ordered.yardage === undefined ? undefined : compared.expected('yardage');
  } catch (thrown) {
    if (thrown instanceof Refusal || thrown instanceof TooLarge) return undefined;
    throw thrown;
  }
}
