import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/book/book';
import { connected } from '../browser';
import type { Files } from '../office/frame';
import { keyOf, type Sheet } from '../office/model';
import { built, paneIn, seriousFaults, workbookOf, type PanePage } from './pane-page';

const HEADINGS = [
  'Order', 'Date', 'Room', 'Inside width', 'Left ext', 'Right ext', 'Rod', 'Measured height', 'Heading',
  'Finished drop', 'Fabric width', 'Widths', 'Cut length', 'Yards', 'Unit price',
] as const; // prettier-ignore
/** Opening 72 with 11 each side on a rod of 94, 98 high: drop 96, 5 widths of 112 in, 15 5/8 yd. */
const good = (order: number, day: string): CellValue[] => [
  order, day, `Room ${order}`, 72, 11, 11, 94, 98, 'pinch', 96, 54, 5, 112, 15.625, 20,
]; // prettier-ignore

const ORDERS: readonly (readonly CellValue[])[] = [
  ['Marsh Lane Inn: orders of the year', ...Array<null>(14).fill(null)],
  HEADINGS,
  good(100, '2025-11-02'),
  // Width and height changed places.
  good(101, '2025-11-02').with(3, 98).with(7, 72),
  // Three yards too many at 20.00 are 60.00.
  good(102, '2026-04-09').with(13, 18.625),
  good(103, '2026-04-09'),
];

let browser: Browser;
let files: Files;
let pane: PanePage;
beforeAll(async () => {
  [files, browser] = await Promise.all([built(), connected()]);
});
afterAll(() => browser.close());
afterEach(async () => {
  expect([pane.strangers, pane.errors, pane.host.unknown]).toEqual([[], [], []]);
  await pane.page.context().close();
});

/** A further sheet with these rows. */
function sheetOf(name: string, rows: readonly (readonly CellValue[])[]): Sheet {
  const sheet = pane.host.book.addSheet(name);
  rows.forEach((row, down) => {
    row.forEach((value, across) => {
      if (value !== null) sheet.open(down, across).value = value;
    });
  });
  return sheet;
}

async function opened(rows = ORDERS, begin: () => void = () => undefined): Promise<void> {
  pane = await paneIn(browser, files, { host: workbookOf(rows, 'Orders') });
  begin();
  pane.select('B4');
  await pane.turnTo('Audit');
  await pane.press('Read the orders');
  await pane.says(`${rows.length - 2} orders, 15 of 15 columns known`).waitFor();
}

const findings = () => pane.frame.getByRole('list', { name: 'Findings' }).getByRole('button');

/** In the page: presses Stop as soon as the first rows are counted, as quick as no test from outside can. */
function pressStop(): Promise<void> {
  return new Promise((done) => {
    const watch = new MutationObserver(() => {
      if (!/Auditing: [1-9][\d,]* of/.test(document.body.textContent)) return;
      watch.disconnect();
      [...document.querySelectorAll('button')].find((one) => one.textContent === 'Stop')?.click();
      done();
    });
    watch.observe(document.body, { subtree: true, childList: true, characterData: true });
  });
}

/** Everything of the workbook that can be seen, remarks and colours too. */
const whole = (): string =>
  JSON.stringify({
    sheets: pane.host.book.sheets.map((sheet) => [
      sheet.name,
      [...sheet.cells],
      [...sheet.columnWidths],
      sheet.conditionalFormats.map(({ area, bag, style }) => [area, bag, style]),
      sheet.charts.map(({ bag, source }) => [bag, source?.area]),
    ]),
    tables: pane.host.book.tables.map(({ name, area }) => [name, area]),
    names: pane.host.book.names.map(({ name, formula }) => [name, formula]),
    comments: pane.host.book.comments.map(({ row, column, content }) => [row, column, content]),
  });

describe('past orders in Excel', () => {
  it('are audited; a finding leads to its cell, is marked there, and the marks go without a trace', async () => {
    await opened(ORDERS, () => {
      // A look and a remark of the user's stand at cells that get a mark.
      pane.sheet.open(3, 3).style = { 'Fill.Color': '#FFFF00' };
      pane.host.book.comments.push({ id: 'own', sheet: pane.sheet, row: 4, column: 13, content: 'Asked Ada.', resolved: false }); // prettier-ignore
    });
    const before = whole();
    await pane.press('Run the audit');
    await pane.says('4 orders audited: 1 to stop at, 1 to check').waitFor();
    const [swapped, yards] = await findings().allInnerTexts();
    expect(swapped).toMatch(/stop\s*101, Room 101 · D4\b[\s\S]*72 in × 98 in would agree with the ordered/);
    expect(yards).toMatch(/check\s*102, Room 102 · N5\s*60\.00[\s\S]*Yards reads 18 5\/8 yd/);
    await findings().nth(1).click();
    await expect.poll(() => pane.host.book.selection).toEqual({ row: 4, column: 13, rows: 1, columns: 1 });
    expect(whole()).toBe(before);

    await pane.press('Mark in the sheet');
    await pane.says('Every finding stands as a remark at its cell').waitFor();
    const marked = pane.sheet.conditionalFormats;
    expect(marked.map(({ area, type }) => [area.row, area.column, type])).toEqual([
      [3, 3, 'Custom'],
      [4, 13, 'Custom'],
    ]);
    const colours = marked.map(({ style }) => style['Fill.Color']);
    expect(new Set(colours).size).toBe(2);
    expect(colours.every((one) => /^#[0-9A-F]{6}$/i.test(String(one)))).toBe(true);
    const remarks = (): unknown[] => pane.host.book.comments.map(({ row, column, content }) => [row, column, content]); // prettier-ignore
    expect(remarks()).toEqual([
      [4, 13, 'Asked Ada.'],
      [3, 3, expect.stringMatching(/^Hemledger: Very likely: Inside width and Measured height are swapped/)],
    ]);
    expect(pane.sheet.cell(3, 3)?.style).toEqual({ 'Fill.Color': '#FFFF00' });
    expect(await seriousFaults(pane.frame)).toEqual([]);

    // A second time puts no second mark beside the first.
    await pane.press('Mark in the sheet');
    await expect.poll(() => pane.sheet.conditionalFormats.length).toBe(2);
    await pane.press('Take the marks away');
    await pane.says('The marks are gone').waitFor();
    expect(whole()).toBe(before);
  });

  it('are summed up on a sheet with a chart beside its table', async () => {
    await opened();
    await pane.press('Run the audit');
    await pane.says('4 orders audited').waitFor();
    await pane.press('Write a summary');
    await pane.says('The summary stands on the sheet “Audit”.').waitFor();
    // A table and a chart take several requests, and Excel keeps an undo step for each: none is promised.
    expect(await pane.frame.getByText('One undo').count()).toBe(0);
    const sheet = pane.host.book.sheetNamed('Audit')!;
    expect(pane.host.book.active).toBe(sheet);
    const [chart] = sheet.charts;
    expect(sheet.charts).toHaveLength(1);
    expect([chart?.bag['ChartType'], chart?.bag['Title.Text']]).toEqual(['BarClustered', 'Findings by kind']);
    // What it draws: the kinds with their counts, headings included.
    expect(chart?.source?.sheet).toBe(sheet);
    const block = chart?.source?.area ?? { row: 0, column: 0, rows: 0, columns: 0 };
    const shown = Array.from({ length: block.rows }, (_, row) =>
      Array.from({ length: block.columns }, (__, column) => sheet.cell(block.row + row, block.column + column)?.value)); // prettier-ignore
    expect(shown).toEqual([
      ['kind', 'findings'],
      ['swapped', 1],
      ['figure differs', 1],
    ]);
    // It covers empty cells beside that table and above the list.
    const { first, last } = chart?.bag['position'] as { first: { row: number; column: number }; last: typeof first }; // prettier-ignore
    for (let row = first.row; row <= last.row; row++)
      for (let column = first.column; column <= last.column; column++)
        expect(sheet.cells.get(keyOf(row, column))?.value ?? '').toBe('');
    const list = pane.host.book.tables.find(({ name }) => name === 'Audit_findings');
    expect(list?.area.row).toBeGreaterThan(last.row);
    expect(list?.area.rows).toBe(3);
  });

  it('are audited by the rules of their day, and the pane says which are which', async () => {
    const rules = (from: string, bottom: number) => [
      ['rule', 'value'],
      ['in force from', from],
      ['bottom allowance', bottom],
    ];
    await opened(ORDERS, () => {
      sheetOf('Rules 2025', rules('', 8));
      const now = sheetOf('House rules', rules('2026-03-01', 10));
      pane.host.book.names.push({ name: 'House_rules', formula: `='${now.name}'!$A$2:$B$3`, comment: '', visible: true, scope: undefined }); // prettier-ignore
    });
    await pane.says('Orders before 2026-03-01 are checked against “Rules 2025”, later ones and those without a date against “House rules”.').waitFor(); // prettier-ignore
    await pane.press('Run the audit');
    await pane.says('4 orders audited').waitFor();
    // Under bottom 10 the cut of 112 is 2 in short from March on; the orders of 2025 stand.
    const said = await findings().allInnerTexts();
    expect(said.filter((one) => /Cut length reads 112 in/.test(one)).map((one) => /[A-Z]+\d+/.exec(one)?.[0])).toEqual(['M5', 'M6']); // prettier-ignore
  });

  it('stop where the user says so, and leave the workbook as it was', async () => {
    const many = [...ORDERS.slice(0, 2), ...Array.from({ length: 6_000 }, (_, n) => good(n, '2026-04-09'))];
    await opened(many);
    const before = whole();
    const stopped = pane.frame.evaluate(pressStop);
    await pane.press('Run the audit');
    await stopped;
    await pane.says('Stopped. The workbook is as it was.').waitFor();
    expect(await pane.says(/orders audited/).count()).toBe(0);
    expect(await pane.frame.getByRole('button', { name: 'Stop' }).count()).toBe(0);
    expect(whole()).toBe(before);
    // It can be run again, to its end.
    await pane.press('Run the audit');
    await pane.says('6000 orders audited: all is well.').waitFor();
  });

  it('teach rules that are set only where the user ticks them', async () => {
    // Cut 2 in longer than the rules say: the bottom allowance is 10, not 8. 6 × (98 + n + 16) in, in yards.
    const longer = Array.from({ length: 8 }, (_, n) => {
      const cut = 114 + n;
      return good(n, '2026-04-09').with(7, 98 + n).with(9, 96 + n).with(12, cut).with(13, Math.ceil((6 * cut * 8) / 36) / 8); // prettier-ignore
    });
    let own: Sheet | undefined;
    await opened([...ORDERS.slice(0, 2), ...longer], () => {
      own = sheetOf('House rules', [['rule', 'value'], ['bottom allowance', 8]]); // prettier-ignore
      pane.host.book.names.push({ name: 'House_rules', formula: `='House rules'!$A$2:$B$2`, comment: '', visible: true, scope: undefined }); // prettier-ignore
    });
    await pane.press('Rules these orders bear out');
    await pane.press('Learn from these orders');
    const proposed = pane.frame.getByRole('checkbox', { name: /^bottom allowance 10: 8 of 8 orders fit; with 8/ }); // prettier-ignore
    await proposed.waitFor();
    expect(own?.cell(1, 1)?.value).toBe(8);
    expect(await pane.frame.getByRole('button', { name: 'Set the chosen rules' }).isDisabled()).toBe(true);
    await proposed.check();
    await pane.press('Set the chosen rules');
    await pane.says('The rules you chose are set').waitFor();
    expect(own?.cell(1, 1)?.value).toBe(10);
  });

  it('of a protected sheet are audited, and marking it is refused in a sentence', async () => {
    await opened(ORDERS, () => {
      pane.sheet.protection = { options: {}, password: '' };
    });
    const before = whole();
    await pane.press('Run the audit');
    await pane.says('4 orders audited').waitFor();
    await pane.press('Mark in the sheet');
    await pane.says('The sheet “Orders” is protected').waitFor();
    expect(whole()).toBe(before);
  });
});
