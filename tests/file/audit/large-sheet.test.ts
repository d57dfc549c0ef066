import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CellIn } from '../../../src/core/cell/fields';
import { INCHES } from '../../../src/core/exact/unit';
import { openOrders, type OrdersFile } from '../../../src/file/audit/orders';
import { smallBook } from '../book';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'large-sheet-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const HEADINGS = ['job', 'room', 'rod width', 'drop', 'heading', 'fabric width', 'yardage'];
const cell = (name: string, value: string | number): string =>
  typeof value === 'number'
    ? `<c r="${name}"><v>${value}</v></c>`
    : `<c r="${name}" t="inlineStr"><is><t>${value}</t></is></c>`;
const rowOf = (number: number, values: readonly (string | number)[]): string =>
  `<row r="${number}">${values.map((value, at) => cell(`${'ABCDEFG'[at] ?? ''}${number}`, value)).join('')}</row>`;

const DATA = [
  rowOf(1, ['Orders &amp; more']),
  rowOf(3, HEADINGS),
  ...Array.from({ length: 30 }, (_, at) =>
    at % 7 === 5
      ? `<row r="${at + 4}"/>`
      : rowOf(at + 4, ['Weir House', `Room ${at}`, 94, 96, 'pinch', 54, at === 9 ? 18.625 : 15.625]),
  ),
  rowOf(40, ['Weir House', 'Attic', 94, 96, 'pinch', 54, 15.625]),
].join('');
const MERGED = '<mergeCells count="1"><mergeCell ref="A1:C1"/></mergeCells>';

async function book(data: string): Promise<string> {
  const path = join(folder, 'orders.xlsx');
  const xml = `<worksheet><sheetData>${data}</sheetData>${MERGED}</worksheet>`;
  await writeFile(path, smallBook('', { parts: { 'xl/worksheets/sheet1.xml': xml } }));
  return path;
}

type Told = Pick<OrdersFile, 'headerRow' | 'notes'> & { readonly keys: unknown; readonly rows: unknown };

async function told(path: string, large?: number): Promise<Told> {
  const file = await openOrders(path, { unit: INCHES }, large);
  const rows: (readonly [number, readonly CellIn[]])[] = [];
  for await (const batch of file.batches) rows.push(...batch);
  const { columns, headerRow, notes } = file;
  return { keys: columns.found.map(({ key, at, heading }) => [key, at, heading]), headerRow, notes, rows };
}

describe('a sheet that is read in pieces', () => {
  it('gives the rows and the headings that the whole of it gives', async () => {
    const path = await book(DATA);
    const whole = await told(path);
    expect(whole.rows).toHaveLength(37);
    expect(await told(path, 0)).toEqual(whole);
  });

  it.each([
    ['comments stand among its rows', DATA.replace('<row r="5"', '<!-- more --><row r="5"')],
    ['its rows are not numbered', DATA.replace(/<row r="\d+"/g, '<row').replace(/ r="[A-G]\d+"/g, '')],
  ])('is read as a whole where %s', async (_, data) => {
    const path = await book(data);
    expect(await told(path, 0)).toEqual(await told(path));
  });
});
