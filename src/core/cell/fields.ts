/**
 * How a value crosses a cell's border. A Field is a name's kind and words; a function's parameter,
 * a house rule and a template's column are all Fields, and this one reader serves them all.
 */
import { refuse } from './answer';
import type { Choice, Choices } from './treatment';
import { digits, type Unit } from '../exact/unit';

/** What a platform hands over for a cell: number, text, truth, null, or an error or formatted object. */
export type CellIn = unknown;
/** What a cell is given. */
export type CellOut = number | string | boolean;

/** Where a value is read: the input's name as the sheet says it, and the workbook's unit. */
export interface Place {
  readonly name: string;
  readonly unit: Unit;
}

/** What a value is a figure of, which says its unit and how it is shown; of a list, what each entry is. */
export type Quantity =
  /** In the small unit of the house: of windows, rods and cuts. */
  | 'length'
  /** In the large unit: of cloth and rolls. */
  | 'yardage'
  | 'fullness'
  | 'share'
  | 'rate'
  | 'count'
  | 'weight'
  | 'areal weight'
  | 'money'
  | 'date'
  | 'choice'
  | 'text'
  | 'table'
  | 'anything';

export interface Kind<T> {
  readonly quantity: Quantity;
  /** As it stands in a sentence: "a length". Only people read it. */
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

/** A range as rows; a single value is a range of one cell. A whole column is a million rows, so none is copied. */
export function rowsOf(raw: CellIn): readonly (readonly CellIn[])[] {
  if (!Array.isArray(raw)) return [[raw]];
  const rows = raw as readonly CellIn[];
  return rows.every((row) => Array.isArray(row))
    ? (rows as readonly CellIn[][])
    : rows.map((row) => (Array.isArray(row) ? (row as CellIn[]) : [row]));
}

/** The columns of the widest row. */
export const widestOf = (rows: readonly (readonly CellIn[])[]): number =>
  rows.reduce((most, row) => Math.max(most, row.length), 0);

const ERROR_TEXT =
  /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|BUSY!|GETTING_DATA|FIELD!|CONNECT!|BLOCKED!|UNKNOWN!)$/;

/** What a cell shows while it is worked out; it is no mistake. */
const STILL_WORKING: ReadonlySet<string> = new Set(['#BUSY!', '#GETTING_DATA']);

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

/** A row of nothing but blanks and zeros: an empty cell is handed over as 0 by some hosts. */
export function isBlankRow(row: readonly CellIn[]): boolean {
  for (const cell of row) if (cell !== 0 && cell !== null && cell !== '' && !isBlank(cell)) return false;
  return true;
}

/** More filled rows than this are not taken in one call. */
export const MOST_ROWS = 100_000;

/** Without the blank rows a range ends with, as a whole column does; refuses what is too long to work out. */
export function filledRows<R extends readonly CellIn[]>(rows: readonly R[], place: Place): readonly R[] {
  let count = rows.length;
  while (count > 0 && isBlankRow(rows[count - 1] as R)) count--;
  if (count > MOST_ROWS) return refuse('tooManyRows', place.name, place.name, count, MOST_ROWS);
  return count === rows.length ? rows : rows.slice(0, count);
}

/** One cell's plain content; refuses a larger range and an error cell. */
export function oneCell(raw: CellIn, place: Place): number | string | boolean | undefined {
  if (Array.isArray(raw)) {
    const rows = rowsOf(raw);
    const columns = widestOf(rows);
    if (rows.length !== 1 || columns !== 1) {
      return refuse('oneCellWanted', place.name, place.name, rows.length, columns);
    }
    return oneCell(rows[0]?.[0], place);
  }
  const error = errorOf(raw);
  if (error !== undefined)
    return refuse(STILL_WORKING.has(error) ? 'stillWorking' : 'errorCell', place.name, place.name, error);
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

export const TEXT: Kind<string> = {
  quantity: 'text',
  noun: 'text',
  shape: 'cell',
  read(raw, place) {
    const cell = oneCell(raw, place);
    return cell === undefined ? undefined : String(cell).trim();
  },
  write: (value) => value,
};

export function choiceKind<W extends string>(noun: string, words: Choices<W>): Kind<W> {
  return {
    quantity: 'choice',
    noun,
    shape: 'cell',
    choices: words.list,
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined || cell === 0) return undefined;
      const word = words.find(String(cell));
      // An empty cell that went through a formula as text.
      if (word === undefined && String(cell).trim() === '0') return undefined;
      return (
        word ??
        refuse(
          'unknownChoice',
          place.name,
          place.name,
          readBack(cell),
          words.list.map((one) => one.word).join(', '),
        )
      );
    },
    write: (value) => value,
  };
}

/** Every filled cell of a range, read one by one; blanks are passed over. */
export function listKind<T>(kind: Kind<T>, noun: string): Kind<readonly T[]> {
  return {
    quantity: kind.quantity,
    noun,
    shape: 'range',
    read(raw, place) {
      const rows = rowsOf(raw);
      const shown = filledRows(rows, place);
      // Of nothing but zeros one speaks for all.
      const list = (shown.length === 0 ? rows.slice(0, 1) : shown).flatMap((row) =>
        row.map((cell) => kind.read(cell, place)),
      );
      const filled = list.filter((one): one is NonNullable<typeof one> => one !== undefined);
      return filled.length === 0 ? undefined : filled;
    },
  };
}

/** Whatever a cell holds, for a reader that knows what to make of it. */
export const ANYTHING: Kind<number | string | boolean> = {
  quantity: 'anything',
  noun: 'a value',
  shape: 'cell',
  read: oneCell,
};

/** A range as it stands, for readers that know its columns. */
export const TABLE: Kind<readonly (readonly CellIn[])[]> = {
  quantity: 'table',
  noun: 'a range',
  shape: 'range',
  read(raw, place) {
    const rows = rowsOf(raw);
    // A range that could not be had at all comes as one error.
    if (rows.length === 1 && rows[0]?.length === 1) oneCell(raw, place);
    const filled = filledRows(rows, place);
    return filled.every((row) => row.every(isBlank)) ? undefined : filled;
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
