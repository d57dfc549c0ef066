/** The windows of a workbook: the first table whose headings are known, and the house rules beside it. */
import { Refusal } from '../../core/cell/answer';
import { findColumns, readWindow, type Found } from '../../core/window/columns';
import { WindowWork } from '../../core/window/job';
import { readHouse, type House } from '../../core/house/house';
import { readAddress } from '../../book/address';
import { PLACE_HEADINGS, placeOf, type FloorWindow } from '../../book/floor/floor';
import type { CellValue } from '../../engine/workbook';
import { Problem } from '../problem';
import type { WorkbookFile, WorksheetFile } from '../xlsx/workbook';

/** So many known headings in one row head a table of windows. */
const ENOUGH = 4;

export interface UnreadRow {
  readonly sheet: string;
  readonly row: number;
  readonly sentence: string;
}

export interface WindowsRead {
  readonly sheet: string;
  readonly windows: readonly WindowWork[];
  /** The same, each with its sheet row, type and floor. */
  readonly placed: readonly FloorWindow[];
  readonly unread: readonly UnreadRow[];
  readonly house: House;
}

export type Rows = ReadonlyMap<number, readonly CellValue[]>;

/** A sheet's values by row, as shown. */
export function rowsOf(sheet: WorksheetFile): Rows {
  const rows = new Map<number, CellValue[]>();
  for (const { row, cells } of sheet.seen.rows) {
    const values: CellValue[] = [];
    for (const { column, value } of cells) values[column] = value;
    rows.set(
      row,
      Array.from(values, (value) => value ?? null),
    );
  }
  return rows;
}

/** The values of a defined name, by its name or what it ends in. */
function namedRange(file: WorkbookFile, like: RegExp): readonly (readonly CellValue[])[] | null {
  const name = file.names.find((one) => like.test(one.name));
  const area = name === undefined ? undefined : readAddress(name.refersTo.replace(/\$/g, ''));
  const sheet = file.sheets.find((one) => one.name === area?.sheet);
  if (area === undefined || sheet === undefined) return null;
  const rows = rowsOf(sheet);
  return Array.from({ length: area.rows }, (_, at) =>
    Array.from(
      { length: area.columns },
      (__, column) => rows.get(area.row + at)?.[area.column + column] ?? null,
    ),
  );
}

function headOf(rows: Rows): { row: number; found: readonly Found[] } | undefined {
  for (const [row, cells] of rows) {
    const known = knownIn(cells);
    if (known.length >= ENOUGH) return { row, found: known };
  }
  return undefined;
}

/** Headings known in a row; two of one meaning are no header row of ours. */
function knownIn(cells: readonly CellValue[]): readonly Found[] {
  try {
    return findColumns(cells.map((cell) => (typeof cell === 'string' ? cell : null)));
  } catch (thrown) {
    if (thrown instanceof Refusal) return [];
    throw thrown;
  }
}

/** What a defined name of one cell shows. */
export const namedValue = (file: WorkbookFile, name: string): CellValue =>
  namedRange(file, new RegExp(`^${name}$`, 'i'))?.[0]?.[0] ?? null;

/** Reads the windows of a workbook whose formulas are computed. */
export function readWindows(file: WorkbookFile, path: string): WindowsRead {
  const house = readHouse(namedRange(file, /rules$/i));
  for (const sheet of file.sheets) {
    const rows = rowsOf(sheet);
    const head = headOf(rows);
    if (head === undefined) continue;
    const names = Object.fromEntries(head.found.map(({ key, heading }) => [key, heading]));
    const placed: FloorWindow[] = [];
    const [type, floor] = [PLACE_HEADINGS.type, PLACE_HEADINGS.floor].map((like) =>
      (rows.get(head.row) ?? []).findIndex((cell) => typeof cell === 'string' && like.test(cell.trim())),
    );
    const said = (cells: readonly CellValue[], at = -1): string => String(cells[at] ?? '').trim();
    const unread: UnreadRow[] = [];
    for (let row = head.row + 1; rows.has(row); row++) {
      const cells = rows.get(row) ?? [];
      const filled = head.found.filter(({ at }) => (cells[at] ?? null) !== null && cells[at] !== '');
      if (filled.length < ENOUGH) break;
      try {
        const work = new WindowWork(readWindow(cells, head.found, house.unit), house.rules, names);
        work.cloth();
        const place = placeOf(work.window.room ?? '', said(cells, type), said(cells, floor));
        placed.push({ row, work, ...place });
      } catch (thrown) {
        if (!(thrown instanceof Refusal)) throw thrown;
        unread.push({ sheet: sheet.name, row: row + 1, sentence: thrown.finding.sentence });
      }
    }
    return { sheet: sheet.name, windows: placed.map(({ work }) => work), placed, unread, house };
  }
  throw new Problem(
    `“${path}” holds no table of windows. Its headings should say things like opening, measured height, heading and fabric width.`,
  );
}
