/**
 * Excel on the web around the add-in: a page that plays its part with the genuine office.js in the
 * frame. Nothing is served and no certificate is needed: the browser's requests are answered here,
 * so the add-in stands at its own https address and whatever else it asks for is written down.
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Frame, Page, Route } from 'playwright-core';
import type { Answered, ExcelHost, Request } from './host';

export const ORIGIN = 'https://localhost:3000';
const LIBRARY = 'https://appsforoffice.microsoft.com/lib/1/hosted/';
const PAGE = fileURLToPath(new URL('excel.html', import.meta.url));
const GENUINE = dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/dist/office.js'));

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.png': 'image/png',
};

/** A file of the add-in by its path, or undefined where there is none. */
export type Files = (path: string) => Promise<string | Buffer | undefined>;

export interface Framed {
  readonly page: Page;
  /** The add-in's own frame. */
  readonly frame: Frame;
  /** What was asked for besides the add-in's files and office.js: must stay empty. */
  readonly strangers: readonly string[];
  readonly errors: readonly string[];
}

/* Codes of the older protocol for what never became a rich answer. Source: office.js 1.1.110, `RichApiMessageUtility`. */
const OLD_CODES: Readonly<Record<string, number>> = {
  InvalidOperationInCellEditMode: 5004,
  ConnectionFailure: 5012,
  RequestPayloadSizeLimitExceeded: 5103,
  ResponsePayloadSizeLimitExceeded: 5104,
};

function oldAnswer({ status, body }: Answered): unknown {
  if (status === 200) return { Error: 0, Version: 1, Data: [200, [], JSON.stringify(body)] };
  const { error } = body as { error: { code: string } };
  return { Error: OLD_CODES[error.code] ?? 5001, Version: 1, Data: null };
}

async function fulfil(route: Route, body: string | Buffer | undefined, path: string): Promise<void> {
  if (body === undefined) await route.fulfill({ status: 404, body: `${path} is not there` });
  else await route.fulfill({ body, contentType: TYPES[extname(path)] ?? 'text/plain' });
}

/** Opens the add-in's page `start` in Excel's. `version` is the newest ExcelApi that this Excel knows. */
export async function framed(
  browser: Browser,
  host: ExcelHost,
  files: Files,
  start: string,
  version = '1.20',
): Promise<Framed> {
  const page = await (await browser.newContext()).newPage();
  // The same person every time, as a browser that keeps its storage knows.
  await page.addInitScript(() => {
    try {
      localStorage.setItem('hemledger-owner', 'the user');
    } catch {
      // A page without storage knows nobody.
    }
  });
  const strangers: string[] = [];
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.route('**/*', async (route) => {
    const url = route.request().url();
    const path = new URL(url).pathname;
    if (url.startsWith(LIBRARY)) {
      await fulfil(
        route,
        await readFile(join(GENUINE, url.slice(LIBRARY.length).split('?')[0] ?? '')).catch(() => undefined),
        path,
      );
    } else if (path === '/excel.html') await fulfil(route, await readFile(PAGE), path);
    else if (url.startsWith(`${ORIGIN}/`)) await fulfil(route, await files(path), path);
    else {
      strangers.push(url);
      await route.abort();
    }
  });
  await page.exposeFunction('askExcel', async (request: string, flags: number) => {
    const answered = await host.answer(JSON.parse(request) as Request, flags);
    return answered === undefined ? null : oldAnswer(answered);
  });
  host.onEvent((entry) => {
    void page.evaluate((one) => {
      (window as unknown as { tellFrame(entry: unknown): void }).tellFrame(one);
    }, entry);
  });
  const sets = JSON.stringify({ ExcelApi: version, DelayForCellEdit: '1.1', CustomFunctionsRuntime: '1.4' });
  const asked = new URLSearchParams({ start, sets, width: '350' });
  await page.goto(`${ORIGIN}/excel.html?${asked.toString()}`);
  const frame = page.frames().find((one) => one !== page.mainFrame());
  if (frame === undefined) throw new Error('the add-in has no frame');
  return { page, frame, strangers, errors };
}
