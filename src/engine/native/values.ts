/** What a worksheet formula works with, and how one kind of value becomes another as Excel does it. */

/** An error a cell shows. */
export class Fault {
  constructor(readonly code: string) {}
}
export const DIV0 = new Fault('#DIV/0!');
export const NA = new Fault('#N/A');
export const NAME = new Fault('#NAME?');
export const NULL = new Fault('#NULL!');
export const NUM = new Fault('#NUM!');
export const REF = new Fault('#REF!');
export const VALUE = new Fault('#VALUE!');
export const CALC = new Fault('#CALC!');
const FAULTS = new Map(
  [DIV0, NA, NAME, NULL, NUM, REF, VALUE, CALC].map((fault) => [fault.code, fault] as const),
);
export const faultOf = (code: string): Fault => FAULTS.get(code) ?? new Fault(code);

/** null is a blank cell. */
export type Scalar = number | string | boolean | null | Fault;

/** Rows of values in the middle of a calculation. */
export class Grid {
  constructor(
    readonly rows: number,
    readonly columns: number,
    readonly cells: readonly Scalar[],
  ) {}
  at(row: number, column: number): Scalar {
    return this.cells[row * this.columns + column] ?? null;
  }
}
export const gridOf = (rows: readonly (readonly Scalar[])[]): Grid =>
  new Grid(rows.length, rows[0]?.length ?? 0, rows.flat());

/** Cells of one sheet. */
export class Area {
  constructor(
    readonly sheet: number,
    readonly row: number,
    readonly column: number,
    readonly rows: number,
    readonly columns: number,
  ) {}
}
/** The same cells of several sheets, or several areas in brackets. */
export class Areas {
  constructor(readonly list: readonly Area[]) {}
}
/** A function handed on as a value. */
export class Lambda {
  constructor(
    readonly most: number,
    readonly call: (given: readonly Value[]) => Value,
  ) {}
}
export type Value = Scalar | Grid | Area | Areas | Lambda;

/** The answer would be a guess: what of this formula was not seen to agree with Excel. */
export class Unproven extends Error {}

/** `why` goes on after “it”. */
export function unproven(why: string): never {
  throw new Unproven(`it ${why}`);
}

/** What no engine could compute rightly either. */
export class Refused extends Unproven {}

/** A cell that is still to be computed was read: it comes first. */
export class Wanting extends Error {
  constructor(
    readonly sheet: number,
    readonly row: number,
    readonly column: number,
  ) {
    super('wanting');
  }
}

const PLAIN_NUMBER = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?\s*$/i;
const PERCENT = /^\s*([+-]?(?:\d+\.?\d*|\.\d+))\s*%\s*$/;
const THOUSANDS = /^\s*[+-]?\d{1,3}(?:,\d{3})+(?:\.\d*)?\s*$/;
const ISO_DAY = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/;
/** Read one way in every country and no other way: digits with these signs may be a date, a time or money. */
const MAY_BE_MORE = /\d/;

/** A number written as text; undefined where it is none, and a throw where it depends on the country. */
export function numberIn(text: string): number | undefined {
  if (PLAIN_NUMBER.test(text)) return Number(text);
  const percent = PERCENT.exec(text);
  if (percent !== null) return Number(percent[1]) / 100;
  if (THOUSANDS.test(text)) return Number(text.replace(/[,\s]/g, ''));
  const day = ISO_DAY.exec(text);
  if (day !== null) return isoDay(Number(day[1]), Number(day[2]), Number(day[3]));
  if (!MAY_BE_MORE.test(text) || /^\s*[\p{L}_"#@&][\p{L}_"#@&:]{3,}/u.test(text) || text.length > 40)
    return undefined;
  if (
    !/[\d]\s*[/:.,-]|\d\s*(?:am|pm)|[$€£¥(]|\d\s+\d|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec/i.test(
      text,
    )
  )
    return undefined;
  return unproven(`reads the text “${text.slice(0, 20)}” as a number, which is not read alike everywhere`);
}

function isoDay(year: number, month: number, day: number): number | undefined {
  const time = Date.UTC(year, month - 1, day);
  const date = new Date(time);
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined;
  const serial = time / 86_400_000 + 25_569;
  return serial < 61 ? (serial > 1 ? serial - 1 : undefined) : serial;
}

export function toNumber(value: Scalar): number | Fault {
  if (typeof value === 'number') return value;
  if (value === null) return 0;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (typeof value === 'string') return numberIn(value) ?? VALUE;
  return value;
}

/** A number as a cell without a format shows it in a text: fifteen digits at most. */
export function numberText(number: number): string {
  if (number === 0) return '0';
  const size = Math.abs(number);
  const plain = Number(number.toPrecision(15));
  if (size >= 1e21 || size < 1e-9) return exponent(plain);
  const text = plain.toString();
  if (!text.includes('e')) {
    const digits = text.replace(/^-?0?\.?0*|[-.]/g, '');
    if (size >= 1e20 || (size < 1e-4 && digits.length + (text.replace('-', '').length - digits.length) > 20))
      return exponent(plain);
    return text;
  }
  return size < 1 ? fixed(plain) : exponent(plain);
}
const exponent = (number: number): string => {
  const [digits = '', power = '0'] = number.toExponential().split('e');
  const size = Math.abs(Number(power));
  return `${digits}E${power.startsWith('-') ? '-' : '+'}${size < 10 ? '0' : ''}${size}`;
};
const fixed = (number: number): string => {
  const [digits = '', power = '0'] = number.toExponential().split('e');
  const bare = digits.replace(/[-.]/g, '');
  const text = `${number < 0 ? '-' : ''}0.${'0'.repeat(-Number(power) - 1)}${bare}`;
  return text.length > 22 ? exponent(number) : text;
};

export function toText(value: Scalar): string | Fault {
  if (typeof value === 'string') return value;
  if (value === null) return '';
  if (typeof value === 'number') return numberText(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return value;
}

export function toTruth(value: Scalar): boolean | Fault {
  if (typeof value === 'boolean') return value;
  if (value === null) return false;
  if (typeof value === 'number') return value !== 0;
  if (typeof value === 'string') {
    const word = value.toUpperCase();
    return word === 'TRUE' ? true : word === 'FALSE' ? false : VALUE;
  }
  return value;
}

/** A number a cell can hold: beyond it #NUM!; what is too small to be held is 0. */
export function held(number: number): number | Fault {
  if (!Number.isFinite(number)) return NUM;
  if (number === 0) return 0;
  return Math.abs(number) < 2.2250738585072014e-308 ? 0 : number;
}

export const near15 = (one: number, other: number): boolean =>
  one === other || one.toPrecision(15) === other.toPrecision(15);

const LETTERS = /^[\p{L}\p{N} ]*$/u;
/** Text without regard to capitals; which sign comes first is only sure for plain letters and digits. */
export function orderOfText(one: string, other: string): number {
  const [a, b] = [one.toLowerCase(), other.toLowerCase()];
  if (a === b) return 0;
  if (!LETTERS.test(a) || !LETTERS.test(b)) {
    // Where one sign decides between two letters or digits, the rest does not matter.
    let at = 0;
    while (at < a.length && a[at] === b[at]) at++;
    const [x, y] = [a[at], b[at]];
    if (x !== undefined && y !== undefined && !(LETTERS.test(x) && LETTERS.test(y)))
      unproven('orders texts that differ in a sign');
    if (/[-']/.test(a) || /[-']/.test(b)) unproven('orders texts with a hyphen or an apostrophe');
  }
  return collator.compare(a, b) < 0 ? -1 : 1;
}
const collator = new Intl.Collator('en', { sensitivity: 'variant' });

const kindOf = (value: Scalar): number => (typeof value === 'number' ? 0 : typeof value === 'string' ? 1 : 2);

/** −1, 0 or 1 as Excel orders: numbers, then texts, then logicals. A blank is what it is compared with. */
export function compared(left: Scalar, right: Scalar): number {
  const one = left === null ? blankLike(right) : left;
  const other = right === null ? blankLike(one) : right;
  const [a, b] = [kindOf(one), kindOf(other)];
  if (a !== b) return a < b ? -1 : 1;
  if (typeof one === 'number' && typeof other === 'number')
    return near15(one, other) ? 0 : one < other ? -1 : 1;
  if (typeof one === 'string' && typeof other === 'string') return orderOfText(one, other);
  return Number(one) - Number(other);
}
/** Whether they are one and the same as “=” says: for that no order need be sure. */
export function equal(left: Scalar, right: Scalar): boolean {
  const one = left === null ? blankLike(right) : left;
  const other = right === null ? blankLike(one) : right;
  return typeof one === 'string' && typeof other === 'string'
    ? sameText(one, other)
    : compared(one, other) === 0;
}

const blankLike = (other: Scalar): Scalar =>
  typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0;

export const sameText = (one: string, other: string): boolean =>
  one === other || one.toLowerCase() === other.toLowerCase();

/** More steps or cells than anyone means; Excel itself would take long or refuse. */
const MOST_STEPS = 1_000_000;
export function bounded(count: number): number {
  return count > MOST_STEPS ? unproven('works through so long a list') : count;
}
