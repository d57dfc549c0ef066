import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellText } from '../../../src/book/address';
import type { CellValue } from '../../../src/engine/workbook';
import { patchSheet, type CellWrite } from '../../../src/file/xlsx/patch';
import { readSheet } from '../../../src/file/xlsx/sheet';

const sheet = (rows: string, before = ''): string =>
  `<worksheet>${before}<sheetData>${rows}</sheetData><pageMargins/></worksheet>`;
/** Read and written in pieces that end anywhere. */
const pieces = (xml: string): string[] => xml.match(/[\s\S]{1,7}/gu) ?? [];
const patched = (xml: string, writes: readonly CellWrite[]): string =>
  [...patchSheet(pieces(xml), 'part', readSheet(pieces(xml), 'part', []), writes)].join('');
const write = (row: number, column: number, value: CellValue): CellWrite => ({ row, column, value });

describe('a cell that stands', () => {
  it.each<[string, string, CellValue, string]>([
    ['a number', '<c r="A1" s="4"><f>B1</f><v>1</v></c>', 2.5, '<c r="A1" s="4"><f>B1</f><v>2.5</v></c>'],
    ['text', '<c r="A1"><f>B1</f></c>', 'a<b', '<c r="A1" t="str"><f>B1</f><v>a&lt;b</v></c>'],
    ['TRUE', '<c r="A1" t="str"><f>B1</f><v>x</v></c>', true, '<c r="A1" t="b"><f>B1</f><v>1</v></c>'],
    ['an error', '<c r="A1"><f>B1</f></c>', '#N/A', '<c r="A1" t="e"><f>B1</f><v>#N/A</v></c>'],
    [
      'a newer error, as text',
      '<c r="A1"><f>B1</f></c>',
      '#CALC!',
      '<c r="A1" t="str"><f>B1</f><v>#CALC!</v></c>',
    ],
    ['nothing, its look kept', '<c r="A1" s="4"><v>1</v></c>', null, '<c r="A1" s="4"/>'],
    ['a control sign', '<c r="A1"><f>B1</f></c>', 'a\rb', '<c r="A1" t="str"><f>B1</f><v>a_x000D_b</v></c>'],
    [
      'a shared formula’s, to the letter',
      '<c r="A1"><f t="shared" ref="A1:A9" si="0">B1&gt;"x"</f><v>1</v></c>',
      2,
      '<c r="A1"><f t="shared" ref="A1:A9" si="0">B1&gt;"x"</f><v>2</v></c>',
    ],
    [
      'a follower’s',
      '<c r="A1"><f t="shared" si="0"/><v>1</v></c>',
      2,
      '<c r="A1"><f t="shared" si="0"/><v>2</v></c>',
    ],
    [
      'beside an extension',
      '<c r="A1"><f>B1</f><v>1</v><extLst><ext/></extLst></c>',
      2,
      '<c r="A1"><f>B1</f><v>2</v><extLst><ext/></extLst></c>',
    ],
  ])('is given %s', (_, was, value, becomes) => {
    const xml = (cell: string): string => sheet(`<row r="1" ht="20">${cell}<c r="C1"><v>9</v></c></row>`);
    expect(patched(xml(was), [write(0, 0, value)])).toBe(xml(becomes));
  });

  it('is given a formula that may spill', () => {
    expect(
      patched(sheet('<row r="1"><c r="A1" s="2"><f>HEM.X("a")</f></c></row>'), [
        { row: 0, column: 0, value: 3, spilling: { text: '_xldudf_HEM_X("a")', ref: 'A1:A2', mark: '4' } },
      ]),
    ).toBe(
      sheet(
        '<row r="1"><c r="A1" s="2" cm="4"><f t="array" ref="A1:A2">_xldudf_HEM_X(&quot;a&quot;)</f><v>3</v></c></row>',
      ),
    );
  });
});

describe('a cell that was missing', () => {
  it('is put in its place among the others', () => {
    expect(
      patched(sheet('<row r="2" spans="2:4"><c r="B2"><v>1</v></c><c r="D2"><v>2</v></c></row>'), [
        write(1, 0, 'a'),
        write(1, 2, 5),
        write(1, 4, 6),
        write(1, 5, null),
      ]),
    ).toBe(
      sheet(
        '<row r="2" spans="1:5"><c r="A2" t="str"><v>a</v></c><c r="B2"><v>1</v></c><c r="C2"><v>5</v></c><c r="D2"><v>2</v></c><c r="E2"><v>6</v></c></row>',
      ),
    );
  });

  it('brings its row along: before, between, after, and into an empty one', () => {
    expect(
      patched(sheet('<row r="2"/><row r="4" ht="9"><c r="A4"/></row>'), [
        write(0, 0, 1),
        write(1, 1, 2),
        write(2, 0, 3),
        write(8, 2, 4),
        write(9, 0, null),
      ]),
    ).toBe(
      sheet(
        '<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="B2"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row><row r="4" ht="9"><c r="A4"/></row><row r="9"><c r="C9"><v>4</v></c></row>',
      ),
    );
  });

  it('opens an empty sheet, and grows what it says of its size', () => {
    expect(patched('<worksheet><dimension ref="A1"/><sheetData/></worksheet>', [write(1, 2, 7)])).toBe(
      '<worksheet><dimension ref="A1:C2"/><sheetData><row r="2"><c r="C2"><v>7</v></c></row></sheetData></worksheet>',
    );
  });

  it('carries the part’s own prefix', () => {
    const xml = '<x:worksheet xmlns:x="u"><x:sheetData><x:row r="1"/></x:sheetData></x:worksheet>';
    expect(patched(xml, [write(0, 0, 1)])).toContain('<x:row r="1"><x:c r="A1"><x:v>1</x:v></x:c></x:row>');
  });

  it('is refused where cells do not say where they stand', () => {
    const xml = sheet('<row><c><v>1</v></c></row>');
    expect(() => patched(xml, [write(0, 3, 1)])).toThrow(/does not say where its cells stand/);
    expect(patched(xml, [write(0, 0, 2)])).toBe(sheet('<row><c r="A1"><v>2</v></c></row>'));
  });
});

const value = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc
    .string({ unit: 'binary', maxLength: 12 })
    .filter((text) => !/^#/.test(text) && !/[\uD800-\uDFFF]/.test(text)),
);
const places = fc.uniqueArray(fc.record({ row: fc.nat(12), column: fc.nat(12), value }), {
  selector: ({ row, column }) => row * 100 + column,
  maxLength: 30,
});

it('read(write(x)) = x, for any values anywhere, and the other cells stay', () => {
  fc.assert(
    fc.property(places, places, (first, second) => {
      const before = patched('<worksheet><sheetData/></worksheet>', first);
      const after = patched(before, second);
      const wanted = new Map([...first, ...second].map((one) => [cellText(one.row, one.column), one.value]));
      const found = new Map(
        readSheet(after, 'part', []).rows.flatMap(({ cells }) =>
          cells.map((one) => [cellText(one.row, one.column), one.value] as const),
        ),
      );
      // -0 is written as 0; a cell has no other.
      const plain = (cells: Map<string, CellValue>): [string, CellValue][] =>
        [...cells].map(([at, one]): [string, CellValue] => [at, one === 0 ? 0 : one]).sort();
      expect(plain(found)).toEqual(plain(wanted as Map<string, CellValue>));
      const rows = readSheet(after, 'part', []).rows.map(({ row }) => row);
      expect(rows).toEqual([...rows].sort((one, other) => one - other));
    }),
    { numRuns: 200 },
  );
});
