/** A sheet of a file as the reader of tables takes it: all rows from A1, merged ranges, cells that hold dates. */
import { basename } from 'node:path';
import type { CellIn } from '../core/cell/fields';
import { isTextFile } from './audit/orders';
import { csvBatches } from './csv/csv';
import { encodingOf } from './csv/encoding';
import { Problem, USAGE } from './problem';
import { openArchive } from './xlsx/archive';
import { sheetsIn, type NamedSheet } from './sheets';
import { readWorkbook } from './xlsx/workbook';

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
