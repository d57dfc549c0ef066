/**
 * The slip behind figures that disagree: the row is read again as if one thing had gone otherwise,
 * and the reading that makes most figures agree is the one suggested.
 */
import type { Finding } from '../cell/answer';
import { reckoned } from './check';
import { restsOn, type Compared, type Comparison, type Wrong } from './compared';
import type { Sure } from './finding';
import { Guesses, type Guess, type Row } from './guesses';
import type { FigureCells } from './show';
import type { ColumnKey } from '../window/columns';
import type { FigureKey } from '../window/figures';

export interface Explained extends FigureCells {
  readonly finding: Finding;
  readonly sure: Sure;
  /** Figures that still disagree under it. */
  readonly left: readonly Wrong[];
  /** The yardage the row should have had. */
  readonly yardage: number | undefined;
}

const MEASURED_OUT: ReadonlySet<FigureKey> = new Set<FigureKey>([
  'finishedWidth',
  'widths',
  'cutLength',
  'yardage',
  'liningYardage',
]);

/** Whether a guess accounts for figures such a slip shows in, and in the direction it has. */
function mayExplain({ least = 1, less, shows }: Guess, agreeing: readonly Wrong[]): boolean {
  if (agreeing.length < least) return false;
  // What is left out makes nothing larger that is measured out.
  const grew = agreeing.some(({ key, found, expected }) => MEASURED_OUT.has(key) && found > expected);
  if (less === true && grew) return false;
  return shows === undefined || agreeing.some(({ key }) => shows.includes(key));
}

/** The slip that makes most of the wrong figures agree and none of the right ones disagree. */
export function explain(row: Row, asItStands: Compared, { wrong, right }: Comparison): Explained | undefined {
  let best: { guess: Guess; agreeing: Wrong[]; left: Wrong[]; compared: Compared } | undefined;
  const wrongKeys = wrong.map(({ key }) => key);
  for (const guess of new Guesses(row, asItStands.rules, wrong).all()) {
    if (guess.ordered === undefined && !bearsOn(guess, wrongKeys)) continue;
    const compared = asItStands.readAs(guess.window, guess.ordered);
    const now = compared.compare(wrongKeys).right;
    const left = wrong.filter(({ key }) => !now.includes(key));
    const agreeing = wrong.filter(({ key }) => now.includes(key));
    if (!mayExplain(guess, agreeing)) continue;
    if (best !== undefined && left.length >= best.left.length) continue;
    // A figure that was reckoned from the very slip may agree with it either way.
    if (guess.asIf !== true && compared.compare(right).wrong.length > 0) continue;
    best = { guess, agreeing, left, compared };
    if (left.length === 0) break;
  }
  if (best === undefined) return undefined;
  const { guess, agreeing, left } = best;
  const sure: Sure = left.length > 0 ? 'possible' : agreeing.length > 1 ? 'sure' : 'likely';
  const corrected = guess.asIf === true ? asItStands : best.compared;
  return {
    finding: guess.say(sure, agreeing),
    sure,
    left,
    ...guess.cells(agreeing),
    yardage: yardageOf(corrected),
  };
}

/** Whether any of the figures follows from what the guess changes. */
const bearsOn = ({ window = {} }: Guess, figures: readonly FigureKey[]): boolean =>
  Object.keys(window).some((column) => figures.some((key) => restsOn(key, column as ColumnKey)));

/** The yardage a reading of the row takes, where it can be worked out. */
export function yardageOf(compared: Compared): number | undefined {
  return compared.ordered.yardage === undefined ? undefined : reckoned(() => compared.expected('yardage'));
}
