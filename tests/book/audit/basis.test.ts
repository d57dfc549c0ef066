import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { auditOrders, surveyOrders } from '../../../src/book/audit/audit';
import { readBasis } from '../../../src/book/audit/basis';
import type { CellValue } from '../../../src/book/book';
import { MemoryBook } from '../../../src/book/memory';
import { saysRulesByDay } from '../../../src/book/rules-found';
import { readPrices } from '../../../src/core/audit/price-list';

type Rows = readonly (readonly CellValue[])[];

const rules = (from: CellValue, bottom: number): Rows => [
  ['How we cut'],
  ['rule', 'value', 'why'],
  ['in force from', from],
  ['bottom allowance', bottom, 'as the house hems'],
];
const ORDERS: Rows = [
  ['Date', 'Fabric', 'Drop', 'Heading', 'Cut length', 'Fabric price'],
  // Drop 96 with top 8: 112 under bottom 8, 114 under bottom 10.
  ['2025-11-20', 'Ostrel linen', 96, 'pinch', 112, 40],
  ['2026-04-02', 'Ostrel linen', 96, 'pinch', 114, 44],
  ['2026-04-03', 'Ostrel linen', 96, 'pinch', 112, 40],
];

/** A workbook whose sheet “House rules” is the range that formulas read. */
async function bookOf(sheets: Readonly<Record<string, Rows>>): Promise<MemoryBook> {
  const book = new MemoryBook(
    Object.fromEntries(Object.entries({ Orders: ORDERS, ...sheets }).map(([name, rows]) => [name, { rows }])),
  );
  const own = sheets['House rules'];
  if (own !== undefined)
    await book.inOneStep('Name', (write) =>
      write({ newNames: [{ name: 'House_rules', area: areaAt('House rules', 2, 0, own.length - 2, 2) }] }),
    );
  return book;
}

describe('what orders are audited by', () => {
  it('are the rules of their day, where the workbook has several sheets of them', async () => {
    const book = await bookOf({
      'Rules 2025': rules('2025-01-01', 8),
      'House rules': rules('2026-03-01', 10),
    });
    const { periods, notes, unit } = await readBasis(book, 'Orders');
    expect(notes).toEqual([]);
    expect(saysRulesByDay(periods)).toBe(
      'Orders before 2026-03-01 are checked against “Rules 2025”, later ones and those without a date against “House rules”. No older rules stand here, so “Rules 2025” also serve for orders before their own first day, 2025-01-01.',
    );
    const { read } = await surveyOrders(book, unit, areaAt('Orders', 1, 0));
    const { findings } = await auditOrders(read, { periods });
    expect(
      findings.map(({ finding: { row, code, found, expected } }) => [row, code, found, expected]),
    ).toEqual([[4, 'figureDiffers', 112, 114]]);
  });

  it('are older rules without a day for all that was before', async () => {
    const book = await bookOf({ 'Rules of old': rules('', 8), 'House rules': rules('2026-03-01', 10) });
    const { periods } = await readBasis(book, 'Orders');
    expect(saysRulesByDay(periods)).toBe(
      'Orders before 2026-03-01 are checked against “Rules of old”, later ones and those without a date against “House rules”.',
    );
  });

  it('are three sets in the order of their days', async () => {
    const book = await bookOf({
      'House rules': rules('2026-03-01', 10),
      'Rules 2024': rules('', 6),
      'Rules 2025': rules(45_658, 8),
    });
    expect(saysRulesByDay((await readBasis(book, 'Orders')).periods)).toContain(
      'Orders before 2025-01-01 are checked against “Rules 2024”, those before 2026-03-01 against “Rules 2025”, later ones',
    );
  });

  it('are the house rules alone where they have no first day, with a sentence about the others', async () => {
    const book = await bookOf({ 'Rules 2025': rules('2025-01-01', 8), 'House rules': rules('', 10) });
    const { periods, notes } = await readBasis(book, 'Orders');
    expect([periods.map(({ name }) => name), saysRulesByDay(periods)]).toEqual([['House rules'], undefined]);
    expect(notes).toEqual([
      '“House rules” have no first day, so “Rules 2025” are left aside. Write the day into their rule “in force from”, and older orders are audited by the older rules.',
    ]);
  });

  it('are our defaults where the workbook has no rules, and a list without a row for its day is none', async () => {
    const book = await bookOf({ Notes: [['bottom allowance', 10]] });
    const { periods, rules: own } = await readBasis(book, 'Orders');
    expect([own, periods.map(({ name }) => name)]).toEqual([undefined, ['our default rules']]);
  });

  it.each([
    ['two older sets without a day', { A: rules('', 8), B: rules('', 6) }, '“A” and “B” hold house rules without a first day, so none of them is used.'],
  ])('leave aside what cannot be told: %s', async (_, others, note) => {
    const book = await bookOf({ ...others, 'House rules': rules('2026-03-01', 10) });
    expect((await readBasis(book, 'Orders')).notes[0]).toContain(note);
  }); // prettier-ignore

  it.each([
    ['a date that is none', rules('in spring', 8), '“Rules 2025”: house rule “in force from” reads “in spring”, which is not a date.'],
    ['rules of the same day', rules('2026-03-01', 8), 'Two sets of house rules stand from 2026-03-01 on.'],
  ])('refuse with the sheet’s name %s', async (_, old, sentence) => {
    const book = await bookOf({ 'Rules 2025': old, 'House rules': rules('2026-03-01', 10) });
    await expect(readBasis(book, 'Orders')).rejects.toThrow(sentence);
  }); // prettier-ignore
});

describe('prices of the workbook', () => {
  const LIST: Rows = [
    ['Price list'],
    ['Fabric', 'Supplier', 'Price a yd', 'From'],
    ['Ostrel linen', 'Ostrel', 40, null],
    ['Ostrel linen', 'Ostrel', 44, '2026-01-01'],
    ['Corvane velvet', 'Ostrel', 'forty', null],
    ['Corvane velvet', 'Ostrel', '4o.00', null],
  ];

  it('are found by their headings, each from its own day on, and compared', async () => {
    const book = await bookOf({ Prices: LIST });
    const { prices, notes, periods, unit } = await readBasis(book, 'Orders');
    expect([prices?.sheets, prices?.dated, prices?.rows.length]).toEqual([['Prices'], true, 2]);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/^Row 6 of “Prices” .*4o\.00.* It is passed over\.$/);
    const { read } = await surveyOrders(book, unit, areaAt('Orders', 1, 0));
    const { findings } = await auditOrders(read, { periods, prices: readPrices(prices?.rows) });
    const off = findings.filter(({ finding }) => finding.code === 'priceOffList');
    expect(off.map(({ finding: { row, found, expected } }) => [row, found, expected])).toEqual([[4, 40, 44]]);
  });

  it('of one cloth on two sheets, neither with a day, are said; the first is used', async () => {
    const book = await bookOf({ Prices: LIST.slice(0, 3), 'Old prices': [...LIST.slice(1, 2), ['Ostrel linen', '', 38, null]] }); // prettier-ignore
    const { prices, notes } = await readBasis(book, 'Orders');
    expect(prices?.rows).toEqual([['Ostrel linen', 40, null]]);
    expect(notes).toEqual([
      '“Ostrel linen” costs 40 on “Prices” and 38 on “Old prices”; the first is used. Give the newer price the day it began, in a column headed “from”.',
    ]);
  });

  it('are not looked for among other orders', async () => {
    const book = await bookOf({
      'Orders 2024': [['Fabric', 'Price', 'Drop', 'Heading', 'Widths'], ['Ostrel linen', 30, 96, 'pinch', 6]],
    }); // prettier-ignore
    expect((await readBasis(book, 'Orders')).prices).toBeUndefined();
  });
});
