/** Packages with something missing or wrong in them: a sentence each, never a workbook without formulas. */
import { unzipSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { entriesOf, unpacked } from '../../../src/file/xlsx/zip';
import { readWorkbook } from '../../../src/file/xlsx/workbook';
import { smallBook } from '../book';
import DAMAGED from './damaged.json';

const ROW = '<row r="1"><c r="A1"><v>72</v></c></row>';
const whole = (): Map<string, Uint8Array> => new Map(Object.entries(unzipSync(smallBook(ROW))));

it('a whole one is read', () => {
  expect(readWorkbook(whole()).sheets.map(({ name, seen }) => [name, seen.rows[0]?.cells[0]?.value])).toEqual(
    [['One', 72]],
  );
});

describe('a sentence that names the part answers', () => {
  it.each(DAMAGED)('$what', ({ part, xml, says }) => {
    const parts = whole();
    expect(parts.has(part)).toBe(true);
    if (xml === null) parts.delete(part);
    else parts.set(part, strToU8(xml));
    let said = '';
    try {
      readWorkbook(parts);
    } catch (thrown) {
      said = thrown instanceof Error ? thrown.message : '';
    }
    expect(said.startsWith(says), said).toBe(true);
    expect(said).toMatch(/(?:Open it in a spreadsheet program, save it .*|restore it from a backup\.)$/);
  });
});

it('cells that do not say where they stand follow one another, whatever else they say', () => {
  const parts = whole();
  parts.set(
    'xl/worksheets/sheet1.xml',
    strToU8('<worksheet><sheetData><row><c r="72"><v>1</v></c><c><v>2</v></c></row></sheetData></worksheet>'),
  );
  const [sheet] = readWorkbook(parts).sheets;
  expect(sheet?.seen.rows[0]?.cells.map(({ row, column, value }) => [row, column, value])).toEqual([
    [0, 0, 1],
    [0, 1, 2],
  ]);
});

it.each([
  ['Worksheets', false],
  ['Arbeitsblätter', true],
])('a list of sheets headed “%s” was saved in another language: %s', (heading, elsewhere) => {
  const parts = new Map(entriesOf(smallBook('')).map((entry) => [entry.name, unpacked(entry)]));
  const xml = `<Properties><HeadingPairs><vt:vector><vt:variant><vt:lpstr>${heading}</vt:lpstr></vt:variant></vt:vector></HeadingPairs></Properties>`;
  parts.set('docProps/app.xml', new TextEncoder().encode(xml));
  expect(readWorkbook(parts).elsewhere).toBe(elsewhere);
});
