/** Past orders in a file: where the header is, however many titles stand above, and the rows below. */
import { basename, extname } from 'node:path';
import type { Area } from '../../book/address';
import { readAddress } from '../../book/address';
import type { Block, CellValue } from '../../book/book';
import { findHeader, type Named } from '../../book/header';
import { MEANINGS } from '../../core/window/meanings';
import { orderColumns, type OrderColumns } from '../../core/window/order';
import type { Unit } from '../../core/exact/unit';
import { openArchive } from '../xlsx/archive';
import { csvBatches } from '../csv/csv';
import { encodingOf } from '../csv/encoding';
import { counted, Problem } from '../problem';
import { readWorkbook, type WorkbookFile, type WorksheetFile } from '../xlsx/workbook';

type Row = readonly CellValue[];

export interface OrdersFile {
  readonly columns: OrderColumns;
  /** The last row of the header, counted from 1 as a spreadsheet counts. */
  readonly headerRow: number;
  /** Sentences about the file as it was found. */
  readonly notes: readonly string[];
  /** Rows below the header with their numbers, in batches. */
  readonly batches: AsyncIterable<readonly (readonly [number, Row])[]>;
}

const NAMED: readonly Named[] = MEANINGS;
/** Fewer known headings are no table of orders. */
const LEAST_COLUMNS = 3;
/** So many known headings in one row are its header. */
const SURELY = 6;
const TOP = 60;

function block(rows: readonly Row[], merged: readonly Area[]): Block {
  const columns = rows.reduce((most, row) => Math.max(most, row.length), 1);
  const blank = (of: null | string): (null | string)[][] =>
    rows.map(() => Array.from({ length: columns }, () => of));
  return {
    area: { sheet: '', row: 0, column: 0, rows: rows.length, columns },
    values: rows.map((row) => Array.from({ length: columns }, (_, at) => row[at] ?? null)),
    formulas: blank(null),
    formats: [],
    merged,
    hiddenRows: [],
    table: undefined,
    protected: false,
  };
}

interface Head {
  readonly columns: OrderColumns;
  /** First row below it, from 0. */
  readonly below: number;
  readonly rows: 1 | 2;
}

/** The header among the first rows; merged groups over it are read into its headings. */
function headOf(rows: readonly Row[], merged: readonly Area[], unit: Unit): Head | undefined {
  // Where a row's headings are all known word for word, nothing has to be guessed.
  for (const [at, row] of rows.entries()) {
    if (row.some((cell) => typeof cell !== 'string' || cell === '')) continue;
    const columns = orderColumns(row, unit);
    if (columns.found.length >= SURELY) return { columns, below: at + 1, rows: 1 };
  }
  const header = findHeader(block(rows, merged), NAMED);
  if (header === undefined) return undefined;
  const joined = orderColumns(header.headings, unit);
  const below = header.row + header.rows;
  if (header.rows === 1) return { columns: joined, below, rows: 1 };
  const lower = orderColumns(rows[header.row + 1] ?? [], unit);
  return { columns: lower.found.length > joined.found.length ? lower : joined, below, rows: 2 };
}

function aboutHeader(head: Head): string[] {
  const notes: string[] = [];
  const over = head.below - head.rows;
  if (over > 0)
    notes.push(`${counted(over, 'row')} above the header ${over === 1 ? 'is' : 'are'} passed over.`);
  if (head.rows === 2) notes.push('The header is two rows deep, and is read as one.');
  return notes;
}

const noOrders = (path: string): Problem =>
  new Problem(
    `“${path}” holds no table of orders. Its headings should say things like inside width, rod width, heading, fabric width, widths and yardage.`,
  );

async function csvOrders(path: string, unit: Unit): Promise<OrdersFile> {
  const encoding = await encodingOf(path);
  const batches = csvBatches(path, encoding);
  const top: string[][] = [];
  while (top.length < TOP) {
    const { value, done } = await batches.next();
    if (done === true) break;
    top.push(...value);
  }
  const head = headOf(top.slice(0, TOP), [], unit);
  if (head === undefined || head.columns.found.length < LEAST_COLUMNS) throw noOrders(path);
  const { below } = head;
  async function* rest(): AsyncGenerator<readonly (readonly [number, Row])[]> {
    yield top.slice(below).map((row, at) => [below + at + 1, row] as const);
    let from = top.length;
    for await (const batch of batches) {
      const first = from;
      yield batch.map((row, at) => [first + at + 1, row] as const);
      from += batch.length;
    }
  }
  return {
    columns: head.columns,
    headerRow: below,
    notes: [...(encoding.says === undefined ? [] : [encoding.says]), ...aboutHeader(head)],
    batches: rest(),
  };
}

/** A sheet's rows by number, as their cells show them. */
export function sheetRows({ seen }: WorksheetFile): [number, Row][] {
  return seen.rows.map(({ row, cells }) => {
    const values: CellValue[] = [];
    for (const { column, value } of cells) values[column] = value;
    return [row, Array.from(values, (value) => value ?? null)];
  });
}

function sheetHead(sheet: WorksheetFile, unit: Unit): { head: Head; rows: [number, Row][] } | undefined {
  const rows = sheetRows(sheet);
  const top: Row[] = [];
  for (const [row, cells] of rows) if (row < TOP) top[row] = cells;
  const merged = sheet.seen.merged.flatMap((text) => readAddress(text) ?? []);
  const head = headOf(
    Array.from(top, (row) => row ?? []),
    merged,
    unit,
  );
  return head === undefined ? undefined : { head, rows };
}

function* parted<T>(rows: readonly T[]): Generator<readonly T[]> {
  for (let at = 0; at < rows.length; at += 512) yield rows.slice(at, at + 512);
}

function sheetOrders(file: WorkbookFile, path: string, unit: Unit): OrdersFile {
  const heads = file.sheets.flatMap((sheet) => {
    const found = sheetHead(sheet, unit);
    return found === undefined ? [] : [{ sheet, ...found }];
  });
  heads.sort((a, b) => b.head.columns.found.length - a.head.columns.found.length);
  const best = heads[0];
  if (best === undefined || best.head.columns.found.length < LEAST_COLUMNS) throw noOrders(path);
  const { head, rows, sheet } = best;
  const dates = head.columns.found.filter(({ key }) => key === 'date').map(({ at }) => at);
  const since1904 = (cells: Row): Row =>
    file.from1904
      ? cells.map((cell, at) => (dates.includes(at) && typeof cell === 'number' ? cell + 1_462 : cell))
      : cells;
  async function* batches(): AsyncGenerator<readonly (readonly [number, Row])[]> {
    for (const part of parted(rows.filter(([row]) => row >= head.below))) {
      // Gives whoever watches a turn.
      await Promise.resolve();
      yield part.map(([row, cells]) => [row + 1, since1904(cells)] as const);
    }
  }
  const notes = file.sheets.length > 1 ? [`The orders are read from sheet “${sheet.name}”.`] : [];
  return {
    columns: head.columns,
    headerRow: head.below,
    notes: [...notes, ...aboutHeader(head)],
    batches: batches(),
  };
}

const TEXT_FILES: ReadonlySet<string> = new Set(['.csv', '.txt', '.tsv']);
export const isTextFile = (path: string): boolean => TEXT_FILES.has(extname(path).toLowerCase());

export async function openOrders(path: string, unit: Unit): Promise<OrdersFile> {
  if (isTextFile(path)) return csvOrders(path, unit);
  return sheetOrders(readWorkbook(await openArchive(path)), path, unit);
}

/** All the rows of a small file, sheet by sheet: house rules, a price list. */
export async function smallTables(path: string): Promise<readonly { name: string; rows: readonly Row[] }[]> {
  if (!isTextFile(path)) {
    const file = readWorkbook(await openArchive(path));
    return file.sheets.map((sheet) => ({
      name: sheet.name,
      rows: sheetRows(sheet).map(([, cells]) => cells),
    }));
  }
  const rows: string[][] = [];
  for await (const batch of csvBatches(path, await encodingOf(path))) rows.push(...batch);
  return [{ name: basename(path), rows }];
}
