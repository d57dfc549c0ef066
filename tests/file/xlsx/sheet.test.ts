import { describe, expect, it } from 'vitest';
import { Problem } from '../../../src/file/problem';
import { readSheet } from '../../../src/file/xlsx/sheet';

const sheet = (rows: string, around = ''): string =>
  `<worksheet xmlns="x"><sheetData>${rows}</sheetData>${around}</worksheet>`;
const values = (rows: string): unknown[][] =>
  readSheet(sheet(rows), 'part', ['one', 'two ']).rows.map(({ cells }) => cells.map(({ value }) => value));

describe('a cell’s value', () => {
  it.each([
    ['a number', '<c r="A1"><v>84.5</v></c>', 84.5],
    ['a number written long', '<c r="A1"><v>1.5E-3</v></c>', 0.0015],
    ['shared text', '<c r="A1" t="s"><v>1</v></c>', 'two '],
    ['text of its own', '<c r="A1" t="inlineStr"><is><r><t>84 </t></r><r><t>1/2</t></r></is></c>', '84 1/2'],
    [
      'text without how it sounds',
      '<c r="A1" t="inlineStr"><is><t>a</t><rPh sb="0" eb="1"><t>b</t></rPh></is></c>',
      'a',
    ],
    ['a formula’s text', '<c r="A1" t="str"><f>A2</f><v>a&amp;b</v></c>', 'a&b'],
    ['a formula’s empty text', '<c r="A1" t="str"><f>A2</f><v></v></c>', ''],
    ['text with a control in it', '<c r="A1" t="str"><v>a_x000D_b_x005F_x0041_</v></c>', 'a\rb_x0041_'],
    ['text in CDATA', '<c r="A1" t="str"><v><![CDATA[<b>]]></v></c>', '<b>'],
    ['TRUE', '<c r="A1" t="b"><v>1</v></c>', true],
    ['FALSE', '<c r="A1" t="b"><v>0</v></c>', false],
    ['an error', '<c r="A1" t="e"><v>#N/A</v></c>', '#N/A'],
    ['what no one can read as a number', '<c r="A1"><v>8 4</v></c>', '8 4'],
    ['nothing', '<c r="A1" s="3"/>', null],
    ['a day in ISO letters', '<c r="A1" t="d"><v>2027-01-05T12:00:00</v></c>', 46392.5],
  ])('%s', (_, xml, value) => {
    expect(values(`<row r="1">${xml}</row>`)).toEqual([[value]]);
  });
});

it('rows and cells that do not say where they stand follow one another', () => {
  const { rows, addressed } = readSheet(
    sheet(
      '<row><c><v>1</v></c><c><v>2</v></c></row><row r="5"><c r="D5"><v>3</v></c><c><v>4</v></c></row><row/>',
    ),
    'part',
    [],
  );
  expect(rows.map(({ row, cells }) => [row, cells.map(({ column }) => column)])).toEqual([
    [0, [0, 1]],
    [4, [3, 4]],
    [5, []],
  ]);
  expect(addressed).toBe(false);
});

it('every cell’s place in the text is exact, whatever stands around it', () => {
  const xml =
    '\uFEFF<?xml version="1.0"?>\r\n<!-- <c r="Z1"/> --><x:worksheet xmlns:x="u"><x:sheetData>\r\n<x:row r="1"><x:c r="A1" note="a&gt;b"><x:v>😀</x:v></x:c>\n<x:c r="B1"/></x:row></x:sheetData></x:worksheet>';
  const whole = readSheet(xml, 'part', []);
  const { rows, prefix } = readSheet([...xml], 'part', []);
  expect({ rows, prefix }).toEqual({ rows: whole.rows, prefix: whole.prefix });
  expect(rows[0]?.cells.map(({ from, to }) => xml.slice(from, to))).toEqual([
    '<x:c r="A1" note="a&gt;b"><x:v>😀</x:v></x:c>',
    '<x:c r="B1"/>',
  ]);
  const [row] = rows;
  expect([xml.slice(row?.from, row?.opened), xml.slice(row?.closing, row?.to), prefix]).toEqual([
    '<x:row r="1">',
    '</x:row>',
    'x:',
  ]);
});

it('formulas: plain, shared, array, what-if table', () => {
  const { rows } = readSheet(
    sheet(
      '<row r="1"><c r="A1"><f>B1&amp;"x"</f></c><c r="B1"><f t="shared" ref="B1:B2" si="0">A1</f></c><c r="C1"><f t="shared" si="0"/></c><c r="D1" cm="1"><f t="array" ref="D1:D3">A1:A3</f></c><c r="E1"><f t="dataTable" ref="E1:E2" r1="A1"/></c></row>',
    ),
    'part',
    [],
  );
  expect(
    rows[0]?.cells.map(({ formula, metadata }) => ({
      text: formula?.text,
      kind: formula?.kind,
      ref: formula?.ref,
      shared: formula?.shared,
      always: formula?.always,
      metadata,
    })),
  ).toEqual([
    { text: 'B1&"x"', kind: 'plain', ref: undefined, shared: undefined, always: false, metadata: undefined },
    { text: 'A1', kind: 'shared', ref: 'B1:B2', shared: '0', always: false, metadata: undefined },
    { text: undefined, kind: 'shared', ref: undefined, shared: '0', always: false, metadata: undefined },
    { text: 'A1:A3', kind: 'array', ref: 'D1:D3', shared: undefined, always: false, metadata: '1' },
    { text: undefined, kind: 'table', ref: 'E1:E2', shared: undefined, always: false, metadata: undefined },
  ]);
});

it('a formula that stands alike in many cells is kept once, and reads in each as the file has it', () => {
  const texts = [
    'A1*$B$1&"A1"',
    'A2*$B$1&"A1"',
    'A3*$B$1&"A1"',
    'a4*$B$1&"A1"',
    'A5*B$1&"A1"',
    'A6*B$1&"A1"',
  ];
  const { rows } = readSheet(
    sheet(
      texts
        .map(
          (text, at) => `<row r="${at + 1}"><c r="C${at + 1}"><f>${text.replace('&', '&amp;')}</f></c></row>`,
        )
        .join(''),
    ),
    'part',
    [],
  );
  const cells = rows.flatMap((row) => row.cells);
  expect(cells.map(({ formula }) => formula?.text)).toEqual(texts);
  expect(cells.map(({ held }) => typeof held)).toEqual([
    'string',
    'object',
    'object',
    'string',
    'string',
    'object',
  ]);
  expect(cells[1]?.held).toBe(cells[2]?.held);
});

it('merged cells and the filled area are noted', () => {
  const seen = readSheet(
    '<worksheet><dimension ref="A1:B2"/><sheetData/><mergeCells><mergeCell ref="A1:C1"/></mergeCells></worksheet>',
    'part',
    [],
  );
  expect([seen.merged, seen.dimension?.ref, seen.data.selfClosing]).toEqual([['A1:C1'], 'A1:B2', true]);
});

it('a damaged part is a sentence that names it', () => {
  expect(() => readSheet('<worksheet><sheetData><row>', 'xl/worksheets/sheet4.xml', [])).toThrow(Problem);
  expect(() => readSheet('<worksheet><sheetData><row>', 'xl/worksheets/sheet4.xml', [])).toThrow(
    /^Its part xl\/worksheets\/sheet4\.xml is damaged \(.*\)\. Open it/,
  );
});
