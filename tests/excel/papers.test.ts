import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lookForPapers, writePapers } from '../../src/book/papers/in-book';
import { PAPER_KINDS } from '../../src/core/papers/paper';
import { PAPERS_TABLE, TODAY } from '../book/papers/own-table';
import type { Sheet } from '../office/model';
import { openedIn, picture, type Opened } from './opened';
import { built, paneIn, seriousFaults, workbookOf, type PanePage } from './pane-page';
import { connected } from '../browser';
import type { Files } from '../office/frame';

const sheetOf = ({ host }: Pick<Opened, 'host'>, name: string): Sheet => {
  const found = host.book.sheetNamed(name);
  if (found === undefined) throw new Error(`no sheet ${name}`);
  return found;
};
async function written(opened: Opened, anew = true) {
  const found = await lookForPapers(opened.book, { only: PAPER_KINDS, today: TODAY });
  if (found === undefined) throw new Error('no job');
  return writePapers(opened.book, found, anew);
}

describe('papers in Excel', () => {
  it('are sheets ready to print: one page wide, their paper, headings repeated, page n of m', async () => {
    const opened = await openedIn(PAPERS_TABLE);
    const { sheets } = await written(opened);
    expect(opened.host.unknown).toEqual([]);
    expect(sheets).toContain('Client quote');
    const quote = sheetOf(opened, 'Client quote');
    expect(quote.page).toMatchObject({
      Orientation: 'Portrait',
      PaperSize: 'Letter',
      Zoom: { horizontalFitToPages: 1 },
      LeftFooter: '&"Arial,Regular"&8Quote',
      RightFooter: '&"Arial,Regular"&8page &P of &N',
      LeftMargin: 0.6 * 72,
      printArea: { row: 0, column: 0, columns: 12 },
    });
    expect(quote.bag['ShowGridlines']).toBe(false);
    expect(quote.merged.every(({ rows, columns }) => rows === 1 && columns > 1)).toBe(true);
    // A work order begins a page for each row of windows.
    const work = sheetOf(opened, 'Work order');
    expect(work.page['breaks']).toHaveLength(1);
    const begins = (work.page['breaks'] as number[])[0]!;
    expect([...work.cells].some(([key, { value }]) => Math.floor(key / 16_384) === begins && value === 'Work order')).toBe(true); // prettier-ignore
  });

  it('look as in the file: weights, sizes and lines of every row', async () => {
    const opened = await openedIn(PAPERS_TABLE);
    await written(opened);
    const quote = sheetOf(opened, 'Client quote');
    const styleOf = (text: string) => [...quote.cells.values()].find(({ value }) => value === text)?.style;
    expect(styleOf('Quote')).toMatchObject({ 'Font.Bold': true, 'Font.Size': 15, HorizontalAlignment: 'Right' }); // prettier-ignore
    expect(styleOf('Price')).toMatchObject({ 'Border.Top.Style': 'Continuous', 'Border.Bottom.Weight': 'Medium' }); // prettier-ignore
    expect(styleOf('Total')).toMatchObject({ 'Font.Bold': true, 'Border.Bottom.Weight': 'Medium' });
    const heights = [...quote.rowHeights.values()];
    expect(heights.length).toBeGreaterThan(20);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(3);
  });

  it('of eighty windows come in requests that Excel on the web takes', async () => {
    const [title, headings, first, , total] = PAPERS_TABLE as readonly (readonly (
      string | number | null
    )[])[];
    const eighty = Array.from({ length: 80 }, (_, at) => first!.with(0, `Room ${at + 1}`));
    const opened = await openedIn([title!, headings!, ...eighty, total!]);
    await written(opened);
    const most = Math.max(...opened.host.trips);
    console.log(`80 windows: ${opened.trips()} requests, of ${most} characters at most`);
    expect(most).toBeLessThan(4_000_000);
  });

  it('are made again in place of old ones, and one that somebody edited is kept', async () => {
    const opened = await openedIn(PAPERS_TABLE);
    await written(opened);
    const names = opened.host.book.sheets.map(({ name }) => name);
    await written(opened);
    expect([...opened.host.book.sheets.map(({ name }) => name)].sort()).toEqual([...names].sort());
    const quote = sheetOf(opened, 'Client quote');
    quote.open(0, 0).value = 'Our own words';
    await written(opened);
    expect(opened.host.book.sheets.map(({ name }) => name)).toContain('Client quote 2');
    expect(sheetOf(opened, 'Client quote').cell(0, 0)?.value).toBe('Our own words');
  });

  it('that fail midway leave no half of a paper behind', async () => {
    const opened = await openedIn(PAPERS_TABLE, { patience: 200 });
    await written(opened);
    const before = picture(opened);
    opened.host.tripsLeft = 9;
    await expect(written(opened, false)).rejects.toThrow();
    opened.host.tripsLeft = Infinity;
    expect(picture(opened)).toBe(before);
  });
});

describe('the pane’s papers in Excel', () => {
  let browser: Browser;
  let files: Files;
  let pane: PanePage;
  beforeAll(async () => {
    [files, browser] = await Promise.all([built(), connected()]);
  });
  afterAll(() => browser.close());

  it('are chosen, looked over and written, with their drawings as pictures that say what they show', async () => {
    pane = await paneIn(browser, files, { host: workbookOf(PAPERS_TABLE, 'Openings') });
    await pane.turnTo('Papers');
    await pane.press('Read the job');
    await pane.says('2 rows of windows; 7 papers can be made').waitFor();
    expect(await seriousFaults(pane.frame)).toEqual([]);
    await pane.frame.getByRole('checkbox', { name: 'labels' }).uncheck();
    await pane.press('Read the job');
    await pane.press('Write 6 papers');
    await pane.says(/^Written: “Client quote”.* Fill in “House” and “Job” once/).waitFor();
    const work = sheetOf(pane, 'Work order');
    expect(work.shapes.length).toBeGreaterThanOrEqual(2);
    for (const { bag } of work.shapes) {
      expect(bag['AltTextDescription']).toMatch(/^Heading of the/);
      expect(String(bag['base64']).startsWith('iVBORw0KGgo')).toBe(true);
    }
    // Each stands on the row made for it, below the one before.
    const tops = work.shapes.map(({ bag }) => Number(bag['Top']));
    expect(tops).toEqual([...tops].sort((one, other) => one - other));
    // Excel keeps an undo step a request: none is promised for them all.
    expect(await pane.frame.getByText('One undo').count()).toBe(0);

    sheetOf(pane, 'Client quote').open(0, 0).value = 'Our own words';
    await pane.press('Read the job');
    await pane.says('“Client quote” was changed by hand and is kept').waitFor();
    await pane.frame.getByText('stand there as made before').waitFor();
    await pane.frame.getByRole('radio', { name: 'keep them and write the new ones beside' }).check();
    await pane.frame.getByRole('button', { name: 'Write 6 papers', exact: true }).waitFor();
    await pane.frame.getByRole('radio', { name: 'take them away and write the new ones' }).check();
    await pane.press(/^Write 6 papers, \d in place of old ones$/);
    await pane.says(/^Written: “Client quote 2”/).waitFor();
    expect(pane.host.book.sheets.filter(({ name }) => name.startsWith('Work order'))).toHaveLength(1);
    expect([pane.strangers, pane.errors, pane.host.unknown]).toEqual([[], [], []]);
    await pane.page.context().close();
  });

  it('that cannot be made say what is missing, and a workbook without windows is told so', async () => {
    const unpriced = PAPERS_TABLE.slice(1, 4).map((row) => row.slice(0, 10));
    pane = await paneIn(browser, files, { host: workbookOf(unpriced, 'Openings') });
    await pane.turnTo('Papers');
    await pane.press('Read the job');
    await pane.says('No client’s quote can be made:').waitFor();
    await pane.says('No window has a price.').waitFor();
    expect(await pane.frame.getByRole('button', { name: 'Write 6 papers' }).count()).toBe(1);
    await pane.page.context().close();
    pane = await paneIn(browser, files, { host: workbookOf([['Ledger'], ['rent', 400]]) });
    await pane.turnTo('Papers');
    await pane.press('Read the job');
    await pane.says('holds no table of windows').waitFor();
    expect([pane.strangers, pane.errors, pane.host.unknown]).toEqual([[], [], []]);
    await pane.page.context().close();
  });
});
