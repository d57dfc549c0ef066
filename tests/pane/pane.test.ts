import { build } from 'esbuild';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { MemoryBook } from '../../src/book/memory';
import type { trouble } from '../../src/book/trouble';
import { connected, thereIsABrowser } from '../browser';

declare global {
  interface Window {
    memory: { readonly book: MemoryBook; readonly trouble: typeof trouble };
  }
}

describe.runIf(thereIsABrowser)('the pane on a workbook in memory', () => {
  let browser: Browser;
  let script: string;
  beforeAll(async () => {
    const made = await build({
      entryPoints: [fileURLToPath(new URL('memory.tsx', import.meta.url))],
      bundle: true,
      write: false,
      format: 'iife',
      jsx: 'automatic',
      logLevel: 'silent',
      define: { 'process.env.NODE_ENV': '"production"', 'import.meta.url': '""' },
      outdir: 'unused',
    });
    script = made.outputFiles.find((one) => one.path.endsWith('.js'))?.text ?? '';
    browser = await connected();
  });
  afterAll(() => browser.close());

  async function opened(): Promise<Page> {
    const page = await browser.newPage({ viewport: { width: 380, height: 800 } });
    await page.setContent('<!doctype html><html lang="en"><title>Pane</title><body></body></html>');
    await page.addScriptTag({ content: script });
    return page;
  }
  const picture = (page: Page): Promise<string> => page.evaluate(() => window.memory.book.picture());
  async function previewed(): Promise<Page> {
    const page = await opened();
    await page.getByRole('button', { name: 'Read the table' }).click();
    await page.getByRole('button', { name: 'Preview' }).click();
    await page.getByText('cells would be written').waitFor();
    return page;
  }

  it('fills hidden rows only once the user says so', async () => {
    const page = await previewed();
    const add = page.getByRole('button', { name: /^Add \d/ });
    expect(await add.isDisabled()).toBe(true);
    await page.getByRole('checkbox', { name: 'Fill the 1 hidden or filtered rows too' }).check();
    await add.click();
    await page.getByText('columns stand in').waitFor();
    expect(await page.evaluate(() => window.memory.book.undoable)).toEqual(['Fill 5 columns']);
  });

  it.each([
    ['editing', 'A cell is being edited, so nothing was written.'],
    ['lost', 'The connection to the workbook is lost.'],
    ['closed', 'The workbook was closed.'],
  ] as const)('says in a sentence that the host failed: %s', async (code, sentence) => {
    const page = await previewed();
    await page.getByRole('checkbox', { name: /hidden/ }).check();
    const before = await picture(page);
    await page.evaluate((one) => {
      window.memory.book.failNext = window.memory.trouble(one);
    }, code);
    await page.getByRole('button', { name: /^Add \d/ }).click();
    await page.getByText(sentence).waitFor();
    expect(await picture(page)).toBe(before);
  });

  it('owns up to a fault that is its own, and goes on working', async () => {
    const page = await previewed();
    await page.getByRole('checkbox', { name: /hidden/ }).check();
    await page.evaluate(() => {
      window.memory.book.failNext = new Error('a gremlin');
    });
    const add = page.getByRole('button', { name: /^Add \d/ });
    await add.click();
    await page.getByText('a fault of ours, not of your workbook: a gremlin').waitFor();
    await add.click();
    await page.getByText('columns stand in').waitFor();
  });

  it('tells what the host lacks where it matters: printing at the paper of a new job', async () => {
    const page = await opened();
    await page.getByRole('tab', { name: 'New job' }).click();
    await page.getByText('This host is of our own making.').waitFor();
  });
});
