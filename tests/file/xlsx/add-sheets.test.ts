import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from '@cj-tech-master/excelts';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { laidOut, tableDraft, titled, together, type Job } from '../../../src/book/sheets/draft';
import { INCHES } from '../../../src/core/exact/unit';
import { addSheets, namesTaken } from '../../../src/file/xlsx/add-sheets';
import { zipped } from '../../../src/file/xlsx/archive';
import { readWorkbook, type WorkbookFile } from '../../../src/file/xlsx/workbook';
import { golden, opened, scratch, shown, smallBook } from '../book';

const JOB: Job = { unit: INCHES, paper: 'a4', windows: 1, sheet: (base) => base, name: (base) => base };
const SHEET = 'Tom’s & “list”';
const DRAFT = together(
  titled(SHEET, 'A list', '=1+1 stays text'),
  tableDraft(JOB, {
    sheet: SHEET,
    name: 'A_list',
    row: 3,
    rows: 3,
    columns: [
      { key: 'what', heading: 'what <is>', role: 'output', cells: ['a', '', 'b & c'], note: 'a "remark"' },
      {
        key: 'long',
        heading: 'long',
        role: 'input',
        cells: [1.5, null, -2],
        format: '0.00 "in"',
        name: 'Long_ones',
      },
      { key: 'twice', heading: 'twice', role: 'working', formula: (cell) => `=2*${cell('long')}` },
    ],
  }),
  laidOut(JOB, SHEET, { header: 3, frozenColumns: 1, landscape: true, widths: [12, 8] }),
);

const fileOf = (bytes: Uint8Array): WorkbookFile => readWorkbook(new Map(Object.entries(unzipSync(bytes))));
const joined = (file: WorkbookFile): Uint8Array => zipped(addSheets(file, DRAFT));

/** Read back by a library that shares no line with ours. */
async function readBack(bytes: Uint8Array) {
  const book = new Workbook();
  const path = join(scratch(), 'joined.xlsx');
  writeFileSync(path, bytes);
  await book.xlsx.readFile(path);
  return book;
}

const PREFIXED = {
  'xl/workbook.xml':
    '<x:workbook xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><x:sheets><x:sheet name="One" sheetId="7" r:id="rId1"/></x:sheets><x:definedNames/><x:calcPr calcId="1"/></x:workbook>',
};

describe('sheets joined to a workbook', () => {
  it.each<[string, WorkbookFile]>([
    ['of one plain sheet, without styles', fileOf(smallBook('<row r="1"><c r="A1"><v>3</v></c></row>'))],
    [
      'with names of its own',
      fileOf(
        smallBook('', {
          names: '<definedNames><definedName name="Mine">One!$A$1</definedName></definedNames>',
        }),
      ),
    ],
    ['that writes its tags with a prefix', fileOf(smallBook('', { parts: PREFIXED }))],
  ])('%s, are what the draft says', async (_, file) => {
    const bytes = joined(file);
    const book = await readBack(bytes);
    expect(book.worksheets.map(({ name }) => name)).toEqual([...file.sheets.map(({ name }) => name), SHEET]);
    // Names stand nowhere but on their own shelf: Excel would mend such a file.
    const workbook = new TextDecoder().decode(unzipSync(bytes)['xl/workbook.xml']);
    expect(workbook).toMatch(/<(\w+:)?definedNames>.*name="Long_ones".*<\/(\w+:)?definedNames>/s);
    expect(workbook.match(/definedNames\/>/)).toBeNull();
    const sheet = book.getWorksheet(SHEET)!;
    expect([sheet.getCell('A1').value, sheet.getCell('A2').value]).toEqual(['A list', '=1+1 stays text']);
    expect(['A5', 'A6', 'A7', 'B5', 'B6', 'B7'].map((at) => sheet.getCell(at).value)).toEqual([
      'a',
      null,
      'b & c',
      1.5,
      null,
      -2,
    ]);
    expect([sheet.getCell('C5').formula, sheet.getCell('C7').formula]).toEqual(['2*B5', '2*B7']);
    expect(sheet.getCell('B5').numFmt).toBe('0.00 "in"');
    expect(sheet.getCell('A4').font?.bold).toBe(true);
    expect(sheet.getCell('B5').fill).toMatchObject({ fgColor: { argb: 'FFFFF8DC' } });
    expect(sheet.views[0]).toMatchObject({ state: 'frozen', xSplit: 1, ySplit: 4 });
    expect(sheet.pageSetup).toMatchObject({ orientation: 'landscape', paperSize: 9 });
    const again = fileOf(bytes);
    expect(again.names.find(({ name }) => name === 'Long_ones')?.refersTo).toBe(`'${SHEET}'!$B$5:$B$7`);
    expect(again.tables.map(({ name, ref, columns }) => [name, ref, columns])).toEqual([
      ['A_list', 'A4:C7', ['what <is>', 'long', 'twice']],
    ]);
    for (const { name } of file.names) expect(again.names.map((one) => one.name)).toContain(name);
  });

  it('leave every cell, name, table and style that was there, and number their tables on', async () => {
    const file = await opened(golden('floor.xlsx'));
    const again = fileOf(joined(file));
    const cells = shown(again);
    for (const [place, value] of shown(file)) expect([place, cells.get(place)]).toEqual([place, value]);
    for (const [part, bytes] of file.parts)
      if (part.includes('worksheets') || part.includes('tables'))
        expect(again.parts.get(part)).toEqual(bytes);
    const ids = again.tables.map(
      ({ part }) => / id="(\d+)"/.exec(Buffer.from(again.parts.get(part)!).toString())?.[1],
    );
    expect(new Set(ids).size).toBe(ids.length);
    // What was joined to the styles stands after what they had.
    const [had, has] = [file, again].map(({ parts }) => {
      const xml = Buffer.from(parts.get('xl/styles.xml')!).toString();
      return [...xml.matchAll(/<xf [^>]*?(?:\/>|>.*?<\/xf>)/g)].map(([one]) => one);
    });
    expect(has!.length).toBeGreaterThan(had!.length);
    for (const one of had!) expect(has).toContain(one);
  });

  it('keep clear of the names that are taken', async () => {
    const taken = namesTaken(fileOf(joined(await opened(golden('floor.xlsx')))));
    expect(taken.tables.map(({ name }) => name)).toContain('A_list');
    expect(taken.names.map(({ name }) => name)).toContain('Long_ones');
    expect(taken.sheets.map(({ name }) => name)).toContain(SHEET);
  });

  it('are refused where the workbook’s structure is protected', () => {
    const file = fileOf(smallBook('', { settings: '<workbookProtection lockStructure="1"/>' }));
    expect(() => addSheets(file, DRAFT)).toThrow('structure is protected');
    const open = fileOf(smallBook('', { settings: '<workbookProtection/>' }));
    expect(addSheets(open, DRAFT).has('xl/worksheets/sheet2.xml')).toBe(true);
  });
});
