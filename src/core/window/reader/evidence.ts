/** What the cells of a column are, seen over a bounded number of rows: the evidence every meaning is weighed by. */
import { UNITS, type LengthUnit } from '../../exact/length';
import {
  clothOf,
  countOf,
  figureOf,
  feetByDash,
  fullnessOf,
  isDay,
  isDitto,
  isTapePart,
  lengthOf,
  moneyOf,
  saysNothing,
  twoOf,
  writesFeetByDash,
  type Cell,
  type Row,
} from './cells';
import { readHeading, withMoney, type HeadingRead } from './heading';
import { ideasOf } from './vocabulary';
import { isLengthKey, saidBy, type MeaningKey } from './meanings';

/** One column, or one half of a column whose cells hold two figures. */
export interface Evidence {
  readonly at: number;
  /** Which part of cells that hold several. */
  readonly part: number | undefined;
  readonly heading: HeadingRead;
  readonly text: string;
  readonly said: ReadonlyMap<MeaningKey, number>;
  /** Whether its cells are feet and inches with a dash between. */
  readonly dashed?: boolean;
  /** Whether it is half of a “Size” of which nothing says whose it is, nor which comes first. */
  readonly sizeOnly: boolean;
  /** Unit of a bare figure. */
  readonly unit: LengthUnit;
  readonly cells: readonly Cell[];
  readonly filled: number;
  readonly numbers: number;
  readonly texts: number;
  readonly days: number;
  /** Inches by row; NaN where there is no length. */
  readonly inches: Float64Array;
  /** The bare figure by row; NaN where there is none. */
  readonly figures: Float64Array;
  /** The column whose lengths this one's parts are added to. */
  addsTo: number | undefined;
}

/** How far a column’s heading says a meaning, 0 to 1. */
export const saidFor = ({ said }: Evidence, key: MeaningKey): number => said.get(key) ?? 0;

const FRACTION = /^(?:\d{1,2}\s*\/\s*(?:2|4|8|16|32|64)|[½¼¾⅛⅜⅝⅞]|0|[-–—]|\.\d+)["”″]?$/;
/** “1/2” that a sheet took for 2 January; undefined where day and month are no fraction. */
export function fractionOfDay(day: number): number | undefined {
  const date = new Date(Date.UTC(1899, 11, 30) + day * 86_400_000);
  const [month, ofMonth] = [date.getUTCMonth() + 1, date.getUTCDate()];
  if (isTapePart(ofMonth) && month < ofMonth) return month / ofMonth;
  return isTapePart(month) && ofMonth < month ? ofMonth / month : undefined;
}

/** A whole number that no part of an inch is: the number of a day. */
export const isDayNumber = (cell: Cell): boolean =>
  isDay(cell) || (typeof cell === 'number' && Number.isInteger(cell) && cell > 20_000);

/** The part of an inch in a cell of its own; undefined where it is none. */
export function fractionOf(cell: Cell, parts: number | undefined): number | undefined {
  if (cell === null) return undefined;
  if (isDay(cell)) return fractionOfDay(cell.day);
  // Some hosts hand a date over as its bare number.
  if (isDayNumber(cell)) return fractionOfDay(Number(cell));
  if (typeof cell === 'string' && saysNothing(cell)) return 0;
  const figure = figureOf(typeof cell === 'string' ? cell.replace(/["”″]$/, '') : cell);
  if (figure === undefined) return undefined;
  return parts !== undefined && Number.isInteger(figure)
    ? figure / parts
    : figure < 1 && figure >= 0
      ? figure
      : undefined;
}

/** Eighths or sixteenths, where a heading says so. */
export const partsOf = (text: string): number | undefined =>
  /\b(?:8ths?|eighths?)\b/i.test(text) ? 8 : /\b(?:16ths?|sixteenths?)\b/i.test(text) ? 16 : undefined;

function isFractions(cells: readonly Cell[], text: string): boolean {
  const filled = cells.filter((cell) => cell !== null);
  if (filled.length === 0) return false;
  const parts = partsOf(text);
  const fractions = filled.filter((cell) => fractionOf(cell, parts) !== undefined).length;
  const written = filled.filter(
    (cell) => typeof cell === 'string' && FRACTION.test(cell) && cell !== '0' && !/^[-–—]/.test(cell),
  ).length;
  return (
    fractions >= filled.length * 0.9 &&
    (written >= filled.length * 0.4 || parts !== undefined || /\bfrac/i.test(text))
  );
}

const HALVES = /\s*(?:\s[x×*–—-]\s|[×*]|\bx\b|\bby\b|\/|&|\+|,)\s*/i;

const LONE_SIDE = /^(?:w|h|l|d|ht|wd|width|height|length|drop|high|wide|long)\.?$/i;
/** Behind a cloth’s name its width and repeat are the cloth’s. */
const ofTheCloth = (name: string, first: string): string =>
  ideasOf(first.toLowerCase()).some(({ idea }) => idea === 'fabric') && /^[a-z]+\.?$/i.test(name)
    ? `${first} ${name}`
    : name;

const PARTS = /\s*[/;,]\s*|\s[-–—]\s/;
/** “Fabric / width / repeat”: the names of three or more things of one cell; undefined where there are fewer. */
function partsNamed(text: string): readonly string[] | undefined {
  const names = text.split(PARTS).map((name) => name.trim());
  return names.length >= LEAST_PARTS && names.every((name) => /[a-z]/i.test(name)) ? names : undefined;
}
const LEAST_PARTS = 3;
const FRACTION_BAR = /(?<=\d)\/(?=(?:2|4|8|16|32|64)(?!\d))/g;
/** The parts of such a cell, each in its place; undefined where it holds no two of them. */
function partsOfCell(cell: string, names: readonly string[]): readonly string[] | undefined {
  const parts = cell
    .replace(FRACTION_BAR, '\u2044')
    .split(PARTS)
    .map((part) => part.replace(/\u2044/g, '/').trim());
  return parts.length >= 2 && parts.length <= names.length ? parts : undefined;
}

/** The headings of the parts of a column of several figures. */
function halves(text: string): readonly string[] {
  const named = partsNamed(text);
  if (named !== undefined) return named.map((name, at) => (at > 0 ? ofTheCloth(name, named[0] ?? '') : name));
  const inBrackets = /\(([^)]*)\)/.exec(text)?.[1] ?? '';
  for (const whole of [text, inBrackets]) {
    const [one = '', other = '', ...more] = whole.replace(/[()]/g, ' ').split(HALVES);
    if (one.trim() !== '' && other.trim() !== '' && more.length === 0) {
      // Of “Opening W x H” both are the opening's.
      const [, both] = LONE_SIDE.test(other.trim()) ? (/^(.*\S)\s+\S+$/.exec(one.trim()) ?? []) : [];
      if (both !== undefined) return [one.trim(), `${both} ${other.trim()}`];
      const shared = whole === inBrackets ? text.replace(/\([^)]*\)/, '').replace(/\bsizes?\b/i, '') : '';
      return [`${shared} ${one}`.trim(), `${shared} ${other}`.trim()];
    }
  }
  return [`${text} width`, `${text} height`];
}

/** “Size” and no more says neither whose it is nor which comes first. */
const saysSizeOnly = (text: string): boolean =>
  /^(?:sizes?|meas(?:ure)?(?:ments?)?\.?|dims?\.?|dimensions?)(?: \(?(?:in|cm|mm|inches|ins)\)?)?$/i.test(
    text.trim(),
  );

/** Of headings in two languages one row is enough. */
function halvesOf(rows: readonly string[]): readonly string[] {
  const told = rows.length > 1 ? rows.find((row) => row.split(HALVES).length === 2) : undefined;
  return halves(told ?? rows.join(' '));
}

interface Look {
  readonly rows: readonly Row[];
  readonly unitOf: (heading: HeadingRead) => LengthUnit;
  /** By column, the words a line beside the table defines its heading by. */
  readonly defined?: readonly (string | undefined)[];
  /** Columns of one figure a cell, whatever stands in them. */
  readonly single?: ReadonlySet<number> | undefined;
}

/** A sign of money beside a figure. */
const CURRENCY = /\p{Sc}\s?\d|\d\s?\p{Sc}|^R ?\d/u;

const anyFigure = (cell: Cell): number | undefined =>
  figureOf(cell) ?? clothOf(cell) ?? moneyOf(cell) ?? countOf(cell) ?? fullnessOf(cell);

/** Where a column stands, or a half of it, and the words over it. */
interface Headed {
  readonly at: number;
  readonly part: number | undefined;
  readonly text: string;
}

function one({ at, part, text }: Headed, heading: HeadingRead, cells: readonly Cell[], look: Look): Evidence {
  const unit = look.unitOf(heading);
  const [inches, figures] = [new Float64Array(cells.length), new Float64Array(cells.length)];
  let [filled, numbers, texts, days, priced] = [0, 0, 0, 0, 0];
  for (let row = 0; row < cells.length; row++) {
    const cell = cells[row] ?? null;
    inches[row] = figures[row] = NaN;
    if (cell === null) continue;
    filled++;
    if (typeof cell === 'number') numbers++;
    else if (isDay(cell)) days++;
    else if (figureOf(cell) !== undefined) numbers++;
    else texts++;
    if (typeof cell === 'string' && CURRENCY.test(cell)) priced++;
    if (typeof cell === 'string' && saysNothing(cell)) {
      inches[row] = figures[row] = 0;
      continue;
    }
    const length = lengthOf(cell, unit);
    if (length !== undefined) inches[row] = length / UNITS.in;
    const figure = anyFigure(cell);
    if (figure !== undefined) figures[row] = figure;
  }
  const spoken = priced * 2 > filled ? withMoney(heading) : heading;
  return {
    at,
    part,
    heading: spoken,
    text,
    said: saidBy(spoken),
    sizeOnly: false,
    unit,
    cells,
    filled,
    numbers,
    texts,
    days,
    inches,
    figures,
    addsTo: undefined,
  };
}

/** Cells of one column down the rows, ditto marks repeating what stands above. */
function down(rows: readonly Row[], at: number): Cell[] {
  let above: Cell = null;
  return rows.map((row) => {
    const cell = row[at] ?? null;
    if (isDitto(cell)) return above;
    if (cell !== null) above = cell;
    return cell;
  });
}

/** Whether so many cells hold two figures that the column is read as two. */
function holdsTwo(cells: readonly Cell[], text: string): boolean {
  const texts = cells.filter((cell): cell is string => typeof cell === 'string' && /\d/.test(cell));
  const filled = cells.filter((cell) => cell !== null).length;
  if (texts.length === 0 || texts.length < filled * 0.6) return false;
  const two = texts.filter((cell) => splitCell(cell, text) !== undefined).length;
  return two >= texts.length * 0.6;
}

const crossed = /(?:\d|['"½¼¾⅛⅜⅝⅞]|[a-z])\s*(?:[xX×*✕]|\bby\b)\s*(?:\d|none|plain|nil)/i;
const SIZE_BEHIND =
  /[/&+,]\s*(?:\w+\.?\s+)?(?:w|wd|wdth|wide|width|rpt|rep|repeat|v\.?r\.?|bolt|roll)\b[^/&+,]*$/i;
/** “Location / count” over “Living / 2”. */
const COUNT_BEHIND = /[/&+,]\s*(?:count|qty|quantity|nos?|off|how many|#)\.?\s*$/i;
const NAME_THEN_COUNT = /^(.*[a-z].*?)\s*\/\s*(\d{1,3})$/i;
const NAME_THEN_SIZE = /^([a-z][^/,]*?)\s*[/,]\s*(\d[\d\s./½¼¾⅛⅜⅝⅞"”″]*(?:in|cm|mm)?\.?)$/i;
/** The figures of a cell; a slash parts them only where the heading has one too. */
export function splitCell(cell: string, heading: string): readonly string[] | undefined {
  const names = partsNamed(heading);
  return names === undefined ? bothOf(cell, heading) : partsOfCell(cell, names);
}

/** “16/12 – hung 14/12” under “Due / hung” is a day. */
const DAYS =
  /\b(?:due|dates?|hung|fitted|ordered|ord['’]?d|rec['’]?d|installed|delivered|wanted|req['’]?d)\b/i;
const DAY = /^\d{1,2}\/\d{1,2}(?!\d)/;

/** “Castel / 54"” under “Fabric / width”, “Living / 2” under “Location / count”. */
function nameAndFigure(cell: string, heading: string): readonly [string, string] | undefined {
  const written = SIZE_BEHIND.test(heading)
    ? NAME_THEN_SIZE
    : COUNT_BEHIND.test(heading)
      ? NAME_THEN_COUNT
      : undefined;
  const [, name = '', figure = ''] = written?.exec(cell) ?? [];
  return figure === '' ? undefined : [name, figure];
}

/** “320 + 2x8” under “Rail + returns”: the length, and what is at each end of it. */
const PLUS = /^([^+]*\d[^+]*?)\s*\+\s*(?:[12]\s*[x×]\s*)?([^+]*\d[^+]*)$/;
/** “214 – 6 Feb” under “Job – date”. */
const SPACED_DASH = /\S\s[–—-]\s\S/;
const DASHED = /^(.*?\S)\s[–—-]\s(\S.*)$/;

/** Parts with a plus or a dash between, where the heading has one too. */
function partsApart(cell: string, heading: string): readonly [string, string] | undefined {
  const written = heading.includes('+') ? PLUS : SPACED_DASH.test(heading) ? DASHED : undefined;
  const [, one = '', other = ''] = written?.exec(cell) ?? [];
  return other === '' ? undefined : [one, other];
}

/** Whether the figures on both sides of a slash are a tape's fraction. */
function isFraction(left: string, right: string): boolean {
  const [over = '', under = ''] = [/(?:^|[\s-])(\d+)$/.exec(left)?.[1], /^(\d+)/.exec(right)?.[1]];
  return over !== '' && isTapePart(Number(under)) && Number(over) < Number(under);
}

/** Two figures with a slash between that is no fraction’s. */
function slashed(cell: string): readonly [string, string] | undefined {
  for (let at = cell.indexOf('/'); at >= 0; at = cell.indexOf('/', at + 1)) {
    const [left, right] = [cell.slice(0, at).trim(), cell.slice(at + 1).trim()];
    if (!isFraction(left, right) && /\d/.test(left) && right !== '') return [left, right];
  }
  return undefined;
}

function bothOf(cell: string, heading: string): readonly [string, string] | undefined {
  const apart = partsApart(cell, heading);
  if (apart !== undefined) return apart;
  if (crossed.test(cell)) return twoOf(cell);
  if (!/[/&+,]/.test(heading)) return undefined;
  const named = nameAndFigure(cell, heading);
  if (named !== undefined) return named;
  if (!/[/&+]/.test(heading) || (DAYS.test(heading) && DAY.test(cell))) return undefined;
  return slashed(cell);
}

const LEAST_SAID = 0.6;
/** A column's lengths, its feet and inches with a dash as others write them. */
function asFeet(heading: HeadingRead, cells: readonly Cell[]): { dashed: boolean; cells: readonly Cell[] } {
  const dashed = saysLength(heading) && writesFeetByDash(cells);
  return { dashed, cells: dashed ? cells.map((cell) => feetByDash(cell) ?? cell) : cells };
}
const saysLength = (heading: HeadingRead): boolean =>
  [...saidBy(heading)].some(([key, share]) => share >= LEAST_SAID && isLengthKey(key));

/** A column of two figures is two columns, headed as it says or as a line beside the table does. */
function bothHalves(
  at: number,
  [definition, rows]: readonly [string | undefined, readonly string[]],
  heading: HeadingRead,
  cells: readonly Cell[],
  look: Look,
): Evidence[] {
  return halvesOf(definition === undefined ? rows : [definition]).map((half, part) => {
    const own = cells.map((cell) =>
      typeof cell === 'string' ? (splitCell(cell, rows.join(' | '))?.[part] ?? null) : cell,
    );
    const read = readHeading(half);
    const sizeOnly = definition === undefined && saysSizeOnly(rows.join(' '));
    return {
      ...one({ at, part, text: half }, { ...read, unit: read.unit ?? heading.unit }, own, look),
      sizeOnly,
    };
  });
}

/** The evidence of every column under a header. */
export function gather(
  texts: readonly (readonly string[])[],
  reads: readonly HeadingRead[],
  look: Look,
): Evidence[] {
  const all: Evidence[] = [];
  for (const [at, heading] of reads.entries()) {
    const text = (texts[at] ?? []).join(' | ');
    const written = down(look.rows, at);
    if (text === '' && written.every((cell) => cell === null)) continue;
    const { dashed, cells } = asFeet(heading, written);
    if (look.single?.has(at) !== true && holdsTwo(cells, text)) {
      all.push(...bothHalves(at, [look.defined?.[at], texts[at] ?? []], heading, cells, look));
      continue;
    }
    const seen = { ...one({ at, part: undefined, text }, heading, cells, look), dashed };
    const before = all.at(-1);
    if (before?.at === at - 1 && before.part === undefined && adds(before, seen)) {
      seen.addsTo = before.addsTo ?? before.at;
      addUp(before, seen);
    }
    all.push(seen);
  }
  return all;
}

/** Whether a column holds the parts of the figures on its left: fractions, or inches after feet. */
function adds(before: Evidence, seen: Evidence): boolean {
  if (before.numbers + before.texts === 0) return false;
  if (isFractions(seen.cells, seen.text)) return true;
  if (before.heading.unit !== 'ft' || seen.heading.unit !== 'in') return false;
  return seen.cells.every((_, row) => Number.isNaN(seen.inches[row]) || (seen.inches[row] ?? 0) < 12);
}

function addUp(before: Evidence, seen: Evidence): void {
  const parts = partsOf(seen.text);
  for (const [row, cell] of seen.cells.entries()) {
    const more =
      seen.heading.unit === 'in' && before.heading.unit === 'ft' ? seen.inches[row] : fractionOf(cell, parts);
    if (more !== undefined && !Number.isNaN(more)) before.inches[row] = (before.inches[row] ?? NaN) + more;
  }
}
