/** A table as the pane has it: the one reader's reading, with samples, doubts, and what the user said of columns. */
import { Refusal, type Finding } from '../core/cell/answer';
import type { Field } from '../core/cell/fields';
import { ratio } from '../core/exact/ratio';
import { INCHES, type Unit } from '../core/exact/unit';
import { headingWords } from '../core/window/columns';
import { MEANINGS, type OrderKey } from '../core/window/meanings';
import { refusalOf } from '../core/window/reader/as-window';
import { cellOf } from '../core/window/reader/cells';
import { headingOf, isLengthKey, isOurs, isYardageKey } from '../core/window/reader/meanings';
import { readTable, type TableRead } from '../core/window/reader/read';
import type { RowKind, RowRead } from '../core/window/reader/slots';
import type { ColumnRead } from '../core/window/reader/understand';
import { cellText, common, letters } from './address';
import { filled, type Block, type CellValue } from './book';

/** A column a window row may have. */
export interface WantedColumn {
  readonly key: string;
  readonly heading: string;
  readonly also: readonly string[];
  readonly field: Field<unknown>;
  readonly says: string;
  /** Whether rows without it cannot be worked out. */
  readonly needed: boolean;
  /** Whether it is a figure worked out elsewhere: words alone are none. */
  readonly figure?: boolean;
}

export interface SheetColumn {
  /** Sheet column, from 0. */
  readonly column: number;
  readonly heading: string;
  /** The heading, told apart from others of the same words: what a mapping remembers. */
  readonly id: string;
  /** As the reader read it; undefined for a column without a heading and a cell. */
  readonly reading: ColumnRead | undefined;
  /** The unit of its bare figures, where it is not the house's. */
  readonly unit: ColumnRead['unit'];
  /** The first few different contents, as they stand. */
  readonly samples: readonly string[];
  /** Which of the wanted columns it is taken for. */
  readonly key: string | undefined;
  /** All that its cells hold: a treatment's text has the heading and the draw. */
  readonly keys: readonly string[];
  /** Whether each of its cells alone says what the reader reads in it. */
  readonly plain: boolean;
  readonly sure: ColumnRead['sure'];
  /** Whether the user said so. */
  readonly corrected: boolean;
  /** Sentences for the pane, to look at before going on. */
  readonly doubts: readonly string[];
}

export interface Line {
  /** Sheet row. */
  readonly row: number;
  readonly kind: RowKind;
  readonly read: RowRead;
}

export interface ColumnsRead {
  readonly block: Block;
  readonly header: {
    /** First row, counted within the block. */
    readonly row: number;
    readonly rows: number;
    /** One for each column of the block. */
    readonly headings: readonly string[];
  };
  readonly columns: readonly SheetColumn[];
  /** Every row below the header. */
  readonly lines: readonly Line[];
  /** The reading itself: its columns count within the block. */
  readonly table: TableRead;
  /** What was assumed, and what is said of the table as a whole. */
  readonly notes: readonly string[];
}

/** The user's word: a column's id → the wanted key, several joined by “+”, or null for “none of them”. */
export type Corrections = Readonly<Record<string, string | null>>;

const SAMPLES = 5;
const MOST_CHECKED = 500;
/** Findings about a single column stand with it. */
const OF_A_COLUMN: ReadonlySet<string> = new Set([
  'columnAsked',
  'columnTaken',
  'columnNotRead',
  'perTold',
  'cellsUnread',
]);

const shownValue = (value: CellValue): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(12))) : String(value).replace(/\s+/g, ' ');

/** The merged stretches of a block, counted within it. */
const mergedIn = ({
  area,
  merged,
}: Block): { row: number; column: number; rows: number; columns: number }[] =>
  merged.flatMap((one) => {
    const within = common(one, area);
    return within === undefined
      ? []
      : [{ ...within, row: within.row - area.row, column: within.column - area.column }];
  });

/** The last row of the block that holds anything; of a table, the last of its body. */
function lastRow({ table, area, values }: Block): number {
  if (table === undefined) return values.length - 1;
  return Math.min(
    table.area.row - area.row + table.area.rows - 1 - (table.totalsRow ? 1 : 0),
    values.length - 1,
  );
}

const saidIds = (headings: readonly string[]): string[] => {
  const times = new Map<string, number>();
  return headings.map((heading, column) => {
    const plain = heading.toLowerCase() || `column ${letters(column)}`;
    const time = (times.get(plain) ?? 0) + 1;
    times.set(plain, time);
    return time === 1 ? plain : `${plain} #${time}`;
  });
};

const headingsOf = (table: TableRead, columns: number): string[] => {
  const { texts } = table.understanding.header;
  return Array.from({ length: columns }, (_, at) => (texts[at] ?? []).join(' '));
};

/** The rows of the headings, where they are known before the cells are looked at. */
function pointed(
  block: Block,
  prefer: number | undefined,
  found: TableRead | undefined,
): number[] | undefined {
  const { table, area } = block;
  if (table?.headerRow === true && table.area.row >= area.row) return [table.area.row - area.row];
  if (prefer === undefined) return undefined;
  const row = prefer - area.row;
  return found?.header.includes(row) === true ? undefined : [row];
}

/** A row somebody points at is one of headings where it is words. */
const isWords = (block: Block, rows: readonly number[]): boolean =>
  rows.every((row) => {
    const cells = block.values[row]?.filter(filled) ?? [];
    return cells.length >= 2 && cells.every((value) => typeof value === 'string');
  });

function readBlock(
  block: Block,
  unit: Unit,
  prefer: number | undefined,
  said: ReadonlyMap<number, readonly OrderKey[]>,
  orders: boolean,
): TableRead | undefined {
  const sheet = { rows: block.values.slice(0, lastRow(block) + 1), merged: mergedIn(block) };
  const read = (header?: readonly number[]): TableRead | undefined => {
    const found = readTable(sheet, {
      unit,
      said,
      orders,
      ...(header !== undefined && { header }),
    });
    return 'columns' in found ? found : undefined;
  };
  const table = pointed(block, undefined, undefined);
  if (table !== undefined) return read(table);
  const found = read();
  const row = pointed(block, prefer, found);
  return row !== undefined && isWords(block, row) ? (read(row) ?? found) : found;
}

/** Figures of ours that no order states, like the space between pleats, by their own words. */
const otherFigure = (heading: string, wanted: readonly WantedColumn[]): string | undefined => {
  const words = headingWords(heading);
  if (words === '') return undefined;
  return wanted.find(
    ({ key, heading: own, also }) =>
      !isOurs(key as OrderKey) && [own, ...also].some((one) => headingWords(one) === words),
  )?.key;
};

const KINDS = new Map(MEANINGS.map(({ key, kind }) => [key, kind]));

const NEEDED: ReadonlySet<OrderKey> = new Set<OrderKey>(['openingWidth', 'measured', 'fabricWidth']);

/** Whether a cell alone, read by its kind, is what the reader reads in its row. */
function readsAlike(key: OrderKey, raw: CellValue, read: RowRead, unit: Unit): boolean {
  const value = read.values[key];
  const unread = read.unread.some((one) => one.key === key);
  try {
    const own: unknown = KINDS.get(key)?.read(raw, { name: key, unit });
    if (unread) return false;
    if (own === undefined || value === undefined) return own === value || (own === undefined && value === 0);
    return (
      own === value || (key === 'fullness' && own === ratio(Number(value))) || String(own) === String(value)
    );
  } catch (thrown) {
    // Where no answer is possible without it, the cell's own refusal names what was read.
    if (thrown instanceof Refusal) return unread || (value === undefined && NEEDED.has(key));
    throw thrown;
  }
}

const unitFor = (key: OrderKey, unit: Unit, own: ColumnRead['unit']): Unit => {
  if (own === undefined) return unit;
  if (isYardageKey(key)) return own === unit.large ? unit : { ...unit, large: own };
  return own === unit.small ? unit : { ...unit, small: own };
};

interface Looked {
  readonly block: Block;
  readonly table: TableRead;
  readonly windows: readonly RowRead[];
  readonly unit: Unit;
  readonly wanted: readonly WantedColumn[];
}

/** Nothing but what its cells say one by one: such a column can be handed to a function cell by cell. */
function isPlain(reading: ColumnRead, { block, windows, unit, table }: Looked): boolean {
  const [key, ...more] = reading.means;
  const beside = table.columns.some(({ addsTo }) => addsTo === reading.at);
  if (
    key === undefined ||
    more.length > 0 ||
    reading.addsTo !== undefined ||
    reading.per !== undefined ||
    beside
  )
    return false;
  const own = unitFor(key, unit, reading.unit);
  return windows.slice(0, MOST_CHECKED).every((read) => {
    const raw = block.values[read.row]?.[reading.at] ?? null;
    if (!filled(raw)) return read.values[key] === undefined || !isLengthKey(key);
    // Text of another unit may name its own.
    if (own !== unit && typeof raw === 'string' && !/^\d+(?:[.,]\d+)?$/.test(raw.trim())) return false;
    return readsAlike(key, raw, read, own);
  });
}

function unreadDoubts(reading: ColumnRead, { windows, block, table, unit }: Looked): string[] {
  const bad = windows.flatMap((read) =>
    read.unread.flatMap((one) => (one.at === reading.at ? [{ read, one }] : [])),
  );
  const [first] = bad;
  if (first === undefined) return [];
  const cells = (block.values[first.read.row] ?? []).map(cellOf);
  const name = cellText(block.area.row + first.read.row, block.area.column + reading.at);
  const named = table.columns.map((one) => (one.at === reading.at ? { ...one, heading: name } : one));
  const { sentence } = refusalOf(first.one, { at: first.read.row, cells }, named, unit);
  return bad.length === 1
    ? [sentence]
    : [
        `${bad.length} cells of column ${letters(block.area.column + reading.at)} cannot be read as ${headingOf(first.one.key)}. The first: ${sentence}`,
      ];
}

function doubtsOf(reading: ColumnRead, looked: Looked, corrected: boolean, needed: boolean): string[] {
  const { block, windows, unit, table } = looked;
  const column = letters(block.area.column + reading.at);
  const doubts = corrected
    ? []
    : table.findings
        .filter(
          (one) =>
            (one.code === 'columnAsked' || one.code === 'columnTaken' || one.code === 'perTold') &&
            ofColumn(one, reading),
        )
        .map(({ sentence }) => sentence);
  doubts.push(...unreadDoubts(reading, looked));
  const [key] = reading.means;
  if (key === undefined) return doubts;
  if (isLengthKey(key) && reading.unit !== undefined && reading.unit !== unit.small)
    doubts.push(
      `Column ${column}, ${headingOf(key)}, is in ${reading.unit}; the house’s unit is ${unit.name}. Its figures are taken as ${reading.unit}.`,
    );
  doubts.push(...tooGreat(reading, looked));
  const filledCells = windows.filter(({ row }) => filled(block.values[row]?.[reading.at])).length;
  const blank = windows.filter(
    ({ values, unread }) => values[key] === undefined && !unread.some((one) => one.key === key),
  ).length;
  if (needed && blank > 0 && filledCells > 0)
    doubts.push(`${blank} of ${windows.length} rows have no ${headingOf(key)} in column ${column}.`);
  return doubts;
}

/** Figures without a unit that are too great for the house's. */
function tooGreat({ at, means: [key], unit: own }: ColumnRead, { windows, block, unit }: Looked): string[] {
  if (key === undefined || !isLengthKey(key) || own !== unit.small) return [];
  const figures = windows
    .flatMap(({ row }) => {
      const value = block.values[row]?.[at];
      return typeof value === 'number' ? [value] : [];
    })
    .sort((a, b) => a - b);
  const middle = figures[figures.length >> 1];
  if (middle === undefined || middle <= (unit === INCHES ? 200 : 600)) return [];
  const other = unit === INCHES ? 'centimetres or millimetres' : 'millimetres';
  return [
    `Column ${letters(block.area.column + at)}, ${headingOf(key)}, runs around ${shownValue(middle)}, which is much for ${unit.name}. If it is ${other}, say so in the heading, like “${headingOf(key)} (${unit === INCHES ? 'cm' : 'mm'})”.`,
  ];
}

/** Whether a finding of the reading is about this column. */
const ofColumn = (one: Finding, { heading }: ColumnRead): boolean => one.about === heading;

/** Which of the wanted columns it is: by the reading, or a figure of ours that no order states. */
function keysOf(
  reading: ColumnRead | undefined,
  text: string,
  word: string | null | undefined,
  wanted: readonly WantedColumn[],
): readonly string[] {
  const means = reading === undefined || reading.addsTo !== undefined ? [] : reading.means;
  const keys = means.filter((key) => wanted.some((one) => one.key === key));
  if (keys.length > 0 || word === null) return keys;
  const own = word === undefined || isOurs(word as OrderKey) || word.includes('+') ? undefined : word;
  const other = own ?? otherFigure(text, wanted);
  return other === undefined ? [] : [other];
}

function columnOf(
  at: number,
  heading: { readonly text: string; readonly id: string },
  looked: Looked,
  said: Corrections,
): SheetColumn {
  const { block, table, windows, wanted } = looked;
  const reading = table.columns.find((one) => one.at === at);
  const { text, id } = heading;
  const corrected = id in said;
  const keys = keysOf(reading, text, said[id], wanted);
  const [key] = keys;
  const values = windows.map(({ row }) => block.values[row]?.[at] ?? null).filter(filled);
  const needed = wanted.some((one) => one.needed && one.key === key);
  return {
    column: block.area.column + at,
    heading: text,
    id,
    reading,
    unit: isLengthKey(reading?.means[0] ?? 'room') ? reading?.unit : undefined,
    samples: [...new Set(values.map(shownValue))].slice(0, SAMPLES),
    key,
    keys,
    plain: !isOurs((key ?? '') as OrderKey) || (reading !== undefined && isPlain(reading, looked)),
    sure: reading?.sure ?? 'likely',
    corrected,
    doubts: reading === undefined ? [] : doubtsOf(reading, looked, corrected, needed),
  };
}

/** The user's word by column: a key, several joined by “+”, none. */
function saidBy(ids: readonly string[], said: Corrections): Map<number, readonly OrderKey[]> {
  const words = new Map<number, readonly OrderKey[]>();
  for (const [at, id] of ids.entries()) {
    const word = said[id];
    if (word === undefined) continue;
    words.set(
      at,
      word === null ? [] : word.split('+').filter((key): key is OrderKey => isOurs(key as OrderKey)),
    );
  }
  return words;
}

/** Reads a block: header, columns, rows. Undefined where no table of windows stands. */
export function readColumns(
  block: Block,
  wanted: readonly WantedColumn[],
  unit: Unit,
  said: Corrections = {},
  prefer?: number,
): ColumnsRead | undefined {
  const columns = block.area.columns;
  const orders = wanted.some(({ key }) => key === 'unitPrice');
  let table = readBlock(block, unit, prefer, new Map(), orders);
  if (table === undefined) return undefined;
  let headings = headingsOf(table, columns);
  let ids = saidIds(headings);
  const words = saidBy(ids, said);
  if (words.size > 0) {
    const header = block.area.row + (table.header[0] ?? 0);
    table = readBlock(block, unit, header, words, orders) ?? table;
    headings = headingsOf(table, columns);
    ids = saidIds(headings);
  }
  const windows = table.rows.filter(({ is }) => is === 'window');
  const looked: Looked = { block, table, windows, unit, wanted };
  return {
    block,
    header: { row: table.header[0] ?? 0, rows: table.header.length, headings },
    columns: headings.map((text, at) => columnOf(at, { text, id: ids[at] ?? '' }, looked, said)),
    lines: [...table.rows]
      .sort((one, other) => one.row - other.row)
      .map((read) => ({ row: block.area.row + read.row, kind: read.is, read })),
    table,
    notes: table.findings.flatMap(({ code, sentence }) => (OF_A_COLUMN.has(code) ? [] : [sentence])),
  };
}
