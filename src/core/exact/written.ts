/**
 * Measurements as people write them: 84 1/2, 84½, 7' 6 1/4", 7 ft 6, 228.6 cm, 2,29 m, 3 1/4 yd.
 * Text that can be read in two ways is refused with both readings named.
 */
import { fromUnit, UNITS, type Length, type LengthUnit } from './length';

export type Reading =
  { readonly length: Length } | { readonly doubt: readonly [string, string] } | { readonly unreadable: true };

const UNREADABLE: Reading = { unreadable: true };

const UNIT_WORDS: ReadonlyMap<string, LengthUnit> = new Map(
  Object.entries({
    '"': 'in',
    in: 'in',
    inch: 'in',
    inches: 'in',
    ins: 'in',
    "'": 'ft',
    ft: 'ft',
    foot: 'ft',
    feet: 'ft',
    yd: 'yd',
    yds: 'yd',
    yard: 'yd',
    yards: 'yd',
    mm: 'mm',
    millimetre: 'mm',
    millimetres: 'mm',
    millimeter: 'mm',
    millimeters: 'mm',
    cm: 'cm',
    centimetre: 'cm',
    centimetres: 'cm',
    centimeter: 'cm',
    centimeters: 'cm',
    m: 'm',
    metre: 'm',
    metres: 'm',
    meter: 'm',
    meters: 'm',
  } as const),
);

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
};

/** Typographic quotes, primes, fraction signs and odd spaces to plain characters. */
function plain(text: string): string {
  return text
    .replace(/[¼½¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚]/g, (sign) => ` ${FRACTION_SIGNS[sign]}`)
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2018\u2019\u201B\u2032\u00B4\u0060]/g, "'")
    .replace(/[\u201C\u201D\u201F\u2033\u02BA]/g, '"')
    .replace(/''/g, '"')
    .replace(/[\u2212\u2012\u2013]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

/** Most cells hold plain digits, in which nothing has to be told apart. */
export const DIGITS = /^\d{1,15}(\.\d{1,15})?$/;

const PART = /^(\d+(?:[.,]\d+)*(?!\d*\/)|[.,]\d+)?(?:(\s|-|\s-\s)?(\d+)\/(\d+))?\s*("|'|[a-z]+\.?)?\s*/;

/** A plain figure written with a decimal point or comma, or with a fraction; NaN where it is none. */
export function readDecimal(text: string): number | readonly [string, string] {
  if (DIGITS.test(text)) return Number(text);
  const figure = plain(text).replace(/^\+/, '');
  const negative = figure.startsWith('-');
  const bare = negative ? figure.slice(1) : figure;
  const [, whole = '0', over, under] = /^(?:(\d+)[ -])?(\d+)\/([1-9]\d*)$/.exec(bare) ?? [];
  if (over !== undefined) {
    // 21/2 has lost the space of 2 1/2.
    if (Number(over) >= Number(under)) return NaN;
    const value = Number(whole) + Number(over) / Number(under);
    return negative ? -value : value;
  }
  if (!/^(\d+([.,]\d+)*|[.,]\d+)$/.test(bare)) return NaN;
  const value = decimal(bare);
  return typeof value === 'number' && negative ? -value : value;
}

const inThousands = (figure: string, mark: string): boolean =>
  new RegExp(`^[1-9]\\d{0,2}(\\${mark}\\d{3})+$`).test(figure);

/** Of a comma and a point in one figure the last is the decimal one. */
function pointAndComma(figure: string): number {
  const at = Math.max(figure.lastIndexOf(','), figure.lastIndexOf('.'));
  const other = figure[at] === ',' ? '.' : ',';
  const [whole, part] = [figure.slice(0, at), figure.slice(at + 1)];
  if (!inThousands(whole, other) || !/^\d+$/.test(part)) return NaN;
  return Number(`${whole.split(other).join('')}.${part}`);
}

/** "1,5" is one and a half; "1,234" may be either; "1,234.5" can only be a thousand. */
function decimal(figure: string): number | readonly [string, string] {
  const commas = figure.split(',').length - 1;
  const dots = figure.split('.').length - 1;
  if (commas === 0 && dots <= 1) return Number(figure);
  if (commas > 0 && dots > 0) return pointAndComma(figure);
  if (dots > 1) return inThousands(figure, '.') ? Number(figure.split('.').join('')) : NaN;
  if (commas > 1) return inThousands(figure, ',') ? Number(figure.split(',').join('')) : NaN;
  if (/^[1-9]\d{0,2},\d{3}$/.test(figure)) {
    return [figure.replace(',', '.'), figure.replace(',', '')];
  }
  return Number(figure.replace(',', '.'));
}

/** Units that may follow one another in one measurement, larger to smaller. */
const FOLLOWS: Readonly<Record<string, readonly LengthUnit[]>> = {
  yd: ['ft', 'in'],
  ft: ['in'],
  m: ['cm', 'mm'],
  cm: ['mm'],
};

/** A figure of a measurement with its fraction and its unit, as they are written. */
interface Part {
  readonly text: string;
  readonly whole: string | undefined;
  readonly over: string | undefined;
  readonly under: string | undefined;
  readonly word: string | undefined;
}

/** What a text begins with; undefined where it is no figure, or a space is lost in it. */
function partOf(rest: string): Part | undefined {
  const [text = '', whole, between, over, under, word] = PART.exec(rest) ?? [];
  if (text === '' || (whole === undefined && over === undefined)) return undefined;
  if (whole !== undefined && over !== undefined && between === undefined) return undefined;
  // 841/2 has lost the space of 84 1/2.
  if (whole === undefined && Number(over) >= Number(under)) return undefined;
  return { text, whole, over, under, word };
}

/** The whole figure of a part, 0 where a fraction stands alone. */
function wholeOf({ whole, over, under, word }: Part, before: LengthUnit | undefined): number | Reading {
  const figure = whole === undefined ? 0 : decimal(whole);
  if (typeof figure !== 'number') {
    const named = word ?? before ?? '';
    return { doubt: [`${figure[0]} ${named}`.trim(), `${figure[1]} ${named}`.trim()] };
  }
  if (over === undefined) return Number.isFinite(figure) ? figure : UNREADABLE;
  if (Number(under) === 0 || !Number.isInteger(figure)) return UNREADABLE;
  return Number.isFinite(figure + Number(over) / Number(under)) ? figure : UNREADABLE;
}

/** The unit a part names, or the one it can only be in after the part before. */
function unitOf(
  { text, word }: Part,
  before: LengthUnit | undefined,
  unit: LengthUnit,
): LengthUnit | Reading {
  if (word !== undefined) return UNIT_WORDS.get(word.replace(/\.$/, '')) ?? UNREADABLE;
  if (before === undefined) return unit;
  if (before === 'ft') return 'in';
  return before === 'm'
    ? { doubt: [`${text.trim()} cm after the metres`, `${text.trim()} mm after the metres`] }
    : UNREADABLE;
}

/** A bare figure stands alone: more may follow a named unit only, and in a smaller one. */
const mayStand = (before: LengthUnit | undefined, own: LengthUnit, alone: boolean): boolean =>
  before === undefined ? alone : (FOLLOWS[before] ?? []).includes(own);

const nanometres = (whole: number, { over, under }: Part, own: LengthUnit): number =>
  Math.round(whole * UNITS[own]) +
  (over === undefined ? 0 : Math.round((Number(over) * UNITS[own]) / Number(under)));

/** All parts of a measurement without its sign, added up. */
function added(text: string, unit: LengthUnit): number | Reading {
  let rest = text;
  let sum = 0;
  let before: LengthUnit | undefined;
  while (rest !== '') {
    const part = partOf(rest);
    if (part === undefined) return UNREADABLE;
    const whole = wholeOf(part, before);
    if (typeof whole !== 'number') return whole;
    const own = unitOf(part, before, unit);
    if (typeof own !== 'string') return own;
    const alone = part.word !== undefined || part.text.length === rest.length;
    if (!mayStand(before, own, alone)) return UNREADABLE;
    sum += nanometres(whole, part, own);
    before = own;
    rest = rest.slice(part.text.length).replace(/^,\s*/, '');
    // 7'-6": the dash after feet is no minus.
    if (own === 'ft') rest = rest.replace(/^-\s*/, '');
  }
  return sum;
}

/** Reads a written measurement; a bare figure is in `unit`. Blank text is for the caller. */
export function readWritten(text: string, unit: LengthUnit): Reading {
  const length = DIGITS.test(text) ? readFigure(Number(text), unit) : undefined;
  if (length !== undefined) return { length };
  const signed = plain(text);
  const negative = signed.startsWith('-');
  const bare = negative ? signed.slice(1).trim() : signed;
  if (bare === '') return UNREADABLE;
  const pair = /^(\d+) ?[- ] ?(\d+)$/.exec(bare);
  if (pair) return { doubt: [`${pair[1]} ft ${pair[2]} in`, `${pair[1]}${pair[2]}`] };
  const sum = added(bare, unit);
  if (typeof sum !== 'number') return sum;
  const nm = negative ? -sum : sum;
  return Number.isSafeInteger(nm) ? { length: nm as Length } : UNREADABLE;
}

/** A figure and a unit, for reading a number that came as a number. */
export const readFigure = (figure: number, unit: LengthUnit): Length | undefined =>
  Math.abs(figure) * UNITS[unit] < Number.MAX_SAFE_INTEGER ? fromUnit(figure, unit) : undefined;
