import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { PAPERS_TABLE } from '../book/papers/own-table';
import { scratch } from '../file/book';
import { thereIsABrowser, Trial, type Opened } from './page';

const suite = existsSync('/usr/bin/pdftotext');
const pdfText = (path: string): string =>
  execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
const pdfInfo = (path: string): string => execFileSync('pdfinfo', [path], { encoding: 'utf8' });

describe.runIf(thereIsABrowser)('papers in the trial workbook', () => {
  const folder = scratch();
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterEach(() => trial.closePages());
  afterAll(() => trial.end());

  async function withJob(): Promise<Opened> {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, PAPERS_TABLE);
    await at.section('Papers');
    return at;
  }

  it('are written as sheets, made again in place, and kept where they were edited', async () => {
    const at = await withJob();
    await at.press('Read the job');
    await at.pane.getByText('2 rows of windows; 7 papers can be made').waitFor();
    // Where nothing stands beside the job yet, the pane says how to put it there.
    await at.pane.getByText(/^To set another cloth or fullness beside these prices/).waitFor();
    expect(await at.seriousFaults()).toEqual([]);
    await at.press('Write 7 papers');
    await at.pane.getByText(/^Written: “Client quote”/).waitFor();
    const names = async () => (await at.contents()).sheets.map(({ name }) => name);
    expect(await names()).toEqual(
      expect.arrayContaining(['House', 'Job', 'Client quote', 'Work order', 'Labels']),
    );
    const before = (await names()).length;
    await at.press('Read the job');
    await at.press('Write 7 papers, 7 in place of old ones');
    await at.pane.getByText(/^Written: “Client quote”/).waitFor();
    expect((await names()).length).toBe(before);
    await at.put('Client quote', 0, 0, [['Our own words']]);
    await at.press('Read the job');
    await at.pane.getByText('“Client quote” was changed by hand and is kept').waitFor();
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });

  it('are shown as sheets of paper and printed, page n of m, one page wide, headings repeated', async () => {
    const at = await withJob();
    await at.press('Read the job');
    await at.press('Show for printing');
    const view = at.page.getByRole('dialog', { name: 'Papers to print' });
    await view.waitFor();
    expect(await view.getByRole('region', { name: /^Quote, page 1 of 1$/ }).count()).toBe(1);
    expect(await view.getByRole('img', { name: /^Heading of the/ }).count()).toBeGreaterThanOrEqual(2);
    // No word is cut off by its cell's edge.
    const cut = await view
      .locator('.paper-cell.wrapped')
      .evaluateAll((cells) =>
        cells.filter((one) => one.scrollHeight > one.clientHeight + 2).map(({ textContent }) => textContent),
      );
    expect(cut).toEqual([]);
    const over = await view
      .locator('.paper-row')
      .evaluateAll((rows) => rows.filter((one) => one.scrollHeight > one.clientHeight + 2).length);
    expect(over).toBe(0);
    const pages = await view.locator('.paper-page').count();
    const pdf = join(folder, 'print.pdf');
    await writeFile(pdf, await at.page.pdf({ preferCSSPageSize: true, printBackground: true }));
    if (suite) {
      const text = pdfText(pdf);
      expect(pdfInfo(pdf)).toMatch(new RegExp(`Pages: +${pages}\n`));
      expect(pdfInfo(pdf)).toContain('612 x 792');
      expect(text).toContain('1,240.50');
      expect(text).toContain('page 2 of 2');
      expect(text).not.toContain('Read the job');
    }
    await at.page.keyboard.press('Escape');
    await expect.poll(() => view.count()).toBe(0);
    expect(await at.pane.getByRole('button', { name: 'Show for printing' }).isEnabled()).toBe(true);
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });

  it('set two options beside each other, from two sheets of the same windows', async () => {
    const at = await withJob();
    await at.page.evaluate(() =>
      window.trial.book.inOneStep('Set up', (write) => write({ newSheets: [{ name: 'Velvet' }] })),
    );
    await at.put('Velvet', 0, 0, PAPERS_TABLE.map((row) => row.map((cell) => (cell === 'Heron linen' ? 'Moss velvet' : cell)))); // prettier-ignore
    await at.press('Read the job');
    await at.pane.getByLabel('Beside it on the quote, as option B').selectOption('Velvet');
    await at.press('Show for printing');
    const view = at.page.getByRole('dialog', { name: 'Papers to print' });
    await view.getByText('Option B', { exact: true }).first().waitFor();
    expect(await view.getByText(/^Option B: .*Moss velvet/).count()).toBeGreaterThan(0);
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });

  it('go into the saved file with their page, their lines and their drawings', async () => {
    const at = await withJob();
    await at.press('Read the job');
    await at.press('Write 7 papers');
    await at.pane.getByText(/^Written: “Client quote”/).waitFor();
    const saved = await at.saved();
    const parts = unzipSync(saved);
    const text = (name: string): string => strFromU8(parts[name] ?? new Uint8Array());
    const sheets = Object.keys(parts)
      .filter((name) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name))
      .map(text);
    const quote = sheets.find((one) => one.includes('&amp;8Quote'));
    expect(quote).toMatch(/showGridLines="0"/);
    expect(quote).toMatch(/fitToPage="1"/);
    expect(text('xl/workbook.xml')).toMatch(/_xlnm.Print_Area"[^>]*>[^<]*Client quote[^<]*!\$A\$1:\$L\$\d+/);
    const drawings = Object.keys(parts)
      .filter((name) => /^xl\/drawings\/drawing\d+\.xml$/.test(name))
      .map(text);
    expect(drawings.join('')).toContain('descr="Heading of the');
    await writeFile(join(folder, 'saved.xlsx'), saved);
  });
});
