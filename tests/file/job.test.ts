import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openArchive } from '../../src/file/xlsx/archive';
import { readWorkbook } from '../../src/file/xlsx/workbook';

const run = promisify(execFile);
const tsx = resolve('node_modules/tsx/dist/cli.mjs');

describe('npm run job', () => {
  let folder = '';
  let said = '';
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hem-job-'));
    ({ stdout: said } = await run(process.execPath, [tsx, resolve('src/file/job.ts')], { cwd: folder }));
  }, 120_000);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  const valueAt = async (name: string, sheet: number, row: number, column: number) => {
    const file = readWorkbook(await openArchive(join(folder, 'out', name)));
    const seen = file.sheets[sheet]?.seen.rows.find((one) => one.row === row - 1);
    return seen?.cells.find((one) => one.column === column - 1)?.value;
  };

  it('writes both workbooks, every formula computed', () => {
    expect(existsSync(join(folder, 'out/measures.xlsx'))).toBe(true);
    expect(said).toContain('out/quote.xlsx: 114 formulas computed, 58 of them with HEM functions');
    expect(said).not.toContain('#VALUE!');
  });

  it('writes the job’s papers and says where they are', () => {
    expect(existsSync(join(folder, 'out/papers.xlsx'))).toBe(true);
    expect(said).toMatch(/out\/papers\.xlsx: Quote, Fabric order/);
  });

  it('a King window, by hand: rod 72 + 11 + 11, drop 98 − 2, 5 widths of 54, cut 96 + 16', async () => {
    // 94 ÷ 2 + 3½ = 50½; × 2.5 = 126¼; with hems and seams 134¼, so 2½ widths a panel.
    const row = await Promise.all([13, 14, 15, 16].map((column) => valueAt('quote.xlsx', 0, 7, column)));
    expect(row).toEqual([94, 96, 5, 112]);
  });

  it('18 King windows: 90 cuts × 112 ÷ 36 = 280 yd', async () => {
    expect(await valueAt('quote.xlsx', 0, 7, 17)).toBe(280);
  });

  it('the measure sheet’s schedule spills a row for each of the 46 windows', async () => {
    const first = await valueAt('measures.xlsx', 0, 6, 15);
    const last = await valueAt('measures.xlsx', 0, 51, 15);
    expect([first, last]).toEqual([94, 52.5]);
  });

  it('says cloth by fabric, rolls, hardware, price and findings', () => {
    expect(said).toMatch(
      /Ostrel linen +33 windows +177 cuts +553 1\/4 yd +10 rolls of 60 yd \(proven fewest\)/,
    );
    expect(said).toMatch(/rings and carriers \d+, grommets \d+, brackets \d+, finials \d+/);
    expect(said).toMatch(/total +\d+,\d{3}\.\d\d/);
    expect(said).toContain('The floor readings differ by 3/4 in');
  });

  it('tells the same whole yardage as the cuts it counts: 177 cuts, 111¾ to 114 in each', () => {
    const yards = Number(/177 cuts +(\d+) 1\/4 yd/.exec(said)?.[1]) + 1 / 4;
    expect(yards).toBeGreaterThanOrEqual((177 * 111.75) / 36);
    expect(yards).toBeLessThanOrEqual((177 * 114) / 36 + 33 / 8);
  });
});
