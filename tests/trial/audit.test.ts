import { strFromU8, unzipSync } from 'fflate';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { Trial, thereIsABrowser, type Opened } from './page';

const HEADINGS = [
  'Order', 'Room', 'Inside width', 'Left ext', 'Right ext', 'Rod', 'Measured height', 'Heading',
  'Finished drop', 'Fabric width', 'Widths', 'Cut length', 'Yards', 'Unit price',
]; // prettier-ignore
/** Opening 72 with 11 each side on a rod of 94, 98 high: drop 96, 5 widths of 112 in, 15 5/8 yd. */
const GOOD = [72, 11, 11, 94, 98, 'pinch', 96, 54, 5, 112, 15.625, 20];
const changed = (at: number, value: number): (string | number)[] => GOOD.with(at, value);

const ORDERS = [
  HEADINGS,
  [100, 'Hall', ...GOOD],
  // Width and height changed places.
  [101, 'Bar', 98, 11, 11, 94, 72, ...GOOD.slice(5)],
  // Three yards too many at 20.00 are 60.00.
  [102, 'Snug', ...changed(10, 18.625)],
  [103, 'Tap room', ...GOOD],
];

describe.runIf(thereIsABrowser)('past orders in the pane', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterEach(() => trial.closePages());
  afterAll(() => trial.end());

  async function withOrders(
    rows: readonly (readonly (string | number)[])[],
    begin?: (at: Opened) => Promise<void>,
  ): Promise<Opened> {
    const at = await trial.open();
    await begin?.(at);
    await at.put('Sheet1', 0, 0, rows);
    await at.goTo(areaAt('Sheet1', 1, 0));
    await at.section('Audit');
    await at.press('Read the orders');
    await at.pane.getByText(`${rows.length - 1} orders, 14 of 14 columns known`).waitFor();
    return at;
  }
  const findings = (at: Opened) => at.pane.getByRole('list', { name: 'Findings' }).getByRole('button');
  const ground = (at: Opened, row: number, column: number): Promise<string | undefined> =>
    at.page.evaluate(
      ([r, c]) =>
        window.trial.grid.api.getActiveWorkbook()?.getSheetByName('Sheet1')?.getRange(r, c).getBackground(),
      [row, column] as const,
    );

  it('are audited; a finding leads to its cell, is marked there, and the marks go again', async () => {
    const at = await withOrders(ORDERS);
    const before = await ground(at, 2, 2);
    await at.press('Run the audit');
    await at.pane.getByText('4 orders audited: 1 to stop at, 1 to check').waitFor();
    const [swapped, yards] = await findings(at).allInnerTexts();
    expect(swapped).toMatch(/stop\s*101, Bar · C3\b[\s\S]*72 in × 98 in would agree with the ordered/);
    expect(yards).toMatch(
      /check\s*102, Snug · M4\s*60\.00[\s\S]*reads 18 5\/8 yd; worked out from the row it is 15 5\/8 yd/,
    );
    await at.pane.getByLabel('Sorted by').selectOption('money');
    expect(await findings(at).first().innerText()).toContain('60.00');
    await findings(at).first().click();
    expect(await at.page.evaluate(() => window.trial.book.selection())).toEqual(areaAt('Sheet1', 3, 12));

    await at.press('Mark in the sheet');
    await at.pane.getByText('Every finding stands as a remark at its cell').waitFor();
    expect(await ground(at, 2, 2)).not.toBe(before);
    expect(await ground(at, 1, 2)).toBe(before);
    await at.press('Take the marks away');
    await at.pane.getByText('The marks are gone').waitFor();
    expect(await ground(at, 2, 2)).toBe(before);

    await at.press('Write a summary');
    await at.pane.getByText('The summary stands on the sheet “Audit”').waitFor();
    expect((await at.contents()).tables.map(({ name }) => name)).toContain('Audit_findings');
    expect((await at.read(areaAt('Audit', 3, 1, 3, 1))).values.flat()).toEqual([4, 2, 2]);
    // Nothing is drawn in this page, and it says so; the file has the chart.
    await at.pane.getByText('draws no charts; they stand in the file it saves').waitFor();
    const chart = async (): Promise<string | undefined> => {
      const parts = unzipSync(await at.saved());
      return parts['xl/charts/chart1.xml'] && strFromU8(parts['xl/charts/chart1.xml']);
    };
    expect(await chart()).toMatch(
      /<c:barDir val="bar"\/>[\s\S]*<c:f>Audit!\$A\$10:\$A\$11<\/c:f>[\s\S]*<c:v>swapped<\/c:v>[\s\S]*<c:f>Audit!\$B\$10:\$B\$11<\/c:f>/,
    );
    await at.undo();
    expect((await at.contents()).sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    expect(await chart()).toBeUndefined();
    expect(await at.seriousFaults()).toEqual([]);
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });

  it('stop where the user says so, and nothing is changed', async () => {
    const many = Array.from({ length: 6_000 }, (_, n) => [100 + n, `Room ${n}`, ...GOOD]);
    const at = await withOrders([HEADINGS, ...many]);
    const before = await at.read(areaAt('Sheet1', 0, 0, 20, 14));
    // As soon as the first rows are counted, quicker than a test from outside can press.
    const stopped = at.page.evaluate(
      () =>
        new Promise<void>((done) => {
          const watch = new MutationObserver(() => {
            if (!/Auditing: [1-9][\d,]* of 6,000 rows/.test(document.body.textContent)) return;
            watch.disconnect();
            [...document.querySelectorAll('button')].find((one) => one.textContent === 'Stop')?.click();
            done();
          });
          watch.observe(document.body, { subtree: true, childList: true, characterData: true });
        }),
    );
    await at.press('Run the audit');
    await stopped;
    await at.pane.getByText('Stopped. The workbook is as it was.').waitFor();
    expect(await at.pane.getByText(/orders audited/).count()).toBe(0);
    expect(await at.read(areaAt('Sheet1', 0, 0, 20, 14))).toEqual(before);
  });

  it('are audited again as they stand, by the columns as the user says they are', async () => {
    const at = await withOrders(ORDERS);
    await at.put('Sheet1', 3, 12, [[15.625]]);
    await at.press('What each column is');
    await at.pane.getByLabel('CInside width').selectOption('not used');
    await at.press('Run the audit');
    await at.pane.getByText(/^4 orders audited/).waitFor();
    const all = (await findings(at).allInnerTexts()).join('\n');
    expect(all).not.toContain('swapped');
    expect(all).not.toContain('18 5/8');
  });

  it('teach the house its rules, which are set only where the user agrees', async () => {
    // Cut 2 in longer than the rules say: the bottom allowance is 10, not 8. 5 × (98 + n + 16) in, in yards.
    const longer = Array.from({ length: 8 }, (_, n) => {
      const cut = 114 + n;
      const yards = Math.ceil((5 * cut * 8) / 36) / 8;
      return [200 + n, `Room ${n}`, 72, 11, 11, 94, 98 + n, 'pinch', 96 + n, 54, 5, cut, yards, 20];
    });
    const at = await withOrders([HEADINGS, ...longer], async (opened) => {
      await opened.press('Make the sheets');
      await opened.pane.getByText('The sheets of the job are in the workbook').waitFor();
    });
    await at.press('Rules these orders bear out');
    await at.press('Learn from these orders');
    const proposed = at.pane.getByRole('checkbox', {
      name: /^bottom allowance 10: 8 of 8 orders fit; with 8/,
    });
    await proposed.waitFor();
    const rule = (): Promise<unknown> =>
      at.page.evaluate(async () => {
        const { book } = window.trial;
        const area = (await book.contents()).names.find(({ name }) => name === 'House_rules')?.area;
        const [block] = area === undefined ? [] : await book.read([area]);
        return block?.values.find(([name]) => name === 'bottom allowance')?.[1];
      });
    expect(await rule()).toBe(8);
    await proposed.check();
    await at.press('Set the chosen rules');
    await at.pane.getByText('The rules you chose are set').waitFor();
    expect(await rule()).toBe(10);
    await at.press('Read the selected orders');
    await at.press('Run the audit');
    await at.pane.getByText('8 orders audited: all is well.').waitFor();
  });
});
