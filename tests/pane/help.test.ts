import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { extname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import { connected, thereIsABrowser } from '../browser';
import { packed } from '../make/pack';

const AXE = createRequire(import.meta.url).resolve('axe-core');
const SITE = 'https://localhost:3000/';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.css': 'text/css',
  '.js': 'text/javascript',
};

const shown = (page: Page): Promise<string[]> => page.locator('article:visible h3').allTextContents();

describe.runIf(thereIsABrowser)('the help page', () => {
  let browser: Browser;
  let site: ReadonlyMap<string, Buffer>;
  beforeAll(async () => {
    browser = await connected();
    const names = ['help.html', 'installing.html', 'help.js', 'help.css'];
    const { folder } = await packed('help');
    const files = names.map(async (name) => [name, await readFile(join(folder, name))] as const);
    site = new Map(await Promise.all(files));
  });
  afterAll(() => browser.close());

  /** The built page, as narrow as a pane or a telephone; whatever lies outside of it is cut off. */
  async function opened(name = 'help.html'): Promise<Page> {
    const page = await browser.newPage({ viewport: { width: 350, height: 700 } });
    await page.route('**/*', async (route) => {
      const name = new URL(route.request().url()).pathname.slice(1);
      const body = name.endsWith('.png') ? Buffer.alloc(0) : site.get(name);
      if (body === undefined) await route.abort();
      else await route.fulfill({ body, contentType: TYPES[extname(name)] ?? '' });
    });
    await page.goto(SITE + name);
    return page;
  }

  it('finds a function by any words of its article, and says how many', async () => {
    const page = await opened();
    expect(await shown(page)).toEqual(CATALOGUE.map(({ name }) => name));
    expect(await page.locator('#found').textContent()).toBe(`${CATALOGUE.length} functions`);

    await page.fill('#search', '  Floor  PUDDLE ');
    expect(await shown(page)).toContain('DROP');
    expect((await shown(page)).length).toBeLessThan(CATALOGUE.length / 2);
    expect(await page.locator('h2:visible').allTextContents()).not.toContain('Money');

    await page.fill('#search', 'zeppelin');
    expect(await shown(page)).toEqual([]);
    expect(await page.locator('#found').textContent()).toMatch(/^No function mentions this/);

    await page.fill('#search', '');
    expect((await shown(page)).length).toBe(CATALOGUE.length);
  });

  it('tells of installing in full', async () => {
    const page = await opened('installing.html');
    const headings = (await page.locator('h2:visible').allTextContents()).join('\n');
    for (const told of [
      'What Excel is needed',
      'Updating',
      'Going back',
      'Removing it',
      'What stays',
      'Without a connection',
      'without the add-in',
    ])
      expect(headings).toContain(told);
    expect(await page.getByText('for testing only').isVisible()).toBe(true);
  });

  it.each([
    ['help.html', 'light'],
    ['help.html', 'dark'],
    ['installing.html', 'light'],
    ['installing.html', 'dark'],
  ] as const)('%s can be used by everyone, in %s colours', async (name, colorScheme) => {
    const page = await opened(name);
    await page.emulateMedia({ colorScheme });
    await page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })");
    await page.evaluate(await readFile(AXE, 'utf8'));
    const found = (await page.evaluate('axe.run()')) as { violations: { id: string; help: string }[] };
    expect(found.violations.map(({ id, help }) => `${id}: ${help}`)).toEqual([]);
    const beyond = await page.evaluate('document.documentElement.scrollWidth - innerWidth');
    expect(beyond).toBeLessThanOrEqual(0);
  });
});
