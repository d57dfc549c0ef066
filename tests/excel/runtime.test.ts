import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { connected } from '../browser';
import { framed, type Framed } from '../office/frame';
import { ExcelHost } from '../office/host';
import { packed } from '../make/pack';

/* How the runtime hands #VALUE! on. Source: custom-functions-runtime.js 1.1.110; #N/A would be 1. */
const INVALID_VALUE = 7;

describe('the functions’ page as it is shipped, in the genuine runtime for custom functions', () => {
  let browser: Browser;
  let addin: Framed;
  const host = new ExcelHost();
  beforeAll(async () => {
    const { folder } = await packed('functions');
    browser = await connected();
    const own = ['/functions.html', '/functions.js'];
    const serve = (path: string): Promise<string | undefined> =>
      own.includes(path) ? readFile(join(folder, path), 'utf8') : Promise.resolve(undefined);
    addin = await framed(browser, host, serve, '/functions.html');
    // The runtime reports that it is ready.
    await vi.waitUntil(() => host.trips.length > 0, { timeout: 20_000 });
  });
  afterAll(async () => {
    await browser.close();
  });

  it('HEM.RODWIDTH(72) is 94', async () => {
    expect(await host.call('RODWIDTH', [72, null, null, null])).toEqual({ value: 94 });
  });

  it('rows spill, blanks and omitted inputs come as null', async () => {
    const pleats = await host.call('PLEATS', [94, 6, 'pinch', 54, null, null]);
    expect(pleats).toEqual({
      value: [[expect.any(Number), expect.any(Number), expect.any(Number), expect.any(Number)]],
    });
  });

  it('what cannot be read is #VALUE! with a sentence', async () => {
    const answer = await host.call('RODWIDTH', ['about so', null, null, null]);
    expect(answer).toMatchObject({
      sentence: expect.stringContaining('about so') as unknown,
      code: INVALID_VALUE,
    });
  });

  it('three hundred cells are answered in far fewer requests', async () => {
    const before = host.trips.length;
    const answers = await Promise.all(
      Array.from({ length: 300 }, (_, row) => host.call('RODWIDTH', [20 + row / 8, 0, 0, null])),
    );
    expect(answers.map((one) => ('value' in one ? one.value : one.sentence))).toEqual(
      Array.from({ length: 300 }, (_, row) => 20 + row / 8),
    );
    expect(host.trips.length - before).toBeLessThan(100);
  });

  it('asks for nothing but its own files and office’s', () => {
    expect([addin.strangers, addin.errors, host.unknown]).toEqual([[], [], []]);
  });
});
