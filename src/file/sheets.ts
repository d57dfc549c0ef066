/** The sheets of a workbook as the reader of tables takes them: all rows from A1, merged ranges, days. */
import { readAddress } from '../book/address';
import type { CellIn } from '../core/cell/fields';
import type { SheetIn } from '../core/window/reader/read';
import { dateStyles } from './xlsx/dates';
import type { CellSeen } from './xlsx/sheet';
import type { WorkbookFile, WorksheetFile } from './xlsx/workbook';

export interface NamedSheet extends SheetIn {
  readonly name: string;
}

const SINCE_1904 = 1_462;

/** One row's cells from the first column on. */
export function cellsIn(cells: readonly CellSeen[], dates: ReadonlySet<string>, from1904: boolean): CellIn[] {
  const values: CellIn[] = [];
  for (const { column, value, style } of cells) {
    while (values.length < column) values.push(null);
    values[column] =
      typeof value === 'number' && style !== undefined && dates.has(style)
        ? { day: from1904 ? value + SINCE_1904 : value }
        : value;
  }
  return values;
}

/** Every row up to the last that holds something. */
export function sheetIn(sheet: WorksheetFile, dates: ReadonlySet<string>, from1904: boolean): NamedSheet {
  const rows: CellIn[][] = [];
  for (const { row, cells } of sheet.seen.rows) {
    while (rows.length < row) rows.push([]);
    rows[row] = cellsIn(cells, dates, from1904);
  }
  return { name: sheet.name, rows, merged: sheet.seen.merged.flatMap((text) => readAddress(text) ?? []) };
}

export const sheetsIn = (file: WorkbookFile): NamedSheet[] => {
  const dates = dateStyles(file);
  return file.sheets.map((sheet) => sheetIn(sheet, dates, file.from1904));
};
