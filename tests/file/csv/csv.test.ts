import fc from 'fast-check';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { csvBatches } from '../../../src/file/csv/csv';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hem-test-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function read(text: string | Uint8Array): Promise<string[][]> {
  const path = join(folder, 'rows.csv');
  await writeFile(path, text);
  const rows: string[][] = [];
  for await (const batch of csvBatches(path, { name: 'utf-8', says: undefined }))
    for (const row of batch) rows.push(row);
  return rows;
}

/** As RFC 4180 writes a cell. */
const quoted = (cell: string): string => `"${cell.replace(/"/g, '""')}"`;

/** More than one chunk of a file, whatever the rows. */
const LONG = Array.from({ length: 20_000 }, (_, at) => [`room ${at}`, '84 1/2', 'bouclé']);

describe('CSV files', () => {
  for (const [name, lineEnd] of [
    ['\\n', '\n'],
    ['\\r\\n', '\r\n'],
    ['\\r', '\r'],
  ] as const) {
    it(`gives back every cell that RFC 4180 can write, with ${name} between rows`, async () => {
      const cell = fc.string({
        unit: fc.constantFrom('a', 'é', '½', ',', '"', ' ', '7', '\n'),
        maxLength: 8,
      });
      const rows = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 12 });
      await fc.assert(
        fc.asyncProperty(rows, async (some) => {
          const table = [['a', 'b', 'c'], ...some];
          const text = table.map((row) => row.map(quoted).join(',')).join(lineEnd);
          expect(await read(text)).toEqual(table);
          expect(await read(text + lineEnd)).toEqual(table);
        }),
        { numRuns: 60 },
      );
    });
  }

  it('reads on where a chunk of the file ends inside a row or a letter', async () => {
    expect(await read(LONG.map((row) => row.join(',')).join('\n'))).toEqual(LONG);
  });

  it('reads on where a chunk of the file ends inside quotation marks', async () => {
    const wordy = LONG.map((row, at) => (at % 50 === 7 ? [`${'a, "b"\n'.repeat(2_000)}${at}`, ...row] : row));
    const lines = wordy.map((row) => row.map((cell) => (cell.includes(',') ? quoted(cell) : cell)).join(','));
    expect(await read(lines.join('\n'))).toEqual(wordy);
  });

  it('counts blank lines as rows', async () => {
    expect(await read('a,b\n\n\n1,2\n\n')).toEqual([['a', 'b'], [''], [''], ['1', '2'], ['']]);
    expect(await read('a,b\n\n\n"1",2\n\n')).toEqual([['a', 'b'], [''], [''], ['1', '2'], ['']]);
  });

  it('loses no cell to a letter that the end of the file cuts in two', async () => {
    const cut = new TextEncoder().encode('room,cloth\nden,bouclé').subarray(0, -1);
    expect(await read(cut)).toEqual([
      ['room', 'cloth'],
      ['den', 'boucl\uFFFD'],
    ]);
  });

  it('takes an inch mark in a cell as it stands', async () => {
    expect(await read('width,room\n84 1/2",den\n7\' 6",hall\n')).toEqual([
      ['width', 'room'],
      ['84 1/2"', 'den'],
      ['7\' 6"', 'hall'],
    ]);
  });

  for (const [where, before] of [
    ['in a small file', 3],
    ['far down a long one', 15_000],
  ] as const) {
    it(`names the row whose quotation mark never closes, ${where}`, async () => {
      const lines = LONG.map((row) => row.join(','));
      lines[before] = `"${lines[before] ?? ''}`;
      await expect(read(lines.join('\n'))).rejects.toThrow(
        `opens a quotation mark in row ${before + 1} and never closes it.`,
      );
    });
  }

  it('gives up on a quotation mark that is open for a million letters, wherever it may close', async () => {
    const open = (rows: number): string => `a,b\n"1,2\n${'x,y\n'.repeat(rows)}1",2\n`;
    await expect(read(open(600_000))).rejects.toThrow('in row 2');
    expect(await read(open(100_000))).toHaveLength(2);
  });
});
