import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { INCHES } from '../../../src/core/exact/unit';
import { openOrders } from '../../../src/file/audit/orders';
import { Workers } from '../../../src/file/audit/workers';
import { command } from '../command';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'workers-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A long remark here and there, so that few rows fill several pieces. */
const NOTE = `"as agreed,\n${'the client measures again; '.repeat(8_000)}"`;

async function orders(rows = 300): Promise<string> {
  const path = join(folder, 'orders.csv');
  const lines = ['job,room,rod width,drop,heading,fabric width,yardage,remarks'];
  for (let at = 0; at < rows; at++)
    lines.push(
      at % 97 === 96
        ? 'Total,,,,,,1,'
        : `${at % 40 === 0 ? `Job ${at}` : ''},${at % 3 === 0 ? `Room ${at}` : ''},94,96,pinch,54,${at % 50 === 7 ? 18.625 : 15.625},${at % 30 === 11 ? NOTE : ''}`,
    );
  await writeFile(path, lines.join('\n'));
  return path;
}

const audit = command('audit');

describe('the audit on worker threads', () => {
  it('tells the same, in the same order, as on one', async () => {
    const path = await orders();
    const one = await audit(path, '--csv');
    expect(one.out.split('\n').length).toBeGreaterThan(20);
    expect(await audit(path, '--csv', '--jobs', '2')).toEqual(one);
  });

  it('takes a number of threads', async () => {
    expect((await audit(await orders(3), '--jobs', 'all')).err).toBe(
      '--jobs reads “all”. Give a whole number of threads from 1 to 64.',
    );
  });

  it.each([
    ['dies of an error', 'throw new Error("out of luck");', 'out of luck'],
    ['ends by itself', 'process.exit(7);', 'code 7'],
  ])('says it where a thread %s', async (_, script, why) => {
    const path = await orders();
    const { first } = await openOrders(path, { unit: INCHES });
    const thread = join(folder, 'thread.mjs');
    await writeFile(thread, script);
    if (first === undefined) throw new Error('a text file has a first look');
    const wanted = { rules: [], prices: undefined, columns: undefined, words: undefined };
    const workers = new Workers(first, wanted, 2, pathToFileURL(thread));
    await expect(workers.all().next()).rejects.toThrow(
      `A worker thread died (${why}), and nothing of the audit is reported.`,
    );
  });
});
