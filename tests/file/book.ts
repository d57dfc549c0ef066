/** Workbook files for tests: the golden ones, and small ones written on the spot. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { cellText, readAddress } from '../../src/book/address';
import type { CellValue } from '../../src/engine/workbook';
import { openArchive } from '../../src/file/xlsx/archive';
import type { Io } from '../../src/file/command';
import { readWorkbook, type WorkbookFile } from '../../src/file/xlsx/workbook';

export const golden = (name: string): string => fileURLToPath(new URL(`../books/${name}`, import.meta.url));
export const scratch = (): string => mkdtempSync(join(tmpdir(), 'hem-test-'));
export const opened = async (path: string): Promise<WorkbookFile> => readWorkbook(await openArchive(path));

/** Every filled cell by name: Quote!B4. */
export function shown(file: WorkbookFile): Map<string, CellValue> {
  return new Map(
    file.sheets.flatMap(({ name, seen }) =>
      seen.rows.flatMap(({ cells }) =>
        cells.map(({ row, column, value }) => [`${name}!${cellText(row, column)}`, value] as const),
      ),
    ),
  );
}

/** The formula of a cell as the file holds it. */
export function formulaAt(file: WorkbookFile, name: string): string | undefined {
  const at = readAddress(name);
  const sheet = file.sheets.find((one) => one.name === at?.sheet);
  return sheet?.seen.rows
    .find(({ row }) => row === at?.row)
    ?.cells.find(({ column }) => column === at?.column)?.formula?.text;
}

export interface Heard extends Io {
  readonly said: string[];
  readonly complained: string[];
}

export function listening(input?: string): Heard {
  const said: string[] = [];
  const complained: string[] = [];
  return {
    said,
    complained,
    out: (line) => said.push(line),
    err: (line) => complained.push(line),
    progress: () => undefined,
    input: () => (input === undefined ? undefined : Promise.resolve(input)),
  };
}

const SHEET = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';
const TYPES = 'http://schemas.openxmlformats.org/package/2006/content-types';
const KIND = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** The smallest workbook: one sheet, with these rows in it. */
export function smallBook(
  rows: string,
  given: { names?: string; settings?: string; parts?: Readonly<Record<string, string>> } = {},
): Uint8Array {
  const parts: Record<string, string> = {
    '[Content_Types].xml': `<Types xmlns="${TYPES}"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${KIND}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${KIND}.worksheet+xml"/></Types>`,
    '_rels/.rels': `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${SHEET}" xmlns:r="${OFFICE}">${given.settings ?? ''}<sheets><sheet name="One" sheetId="1" r:id="rId1"/></sheets>${given.names ?? ''}</workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${SHEET}"><sheetData>${rows}</sheetData></worksheet>`,
    ...given.parts,
  };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

/** The same workbook, saying of itself that its values are to be computed when it is opened. */
export function stale(path: string): Uint8Array {
  const parts = unzipSync(readFileSync(path));
  const xml = strFromU8(parts['xl/workbook.xml'] ?? new Uint8Array());
  const marked = xml.includes('<calcPr')
    ? xml.replace(/<calcPr[^>]*>/, '<calcPr fullCalcOnLoad="1"/>')
    : xml.replace('</workbook>', '<calcPr fullCalcOnLoad="1"/></workbook>');
  return zipSync({ ...parts, 'xl/workbook.xml': strToU8(marked) });
}
