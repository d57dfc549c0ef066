/** A plain .xlsx made from rows, and what LibreOffice computes of it; undefined where it is not installed. */
import { escaped } from '../book/markup';
import { withMark } from '../file/xlsx/dynamic';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { strToU8, zipSync } from 'fflate';

/** Text that begins with “=” is a formula. */
export type SheetCell = number | string | null;
/** A formula of ours as a spreadsheet program stores it, which may spill. */
export interface StoredCell {
  readonly stored: string;
}

/** A, B … Z, AA … of a column counted from 0. */
export function columnName(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : columnName(Math.floor(at / 26) - 1) + last;
}

function cellXml(cell: SheetCell | StoredCell, place: string): string {
  if (cell === null) return '';
  if (typeof cell === 'object')
    return `<c r="${place}" cm="1"><f t="array" ref="${place}">${escaped(cell.stored)}</f></c>`;
  if (typeof cell === 'number') return `<c r="${place}"><v>${cell}</v></c>`;
  if (cell.startsWith('=')) return `<c r="${place}"><f>${escaped(cell.slice(1))}</f></c>`;
  return `<c r="${place}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`;
}

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const OFFICE = 'http://schemas.openxmlformats.org';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

export function sheetFile(rows: readonly (readonly (SheetCell | StoredCell)[])[]): Uint8Array {
  const lines = rows.map((row, r) => {
    const cells = row.map((cell, c) => cellXml(cell, `${columnName(c)}${r + 1}`));
    return `<row r="${r + 1}">${cells.join('')}</row>`;
  });
  const parts = {
    '[Content_Types].xml': `<Types xmlns="${OFFICE}/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${TYPE}.worksheet+xml"/><Override PartName="/xl/metadata.xml" ContentType="${TYPE}.sheetMetadata+xml"/></Types>`,
    '_rels/.rels': `<Relationships xmlns="${OFFICE}/package/2006/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${OFFICE}/spreadsheetml/2006/main" xmlns:r="${OFFICE}/officeDocument/2006/relationships"><sheets><sheet name="Windows" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${OFFICE}/package/2006/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/officeDocument/2006/relationships/sheetMetadata" Target="metadata.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${OFFICE}/spreadsheetml/2006/main"><sheetData>${lines.join('')}</sheetData></worksheet>`,
  };
  const { bytes } = withMark(new Map(), undefined);
  return zipSync(
    {
      ...Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(XML + text)])),
      'xl/metadata.xml': bytes,
    },
    { level: 1 },
  );
}

/** Every digit of every cell, comma separated; our cells hold no comma and no quote. */
const EVERY_DIGIT = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false';

export interface Worked {
  readonly rows: readonly (readonly string[])[];
  /** Of processor time. */
  readonly seconds: number;
}

const WORKBOOK = 'xlsx:Calc MS Excel 2007 XML';

/** Seconds of processor time that LibreOffice needs to make a workbook of a workbook, all of it computed. */
export const convertedByLibreOffice = (file: Uint8Array): number | undefined =>
  byLibreOffice(file, WORKBOOK, () => undefined)?.seconds;

export function computedByLibreOffice(file: Uint8Array): Worked | undefined {
  const worked = byLibreOffice(file, EVERY_DIGIT, (folder) =>
    readFileSync(join(folder, 'windows.csv'), 'utf8').trimEnd(),
  );
  return worked && { rows: worked.read.split('\n').map((line) => line.split(',')), seconds: worked.seconds };
}

function byLibreOffice<T>(
  file: Uint8Array,
  to: string,
  read: (folder: string) => T,
): { readonly read: T; readonly seconds: number } | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'hemledger-'));
  try {
    const out = join(folder, 'out');
    writeFileSync(join(folder, 'windows.xlsx'), file);
    const { status, stdout } = spawnSync(
      // The shell's `times` tells the processor time its children took, on its second line.
      'sh',
      [
        '-c',
        '"$@" >/dev/null 2>&1; status=$?; times; exit $status',
        'sh',
        'soffice',
        `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`,
        '--headless',
        '--norestore',
        '--convert-to',
        to,
        '--outdir',
        out,
        join(folder, 'windows.xlsx'),
      ],
      { timeout: 300_000, encoding: 'utf8' },
    );
    if (status !== 0) return undefined;
    const seconds = [...(stdout.split('\n')[1] ?? '').matchAll(/(\d+)m([\d.]+)s/g)]
      .map(([, minutes, rest]) => Number(minutes) * 60 + Number(rest))
      .reduce((sum, one) => sum + one, 0);
    return { read: read(out), seconds };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
