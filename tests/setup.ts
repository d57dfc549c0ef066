/**
 * Before every run: a folder for what is built once for all test files (`make/pack.ts`), and one browser for
 * all of them (`browser.ts`), launched when the first asks for it. Both are gone afterwards.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserServer } from 'playwright-core';
import { CHROMIUM } from './browser';

const launch = (): Promise<BrowserServer> =>
  chromium.launchServer({
    executablePath: CHROMIUM,
    host: '127.0.0.1',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });

export async function setup(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'hemledger-tests-'));
  let browser: Promise<BrowserServer> | undefined;
  const launched = async (): Promise<string> => {
    browser ??= launch();
    const server = await browser;
    // One that crashed takes down the test that it crashed in, not those after it.
    server.once('close', () => (browser = undefined));
    return server.wsEndpoint();
  };
  const asked = createServer((_, answer) => {
    launched().then(
      (endpoint) => answer.end(endpoint),
      (failure: unknown) => answer.writeHead(500).end(String(failure)),
    );
  });
  await new Promise<void>((listening) => asked.listen(0, '127.0.0.1', listening));
  process.env['HEMLEDGER_BUILT'] = folder;
  process.env['HEMLEDGER_BROWSER'] = `http://127.0.0.1:${(asked.address() as AddressInfo).port}/`;
  return async () => {
    asked.close();
    await (await browser)?.close();
    await rm(folder, { recursive: true, force: true });
  };
}
