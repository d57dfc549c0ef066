import { beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import type { Book, CellValue } from '../../../src/book/book';
import type { MemoryBook } from '../../../src/book/memory';
import { newJob, USUAL_JOB } from '../../../src/book/template';
import { engineBook } from '../engine-book';
import { typeAt, typeRule, valueOf } from '../named-cells';

type Cells = Readonly<Record<string, CellValue>>;

async function type(book: Book, table: string, row: number, cells: Cells): Promise<void> {
  const { area, columns } = (await book.contents()).tables.find(({ name }) => name === table)!;
  const at = (heading: string): number =>
    columns.findIndex((one) => one === heading || one.startsWith(`${heading} (`));
  await book.inOneStep('Type', (write) =>
    write({
      puts: Object.entries(cells).map(([heading, value]) => ({
        area: areaAt(area.sheet, area.row + row, area.column + at(heading)),
        cells: [[value]],
      })),
    }),
  );
}

/** The sheet of checks: each line's result, and what it says to do. */
async function checks(book: Book): Promise<ReadonlyMap<string, readonly [string, string]>> {
  const { area } = (await book.contents()).tables.find(({ name }) => name === 'Checks')!;
  const [block] = await book.read([area]);
  return new Map(
    block!.values.slice(1).map(([what, , result, todo]) => [String(what), [String(result), String(todo)]]),
  );
}

const SHARES =
  'shares above the whole: tax, discount, deposit, spares, making less; a margin of 100% or more';
/** Typed by mistake, what the checks offer, and what is right. */
const TYPED: readonly (readonly [string, Cells, string, Cells])[] = [
  ['a tax of 8.25 on goods', { Tax_goods: 8.25 }, 'write 8.25% if', { Tax_goods: 0.0825 }],
  ['a tax of 8.25 on work', { Tax_work: 8.25 }, 'write 8.25% if', { Tax_work: null }],
  ['a discount of 5', { Sell_discount: 5 }, 'write 5% if', { Sell_discount: null }],
  ['a deposit of 50', { Deposit_share: 50 }, 'write 50% if', { Deposit_share: 0.5 }],
  [
    'a margin of 1.5',
    { Sell_rate: 1.5, Sell_basis: 'margin on selling price' },
    'a margin on the selling price stays below 100%',
    { Sell_rate: 0.5, Sell_basis: 'markup on cost' },
  ],
];

describe('the sheet of checks', () => {
  let book: MemoryBook;
  beforeAll(async () => {
    book = engineBook();
    await newJob(book, { ...USUAL_JOB, windows: 2 });
    await type(book, 'Fabrics', 1, { fabric: 'Wren', 'fabric width': 54, 'price a yd': 20 });
    await type(book, 'Making_charges', 1, { 'your figure': 11 });
    await typeAt(book, { Sell_rate: 0.5, Tax_goods: 0.0825 });
    await type(book, 'Windows', 1, {
      ...{ room: 'Bar', 'inside width': 72, 'measured height': 98, heading: 'pinch', fabric: 'Wren' },
    });
  });

  it('is well of sound shares, and of a markup above 1', async () => {
    expect(await valueOf(book, 'Checks_all')).toBe('all checks are well');
    expect(await valueOf(book, 'Quote_total')).toBe(589.92);
    await typeAt(book, { Sell_rate: 1.5 });
    expect(await valueOf(book, 'Checks_all')).toBe('all checks are well');
    expect(await valueOf(book, 'Quote_subtotal')).toBe(918.75);
    await typeAt(book, { Sell_rate: 0.5 });
  });

  it.each(TYPED)(
    'refuses %s: no total, and a line that says what to write',
    async (_, typed, todo, right) => {
      await typeAt(book, typed);
      expect(await valueOf(book, 'Quote_total')).toBe('cannot be added yet');
      expect(await valueOf(book, 'Checks_all')).toMatch(/checks want a look/);
      const [result, says] = (await checks(book)).get(SHARES) ?? [];
      expect(result).toBe('look');
      expect(says).toContain(todo);
      await typeAt(book, right);
      expect((await checks(book)).get(SHARES)?.[0]).toBe('ok');
      expect(await valueOf(book, 'Quote_total')).toBe(589.92);
    },
  );

  it('takes a client’s own cloth at none, and counts nothing for it', async () => {
    await type(book, 'Fabrics', 1, { 'price a yd': 'none' });
    // Only the making is left: five widths at 11, half marked up; work is not taxed.
    expect(await valueOf(book, 'Quote_subtotal')).toBe(82.5);
    expect(await valueOf(book, 'Checks_all')).toBe('all checks are well');
    expect(await valueOf(book, 'Cost_note')).toBe('');
    await type(book, 'Fabrics', 1, { 'price a yd': 20 });
  });

  it('refuses a share of spares of 5 among the house rules, and says where cents are rounded another way', async () => {
    await typeRule(book, 'spare windows', 5);
    expect((await checks(book)).get(SHARES)).toEqual(['look', expect.stringContaining('write 5% if')]);
    expect(await valueOf(book, 'Quote_total')).toBe('cannot be added yet');
    await typeRule(book, 'spare windows', null);
    await typeRule(book, 'cent rounding', 'up');
    expect((await checks(book)).get(SHARES)?.[0]).toBe('ok');
    expect(await valueOf(book, 'Cost_note')).toBe(
      'The task pane’s Price counts these, the sheets do not: the house rule cent rounding. ',
    );
    await typeRule(book, 'cent rounding', null);
    expect(await valueOf(book, 'Cost_note')).toBe('');
  });

  it('refuses a making break of more than all of it', async () => {
    await type(book, 'Making_breaks', 1, { 'making less from': 2, 'less by': 5 });
    expect((await checks(book)).get(SHARES)).toEqual(['look', expect.stringContaining('write 5% if')]);
    expect(await valueOf(book, 'Quote_total')).toBe('cannot be added yet');
    await type(book, 'Making_breaks', 1, { 'making less from': null, 'less by': null });
    expect(await valueOf(book, 'Quote_total')).toBe(589.92);
  });
});
