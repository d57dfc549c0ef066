/**
 * Takes the pictures of README and of the page “installing” from the trial workbook, as npm run build left it,
 * with the Chromium that is installed: `npm run pictures`.
 */
import { readFile } from 'node:fs/promises';
import { chromium, type Page } from 'playwright-core';
import { placeOf } from './written';

/** No server is there: the browser asks us for each file. The grid wants an address that counts as safe. */
const TRIAL = 'http://localhost/';
const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  wasm: 'application/wasm',
};

const browser = await chromium.launch({
  executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});

/** The trial workbook with the job it opens with. */
async function opened(): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1200, height: 640 } });
  page.setDefaultTimeout(300_000);
  await page.route('**/*', async (route) => {
    const path = new URL(route.request().url()).pathname.slice(1) || 'index.html';
    const body = await readFile(placeOf(`dist/trial/${path}`)).catch(() => undefined);
    if (body === undefined) await route.fulfill({ status: 404 });
    else await route.fulfill({ body, contentType: TYPES[path.split('.').pop() ?? ''] ?? 'text/plain' });
  });
  await page.goto(TRIAL);
  await page.getByRole('tab', { name: 'Explain' }).waitFor();
  return page;
}

/** The grid draws when it finds time: a picture is taken once nothing has moved for a second. */
async function picture(page: Page, name: string): Promise<void> {
  let last = '';
  for (let now = ''; ; last = now) {
    await page.waitForTimeout(1000);
    const bytes = await page.screenshot();
    now = bytes.toString('base64');
    if (now === last) break;
  }
  await page.screenshot({ path: placeOf(`src/pane/pictures/${name}.png`) });
}

const turnTo = (page: Page, tab: string): Promise<void> =>
  page.getByRole('tab', { name: tab, exact: true }).click();
const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).click();

const page = await opened();
await turnTo(page, 'Explain');
await page.getByRole('list', { name: 'Working' }).waitFor();
await picture(page, 'pane-beside-workbook');

await turnTo(page, 'Functions');
await page.getByRole('searchbox').fill('yardage of the face');
await press(page, /^YARDAGE/);
await picture(page, 'functions');

await browser.close();
