/** Past orders in a file: where the header is, however many titles stand above, and the rows below. */
import { basename, extname } from 'node:path';
import type { CellValue } from '../../book/book';
import type { CellIn } from '../../core/cell/fields';
import type { OrderTable } from '../../core/window/reader/order-rows';
import { findOrders, type OrdersFound, type OrdersLook } from '../../core/window/reader/orders';
import type { Trouble } from '../../core/window/reader/understand';
import { wordsAmong } from '../house-words';
import { sheetsIn, type NamedSheet } from '../sheets';
import { isFindings } from './settled';
import { doesNotUnpack, openArchive, openPartly } from '../xlsx/archive';
import { NotInRows } from '../xlsx/row-stream';
import { bytesOfText } from '../xlsx/text';
import { BrokenZip } from '../xlsx/zip';
import { Evidence, FIRST_ROWS } from './evidence';
import { LargeSheet } from './large-sheet';
import { csvBatches, csvBlocks, isInPieces, openCsv, type Csv } from '../csv/csv';
import { encodingOf } from '../csv/encoding';
import { counted, Problem } from '../problem';
import { Pieces, type Piece } from './pieces';
import { readWorkbook, type WorkbookFile, type WorksheetFile } from '../xlsx/workbook';

type Row = readonly CellIn[];

export interface OrdersFile {
  readonly columns: OrderTable;
  /** The last row of the header, counted from 1 as a spreadsheet counts. */
  readonly headerRow: number;
  /** Sentences about the file as it was found. */
  readonly notes: readonly string[];
  /** Rows below the header with their numbers, in batches. */
  readonly batches: AsyncIterable<readonly (readonly [number, Row])[]>;
  /** The first rows below the header. */
  readonly firstRows: readonly (readonly [number, Row])[];
  /** Of a text file only. */
  readonly first?: FirstLook;
}

const NO_ORDERS_SAY =
  'Its headings should say things like inside width, rod width, heading, fabric width, widths and yardage.';
/** Fewer known headings are no table of orders. */
const LEAST_COLUMNS = 3;

export function aboutHeader({ below, headerRows }: OrdersFound): string[] {
  const notes: string[] = [];
  const over = below - headerRows;
  if (over > 0)
    notes.push(`${counted(over, 'row')} above the header ${over === 1 ? 'is' : 'are'} passed over.`);
  if (headerRows === 2) notes.push('The header is two rows deep, and is read as one.');
  if (headerRows === 3) notes.push('The header is three rows deep, and is read as one.');
  return notes;
}

const noOrders = (path: string): Problem =>
  new Problem(`“${path}” holds no table of orders. ${NO_ORDERS_SAY}`);

const enough = (found: OrdersFound | Trouble): found is OrdersFound =>
  !('none' in found) && found.table.found.length >= LEAST_COLUMNS;

/** Figures of a text file are figures; what begins with 0 is a name. */
const PLAIN = /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?$/;

/** What was seen of a text file at the first look: plain data, from which any thread understands its columns. */
export interface FirstLook {
  readonly csv: Csv;
  readonly evidence: readonly (readonly string[])[];
  /** The first rows of the file. */
  readonly firstRows: readonly (readonly string[])[];
  readonly pieces: readonly Piece[];
}

async function lookAt(path: string): Promise<FirstLook> {
  const csv = await openCsv(path, await encodingOf(path));
  const evidence = new Evidence<readonly string[]>();
  const pieces = new Pieces();
  const firstRows: string[][] = [];
  for await (const block of csvBlocks(csv)) {
    for (let at = 0; at < block.count; at++) {
      evidence.see(() => block.row(at));
      if (firstRows.length < FIRST_ROWS) firstRows.push(block.row(at));
    }
    pieces.see(block);
  }
  return { csv, evidence: evidence.rows, firstRows, pieces: isInPieces(csv) ? pieces.all : [] };
}

export function ordersIn(
  { evidence, csv }: Pick<FirstLook, 'evidence' | 'csv'>,
  look: OrdersLook,
): OrdersFound {
  const rows = evidence.map((row) => row.map((text) => (PLAIN.test(text) ? Number(text) : text)));
  const found = findOrders(rows, look);
  if (!enough(found)) throw noOrders(csv.path);
  return found;
}

/** Rows below a row, with their numbers. */
export const rowsBelow = (rows: readonly Row[], below: number): (readonly [number, Row])[] =>
  rows.slice(below).map((row, at) => [below + at + 1, row] as const);

async function csvOrders(path: string, look: OrdersLook): Promise<OrdersFile> {
  const first = await lookAt(path);
  const found = ordersIn(first, look);
  const { says } = first.csv.encoding;
  async function* rest(below: number): AsyncGenerator<readonly (readonly [number, Row])[]> {
    let from = 0;
    for await (const block of csvBlocks(first.csv)) {
      const before = from;
      yield block
        .rows()
        .map((row, at) => [before + at + 1, row] as const)
        .filter(([at]) => at > below);
      from += block.count;
    }
  }
  return {
    columns: found.table,
    headerRow: found.below,
    notes: [...(says === undefined ? [] : [says]), ...aboutHeader(found)],
    batches: rest(found.below),
    firstRows: rowsBelow(first.firstRows, found.below),
    first,
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

function* parted<T>(rows: readonly T[]): Generator<readonly T[]> {
  for (let at = 0; at < rows.length; at += 512) yield rows.slice(at, at + 512);
}

/** A sheet as it is looked at, and how its rows come. */
interface OrdersSheet extends NamedSheet {
  readonly from?: LargeSheet;
}

function sheetOrders(
  file: WorkbookFile,
  large: readonly OrdersSheet[],
  path: string,
  look: OrdersLook,
): OrdersFile {
  const sheets = sheetsIn(file).map(
    (sheet): OrdersSheet => large.find(({ name }) => name === sheet.name) ?? sheet,
  );
  const words = look.words ?? wordsAmong(sheets, path);
  const tables = sheets.flatMap((sheet) => {
    if (isFindings(sheet.rows)) return [];
    const found = findOrders(sheet.rows, {
      ...look,
      merged: sheet.merged ?? [],
      ...(words !== undefined && { words }),
    });
    return enough(found) ? [{ sheet, found }] : [];
  });
  tables.sort((a, b) => b.found.table.found.length - a.found.table.found.length);
  const best = tables[0];
  if (best === undefined) throw noOrders(path);
  const { found, sheet } = best;
  const rows = sheet.rows.map((cells, at) => [at + 1, cells] as const).filter(([at]) => at > found.below);
  async function* batches(): AsyncGenerator<readonly (readonly [number, Row])[]> {
    for (const part of parted(rows)) {
      // Gives whoever watches a turn.
      await Promise.resolve();
      yield part;
    }
  }
  const notes = file.sheets.length > 1 ? [`The orders are read from sheet “${sheet.name}”.`] : [];
  return {
    columns: found.table,
    headerRow: found.below,
    notes: [...notes, ...aboutHeader(found)],
    batches: sheet.from?.rows(found.below) ?? batches(),
    firstRows: rows.slice(0, FIRST_ROWS),
  };
}

/** A larger sheet is read in pieces, twice: once to understand it, once for its rows. */
const LARGE = 8 * 1_048_576;
const SHEET = /^xl\/worksheets\/[^/]+\.xml$/i;
const NOTHING = bytesOfText('<worksheet><sheetData/></worksheet>');

async function largeOrders(path: string, look: OrdersLook, most: number): Promise<OrdersFile> {
  const { parts, packed } = await openPartly(path, ({ name, size }) => size > most && SHEET.test(name));
  for (const name of packed.keys()) parts.set(name, NOTHING);
  const file = readWorkbook(parts);
  const large: OrdersSheet[] = [];
  for (const { name, part } of file.sheets) {
    const entry = part === undefined ? undefined : packed.get(part);
    if (entry === undefined) continue;
    const from = new LargeSheet(entry, file);
    large.push({ name, from, ...(await from.looked()) });
  }
  return sheetOrders(file, large, path, look);
}

const TEXT_FILES: ReadonlySet<string> = new Set(['.csv', '.txt', '.tsv']);
export const isTextFile = (path: string): boolean => TEXT_FILES.has(extname(path).toLowerCase());

/** `large`: sheets of more bytes are read in pieces. */
export async function openOrders(path: string, look: OrdersLook, large = LARGE): Promise<OrdersFile> {
  if (isTextFile(path)) return csvOrders(path, look);
  try {
    return await largeOrders(path, look, large);
  } catch (thrown) {
    if (thrown instanceof BrokenZip) throw doesNotUnpack(path);
    if (!(thrown instanceof NotInRows)) throw thrown;
    return sheetOrders(readWorkbook(await openArchive(path)), [], path, look);
  }
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
