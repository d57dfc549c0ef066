import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import type { CellValue } from '../../src/book/book';
import { OUTSIDE, refusedOutside, Trial, thereIsABrowser, type Opened } from './page';

const sectionsOf = (at: Opened): Promise<string[]> => at.pane.getByRole('tab').allInnerTexts();

async function table(at: Opened, name: string): Promise<readonly (readonly CellValue[])[]> {
  const found = (await at.contents()).tables.find((one) => one.name === name);
  return (await at.read(found?.area ?? areaAt('', 0, 0))).values;
}

describe.runIf(thereIsABrowser)('the trial workbook', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterEach(() => trial.closePages());
  afterAll(() => trial.end());

  it('opens with the demo job worked out, and saves it so that it opens again as it was', async () => {
    const at = await trial.open('demo');
    expect(await at.pane.getByText('Left half done').count()).toBe(0);
    const contents = await at.contents();
    const [windows, quote] = [await table(at, 'Windows'), await table(at, 'Quote')];
    const yardage = windows[0]?.findIndex((one) => String(one).startsWith('yardage')) ?? -1;
    // 106½ in of rod: 6 widths of 54; 96 + 8 + 8 = 112 in; 3 × 6 × 112 ÷ 36 = 56 yd.
    expect(windows[1]?.[yardage]).toBe(56);
    const [names, widths, headings] = await at.page.evaluate(() => {
      const sheet = window.trial.grid.api.getActiveWorkbook()?.getSheetByName('Fabrics');
      return [sheet?.getColumnWidth(0), sheet?.getColumnWidth(2), sheet?.getRowHeight(3)];
    });
    // 22 characters and 10; a heading of several lines is given its height.
    expect(names).toBeGreaterThan(1.5 * (widths ?? Infinity));
    expect(headings).toBeGreaterThan(40);
    await at.page.evaluate(() => window.trial.book.remember('mappings', { told: 'drap “é”' }));

    await at.page.getByLabel('Workbook to open').setInputFiles({
      name: 'again.xlsx',
      mimeType: 'application/octet-stream',
      buffer: await at.saved(),
    });
    await at.page
      .getByRole('status')
      .filter({ hasText: /^again$/ })
      .waitFor();
    expect(await at.contents()).toEqual(contents);
    expect(await table(at, 'Windows')).toEqual(windows);
    expect(await table(at, 'Quote')).toEqual(quote);
    expect(await at.page.evaluate(() => window.trial.book.recall('mappings'))).toEqual({ told: 'drap “é”' });
    expect(at.strangers).toEqual([]);
    expect(at.faults).toEqual([]);
  });

  it('says in a sentence that a file is no workbook, and keeps the one that is open', async () => {
    const at = await trial.open();
    const before = await at.contents();
    await at.page.getByLabel('Workbook to open').setInputFiles({
      name: 'list.xlsx',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from('no workbook at all'),
    });
    await at.page.getByRole('status').filter({ hasText: '“list.xlsx” cannot be opened' }).waitFor();
    expect(await at.contents()).toEqual(before);
  });

  it('keeps text as text, and computes a table’s own row in its formulas', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, [
      ['inside width', 'rod'],
      ['1/2', null],
      ['=1+1', null],
      ['072', null],
    ]);
    await at.page.evaluate(async () => {
      const { book } = window.trial;
      const area = { sheet: 'Sheet1', row: 0, column: 0, rows: 4, columns: 2 };
      await book.inOneStep('Make a table', async (write) => {
        await write({ newTables: [{ name: 'Windows', area }] });
        const column = { ...area, row: 1, column: 1, rows: 3, columns: 1 };
        await write({ puts: [{ area: column, formula: '=HEM.RODWIDTH(Windows[@[inside width]],0,0)' }] });
      });
    });
    const { values, formulas } = await at.read(areaAt('Sheet1', 1, 0, 3, 2));
    expect(values).toEqual([
      ['1/2', 0.5],
      ['=1+1', '#VALUE!'],
      ['072', 72],
    ]);
    expect(formulas[0]).toEqual([null, '=HEM.RODWIDTH(Windows[@[inside width]],0,0)']);
  });

  it('marks findings and gives the cells their own colour back', async () => {
    const at = await trial.open();
    const area = areaAt('Sheet1', 2, 1);
    const colour = (): Promise<string | undefined> =>
      at.page.evaluate(() =>
        window.trial.grid.api.getActiveWorkbook()?.getActiveSheet().getRange(2, 1).getBackground(),
      );
    const before = await colour();
    await at.page.evaluate(
      (cell) => window.trial.book.mark([{ area: cell, weight: 'check', sentence: 'Look here.' }]),
      area,
    );
    expect(await colour()).not.toBe(before);
    await at.page.evaluate(() => window.trial.book.unmark());
    expect(await colour()).toBe(before);
  });

  it.each(['light', 'dark', 'high contrast'])(
    'can be used by everyone in every section, %s',
    async (theme) => {
      const at = await trial.open(theme === 'light' ? 'demo' : 'nothing', 900);
      await at.page.getByLabel('Theme').selectOption(theme);
      for (const section of await sectionsOf(at)) {
        await at.section(section);
        if (section === 'Workbook' && theme === 'light') {
          await at.goTo(areaAt('Ground floor', 4, 0));
          await at.press('Read the table');
          await at.press('Preview');
          await at.pane.getByRole('region', { name: 'Preview of the first rows' }).waitFor();
        }
        if (section === 'Explain' && theme === 'light') {
          await at.goTo(areaAt('Windows', 4, 25));
          await at.pane.getByRole('img').waitFor();
        }
        expect([section, ...(await at.seriousFaults())]).toEqual([section]);
      }
      expect(at.strangers).toEqual([]);
    },
  );

  it('lets nothing leave the machine, whoever would send it', async () => {
    const at = await trial.open();
    expect(await refusedOutside(at.page)).toEqual(OUTSIDE);
  });

  it('fits a pane of 320 pixels', async () => {
    const at = await trial.open();
    await at.page.addStyleTag({
      content: 'body { grid-template-columns: minmax(0, 1fr) 320px !important; }',
    });
    for (const section of await sectionsOf(at)) {
      await at.section(section);
      const beyond = await at.pane.evaluate((pane) => {
        const content = pane.querySelector('#section');
        return content === null ? NaN : content.scrollWidth - content.clientWidth;
      });
      expect([section, beyond]).toEqual([section, 0]);
      const tabs = await at.pane.getByRole('tab').last().boundingBox();
      expect((tabs?.x ?? 0) + (tabs?.width ?? 0)).toBeLessThanOrEqual(1280);
    }
  });

  it('hands empty cells over as 0 where that is chosen, so that a formula that minds them is seen', async () => {
    const at = await trial.open();
    await at.page.evaluate(() =>
      window.trial.book.inOneStep('Type', (write) =>
        write({
          puts: [
            {
              area: { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 2 },
              cells: [
                [
                  { formula: '=HEM.RODWIDTH(72,D1,D1)' },
                  { formula: '=HEM.RODWIDTH(72,IF(D1="","",D1),IF(D1="","",D1))' },
                ],
              ],
            },
          ],
        }),
      ),
    );
    const shown = async (): Promise<unknown> => (await at.read(areaAt('Sheet1', 0, 0, 1, 2))).values;
    const empties = at.page.getByRole('combobox', { name: 'Empty cells are' });
    // 11 in each side are usual (common practice, no source); 0 is none.
    expect(await shown()).toEqual([[94, 94]]);
    await empties.selectOption('0, as in Excel on Windows and Mac');
    await expect.poll(shown).toEqual([[72, 94]]);
    await empties.selectOption('nothing, as in Excel on the web');
    await expect.poll(shown).toEqual([[94, 94]]);
  });
});
