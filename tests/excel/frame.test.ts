import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { connected } from '../browser';
import { framed, type Framed } from '../office/frame';
import { ExcelHost } from '../office/host';
import { Workbook } from '../office/model';

const ADDIN = fileURLToPath(new URL('../office/addin.ts', import.meta.url));
const PAGE = `<!doctype html><title>Add-in</title><p></p>
<script src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"></script><script src="/addin.js"></script>`;

describe('the book in the add-in’s own frame, with the genuine office.js', () => {
  let browser: Browser;
  let script: string;
  beforeAll(async () => {
    const [bundled, here] = await Promise.all([
      build({ entryPoints: [ADDIN], bundle: true, write: false, target: 'es2022', format: 'iife' }),
      connected(),
    ]);
    script = bundled.outputFiles[0]?.text ?? '';
    browser = here;
  });
  afterAll(async () => {
    await browser.close();
  });

  async function opened(version?: string): Promise<{ host: ExcelHost; addin: Framed }> {
    const host = new ExcelHost(new Workbook('Windows'));
    const files = (path: string): Promise<string | undefined> =>
      Promise.resolve(path === '/addin.html' ? PAGE : path === '/addin.js' ? script : undefined);
    const addin = await framed(browser, host, files, '/addin.html', version);
    await addin.frame.waitForFunction(() => document.querySelector('p')?.textContent !== '');
    return { host, addin };
  }

  it('opens on Excel on the web, and asks for nothing but its own files and office.js', async () => {
    const { host, addin } = await opened();
    expect(await addin.frame.textContent('p')).toBe('Excel OfficeOnline: Book1.xlsx');
    expect([addin.strangers, addin.errors, host.unknown]).toEqual([[], [], []]);
  });

  it('fills 2,000 rows in the same number of requests as in Node', async () => {
    const { host, addin } = await opened();
    const before = host.trips.length;
    await addin.frame.evaluate(async () => {
      const { book, apply } = window;
      if (book === undefined) throw new Error('no book');
      const area = (row: number, column: number, rows: number) => ({
        sheet: 'Windows',
        row,
        column,
        rows,
        columns: 1,
      });
      await apply(book, 'Fill', {
        puts: [
          { area: area(0, 3, 1), cells: [['Widths']] },
          { area: area(1, 3, 2000), formula: '=HEM.WIDTHS(A2,"pinch",54)' },
        ],
        dress: [{ area: area(1, 3, 2000), role: 'output', format: '0' }],
      });
    });
    expect(host.book.active.cell(2000, 3)?.formula).toBe('=HEM.WIDTHS(A2001,"pinch",54)');
    expect(host.trips.length - before).toBeLessThanOrEqual(11);
    expect(host.unknown).toEqual([]);
  });

  it('hears of the selection', async () => {
    const { host, addin } = await opened();
    await addin.frame.evaluate(async () => {
      await window.book?.onSelection(({ row, column }) => {
        document.title = `${row} ${column}`;
      });
    });
    host.select(host.book.active, { row: 4, column: 2, rows: 1, columns: 1 });
    await expect.poll(() => addin.frame.evaluate(() => document.title)).toBe('4 2');
  });

  it.each([
    ['a cell being edited', (host: ExcelHost) => { host.startEditing(); }, 'A cell is being edited'], // prettier-ignore
    ['a broken connection', (host: ExcelHost) => { host.tripsLeft = 0; }, 'The connection to the workbook is lost'], // prettier-ignore
    ['a protected sheet', (host: ExcelHost) => { host.book.active.protection = { options: {}, password: '' }; }, 'The sheet “Windows” is protected'], // prettier-ignore
  ])('%s is a sentence there too', async (_, trouble, sentence) => {
    const { host, addin } = await opened();
    trouble(host);
    const said = await addin.frame.evaluate(async () => {
      const area = { sheet: 'Windows', row: 0, column: 0, rows: 1, columns: 1 };
      try {
        await window.book?.inOneStep('Try', (write) => write({ puts: [{ area, cells: [[1]] }] }));
        return 'nothing was refused';
      } catch (failure) {
        return (failure as Error).message;
      }
    });
    expect(said).toContain(sentence);
  });

  it('an older Excel is told what it needs', async () => {
    const { addin } = await opened('1.8');
    expect(await addin.frame.textContent('p')).toContain(
      'it needs Microsoft 365, Excel on the web, Excel 2021 or later',
    );
  });
});
