/** What a slip does to a line, and the means that several slips share. */
import type { Chance } from '../chance';
import { exact } from '../exact';
import type { House } from '../house';
import type { Figure, Line, Word } from '../line';
import { bill, reckon } from '../reckon';
import { wordsShown, type Style } from '../style';

export interface Scene {
  readonly style: Style;
  readonly chance: Chance;
  /** Every true line of the sheet, for slips that take another line's figure. */
  readonly lines: readonly Line[];
}

export interface Mistake {
  readonly kind: string;
  /** Changes the line as the slip would and names the word that is wrong; undefined where it cannot happen here. */
  plant(line: Line, scene: Scene): Word | undefined;
}

export const CLOTH: readonly Figure[] = [
  'finished width',
  'widths',
  'cut length',
  'yards each',
  'yardage',
  'lining yardage',
  'heading marks',
];

/** What was typed in, not worked out. */
export const inputs = ({ style }: Scene): Figure[] => {
  const shown = wordsShown(style);
  const height: Figure = shown.has('measured height') ? 'measured height' : 'finished drop';
  const across: Figure = shown.has('inside width') ? 'inside width' : 'rod width';
  return [across, height];
};

export const pay = (line: Line, { style }: Scene): void => {
  Object.assign(line, bill(line, style.house, style.prices));
};

/** The cloth figures as if some givens, some rules or the widths were otherwise; the money follows. */
export function asIf(
  line: Line,
  scene: Scene,
  other: { readonly given?: Line; readonly rules?: Partial<House>; readonly more?: number },
  words: readonly Figure[] = CLOTH,
): void {
  const { house } = scene.style;
  const due = reckon({ ...line, ...other.given }, { ...house, ...other.rules }, exact(other.more ?? 0));
  for (const word of words) if (line[word] !== undefined && due[word] !== undefined) line[word] = due[word];
  pay(line, scene);
}

export const otherLine = (
  line: Line,
  { lines, chance }: Scene,
  fits: (other: Line) => boolean,
): Line | undefined => {
  for (let tries = 0; tries < 40; tries++) {
    const other = chance.pick(lines);
    if (other['order no'] !== line['order no'] && fits(other)) return other;
  }
  return undefined;
};

export const shownFigures = (line: Line, { style }: Scene, words: readonly Figure[]): Figure[] => {
  const shown = wordsShown(style);
  return words.filter((word) => shown.has(word) && line[word] !== undefined);
};
