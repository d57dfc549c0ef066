/** In which unit a sheet’s bare figures stand: a heading says it, or a line beside the table, or the figures themselves. */
import type { LengthUnit } from '../../exact/length';
import type { Unit } from '../../exact/unit';
import type { Cell, Row } from './cells';
import type { HeadingRead } from './heading';
import { saidBy } from './meanings';

export interface UnitRead {
  readonly small: LengthUnit;
  /** The line that says so. */
  readonly note: string | undefined;
  /** Whether the figures alone speak for it, against the house’s own. */
  readonly guessed: boolean;
}

const SAYS_SIZES = /\b(?:all|sizes?|meas\w*|dims?|dimensions?|tape|units?|figures?|in (?:cm|mm|inches))\b/i;
const CLOTH = /\b(?:cloth|fabric|goods|material)s?\b/i;
const UNIT =
  /(?<![\d½¼¾.]\s?)(?:\b(mm|millimet(?:re|er)s?)\b|\b(cms?|centimet(?:re|er)s?)\b|\b(met(?:re|er)s)\b|\b(inch(?:es)?|ins)\b)/i;

const unitIn = (text: string): LengthUnit | undefined => {
  for (const sentence of text.split(/[.;]|,(?=[^,.;]*\bin\b)|,\s*(?=(?:cloth|fabric|goods|material)s?\b)/i)) {
    if (!SAYS_SIZES.test(sentence) || CLOTH.test(sentence)) continue;
    const found = UNIT.exec(sentence);
    if (found === null) continue;
    return found[1] !== undefined
      ? 'mm'
      : found[2] !== undefined
        ? 'cm'
        : found[3] !== undefined
          ? 'm'
          : 'in';
  }
  return undefined;
};

/** The unit a line of words says for the sizes of the table. */
export function unitOfNotes(rows: readonly Row[]): { unit: LengthUnit; note: string } | undefined {
  for (const row of rows)
    for (const cell of row) {
      const unit = typeof cell === 'string' ? unitIn(cell) : undefined;
      if (unit !== undefined) return { unit, note: String(cell) };
    }
  return undefined;
}

const OF_CLOTH =
  /\b(?:cloth|fabric|goods|material)s?(?: sizes?| widths?)?(?: (?:is|are|all))?(?: in)? (mm|cm|inches|ins)\b/i;
const WORDS: Readonly<Record<string, LengthUnit>> = { mm: 'mm', cm: 'cm' };
/** Headings with the unit that a line beside the table says of the cloth alone. */
export function inClothUnit(reads: readonly HeadingRead[], rows: readonly Row[]): readonly HeadingRead[] {
  const told = rows.flat().flatMap((cell) => OF_CLOTH.exec(String(cell))?.[1]?.toLowerCase() ?? [])[0];
  if (told === undefined) return reads;
  return reads.map((read) => {
    const said = saidBy(read);
    const cloth = (['fabricWidth', 'verticalRepeat', 'horizontalRepeat'] as const).some(
      (key) => (said.get(key) ?? 0) >= 0.5,
    );
    return cloth && read.unit === undefined && !read.money ? { ...read, unit: WORDS[told] ?? 'in' } : read;
  });
}

const middleOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;

/** Where the middle of a column lies that is written in a unit; what lies between two tells nothing. */
type Bands = readonly (readonly [LengthUnit, low: number, high: number])[];
const inBand = (bands: Bands, figure: number): LengthUnit | undefined =>
  bands.find(([, low, high]) => figure >= low && figure <= high)?.[0];
const CLOTH_BANDS: Bands = [
  ['mm', 900, Infinity],
  ['cm', 133, 900],
  ['in', 36, 80],
  ['m', 1.1, 3.3],
];
/** The unit that a bolt’s width alone speaks for; nothing where it may be two. */
export const unitOfBolt = (width: number): LengthUnit | undefined => inBand(CLOTH_BANDS, width);
const DROP_BANDS: Bands = [
  ['mm', 900, Infinity],
  ['cm', 181, 499],
  ['in', 61, 123],
  ['m', 1.2, 6],
];
const WIDTH_BANDS: Bands = [['mm', 900, Infinity]];

/** The unit the figures themselves speak for: bolts are 54 in, 137 cm, 1370 mm or 1.37 m wide. */
export function unitOfFigures(
  reads: readonly HeadingRead[],
  rows: readonly Row[],
  house: Unit,
): LengthUnit | undefined {
  const bare = (at: number): number[] =>
    rows.flatMap((row) => {
      const cell: Cell | undefined = row[at];
      const figure =
        typeof cell === 'number'
          ? cell
          : typeof cell === 'string' && /^(?:\d+(?:\.\d+)?|\d{1,2},\d{3})$/.test(cell)
            ? Number(cell.replace(',', ''))
            : NaN;
      return Number.isFinite(figure) && figure > 0 ? [figure] : [];
    });
  const votes: LengthUnit[] = [];
  for (const [at, heading] of reads.entries()) {
    if (heading.unit !== undefined) continue;
    const said = saidBy(heading);
    const says = (
      key: 'fabricWidth' | 'finishedDrop' | 'measured' | 'rodWidth' | 'openingWidth',
      least: number,
    ): boolean => (said.get(key) ?? 0) >= least;
    const values = bare(at);
    if (values.length === 0) continue;
    const middle = middleOf(values);
    const bands = says('fabricWidth', 0.85)
      ? CLOTH_BANDS
      : says('finishedDrop', 0.8) || says('measured', 0.9)
        ? DROP_BANDS
        : says('rodWidth', 0.9) || says('openingWidth', 0.9)
          ? WIDTH_BANDS
          : [];
    const vote = inBand(bands, middle);
    if (vote !== undefined) votes.push(vote);
  }
  const units = new Set(votes);
  const [only] = votes;
  if (units.size !== 1 || only === undefined || only === house.small) return undefined;
  // A drop of 110 may be inches or centimetres: one column alone does not turn a house’s unit.
  return votes.length >= 2 || only === 'mm' ? only : undefined;
}
