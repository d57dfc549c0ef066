/** A sheet of a file as the reader of tables takes it: all rows from A1, merged ranges, cells that hold dates. */
import { basename } from 'node:path';
import { readAddress } from '../book/address';
import type { CellIn } from '../core/cell/fields';
import type { SheetIn } from '../core/window/reader/read';
import { isTextFile } from './audit/orders';
import { csvBatches } from './csv/csv';
import { encodingOf } from './csv/encoding';
import { Problem, USAGE } from './problem';
import { openArchive } from './xlsx/archive';
import { dateStyles } from './xlsx/dates';
import { readWorkbook, type WorkbookFile, type WorksheetFile } from './xlsx/workbook';

export interface NamedSheet extends SheetIn {
  readonly name: string;
}

const SINCE_1904 = 1_462;

/** Every row up to the last that holds something. */
export function sheetIn(sheet: WorksheetFile, dates: ReadonlySet<string>, from1904: boolean): NamedSheet {
  const rows: CellIn[][] = [];
  for (const { row, cells } of sheet.seen.rows) {
    const values: CellIn[] = [];
    for (const { column, value, style } of cells) {
      while (values.length < column) values.push(null);
      values[column] =
        typeof value === 'number' && style !== undefined && dates.has(style)
          ? { day: from1904 ? value + SINCE_1904 : value }
          : value;
    }
    while (rows.length < row) rows.push([]);
    rows[row] = values;
  }
  return { name: sheet.name, rows, merged: sheet.seen.merged.flatMap((text) => readAddress(text) ?? []) };
}

export const sheetsIn = (file: WorkbookFile): NamedSheet[] => {
  const dates = dateStyles(file);
  return file.sheets.map((sheet) => sheetIn(sheet, dates, file.from1904));
};

/** A plain figure of a text file; what begins with 0 is a name. */
const PLAIN = /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?$/;
const asCell = (text: string): CellIn => (PLAIN.test(text) ? Number(text) : text);

/** The sheets of a workbook, or a text file as its one sheet. */
export async function openSheets(path: string, named?: string): Promise<readonly NamedSheet[]> {
  if (isTextFile(path)) {
    const rows: CellIn[][] = [];
    for await (const batch of csvBatches(path, await encodingOf(path)))
      for (const row of batch) rows.push(row.map(asCell));
    return [{ name: basename(path), rows }];
  }
  const sheets = sheetsIn(readWorkbook(await openArchive(path)));
  if (named === undefined) return sheets;
  const wanted = sheets.filter(({ name }) => name.toLowerCase() === named.trim().toLowerCase());
  if (wanted.length > 0) return wanted;
  const names = sheets.map(({ name }) => `“${name}”`).join(', ');
  throw new Problem(`“${path}” has no sheet “${named}”. It has ${names}.`, USAGE);
}
