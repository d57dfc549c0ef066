import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import type { CellValue } from '../../src/book/book';
import { drawn, Trial, thereIsABrowser, type Opened } from './page';

/** A window as it is typed, under the headings of a new job, and what each cell then holds. */
const TYPED: Readonly<Record<string, readonly [string, CellValue]>> = {
  room: ['Den', 'Den'],
  quantity: ['2', 2],
  'inside width': ['72', 72],
  'left extension': ['8 1/2', '8 1/2'],
  'right extension': ['9', 9],
  'measured height': ['98', 98],
  'measured to': ['new rod', 'new rod'],
  'floor finish': ['clear', 'clear'],
  heading: ['pinch', 'pinch'],
  draw: ['pair', 'pair'],
  return: ['3 1/2', '3 1/2'],
  overlap: ['3', 3],
  fullness: ['2.5', 2.5],
  fabric: ['Heron linen', 'Heron linen'],
  lining: ['lined', 'lined'],
};

const selected = (at: Opened): Promise<string> =>
  at.page.evaluate(() => {
    const range = window.trial.grid.api.getActiveWorkbook()?.getActiveSheet().getActiveRange();
    return `${range?.getRow()} ${range?.getColumn()}`;
  });

/** The cell is selected, and the grid has come to rest there. */
async function standsAt(at: Opened, row: number, column: number): Promise<void> {
  await expect.poll(() => selected(at), { timeout: 20_000 }).toBe(`${row} ${column}`);
  for (let times = 0; times < 3; times++) await drawn(at);
}

describe.runIf(thereIsABrowser)('a row of windows in the trial workbook', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterAll(() => trial.end());

  it('takes every input from the keyboard, lists and all; a row inserted above has its formulas', async () => {
    const at = await trial.open('demo');
    const { area, columns } = (await at.contents()).tables.find(({ name }) => name === 'Windows')!;
    const row = area.row + 8;
    await at.goTo(areaAt(area.sheet, row, area.column));
    const plain = (heading: string): string => heading.replace(/ \(.*/, '');
    const last = columns.findIndex((one) => plain(one) === 'lining');
    for (let column = 0; column <= last; column++) {
      await standsAt(at, row, area.column + column);
      const heading = plain(columns[column] ?? '');
      const [text] = TYPED[heading] ?? [''];
      await at.page.keyboard.type(text, { delay: 60 });
      // A list is there when asked for, and takes no letter.
      if (heading === 'draw') await at.page.getByText('one-way left').first().waitFor();
      await at.page.keyboard.press('Tab');
    }
    await standsAt(at, row, area.column + last + 1);
    const line = async (where: number): Promise<readonly CellValue[]> =>
      (await at.read(areaAt(area.sheet, where, area.column, 1, columns.length))).values[0] ?? [];
    const cell = async (heading: string): Promise<CellValue> =>
      (await line(row))[columns.findIndex((one) => plain(one) === heading)] ?? null;
    for (const [heading, [, held]] of Object.entries(TYPED))
      expect([heading, await cell(heading)]).toEqual([heading, held]);
    // 72 + 8½ + 9 = 89½ in of rod; 98 less 2 in to the ring’s bottom and the floor is 96.
    await expect.poll(() => cell('rod width'), { timeout: 20_000 }).toBe(89.5);
    expect(await cell('finished drop')).toBe(96);

    // Enter takes what was typed as well.
    await at.goTo(areaAt(area.sheet, row + 1, area.column));
    await standsAt(at, row + 1, area.column);
    await at.page.keyboard.type('Loft', { delay: 60 });
    await at.page.keyboard.press('Enter');
    await expect.poll(async () => (await line(row + 1))[0], { timeout: 20_000 }).toBe('Loft');

    await at.page.evaluate((below) => {
      window.trial.grid.api.getActiveWorkbook()?.getActiveSheet().insertRows(below, 1);
    }, row);
    const formulas = async (where: number): Promise<readonly (string | null)[]> =>
      (await at.read(areaAt(area.sheet, where, area.column, 1, columns.length))).formulas[0] ?? [];
    const worked = (list: readonly (string | null)[]): boolean[] => list.map((one) => one !== null);
    expect(worked(await formulas(row))).toEqual(worked(await formulas(row + 1)));
    expect(await line(row + 1)).toContain('Den');
    await at.undo();
    expect((await line(row))[0]).toBe('Den');
    expect(at.faults).toEqual([]);
  }, 300_000);
});
