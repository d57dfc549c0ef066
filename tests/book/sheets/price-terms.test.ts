/** The sheets of a new job and the pane’s Price reckon alike: the same job, priced both ways. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Book, CellValue } from '../../../src/book/book';
import { areaAt } from '../../../src/book/address';
import { readFloor } from '../../../src/book/floor/floor';
import { clothPrices, priceFloor, readClothPrice } from '../../../src/book/floor/prices';
import type { MemoryBook } from '../../../src/book/memory';
import { readRules, rulesNames } from '../../../src/book/rule-lines';
import { survey } from '../../../src/book/survey';
import { newJob, USUAL_JOB } from '../../../src/book/template';
import { WANTED } from '../../../src/book/wanted';
import { BEHIND } from '../../../src/core/cloth/behind';
import type { JobPrice } from '../../../src/core/quote/mock-up';
import { engineBook as bookOn, HOSTS } from '../engine-book';
import { typeAt, typeRule, valueOf } from '../named-cells';

type Cells = Readonly<Record<string, CellValue>>;

async function type(book: Book, table: string, row: number, cells: Cells): Promise<void> {
  const { area, columns } = (await book.contents()).tables.find(({ name }) => name === table)!;
  const at = (heading: string): number => {
    const found = columns.findIndex((one) => one === heading || one.startsWith(`${heading} (`));
    if (found < 0) throw new Error(`no column ${heading}`);
    return found;
  };
  await book.inOneStep('Type', (write) =>
    write({
      puts: Object.entries(cells).map(([heading, value]) => ({
        area: areaAt(area.sheet, area.row + row, area.column + at(heading)),
        cells: [[value]],
      })),
    }),
  );
}
async function cell(book: Book, table: string, row: number, heading: string): Promise<CellValue> {
  const { area, columns } = (await book.contents()).tables.find(({ name }) => name === table)!;
  const at = columns.findIndex((one) => one === heading || one.startsWith(`${heading} (`));
  const [block] = await book.read([areaAt(area.sheet, area.row + row, area.column + at)]);
  return block!.values[0]![0]!;
}
/** As the pane prices it. */
async function priced(book: Book): Promise<JobPrice> {
  const [name] = await rulesNames(book);
  const rules = await readRules(book, name);
  const { area } = (await book.contents()).tables.find((one) => one.name === 'Windows')!;
  const { read } = await survey(book, WANTED, rules.unit, areaAt(area.sheet, area.row, area.column));
  const floor = readFloor(read, rules);
  const typed = [...(await clothPrices(book))];
  return priceFloor(
    floor,
    new Map(typed.map(([cloth, one]) => [cloth, readClothPrice(cloth, one, rules.unit).price!])),
  );
}
const kinds = ({ whole }: JobPrice, kind: string): number =>
  whole.lines.reduce((sum, line) => sum + (line.kind === kind ? line.price.toNumber() : 0), 0);

const JOBS: readonly (readonly [string, 'inches' | 'centimetres', Cells])[] = [
  [
    'in inches, attic stock by share, breaks on the whole, tax by line',
    'inches',
    { Attic_stock: 0.05, Tax_basis: 'line', Sell_discount: 0.04, Tax_work: 0.0725 },
  ],
  [
    'in centimetres, attic stock by cuts, breaks on further widths, tax by invoice, a margin',
    'centimetres',
    {
      Attic_stock: 2,
      Tax_basis: 'invoice',
      Making_breaks_on: 'further widths',
      Sell_basis: 'margin on selling price',
      Tax_work: 0,
    },
  ],
];

describe.each(HOSTS)('where an empty cell is handed over as %s', (_host, empties) => {
  const engineBook = (sheets = {}): ReturnType<typeof bookOn> => bookOn(sheets, empties);

  describe.each(JOBS)('a job %s', (_, unit, more) => {
    let book: MemoryBook;
    const small = unit === 'inches';
    beforeAll(async () => {
      book = engineBook();
      await newJob(book, { ...USUAL_JOB, windows: 4, unit });
      const yard = small ? 'yd' : 'm';
      await type(book, 'Fabrics', 1, {
        fabric: 'Wren',
        'fabric width': small ? 54 : 137,
        'vertical repeat': small ? 25 : 64,
        'cloth weight': small ? 12 : 400,
        [`price a ${yard}`]: 20,
        'minimum order': 10,
      });
      await type(book, 'Fabrics', 2, {
        fabric: 'Fen',
        'fabric width': small ? 54 : 137,
        'cloth weight': small ? 4 : 130,
        [`price a ${yard}`]: 9.35,
        'minimum order': 60,
      });
      await type(book, 'Price_breaks', 1, { 'price break of': 'Wren', from: 50, 'break price': 17.5 });
      await type(book, 'Making_charges', 1, { 'your figure': 11 });
      await type(book, 'Making_charges', 9, { 'your figure': 12.5 });
      await type(book, 'Making_charges', 12, { 'your figure': 4 });
      await type(book, 'Making_charges', 13, { 'your figure': 9 });
      await type(book, 'Making_charges', 14, { 'your figure': 6 });
      const weight = (ounces: number, grams: number): Cells => ({ 'cloth weight': small ? ounces : grams });
      await type(book, 'Linings', 1, { [`price a ${yard}`]: 5, ...weight(5, 160) });
      await type(book, 'Linings', 2, { [`price a ${yard}`]: 7.25, ...weight(9, 300) });
      await type(book, 'Linings', 3, { [`price a ${yard}`]: 6.4, ...weight(8, 260) });
      await type(book, 'Making_breaks', 1, { 'making less from': 8, 'less by': 0.05 });
      await type(book, 'Making_breaks', 2, { 'making less from': 20, 'less by': 0.075 });
      await typeAt(book, {
        ...{ Price_rod: 9, Price_ring: 0.5, Price_bracket: 4, Price_finials: 12 },
        Lining_width: small ? 48 : 150,
        ...{ Price_installation: 40, Price_freight: 25, Price_freight_weight: 0.85 },
        ...{ Carton_holds: 40, Price_freight_carton: 18 },
        ...{ Sell_rate: 0.5, Tax_goods: 0.0725, Deposit_share: 0.5 },
        ...more,
      });
      const window = (room: string, opening: number, fabric: string, rest: Cells = {}): Cells => ({
        ...{ room, 'inside width': small ? opening : opening * 2.54, 'measured height': small ? 98 : 249 },
        ...{ heading: 'pinch', fabric },
        ...rest,
      });
      await type(book, 'Windows', 1, window('Bar', 72, 'Wren', { lining: 'lined' }));
      await type(book, 'Windows', 2, window('Snug', 60, 'Wren', { quantity: 3, lining: 'interlined' }));
      await type(
        book,
        'Windows',
        3,
        window('Hall', 96, 'Fen', { heading: 'grommet', quantity: 2, lining: 'blackout' }),
      );
      await type(book, 'Windows', 4, window('Loft', 40, 'Fen', { lining: 'unlined' }));
    });

    it('has every making charge set, and all checks well', async () => {
      expect(await valueOf(book, 'Checks_all')).toBe('all checks are well');
    });

    it('costs the same freight, attic stock, installation and making less, and in all but cents of rounding', async () => {
      const pane = await priced(book);
      expect(
        pane.findings.filter(({ code }) => code !== 'belowMinimumCut' && code !== 'nextBreakSaves'),
      ).toEqual([]);
      const kept = 1 - Number((await valueOf(book, 'Sell_discount')) ?? 0);
      const extras = (await book.contents()).names.find(({ name }) => name === 'Quote_extras')!.area!;
      const [further, attic, installation, freight] = (await book.read([extras]))[0]!.values.map(([one]) =>
        Number(one),
      );
      expect(further).toBe(0);
      expect(kinds(pane, 'attic stock')).toBeGreaterThan(20);
      expect(attic).toBeCloseTo(kinds(pane, 'attic stock') * kept, 1);
      expect(installation).toBeCloseTo(kinds(pane, 'installation') * kept, 2);
      expect(freight).toBeCloseTo(kinds(pane, 'freight') * kept, 1);
      expect(pane.whole.lines.find(({ kind }) => kind === 'making')?.says).toMatch(/% less/);
      const total = Number(await valueOf(book, 'Quote_total'));
      expect(Math.abs(total - pane.whole.total.toNumber())).toBeLessThan(0.06);
      expect(await valueOf(book, 'Cost_note')).toBe('');
    });

    it('orders and prices every cloth behind the face alike, at the house’s lining width', async () => {
      const { whole } = await priced(book);
      for (const [at, cloth] of BEHIND.entries()) {
        const line = whole.lines.find(({ kind }) => kind === cloth);
        expect(line?.quantity, cloth).toBeGreaterThan(5);
        expect(await cell(book, 'Linings', at + 1, 'to order')).toBeCloseTo(line!.quantity, 6);
        expect(await cell(book, 'Linings', at + 1, 'cost')).toBeCloseTo(line!.cost!.toNumber(), 6);
      }
      const before = await cell(book, 'Linings', 1, 'to order');
      const interlining = await cell(book, 'Linings', 3, 'to order');
      await typeAt(book, { Interlining_width: small ? 118 : 300 });
      expect(await cell(book, 'Linings', 3, 'to order')).not.toBe(interlining);
      expect(
        (await priced(book)).whole.lines.find(({ kind }) => kind === 'interlining')?.quantity,
      ).toBeCloseTo(Number(await cell(book, 'Linings', 3, 'to order')), 6);
      expect(await cell(book, 'Linings', 1, 'to order')).toBe(before);
      await typeAt(book, { Lining_width: small ? 108 : 280 });
      expect(await cell(book, 'Linings', 1, 'to order')).not.toBe(before);
      expect((await priced(book)).whole.lines.find(({ kind }) => kind === 'lining')?.quantity).toBeCloseTo(
        Number(await cell(book, 'Linings', 1, 'to order')),
        6,
      );
    });

    it('prices and weighs blackout as the lining where it has no price or weight of its own, and says so', async () => {
      await type(book, 'Linings', 2, { [`price a ${small ? 'yd' : 'm'}`]: null, 'cloth weight': null });
      const pane = await priced(book);
      expect(pane.findings.map(({ code }) => code)).toEqual(
        expect.arrayContaining(['pricedAsAnother', 'weighedAsAnother']),
      );
      const line = pane.whole.lines.find(({ kind }) => kind === 'blackout lining');
      expect(await cell(book, 'Linings', 2, 'price counted')).toBe(5);
      expect(await cell(book, 'Linings', 2, 'cost')).toBeCloseTo(line!.cost!.toNumber(), 6);
      expect(await valueOf(book, 'Freight_charge')).toBeCloseTo(kinds(pane, 'freight'), 1);
      expect(await valueOf(book, 'Cost_note')).toBe('');
    });

    it('says of interlining without a price that it counts as nothing', async () => {
      await type(book, 'Linings', 3, { [`price a ${small ? 'yd' : 'm'}`]: null });
      expect((await priced(book)).findings.map(({ sentence }) => sentence)).toContain(
        'No price is set for interlining; it stands in the quote at nothing. Add it to the price list.',
      );
      expect(await valueOf(book, 'Cost_note')).toBe('A lining without a price counts as nothing. ');
      await type(book, 'Linings', 3, { [`price a ${small ? 'yd' : 'm'}`]: 6.4 });
    });

    it('says on the sheets what only the pane counts', async () => {
      await typeRule(book, 'spare windows', '5 %');
      await typeRule(book, 'mock up windows', 1);
      await type(book, 'Fabrics', 1, {
        'cloth weight': null,
        'whole roll': 50,
        [`price a ${small ? 'yd' : 'm'} in rolls`]: 15,
      });
      expect(await valueOf(book, 'Cost_note')).toBe(
        'The task pane’s Price counts these, the sheets do not: whole rolls; spares; the mock-up apart. The freight leaves out cloth of unknown weight.',
      );
    });
  });
});
