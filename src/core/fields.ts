/**
 * How a value crosses a cell's border. A Field is a name's kind and words; a function's parameter,
 * a house rule and a template's column are all Fields, and this one reader serves them all.
 */
import { refuse } from './answer';
import { inches, toUnit, UNITS, type Length, type LengthUnit } from './length';
import { money, type Money } from './money';
import { ratio, toFigure, type Ratio } from './ratio';
import type { Choice, Choices } from './treatment';
import { digits, showLength, showYardage, type Unit } from './unit';
import { DIGITS, readDecimal, readFigure, readWritten } from './written';

/** What a platform hands over for a cell: number, text, truth, null, or an error or formatted object. */
export type CellIn = unknown;
/** What a cell is given. */
export type CellOut = number | string | boolean;

/** Where a value is read: the input's name as the sheet says it, and the workbook's unit. */
export interface Place {
  readonly name: string;
  readonly unit: Unit;
}

export interface Kind<T> {
  /** As it stands in a sentence: "a length". */
  readonly noun: string;
  readonly shape: 'cell' | 'range';
  readonly choices?: readonly Choice<string>[];
  /** Undefined where the cell is blank. Throws a Refusal with a sentence. */
  read(raw: CellIn, place: Place): T | undefined;
  /** As a plain cell value in the workbook's unit. */
  write?(value: T, unit: Unit): CellOut;
}

export interface Field<T> {
  readonly kind: Kind<NonNullable<T>>;
  readonly says: string;
  readonly optional: boolean;
}

export const required = <T>(kind: Kind<T>, says: string): Field<T> =>
  ({ kind, says, optional: false }) as Field<T>;
export const optional = <T>(kind: Kind<T>, says: string): Field<T | undefined> =>
  ({ kind, says, optional: true }) as Field<T | undefined>;

/** A range as rows; a single value is a range of one cell. */
export const rowsOf = (raw: CellIn): readonly (readonly CellIn[])[] =>
  Array.isArray(raw) ? (raw as CellIn[][]).map((row) => (Array.isArray(row) ? row : [row])) : [[raw]];

const ERROR_TEXT =
  /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|BUSY!|FIELD!|CONNECT!|BLOCKED!|UNKNOWN!)$/;

/** The error a cell shows, or undefined. */
export function errorOf(raw: CellIn): string | undefined {
  if (typeof raw === 'string') return ERROR_TEXT.test(raw) ? raw : undefined;
  if (typeof raw !== 'object' || raw === null) return undefined;
  const cell = raw as { type?: unknown; basicType?: unknown; basicValue?: unknown };
  return cell.type === 'Error' || cell.basicType === 'Error'
    ? String(cell.basicValue ?? '#VALUE!')
    : undefined;
}

/** Nothing in it, be it a cell or a whole range. */
export const isBlank = (raw: CellIn): boolean =>
  raw === null ||
  raw === undefined ||
  (typeof raw === 'string' && raw.trim() === '') ||
  (Array.isArray(raw) && raw.every(isBlank));

/** One cell's plain content; refuses a larger range and an error cell. */
export function oneCell(raw: CellIn, place: Place): number | string | boolean | undefined {
  if (Array.isArray(raw)) {
    const rows = rowsOf(raw);
    const columns = Math.max(0, ...rows.map((row) => row.length));
    if (rows.length !== 1 || columns !== 1) {
      return refuse('oneCellWanted', place.name, place.name, rows.length, columns);
    }
    return oneCell(rows[0]?.[0], place);
  }
  const error = errorOf(raw);
  if (error !== undefined) return refuse('errorCell', place.name, place.name, error);
  if (isBlank(raw)) return undefined;
  if (typeof raw === 'number' || typeof raw === 'string' || typeof raw === 'boolean') return raw;
  const formatted = (raw as { basicValue?: unknown }).basicValue;
  return formatted === undefined
    ? refuse(
        'unreadable',
        place.name,
        place.name,
        'something that is no plain value',
        'a plain value',
        '84 1/2',
      )
    : oneCell(formatted, place);
}

/** What was read, as it stands in a sentence. */
export function readBack(raw: CellIn): string {
  if (typeof raw === 'number') return digits(raw);
  if (typeof raw === 'boolean') return raw ? 'TRUE' : 'FALSE';
  const error = errorOf(raw);
  if (error !== undefined) return error;
  const text = String(raw).replace(/\s+/g, ' ').trim();
  return `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
}

interface LengthLimits {
  readonly noun: string;
  readonly example: string;
  /** Whether 0 is a figure here or means blank, as an empty cell of some platforms does. */
  readonly zero: 'blank' | 'figure';
  readonly negative?: boolean;
  readonly most: Length;
  /** The unit of a bare number: of windows and cuts, or of yardage and rolls. */
  readonly scale: 'small' | 'large';
}

function lengthKind(of: LengthLimits): Kind<Length> {
  const show = of.scale === 'small' ? showLength : showYardage;
  return {
    noun: of.noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const unit: LengthUnit = place.unit[of.scale];
      const length =
        typeof cell === 'number' ? lengthOfNumber(cell, unit) : lengthOfText(cell, unit, place, of);
      if (length === undefined)
        return refuse('tooGreat', place.name, place.name, readBack(cell), show(of.most, place.unit));
      if (length === 0 && of.zero === 'blank') return undefined;
      if (length < 0 && of.negative !== true) {
        return refuse(
          'tooSmall',
          place.name,
          place.name,
          readBack(cell),
          of.zero === 'blank' ? 'above 0' : '0 or more',
        );
      }
      if (Math.abs(length) > of.most)
        return refuse('tooGreat', place.name, place.name, readBack(cell), show(of.most, place.unit));
      return length;
    },
    write: (value, unit) => toUnit(value, unit[of.scale]),
  };
}

const lengthOfNumber = (cell: number, unit: LengthUnit): Length | undefined =>
  Number.isFinite(cell) ? readFigure(cell, unit) : undefined;

function lengthOfText(cell: string | boolean, unit: LengthUnit, place: Place, of: LengthLimits): Length {
  const reading = typeof cell === 'string' ? readWritten(cell, unit) : { unreadable: true as const };
  if ('length' in reading) return reading.length;
  if ('doubt' in reading) return refuse('doubtful', place.name, place.name, readBack(cell), ...reading.doubt);
  return refuse('unreadable', place.name, place.name, readBack(cell), of.noun, of.example);
}

const WINDOW_MOST = inches(1_968);
const EXAMPLE = `84 1/2, 7' 6" or 214 cm`;

/** An opening, a rod, a drop: above nothing. */
export const SIZE = lengthKind({
  noun: 'a length',
  example: EXAMPLE,
  zero: 'blank',
  most: WINDOW_MOST,
  scale: 'small',
});
/** An extension, a return, an overlap, a hem: none is a figure too. */
export const ALLOWANCE = lengthKind({
  noun: 'a length',
  example: '3 1/2 or 9 cm',
  zero: 'figure',
  most: WINDOW_MOST,
  scale: 'small',
});
/** What a drop is taken up or let down by: may be below nothing. */
export const SHIFT = lengthKind({
  noun: 'a length, minus to shorten',
  example: '-1/2 or 2',
  zero: 'figure',
  negative: true,
  most: WINDOW_MOST,
  scale: 'small',
});
/** Whatever someone wrote down: an opening, a shift, or a whole roll. */
export const WRITTEN = lengthKind({
  noun: 'a length',
  example: EXAMPLE,
  zero: 'figure',
  negative: true,
  most: (10_000 * UNITS.yd) as Length,
  scale: 'small',
});
/** A pattern's repeat: 0 is no repeat. */
export const REPEAT = lengthKind({
  noun: 'a length',
  example: '25 1/4 or 64 cm',
  zero: 'blank',
  most: WINDOW_MOST,
  scale: 'small',
});
/** A roll or an order: yards, or metres in a centimetre house. */
export const YARDS = lengthKind({
  noun: 'a roll length',
  example: '58, 61 1/2 or 50 m',
  zero: 'blank',
  most: (10_000 * UNITS.yd) as Length,
  scale: 'large',
});
/** A step of yardage; 0 leaves it exact. */
export const YARD_STEP = lengthKind({
  noun: 'a part of a yard or metre',
  example: '1/8 or 0.1',
  zero: 'figure',
  most: (100 * UNITS.yd) as Length,
  scale: 'large',
});

/** A plain number from a cell or from text with a decimal comma. */
function figureOf(
  cell: number | string | boolean,
  place: Place,
  noun: string,
  example: string,
  plain = (text: string): string => text,
): number {
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  if (typeof cell === 'string') {
    const figure = readDecimal(DIGITS.test(cell) ? cell : plain(cell));
    if (typeof figure !== 'number')
      return refuse('doubtful', place.name, place.name, readBack(cell), figure[0], figure[1]);
    if (Number.isFinite(figure)) return figure;
  }
  return refuse('unreadable', place.name, place.name, readBack(cell), noun, example);
}

interface FigureLimits {
  readonly noun: string;
  readonly example: string;
  readonly zero: 'blank' | 'figure';
  readonly least: number;
  readonly most: number;
  /** Only whole multiples of this. */
  readonly steps?: number;
  readonly stepsNoun?: string;
  /** Text as it is written here, down to its figure. */
  readonly plain?: (text: string) => string;
}

function figureKind<T>(of: FigureLimits, into: (figure: number) => T, out: (value: T) => CellOut): Kind<T> {
  return {
    noun: of.noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const figure = figureOf(cell, place, of.noun, of.example, of.plain);
      if (figure === 0 && of.zero === 'blank') return undefined;
      if (figure < of.least)
        return refuse('tooSmall', place.name, place.name, readBack(cell), `${digits(of.least)} or more`);
      if (figure > of.most)
        return refuse('tooGreat', place.name, place.name, readBack(cell), digits(of.most));
      const steps = of.steps === undefined ? figure : Math.round(figure / of.steps) * of.steps;
      if (Math.abs(steps - figure) > 1e-9)
        return refuse('notWhole', place.name, place.name, readBack(cell), of.stepsNoun ?? 'whole');
      return into(steps);
    },
    write: out,
  };
}

const plainFigure = (figure: number): number => figure;

const FULLNESS_FIGURE = figureKind<Ratio>(
  {
    noun: 'a fullness',
    example: '2.5',
    zero: 'blank',
    least: 1,
    most: 6,
    // “2.5x”, “2½ times”, “2.5:1” and “2.5 to 1” all say 2.5.
    plain: (text) => text.trim().replace(/\s*(?:[x×]|times|(?::|\bto\b) ?1)$/i, ''),
  },
  ratio,
  toFigure,
);
/** Fullness: 2.5, never 250 %, which some print for 2.5 and others for 3.5. */
export const FULLNESS: Kind<Ratio> = {
  ...FULLNESS_FIGURE,
  read(raw, place) {
    const cell = oneCell(raw, place);
    const percent = typeof cell === 'string' ? /^([\d.,]+) ?%$/.exec(cell.trim()) : null;
    const figure = percent === null ? undefined : readDecimal(percent[1] ?? '');
    if (typeof figure === 'number' && Number.isFinite(figure)) {
      return refuse(
        'doubtful',
        place.name,
        place.name,
        readBack(cell),
        `${digits(figure / 100)} times`,
        `${digits(figure / 100 + 1)} times`,
      );
    }
    return FULLNESS_FIGURE.read(raw, place);
  },
};

interface ShareLimits {
  readonly noun: string;
  readonly example: string;
  readonly least: number;
  readonly most: number;
}

/** A share of something: 0.03 or 3 %. */
function shareKind<T>(of: ShareLimits, into: (figure: Money) => T, out: (value: T) => number): Kind<T> {
  return {
    noun: of.noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const percent = typeof cell === 'string' ? /^(-?[\d.,]+) ?%$/.exec(cell.trim()) : null;
      const written = money(figureOf(percent?.[1] ?? cell, place, of.noun, of.example));
      const figure = percent === null ? written : written.div(100);
      if (figure.lt(of.least))
        return refuse('tooSmall', place.name, place.name, readBack(cell), `${digits(of.least)} or more`);
      if (figure.gt(of.most))
        return refuse('tooGreatShare', place.name, place.name, readBack(cell), digits(of.most), of.example);
      return into(figure);
    },
    write: out,
  };
}
const asRatio = (figure: Money): Ratio => ratio(figure.toNumber());
/** Of a length, below the whole: shrinkage. */
export const SHARE = shareKind(
  { noun: 'a share', example: '0.03 or 3 %', least: 0, most: 0.5 },
  asRatio,
  toFigure,
);
/** A proportion of a length: stack to rod. */
export const PROPORTION = shareKind(
  { noun: 'a proportion', example: '0.33', least: 0, most: 10 },
  asRatio,
  toFigure,
);
/** Of money: markup, tax, deposit; kept as decimal, since 8.875 % is a rate too. */
export const RATE = shareKind<Money>(
  { noun: 'a rate', example: '0.45 or 45 %', least: 0, most: 20 },
  (figure) => figure,
  (rate) => rate.toNumber(),
);

export const COUNT = figureKind<number>(
  {
    noun: 'a whole number',
    example: '46',
    zero: 'figure',
    least: 0,
    most: 100_000,
    steps: 1,
    stepsNoun: 'a whole number',
  },
  plainFigure,
  plainFigure,
);
/** What is ordered, in whatever unit its price list has. */
export const QUANTITY = figureKind<number>(
  { noun: 'a quantity', example: '120.5', zero: 'figure', least: 0, most: 1e9 },
  plainFigure,
  plainFigure,
);
/** Widths of cloth: whole or half. */
export const WIDTH_COUNT = figureKind<number>(
  {
    noun: 'a number of widths',
    example: '5 or 2.5',
    zero: 'blank',
    least: 0.5,
    most: 10_000,
    steps: 0.5,
    stepsNoun: 'whole or half widths',
  },
  plainFigure,
  plainFigure,
);
/** Areal weight, oz/yd² or g/m² by the house's unit. */
export const AREAL_WEIGHT = figureKind<number>(
  {
    noun: 'an areal weight',
    example: '12 (oz/yd²) or 400 (g/m²)',
    zero: 'blank',
    least: 0.001,
    most: 10_000,
  },
  plainFigure,
  plainFigure,
);
/** Pounds or kilograms. */
export const WEIGHT = figureKind<number>(
  { noun: 'a weight', example: '18', zero: 'blank', least: 0.001, most: 100_000 },
  plainFigure,
  plainFigure,
);

/** An amount of money as people write it: $1,234.50, 12,50 €, (25.00) for a credit. */
function plainAmount(text: string): string {
  const bare = text.replace(/[\p{Sc}\s]|\b(USD|EUR|GBP|CAD|AUD)\b/giu, '').replace(/^\((.*)\)$/, '-$1');
  // A comma before exactly three digits parts thousands: no money has three decimals.
  return /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(bare) ? bare.replace(/,/g, '') : bare;
}

export const MONEY = figureKind<Money>(
  { noun: 'an amount', example: '12.50', zero: 'figure', least: -1e12, most: 1e12, plain: plainAmount },
  money,
  (amount) => amount.toNumber(),
);
/** A price: not below nothing. */
export const PRICE = figureKind<Money>(
  { noun: 'a price', example: '12.50', zero: 'figure', least: 0, most: 1e9, plain: plainAmount },
  money,
  (amount) => amount.toNumber(),
);

export const TEXT: Kind<string> = {
  noun: 'text',
  shape: 'cell',
  read(raw, place) {
    const cell = oneCell(raw, place);
    return cell === undefined ? undefined : String(cell).trim();
  },
  write: (value) => value,
};

export function choiceKind<W extends string>(noun: string, of: Choices<W>): Kind<W> {
  return {
    noun,
    shape: 'cell',
    choices: of.list,
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined || cell === 0) return undefined;
      return (
        of.find(String(cell)) ??
        refuse(
          'unknownChoice',
          place.name,
          place.name,
          readBack(cell),
          of.list.map((one) => one.word).join(', '),
        )
      );
    },
    write: (value) => value,
  };
}

/** Every filled cell of a range, read one by one; blanks are passed over. */
export function listKind<T>(kind: Kind<T>, noun: string): Kind<readonly T[]> {
  return {
    noun,
    shape: 'range',
    read(raw, place) {
      const list = rowsOf(raw).flatMap((row) => row.map((cell) => kind.read(cell, place)));
      const filled = list.filter((one): one is NonNullable<typeof one> => one !== undefined);
      return filled.length === 0 ? undefined : filled;
    },
  };
}

/** Whatever a cell holds, for a reader that knows what to make of it. */
export const ANYTHING: Kind<number | string | boolean> = { noun: 'a value', shape: 'cell', read: oneCell };

/** A range as it stands, for readers that know its columns. */
export const TABLE: Kind<readonly (readonly CellIn[])[]> = {
  noun: 'a range',
  shape: 'range',
  read(raw, place) {
    const rows = rowsOf(raw);
    // A range that could not be had at all comes as one error.
    if (rows.length === 1 && rows[0]?.length === 1) oneCell(raw, place);
    return rows.every((row) => row.every(isBlank)) ? undefined : rows;
  },
};

/** Reads one field at its place; refuses a blank where one is required. */
export function readField<T>(field: Field<T>, raw: CellIn, place: Place): T {
  const value = field.kind.read(raw, place);
  if (value !== undefined || field.optional) return value as T;
  return isBlank(raw)
    ? refuse('missing', place.name, place.name, field.kind.noun)
    : refuse('zeroMissing', place.name, place.name, field.kind.noun);
}
