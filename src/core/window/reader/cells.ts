/** What stands in a cell, before anybody knows what its column means. */
import { withoutResidue } from '../../cell/figure-kinds';
import { readWritten, readDecimal, readFigure } from '../../exact/written';
import { UNITS, type Length, type LengthUnit } from '../../exact/length';
import type { CellIn } from '../../cell/fields';
import { tidy } from './heading';

/** A cell that holds a calendar day, counted as spreadsheets count. */
export interface DayCell {
  readonly day: number;
}
export type Cell = string | number | boolean | DayCell | null;
export type Row = readonly Cell[];

export const isDay = (cell: Cell | undefined): cell is DayCell => typeof cell === 'object' && cell !== null;

const INVISIBLE = /[^\x20-\x7E\u00C0-\u024F]|^\s|\s$|\s\s|_/;

/** A cell as it is read: text tidied, nothing for blank. */
export function cellOf(raw: CellIn): Cell {
  if (typeof raw === 'number') return Number.isFinite(raw) ? raw : null;
  if (typeof raw === 'string') {
    const text = INVISIBLE.test(raw) ? tidy(raw) : raw;
    return text === '' ? null : text;
  }
  if (raw === null || raw === undefined) return null;
  if (typeof raw === 'boolean') return raw;
  if (Array.isArray(raw)) return cellOf((raw as readonly CellIn[])[0]);
  const { day, basicValue } = raw as { day?: unknown; basicValue?: unknown };
  if (typeof day === 'number') return { day };
  return basicValue === undefined ? null : cellOf(basicValue as CellIn);
}

/** “—”, “plain”, “none”: nothing, said in so many words. */
const NOTHING =
  /^(?:[-–—.]+|n\/?a\.?|nil|none|no|plain|pl\.?|no (?:repeat|rpt|rep|r)|without|geen|kein[e]?|aucun|sans|unis?|effen|0|zero|x|solid|n\/r|nr|\/)$/i;
export const saysNothing = (text: string): boolean => NOTHING.test(text);

const DITTO =
  /^(?:["″”“〃]{1,2}|''|[-–—]?\s*["″”]\s*[-–—]?|do\.?|ditto|dto\.?|same(?: as above)?|as above|idem|id\.|↓|")$/i;
export const isDitto = (cell: Cell | undefined): boolean => typeof cell === 'string' && DITTO.test(cell);

/** Feet and inches with a dash: “7-11 ½”. */
const FEET_DASH = /^(\d{1,2})-(\d{1,2})(?:[ -]?(\d{1,2}\/\d{1,2}|[½¼¾⅛⅜⅝⅞]))?$/;
const INCHES_A_FOOT = 12;
/** Feet and inches of such a cell, or of the day a sheet took it for; undefined where it is neither. */
export function feetByDash(cell: Cell): string | undefined {
  if (isDay(cell)) {
    const date = new Date(Date.UTC(1899, 11, 30) + cell.day * 86_400_000);
    const inches = date.getUTCDate();
    return inches < INCHES_A_FOOT ? `${date.getUTCMonth() + 1}' ${inches}"` : undefined;
  }
  const [, feet, inches, part] = typeof cell === 'string' ? (FEET_DASH.exec(cell) ?? []) : [];
  if (feet === undefined || Number(inches) >= INCHES_A_FOOT) return undefined;
  return `${feet}' ${inches}${part === undefined ? '' : ` ${part}`}"`;
}
/** Whether a column writes most of its lengths so. */
export function writesFeetByDash(cells: readonly Cell[]): boolean {
  const filled = cells.filter((cell) => cell !== null);
  const dashed = filled.filter((cell) => typeof cell === 'string' && feetByDash(cell) !== undefined);
  return dashed.length >= 3 && dashed.length > filled.length / 2;
}

/** Metres with bare centimetres after them: “1 m 62”. */
const METRES_AND = /^(\d+) ?m ?(\d{1,2})$/i;
const SIDE_LETTER = /(?<=[\d½¼¾⅛⅜⅝⅞"'”″])\s*(?:w|h|l|d|wide|high|long|deep|drop)\.?$/i;

const lengthsKept = new Map<string, Length | null>();

/** A length as written, a bare figure in `unit`; undefined where it is none or could be two. */
export function lengthOf(cell: Cell, unit: LengthUnit): Length | undefined {
  if (typeof cell === 'number') return readFigure(cell, unit);
  if (typeof cell !== 'string') return undefined;
  const key = `${unit}${cell}`;
  const kept = lengthsKept.get(key);
  if (kept !== undefined) return kept ?? undefined;
  if (lengthsKept.size > 20_000) lengthsKept.clear();
  const found = writtenLength(cell, unit);
  lengthsKept.set(key, found ?? null);
  return found;
}

/** “290 (114")”: the same length again in the unit of another reader. */
const IN_OTHER_UNIT =
  /(?<=\d[^()]*)\s*\(\s*[\d.,\s/½¼¾⅛⅜⅝⅞]+\s*(?:["″”'′’]|ins?|inches|cms?|mm|m|ft)\.?\s*\)$/i;
/** Inches in French, Spanish, Dutch and German. */
const OTHER_INCHES = /(?<=\d)\s*(?:po|pouces?|pulg\w*|duim|zoll)\.?$/i;

/** “1,480” or “1 480” millimetres: nobody measures a thousandth of one. */
const THOUSANDS = /^([1-9]\d{0,2})[,.'\s](\d{3})(?=\s*(?:mm)?\.?$)/i;
/** The same where what stands there can be nothing else. */
export const withoutThousands = (text: string): string => text.replace(THOUSANDS, '$1$2');

/** What a tape parts an inch by. */
export const isTapePart = (parts: number): boolean => [2, 4, 8, 16, 32, 64].includes(parts);
/** “186/188” is one length read twice, and no fraction that a tape shows. */
function isTwoReadings(text: string): boolean {
  const [, one = '', other = ''] = /^\s*(\d{1,5})\s*\/\s*(\d{1,5})\s*$/.exec(text) ?? [];
  return other !== '' && !isTapePart(Number(other)) && Number(one) * 2 > Number(other);
}

function writtenLength(written: string, unit: LengthUnit): Length | undefined {
  if (!/\d|[½¼¾⅛⅜⅝⅞]/.test(written) || isTwoReadings(written)) return undefined;
  const cell = unit === 'mm' || /mm\.?$/i.test(written) ? withoutThousands(written) : written;
  const metres = METRES_AND.exec(cell);
  if (metres !== null)
    return (Number(metres[1]) * UNITS.m + Number((metres[2] ?? '').padEnd(2, '0')) * UNITS.cm) as Length;
  const text = cell
    .replace(/^(?:approx\.?|about|c\.|ca\.?|~|±|\+\/-)\s*/i, '')
    .replace(IN_OTHER_UNIT, '')
    .replace(OTHER_INCHES, ' in')
    .replace(SIDE_LETTER, '')
    .replace(/(?<=[\d½¼¾"”″] ?)(?:h\.?\/?d|half[ -]?drop|str|straight|s)\.?$/i, '')
    .replace(/^[*]+|[*?]+$/g, '')
    .trim();
  const reading = readWritten(text, unit);
  return 'length' in reading ? reading.length : undefined;
}

const AMOUNT_WORDS =
  /\b(?:usd|gbp|cad|aud|nzd|zar|eur|ea\.?|each|per|a|net|ex\.? ?vat|inc\.? ?vat|incl?\.?|plus tax|yd|yds|yard|m|mtr|metre|meter|pair|pr|width|panel|window)\b\.?/gi;

/** A plain figure, with a fraction or a decimal comma where it is written so; undefined where it is none. */
export function figureOf(cell: Cell): number | undefined {
  if (typeof cell === 'number') return cell;
  if (typeof cell !== 'string' || !/\d|[½¼¾⅛⅜⅝⅞]/.test(cell)) return undefined;
  const figure = readDecimal(cell);
  return typeof figure === 'number' && Number.isFinite(figure) ? figure : undefined;
}

/** An amount of money as people write it; undefined where it is none. */
export function moneyOf(cell: Cell): number | undefined {
  if (typeof cell === 'number') return cell;
  if (typeof cell !== 'string' || !/\d/.test(cell) || /^\d+\s*\/\s*\d+$/.test(cell)) return undefined;
  if (/^(?:free|no charge|n\/c|incl(?:uded)?)$/i.test(cell)) return undefined;
  let text = cell
    .replace(/\p{Sc}|^R(?=\s?\d)/gu, ' ')
    .replace(/\/\s*(?=[a-z])/gi, ' ')
    .replace(AMOUNT_WORDS, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^\((.*)\)$/, '-$1')
    .replace(/(?<=\d)[.,]-{1,2}$/, '');
  if (/^-?\d{1,3}(?:[ .]\d{3})+,\d{1,2}$/.test(text)) text = text.replace(/[ .]/g, '').replace(',', '.');
  if (/^-?\d{1,3}([, ]\d{3})+(\.\d+)?$/.test(text)) text = text.replace(/[, ]/g, '');
  else if (/^-?\d{1,3}([. ]\d{3})+,\d{1,2}$/.test(text)) text = text.replace(/[. ]/g, '').replace(',', '.');
  const figure = readDecimal(text);
  return typeof figure === 'number' && Number.isFinite(figure) ? figure : undefined;
}

const CLOTH = /^([\d.,\s/½¼¾⅛⅜⅝⅞]*[\d½¼¾⅛⅜⅝⅞])\s*(?:yds?|yards?|m|mtrs?|metres?|meters?|lm)\.?$/i;
/** The figure of “13.2m” or “11 ½ yds”; undefined where there is none. */
export const clothOf = (cell: Cell): number | undefined =>
  typeof cell === 'string' ? figureOf(CLOTH.exec(cell)?.[1] ?? null) : undefined;

const COUNT_WORDS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  single: 1,
  double: 2,
};

/** A count: 2, x2, 2 no., 2 pr, two, 3 + 3. */
export function countOf(cell: Cell): number | undefined {
  if (typeof cell === 'number') return cell >= 0 ? cell : undefined;
  if (typeof cell !== 'string') return undefined;
  const text = cell.toLowerCase();
  const word = COUNT_WORDS[text];
  if (word !== undefined) return word;
  const sum = /^(\d+(?:\.5|½)?)\s*\+\s*(\d+(?:\.5|½)?)$/.exec(text);
  if (sum !== null) return (countOf(sum[1] ?? '') ?? 0) + (countOf(sum[2] ?? '') ?? 0);
  const bare = text
    .replace(/^(?:x|×|qty|no\.?)\s*(?=\d)/, '')
    .replace(
      /(?<=[\d½])\s*(?:(?:ea|each)\b\.?\s*(?:sides?)?|\/? ?sides?|per side|a side|x|×|off|no\.?|nos\.?|pr\.?|prs\.?|pairs?|ea\.?|pcs\.?|pc\.?|windows?|widths?|w|wds?|strips?|lengths?|cuts?|drops?|panels?|pnls?|sets?|curtains?)$/,
      '',
    )
    .trim();
  const figure = figureOf(bare);
  return figure !== undefined && figure >= 0 ? figure : undefined;
}

const FULLNESS_WORDS: Readonly<Record<string, number>> = {
  single: 1,
  sgl: 1,
  flat: 1,
  double: 2,
  dbl: 2,
  dble: 2,
  triple: 3,
  trpl: 3,
  tpl: 3,
  'two and a half': 2.5,
  'one and a half': 1.5,
  'two times': 2,
  'three times': 3,
};

/** Whether a column of percentages says what is added to flat: no window is less than flat. */
export const saysMore = (cells: readonly Cell[]): boolean =>
  cells.some((cell) => {
    const [, figure = ''] = typeof cell === 'string' ? (PERCENT.exec(cell) ?? []) : [];
    return figure !== '' && Number(figure) < 100;
  });
const PERCENT = /^\s*(\d+(?:\.\d+)?)\s*%/;
/** Flat to finished of a percentage that is added to flat. */
export function fullnessAdded(cell: Cell): number | undefined {
  const [, figure = ''] = typeof cell === 'string' ? (PERCENT.exec(cell) ?? []) : [];
  return figure === '' ? undefined : 1 + Number(figure) / 100;
}

const isPercent = (figure: number): boolean => figure >= 120 && figure <= 400;
/** 2.5, or 250 for its percentage. */
function fullnessOfNumber(figure: number): number | undefined {
  if (isPercent(figure)) return figure / 100;
  return figure >= 1 && figure <= 6 ? figure : undefined;
}
function fullnessOfPercent(figure: number | undefined): number | undefined {
  if (figure === undefined) return undefined;
  // Some say what is gathered in: 100 % is double.
  if (figure >= 20 && figure < 120) return 1 + figure / 100;
  return isPercent(figure) ? figure / 100 : undefined;
}

/** Flat to finished: 2.5, 2 1/2, 250 %, 2.5x, 2.5:1, double. */
export function fullnessOf(cell: Cell): number | undefined {
  if (typeof cell === 'number') return fullnessOfNumber(withoutResidue(cell));
  if (typeof cell !== 'string') return undefined;
  const text = cell.toLowerCase().replace(/\s*full(ness)?$/, '');
  const word = FULLNESS_WORDS[text];
  if (word !== undefined) return word;
  const percent = /^([\d.,]+) ?%$/.exec(text)?.[1];
  if (percent !== undefined) return fullnessOfPercent(figureOf(percent));
  const figure = figureOf(text.replace(/\s*(?:[x×]|times|(?::|to) ?1)$/, '').replace(/^[x×]\s*/, ''));
  return figure === undefined ? undefined : fullnessOf(figure);
}

const BETWEEN = /\s*(?:[x×*✕]|\bby\b|\bX\b)\s*/i;

/** Two figures of one cell: “72 x 98”, “54/27”, “84W by 96L”; undefined where there are not two. */
export function twoOf(text: string): readonly [string, string] | undefined {
  const crossed = /^(.*?[\d½¼¾⅛⅜⅝⅞"'″”’′a-zA-Z]\.?)\s*(?:[xX×*✕]|\bby\b)\s*(\d.*|none|plain|nil)$/.exec(text);
  if (crossed !== null && /\d/.test(crossed[1] ?? '') && !BETWEEN.test(crossed[2] ?? ''))
    return [(crossed[1] ?? '').trim(), (crossed[2] ?? '').trim()];
  const slashed = /^(.*?\d.*?)\s*\/\s*(.+)$/.exec(text);
  if (slashed === null) return undefined;
  const [one = '', other = ''] = [slashed[1]?.trim(), slashed[2]?.trim()];
  return one === '' ? undefined : [one, other];
}
