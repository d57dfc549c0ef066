/** The windows of a workbook: the first table whose headings are known, and the house rules beside it. */
import { Refusal } from '../../core/cell/answer';
import type { Finding } from '../../core/cell/answer';
import { headingsByKey, windowOfRow } from '../../core/window/reader/as-window';
import { cellOf } from '../../core/window/reader/cells';
import { readTable, type TableRead } from '../../core/window/reader/read';
import type { HouseWords } from '../../core/window/reader/house-words';
import type { Corrections } from '../../core/window/reader/understand';
import { WindowWork } from '../../core/window/job';
import type { Money } from '../../core/exact/money';
import { readHouse, type House } from '../../core/house/house';
import { readAddress } from '../../book/address';
import { noWindowsIn } from '../../book/no-windows';
import { PLACE_HEADINGS, placeOf, type FloorWindow } from '../../book/floor/floor';
import type { CellValue } from '../../engine/workbook';
import { Problem } from '../problem';
import { wordsAmong } from '../house-words';
import { sheetsIn, type NamedSheet } from '../sheets';
import type { WorkbookFile, WorksheetFile } from '../xlsx/workbook';

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
  /** What is taken, asked and assumed about the table itself. */
  readonly reading: readonly Finding[];
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

/** What a defined name of one cell shows. */
export const namedValue = (file: WorkbookFile, name: string): CellValue =>
  namedRange(file, new RegExp(`^${name}$`, 'i'))?.[0]?.[0] ?? null;

/** The windows of one sheet’s table. */
function windowsOf(sheet: NamedSheet, read: TableRead, house: House): WindowsRead {
  const names = headingsByKey(read.columns);
  const placed: FloorWindow[] = [];
  const unread: UnreadRow[] = [];
  const placeAt = (like: RegExp): number =>
    read.columns.find(({ means, heading }) => means.length === 0 && like.test(heading.trim()))?.at ?? -1;
  const [type, floor] = [placeAt(PLACE_HEADINGS.type), placeAt(PLACE_HEADINGS.floor)];
  for (const one of read.rows) {
    if (one.is !== 'window') continue;
    const cells = (sheet.rows[one.row] ?? []).map(cellOf);
    const said = (at: number): string =>
      typeof cells[at] === 'object' ? '' : String(cells[at] ?? '').trim();
    try {
      const work = new WindowWork(windowOfRow(one, cells, read.columns, house.unit), house.rules, names);
      work.laid();
      placed.push({ row: one.row, work, ...placeOf(work.window.room ?? '', said(type), said(floor)) });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      unread.push({ sheet: sheet.name, row: one.row + 1, sentence: thrown.finding.sentence });
    }
  }
  const windows = placed.map(({ work }) => work);
  return { sheet: sheet.name, windows, placed, unread, house, reading: read.findings };
}

/** Reads the windows of a workbook whose formulas are computed: the first sheet that holds a table of them. */
/** `spares`: asked for instead of the house's share. */
export function readWindows(
  file: WorkbookFile,
  path: string,
  { said, words }: { readonly said?: Corrections | undefined; readonly words?: HouseWords | undefined } = {},
  spares?: Money,
): WindowsRead {
  const own = readHouse(namedRange(file, /rules$/i));
  const house = spares === undefined ? own : { ...own, rules: { ...own.rules, spareWindows: spares } };
  const sheets = sheetsIn(file);
  const known = words ?? wordsAmong(sheets, path);
  for (const sheet of sheets) {
    const read = readTable(sheet, {
      unit: house.unit,
      ...(said !== undefined && { said }),
      ...(known !== undefined && { words: known }),
    });
    if ('columns' in read && read.none === undefined) return windowsOf(sheet, read, house);
  }
  throw new Problem(noWindowsIn(path));
}
