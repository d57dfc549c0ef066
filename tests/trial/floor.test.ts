import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { Trial, thereIsABrowser, type Opened } from './page';

/** A hotel floor of our own invention: one row for each type of room. */
const LIST = [
  ['Room', 'Type', 'Width', 'Height', 'Style', 'Fabric', 'Fabric W', 'Repeat', 'Lining', 'Qty'],
  [401, 'King', 72.5, 98, 'pinch', 'Ostrel linen', 54, 25.25, 'lined', 1],
  [402, 'Suite', 110, 98, 'pinch', 'Ostrel linen', 54, 25.25, 'lined', 2],
  ['Bar', 'Public', 84, 112, 'grommet', 'Fen voile', 118, null, null, 3],
];

describe.runIf(thereIsABrowser)('a floor in the pane', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterEach(() => trial.closePages());
  afterAll(() => trial.end());

  async function withFloor(): Promise<Opened> {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, LIST);
    await at.goTo(areaAt('Sheet1', 1, 0));
    await at.section('Floor');
    await at.press('Read the windows');
    await at.pane.getByText('6 windows in 3 rows').waitFor();
    return at;
  }
  const typed = (at: Opened, label: string, text: string): Promise<void> =>
    at.pane.getByLabel(label, { exact: true }).fill(text);

  it('is written by a room pattern, planned beside the page, drawn, and its list written in one step', async () => {
    const at = await withFloor();
    await at.press('Rooms in bulk');
    await typed(at, 'Rooms', '403-448 not 413');
    await at.press('Preview the rooms');
    await at.pane.getByText('45 rows would be added in rows 5 to 49').waitFor();
    expect((await at.read(areaAt('Sheet1', 4, 0))).values).toEqual([[null]]);
    await at.press('Write the rows');
    await at.pane.getByText('51 windows in 48 rows').waitFor();
    expect((await at.read(areaAt('Sheet1', 48, 0, 1, 4))).values).toEqual([[448, 'King', 72.5, 98]]);
    await typed(at, 'For the rooms', '403-448 even');
    await at.pane.getByLabel('set the column').selectOption('Style');
    await typed(at, 'to', 'grommet');
    await at.press('Set the cells');
    await at.pane.getByText('Style is set in 23 rows').waitFor();
    await at.press('Rooms in bulk');

    await at.press('Plan the cuts');
    const first = at.pane.getByRole('img', { name: /^Roll 1: 60 yd/ });
    await first.waitFor();
    const rolls = Number(/^(\d+) rolls, /m.exec(await at.pane.innerText())?.[1]);
    // 5 cuts a window of 72 1/2, 8 or more of 110: at 126 1/4 in, or less, a roll of 60 yd gives 17 or 18.
    expect(rolls).toBeGreaterThanOrEqual(Math.ceil((47 * 5 + 16) / 18));
    expect(await at.pane.getByText(/^(proven fewest|\d+ more than the bound)$/).count()).toBe(1);
    await at.press(/^Draw all/);
    expect(await at.pane.getByRole('img', { name: /^Roll / }).count()).toBe(rolls);
    expect(await at.seriousFaults()).toEqual([]);

    await at.press('Write the list');
    await at.pane.getByText('The list stands on the sheet “Cutting list”').waitFor();
    const { sheets, names } = await at.contents();
    expect(sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Cutting list', 'Floor totals']);
    const cuts = names.find(({ name }) => name === 'Cutting_cuts')?.area;
    const block = await at.read(cuts ?? areaAt('Cutting list', 0, 0));
    expect(block.values.flat().reduce((sum: number, one) => sum + Number(one), 0)).toBe(await cutsOf(at));
    // The grid itself fails where the sheet in sight is the one undone.
    await at.goTo(areaAt('Sheet1', 0, 0));
    await at.undo();
    expect((await at.contents()).sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });

  /** The cuts of the one fabric planned, as the pane's totals by type have them. */
  async function cutsOf(at: Opened): Promise<number> {
    const row = at.pane.getByRole('row', { name: /^Ostrel linen/ });
    return Number(await row.getByRole('cell').nth(1).innerText());
  }

  it('grows a table with its rooms, and a named range over its column: sums follow, undone and done again', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, LIST);
    await at.page.evaluate(async () => {
      const area = (row: number, column: number, rows: number, columns: number) => ({
        ...{ sheet: 'Sheet1', row, column, rows, columns },
      });
      await window.trial.book.inOneStep('Set up', (write) =>
        write({
          newTables: [{ name: 'Openings', area: area(0, 0, 4, 10) }],
          newNames: [{ name: 'How_many', area: area(1, 9, 3, 1) }],
          puts: [{ area: area(0, 12, 1, 1), formula: '=SUM(How_many)' }],
        }),
      );
    });
    const sum = async (): Promise<unknown> => (await at.read(areaAt('Sheet1', 0, 12))).values[0]?.[0];
    await expect.poll(sum).toBe(6);
    await at.goTo(areaAt('Sheet1', 2, 0));
    await at.section('Floor');
    await at.press('Read the windows');
    await at.press('Rooms in bulk');
    await typed(at, 'Rooms', '411-420');
    await at.press('Preview the rooms');
    await at.pane.getByText('The table grows to A1:J14.').waitFor();
    await at.press('Write the rows');
    await at.pane.getByText('26 windows in 13 rows').waitFor();
    await expect.poll(sum).toBe(6 + 10 * 2);
    const { tables, names } = await at.contents();
    expect([tables[0]?.area.rows, names[0]?.area?.rows]).toEqual([14, 13]);
    await at.undo();
    await expect.poll(sum).toBe(6);
    expect((await at.contents()).names[0]?.area?.rows).toBe(3);
  });

  it('plans received rolls again with their lots and flaws, and says what is short', async () => {
    const at = await withFloor();
    await at.pane.getByRole('radio', { name: 'received' }).check();
    await typed(at, 'Roll 1, length (yd)', '40');
    await typed(at, 'Roll 1, dye lot', 'A');
    await typed(at, 'Roll 1, flaws at (yd)', '10-10 1/2');
    await at.press('Plan the cuts');
    await at.pane.getByRole('img', { name: /^Roll 1, lot A: 40 yd/ }).waitFor();
    expect(await at.pane.getByText('not all cuts fit').count()).toBe(1);
    await at.press('Add a roll');
    await typed(at, 'Roll 2, length (yd)', 'fourty');
    await at.press('Plan again');
    await at.pane.getByText(/roll 2, length reads “fourty”/).waitFor();
    await typed(at, 'Roll 2, length (yd)', '58 1/2');
    await at.press('Plan again');
    await at.pane.getByText('proven fewest').waitFor();
    expect(await at.pane.getByRole('img', { name: /^Roll 2, lot A: 58 1\/2 yd/ }).count()).toBe(1);
  });

  it('takes the rolls in hand from the workbook’s own table, gives up cloth to the pattern’s start, and plans the lining by itself', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, LIST);
    await at.put('Sheet1', 6, 0, [
      ['Roll of', 'Dye lot', 'Roll length (yd)', 'Flaws'],
      ['Ostrel linen', 'A', 58.5, '12 to 12 1/2'],
      ['Ostrel linen', 'A', 61, null],
    ]);
    await at.put('Sheet1', 10, 0, [
      ['rule', 'value'],
      ['pattern start', 'one repeat'],
    ]);
    await at.page.evaluate(async () => {
      const area = (row: number, rows: number, columns: number) => ({
        ...{ sheet: 'Sheet1', row, column: 0, rows, columns },
      });
      await window.trial.book.inOneStep('Set up', (write) =>
        write({
          newTables: [
            { name: 'Openings', area: area(0, 4, 10) },
            { name: 'In_store', area: area(6, 3, 4) },
          ],
          newNames: [{ name: 'House_rules', area: area(10, 2, 2) }],
        }),
      );
    });
    await at.page.getByLabel('Theme').selectOption('contrast');
    await at.goTo(areaAt('Sheet1', 1, 0));
    await at.section('Floor');
    await at.press('Read the windows');
    const length = (roll: number) => at.pane.getByLabel(`Roll ${roll}, length (yd)`, { exact: true });
    await length(2).waitFor();
    expect([await length(1).inputValue(), await length(2).inputValue()]).toEqual(['58.5', '61']);
    await at.pane.getByText('As “In_store” has them.').waitFor();
    await at.press('Plan the cuts');
    await at.pane.getByRole('img', { name: /^Roll 2, lot A: 61 yd/ }).waitFor();
    // Cut lengths (a roll’s last cut has no repeat after it), what is given up and what is left are
    // told apart by their patterns, and named.
    const legend = at.pane.getByText('left over').locator('..');
    expect(await legend.innerText()).toMatch(/126 1\/4 in\s+112 in\s+to the pattern’s start\s+left over/);
    const drawn = await at.pane.getByRole('img', { name: /^Roll 1, lot A/ }).innerHTML();
    expect(new Set(drawn.match(/url\(#[^)]+-(?:start|left)\)/g)).size).toBe(2);
    // One repeat before the first cut, and one after the flaw.
    expect(drawn.match(/-start\)/g)).toHaveLength(2);
    await length(2).fill('30');
    await at.pane.getByText('Typed over; “In_store” stays as it is.').waitFor();
    await at.pane.getByLabel('Cloth', { exact: true }).selectOption('lining');
    await at.press('Plan the cuts');
    await at.pane.getByRole('img', { name: /^Roll 1: 60 yd/ }).waitFor();
    await at.pane.getByText('proven fewest').waitFor();
    expect(await at.pane.getByText('to the pattern’s start').count()).toBe(0);
    expect(await at.seriousFaults()).toEqual([]);
    await at.press('Write the list');
    await at.pane.getByText('The list stands on the sheet “Cutting list”').waitFor();
    const { tables } = await at.contents();
    const list = tables.find(({ name }) => name === 'Cutting_list')?.area;
    const rows = (await at.read(list ?? areaAt('Cutting list', 0, 0))).values;
    expect(new Set(rows.slice(1).map(([cloth]) => cloth))).toEqual(new Set(['Ostrel linen', 'lining']));
    expect(rows.filter((row) => row.includes('to the pattern’s start'))).toHaveLength(3);
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });

  it('costs other choices and marks the cheapest', async () => {
    const at = await withFloor();
    for (const part of ['Cloth prices', 'What if', 'Advice']) await at.press(part);
    await typed(at, 'Ostrel linen, a yd', '38');
    await typed(at, 'Fullness', '2; 3');
    await typed(at, 'Cloth widths (in)', '54; 118');
    const table = at.pane.getByRole('region', { name: 'What other choices come to' });
    expect(await table.getByRole('row').count()).toBe(1 + 2 * 2 * 2);
    const prices = await table.getByRole('row').evaluateAll((rows) =>
      rows.slice(1).map((row) => ({
        price: Number(row.lastElementChild?.textContent ?? ''),
        marked: row.textContent?.includes('cheapest') === true,
      })),
    );
    const made = prices.filter(({ price }) => price > 0);
    const least = Math.min(...made.map(({ price }) => price));
    expect(made.filter(({ marked }) => marked).map(({ price }) => price)).toEqual([least]);
    expect(await at.seriousFaults()).toEqual([]);
  });

  it('is priced with breaks, the least cut and whole rolls, and its price written in one step', async () => {
    const at = await withFloor();
    await at.press('Cloth prices');
    await at.press(/^Price$/);
    await typed(at, 'Ostrel linen, a yd', '0 28.50; 50 dear');
    await at.pane.getByText('Ostrel linen, the price reads “dear”').waitFor();
    await typed(at, 'Ostrel linen, a yd', '0 28.50; 50 26');
    await typed(at, 'Fen voile, a yd', '12');
    await typed(at, 'Fen voile, the least that is cut (yd)', '80');
    await typed(at, 'lining, a yd', '8');
    const table = at.pane.getByRole('region', { name: 'Price of the floor' });
    const row = (name: RegExp) => table.getByRole('row', { name }).getByRole('cell').allInnerTexts();
    // The least of 80 yd at 12.00; at cost, since no markup is set.
    expect(await row(/^Fen voile/)).toEqual(['80 yd', '960.00', '960.00']);
    const [, cut] = await row(/^Ostrel linen/);
    await typed(at, 'Ostrel linen, whole roll (yd)', '60');
    await typed(at, 'Ostrel linen, a yd in whole rolls', '20');
    await table.getByText(/whole rolls? of 60 yd at 20\.00/).waitFor();
    const money = (text = ''): number => Number(text.replace(/,/g, ''));
    const [, rolled] = await row(/^Ostrel linen/);
    expect(money(rolled)).toBeLessThan(money(cut));
    expect(await at.pane.getByText(/^The deposit, .* does not cover the cloth/).count()).toBe(1);
    const [, , total] = await row(/^total/);
    expect(await at.seriousFaults()).toEqual([]);
    await at.press('Write the price');
    await at.pane.getByText('The price stands on the sheet “Floor price”').waitFor();
    const { names } = await at.contents();
    const prices = names.find(({ name }) => name === 'Floor_prices')?.area;
    const lines = (await at.read(prices ?? areaAt('Floor price', 0, 0))).values.flat().map(Number);
    expect(lines.reduce((sum, one) => sum + one, 0)).toBeCloseTo(money(total), 2);
    await at.goTo(areaAt('Sheet1', 0, 0));
    await at.undo();
    expect((await at.contents()).sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    expect([at.faults, at.strangers]).toEqual([[], []]);
  });
});
