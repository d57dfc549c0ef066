import { describe, expect, it } from 'vitest';
import { apply } from '../../src/book/apply';
import { styleAt } from '../office/model';
import { ensure } from './ensure';
import { at, openedIn, ROWS, withTable, write, type Opened } from './opened';

/** The size of each request that writes into cells or changes a table. */
function watchWrites({ host }: Opened): number[] {
  const sizes: number[] = [];
  const answer = host.answer.bind(host);
  host.answer = (request, flags) => {
    const text = JSON.stringify(request);
    if (
      /"Name":"(FormulasR1C1|Formulas|Values|NumberFormat|Resize)"/.test(text) &&
      /"ActionType":4/.test(text)
    )
      sizes.push(text.length);
    return answer(request, flags);
  };
  return sizes;
}

describe('reading', () => {
  it('tells sheets, tables and names in two requests', async () => {
    const opened = await openedIn(ROWS, { sheets: ['Windows', 'Rules'] });
    await write(opened, {
      newTables: [{ name: 'Openings', area: at('A1:C3') }],
      newNames: [{ name: 'Hems', area: at('B2:B3'), says: 'a remark' }],
    });
    ensure(opened.host.book.sheets[1]).visibility = 'Hidden';
    opened.trips();
    expect(await opened.book.contents()).toEqual({
      sheets: [
        { name: 'Windows', hidden: false, protected: false, used: at('A1:C3') },
        { name: 'Rules', hidden: true, protected: false, used: undefined },
      ],
      tables: [
        {
          name: 'Openings',
          area: at('A1:C3'),
          headerRow: true,
          totalsRow: false,
          columns: ['Room', 'Width', 'Heading'],
        },
      ],
      names: [{ name: 'Hems', area: at('B2:B3') }],
    });
    expect(opened.trips()).toBeLessThanOrEqual(3);
  });

  it('gives values, formulas, formats, merged cells, hidden rows and the table', async () => {
    const opened = await withTable();
    const { sheet } = opened;
    Object.assign(sheet.open(4, 1), { value: 7, formula: '=SUM(B2:B3)' });
    Object.assign(sheet.open(4, 2), { value: '=not a formula' });
    sheet.merged.push({ row: 6, column: 0, rows: 1, columns: 2 });
    sheet.hiddenRows.add(2);
    const [block] = await opened.book.read([at('A2:C7')]);
    expect(block?.values.slice(0, 4)).toEqual([['hall', 94, 'pinch'], ['study', '84 1/2', 'grommet'], [null, null, null], [null, 7, '=not a formula']]); // prettier-ignore
    expect(block?.formulas[3]).toEqual([null, '=SUM(B2:B3)', null]);
    expect(block?.formats[0]).toEqual(['General', 'General', 'General']);
    expect([block?.merged, block?.hiddenRows, block?.protected]).toEqual([[at('A7:B7')], [2], false]);
    expect(block?.table?.name).toBe('Openings');
  });

  it('a protected sheet says so where its cells are locked', async () => {
    const opened = await openedIn(ROWS);
    await write(opened, { dress: [{ area: at('B2:B3'), role: 'input' }] });
    opened.sheet.protection = { options: {}, password: '' };
    const [input, other] = await opened.book.read([at('B2:B3'), at('A1:C3')]);
    expect([input?.protected, other?.protected]).toEqual([false, true]);
  });

  it('30,000 rows of four columns come in parts, whole and in order', async () => {
    const opened = await openedIn(
      Array.from({ length: 30_000 }, (_, row) => [row, `room ${row}`, row * 2, null]),
    );
    opened.trips();
    const [block] = await opened.book.read([at('A1:D30000')], 'contents');
    expect(block?.values.map(([first]) => first)).toEqual(Array.from({ length: 30_000 }, (_, row) => row));
    expect(opened.trips()).toBeLessThanOrEqual(12);
  });

  it('texts too long for one answer are asked for in halves', async () => {
    const opened = await openedIn(Array.from({ length: 200 }, (_, row) => [`${row} ${'x'.repeat(30_000)}`]));
    const [block] = await opened.book.read([at('A1:A200')], 'contents');
    expect(block?.values.map(([text]) => String(text).split(' ')[0])).toEqual(
      Array.from({ length: 200 }, (_, row) => `${row}`),
    );
  });

  it('the selection is told, and told again when it moves', async () => {
    const opened = await openedIn();
    expect(await opened.book.selection()).toEqual(at('A1'));
    const seen: unknown[] = [];
    const stop = await opened.book.onSelection((area) => seen.push(area));
    opened.host.select(opened.sheet, { row: 3, column: 1, rows: 2, columns: 2 });
    await expect.poll(() => seen).toEqual([at('B4:C5')]);
    stop();
    await new Promise((done) => setTimeout(done, 20));
    await opened.book.goTo(at('A9'));
    expect(await opened.book.selection()).toEqual(at('A9'));
  });
});

describe('writing', () => {
  it.each([
    ['1/2', '1/2'],
    ['84 1/2', '84 1/2'],
    ['May 5', 'May 5'],
    ['=x', '=x'],
    ['+4 hem', '+4 hem'],
    ['true', 'true'],
    ['007', '007'],
    ['pinch', 'pinch'],
    ["'quoted'", "'quoted'"],
    [12.5, 12.5],
    [false, false],
  ])('%s stays what it is', async (put, stands) => {
    const opened = await openedIn();
    await write(opened, { puts: [{ area: at('B2'), cells: [[put]] }] });
    const cell = opened.sheet.cell(1, 1);
    expect([cell?.value, cell?.formula]).toEqual([stands, undefined]);
  });

  it('null empties a cell, undefined leaves it alone, a formula goes in as one', async () => {
    const opened = await openedIn([['one', 'two', 'three']]);
    await write(opened, {
      puts: [{ area: at('A1:C1'), cells: [[null, undefined, { formula: '=LEN(B1)' }]] }],
    });
    expect(
      [0, 1, 2].map(
        (column) => opened.sheet.cell(0, column)?.formula ?? opened.sheet.cell(0, column)?.value ?? '',
      ),
    ).toEqual(['', 'two', '=LEN(B1)']);
  });

  it.each([200, 2_000])(
    '%i rows of five formula columns beside a table take 9 requests, one of which writes',
    async (rows) => {
      const opened = await openedIn([
        ['Width', 'Heading'],
        ...Array.from({ length: rows }, (_, row) => [60 + (row % 40), 'pinch']),
      ]);
      await write(opened, { newTables: [{ name: 'Openings', area: at(`A1:B${rows + 1}`) }] });
      opened.trips();
      const writing = watchWrites(opened);
      const columns = [2, 3, 4, 5, 6];
      await apply(opened.book, 'Fill', {
        resize: [{ table: 'Openings', area: at(`A1:G${rows + 1}`) }],
        puts: columns.flatMap((column) => [
          { area: { ...at('A1'), column }, cells: [[`Answer ${column}`]] },
          { area: { ...at(`A2:A${rows + 1}`), column }, formula: `=HEM.WIDTHS($A2,$B2,54)*${column}` },
        ]),
        dress: columns.map((column) => ({ area: { ...at(`A2:A${rows + 1}`), column }, format: '0' })),
      });
      expect(opened.sheet.cell(rows, 6)?.formula).toBe(`=HEM.WIDTHS($A${rows + 1},$B${rows + 1},54)*6`);
      expect(opened.host.book.tables[0]?.columns.map(({ name }) => name).slice(2)).toEqual(
        columns.map((column) => `Answer ${column}`),
      );
      // what is there 2, looking over 2, is a cell being edited 1, the fill 1, proxies let go 3: the same for ten times the rows
      expect({ rows, requests: opened.trips() }).toEqual({ rows, requests: 9 });
      // Excel keeps one undo record a request: one undo takes the fill back, its table's size and looks too.
      expect(writing.length).toBe(1);
      expect(writing[0]).toBeLessThan(20_000);
      expect(opened.host.unknown).toEqual([]);
    },
  );

  it('sheets, names, looks, validation, layout, notes and a chart arrive as asked', async () => {
    const opened = await openedIn(ROWS);
    await write(opened, {
      newSheets: [{ name: 'House rules' }],
      newNames: [{ name: 'Rules', area: at('A1:B4', 'House rules'), says: 'the house rules' }],
      puts: [
        {
          area: at('A1:B2', 'House rules'),
          cells: [
            ['Rule', 'Value'],
            ['hem', 8],
          ],
        },
      ],
      dress: [
        { area: at('A1:B1', 'House rules'), role: 'heading' },
        { area: at('B2:B4', 'House rules'), role: 'input', format: '0.00' },
      ],
      validations: [
        { area: at('C2:C3'), words: ['pinch', 'grommet'], says: 'A heading.', otherwise: 'stop' },
        { area: at('B2:B3'), number: { least: 1 }, says: 'The width.', otherwise: 'warn' },
        { area: at('D2'), from: 'Rules', says: 'A rule.', otherwise: 'stop' },
      ],
      layouts: [
        {
          sheet: 'House rules',
          frozenRows: 1,
          widths: { 0: 20 },
          print: { landscape: true, paper: 'a4', repeatRows: [0, 0] },
        },
      ],
      notes: [{ area: at('B1', 'House rules'), text: 'In inches.' }],
      newCharts: [
        { name: 'Cloth', title: 'Cloth by room', kind: 'bar', block: at('A1:B3'), at: at('E2:H12') },
      ],
    });
    const { host, sheet } = opened;
    const rules = ensure(host.book.sheets[1]);
    expect([rules.name, rules.cell(1, 1)?.value, host.book.names[0]?.formula]).toEqual([
      'House rules',
      8,
      "='House rules'!$A$1:$B$4",
    ]);
    expect(
      ['Fill.Color', 'Font.Bold', 'WrapText', 'Border.Top.Style'].map((key) => styleAt(rules, 0, 0, key)),
    ).toEqual(['#5B2A33', true, true, 'Continuous']);
    expect([styleAt(rules, 1, 1, 'NumberFormat'), styleAt(rules, 1, 1, 'Protection.Locked')]).toEqual([
      '0.00',
      false,
    ]);
    expect(styleAt(sheet, 1, 2, 'Validation.Rule')).toEqual({
      list: { inCellDropDown: true, source: 'pinch,grommet' },
    });
    expect(styleAt(sheet, 1, 1, 'Validation.Rule')).toEqual({
      decimal: { formula1: 1, operator: 'GreaterThanOrEqualTo' },
    });
    expect(styleAt(sheet, 1, 1, 'Validation.ErrorAlert')).toMatchObject({
      style: 'Warning',
      message: 'The width.',
    });
    expect(styleAt(sheet, 1, 3, 'Validation.Rule')).toEqual({
      list: { inCellDropDown: true, source: '=Rules' },
    });
    expect([rules.frozen?.rows, rules.columnWidths.get(0), rules.page]).toMatchObject([
      1,
      108.75,
      { Orientation: 'Landscape', PaperSize: 'A4', Zoom: { horizontalFitToPages: 1 } },
    ]);
    expect(host.book.comments.map((one) => [one.sheet.name, one.row, one.column, one.content])).toEqual([
      ['House rules', 0, 1, 'In inches.'],
    ]);
    expect(sheet.charts.map((one) => [one.bag['Name'], one.bag['Title.Text'], one.bag['position']])).toEqual([['Cloth', 'Cloth by room', { first: { row: 1, column: 4, rows: 1, columns: 1 }, last: { row: 11, column: 7, rows: 1, columns: 1 } }]]); // prettier-ignore
    // Read like the rows it shows: by its columns, from the top, the figures at the bars' ends.
    expect(
      sheet.charts.map(({ bag, source, series }) => [bag['ChartType'], source?.area, series.map((one) => one['HasDataLabels']), bag['Legend.Visible'], bag['CategoryAxis.ReversePlotOrder'], bag['ValueAxis.Visible']]),
    ).toEqual([['BarClustered', { row: 0, column: 0, rows: 3, columns: 2 }, [true], false, true, false]]); // prettier-ignore
    await write(opened, { remove: { sheets: ['House rules', 'never there'], names: ['Rules'] } });
    expect([host.book.sheets.map(({ name }) => name), host.book.names]).toEqual([['Windows'], []]);
    expect(host.unknown).toEqual([]);
  });

  it('a note stays off a cell that has a remark', async () => {
    const opened = await openedIn(ROWS);
    const { host, sheet } = opened;
    host.book.comments.push({
      id: 'own',
      sheet,
      row: 1,
      column: 1,
      content: 'ask the fitter',
      resolved: false,
    });
    await write(opened, {
      notes: [
        { area: at('B2'), text: 'ours' },
        { area: at('B3'), text: 'ours' },
      ],
    });
    expect(host.book.comments.map(({ row, content }) => [row, content])).toEqual([[1, 'ask the fitter'], [2, 'ours']]); // prettier-ignore
  });

  it('long texts go in several requests, each small enough, and none is lost', async () => {
    const opened = await openedIn();
    const cells = Array.from({ length: 4_000 }, (_, row) => [`${row} ${'x'.repeat(2_000)}`]);
    await apply(opened.book, 'Texts', {
      newSheets: [{ name: 'Texts' }],
      puts: [{ area: at('B1:B4000', 'Texts'), cells }],
    });
    const written = opened.host.book.sheetNamed('Texts');
    expect(cells.map((_, row) => written?.cell(row, 1)?.value)).toEqual(cells.flat());
    expect(Math.max(...opened.host.trips)).toBeLessThan(5 * 1024 * 1024);
  });

  it.each([
    ['=A1+$A1+A$1+$A$1', '=B4+$A4+B$1+$A$1'],
    ['=SUM(A:A)+SUM($A:$C)+SUM(1:1)+SUM($2:3)', '=SUM(B:B)+SUM($A:$C)+SUM(4:4)+SUM($2:6)'],
    [
      '=\'Ground floor\'!C7&"R1C1 A1"&Windows[[#This Row],[Rod width]]',
      '=\'Ground floor\'!D10&"R1C1 A1"&Windows[[#This Row],[Rod width]]',
    ],
    [
      '=HEM.WIDTHS([@[Rod width]],"pinch",D1,,House_rules)',
      '=HEM.WIDTHS([@[Rod width]],"pinch",E4,,House_rules)',
    ],
    ['=LOG10(A1)*1.5E3+Rules!A1:B2', '=LOG10(B4)*1.5E3+Rules!B4:C5'],
  ])('%s filled three down and one across is %s', async (formula, there) => {
    const opened = await openedIn();
    await write(opened, { puts: [{ area: at('E1:F4'), formula }] });
    expect(opened.sheet.cell(0, 4)?.formula).toBe(formula);
    expect(opened.sheet.cell(3, 5)?.formula).toBe(there);
  });

  it('what is remembered comes back, and is forgotten when asked', async () => {
    const { book, host } = await openedIn();
    await book.remember('mapping', { width: ['B', 2] });
    expect([await book.recall('mapping'), await book.recall('other')]).toEqual([
      { width: ['B', 2] },
      undefined,
    ]);
    await book.remember('mapping', undefined);
    await book.remember('mapping', undefined);
    expect([await book.recall('mapping'), host.book.settings.size]).toEqual([undefined, 0]);
  });

  it('marks colour cells and remark on them, leave the user’s remarks and colours, and go without a trace', async () => {
    const opened = await openedIn(ROWS);
    const { book, host, sheet } = opened;
    Object.assign(sheet.open(1, 1), { style: { 'Fill.Color': '#00FF00' } });
    host.book.comments.push({
      id: 'own',
      sheet,
      row: 2,
      column: 1,
      content: 'ask the fitter',
      resolved: false,
    });
    await book.mark([
      { area: at('B2'), weight: 'stop', sentence: 'Too narrow.' },
      { area: at('B3'), weight: 'check', sentence: 'Look again.' },
    ]);
    await book.mark([{ area: at('B2'), weight: 'note', sentence: 'Just so.' }]);
    expect(host.book.comments.map(({ content }) => content)).toEqual([
      'ask the fitter',
      'Hemledger: Just so.',
    ]);
    expect(sheet.conditionalFormats.map((one) => [one.area.row, one.style['Fill.Color']])).toEqual([[2, '#FCE3B4'], [1, '#D6E6F5']]); // prettier-ignore
    await book.unmark('Windows');
    expect(host.book.comments.map(({ content }) => content)).toEqual(['ask the fitter']);
    expect([sheet.conditionalFormats, styleAt(sheet, 1, 1, 'Fill.Color')]).toEqual([[], '#00FF00']);
  });

  it('recalculates everything when asked', async () => {
    const opened = await openedIn([['=1']]);
    let rounds = 0;
    opened.host.world.calculator = () => void (rounds += 1);
    await opened.book.recalculate();
    expect(rounds).toBe(1);
  });
});
