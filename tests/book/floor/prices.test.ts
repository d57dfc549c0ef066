import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import {
  clothPrices,
  NOTHING_TYPED,
  pricesIn,
  withNamedCells,
  readClothPrice,
} from '../../../src/book/floor/prices';
import { newJob, USUAL_JOB } from '../../../src/book/template';
import { fromUnit } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';
import { engineBook } from '../engine-book';

const FABRICS = [
  ['Fabric', 'Price per yd', 'Minimum order (yd)', 'Whole roll (yd)', 'Price a yd in rolls'],
  ['Ostrel linen', 28.5, 10, 60, 22.5],
  ['Fen voile', 12, null, null, null],
  [null, 3, null, null, null],
  ['Wren', null, 5, null, null],
];
const BREAKS = [
  ['Price break of', 'from (yd)', 'break price'],
  ['Ostrel linen', 50, 26],
  ['Ostrel linen', 150, 24.25],
  ['Rush', 25, 9],
];

describe('prices in a workbook', () => {
  it('are read from its tables of fabrics and of price breaks; the table’s price stands below the first break', () => {
    expect([...pricesIn([BREAKS, [['room', 'fabric']], FABRICS])]).toEqual([
      [
        'Ostrel linen',
        { price: '0 28.5; 50 26; 150 24.25', minimum: '10', rollLength: '60', rollPrice: '22.5' },
      ],
      ['Fen voile', { ...NOTHING_TYPED, price: '12' }],
      ['Rush', { ...NOTHING_TYPED, price: '25 9' }],
    ]);
  });

  it('of linings are found in rows named so, whatever their capitals, and else in cells named so', () => {
    const found = pricesIn([
      [
        ['Cloth', 'Price a yd'],
        ['Blackout  Lining', 11],
        ['Lining', 8],
      ],
    ]);
    expect([...found.keys()]).toEqual(['blackout lining', 'lining']);
    const cells: Readonly<Record<string, number>> = { Price_lining: 5, Price_interlining: 6.4 };
    const all = withNamedCells(found, (name) => cells[name]);
    expect([...all].map(([cloth, { price }]) => [cloth, price])).toEqual([
      ['blackout lining', '11'],
      ['lining', '8'],
      ['interlining', '6.4'],
    ]);
  });

  it('are found in the sheets of a new job, the lining’s among them', async () => {
    const book = engineBook();
    await newJob(book, { ...USUAL_JOB, windows: 3 });
    const { tables } = await book.contents();
    const put = async (table: string, heading: RegExp, value: string | number): Promise<void> => {
      const { area, columns } = tables.find(({ name }) => name === table)!;
      const column = area.column + columns.findIndex((one) => heading.test(one));
      const at = areaAt(area.sheet, area.row + 1, column);
      await book.inOneStep('Type', (write) => write({ puts: [{ area: at, cells: [[value]] }] }));
    };
    await put('Fabrics', /^fabric$/, 'Wren');
    await put('Fabrics', /^price a yd$/, 20);
    await put('Fabrics', /^minimum order/, 10);
    await put('Fabrics', /^whole roll/, 60);
    await put('Fabrics', /in rolls$/, 16);
    await put('Price_breaks', /^price break of$/, 'Wren');
    await put('Price_breaks', /^from/, 50);
    await put('Price_breaks', /^break price$/, 18);
    await put('Linings', /^price a yd$/, 5);
    expect(Object.fromEntries(await clothPrices(book))).toEqual({
      Wren: { price: '0 20; 50 18', minimum: '10', rollLength: '60', rollPrice: '16' },
      lining: { ...NOTHING_TYPED, price: '5' },
    });
  });
});

describe('a cloth’s prices as typed', () => {
  it('are read with the least that is cut and whole rolls, in the house’s unit', () => {
    const typed = { price: '0 28,50; 50 26', minimum: '10', rollLength: '50', rollPrice: '22.50' };
    const { price, faults } = readClothPrice('Ostrel', typed, CENTIMETRES);
    expect(faults).toEqual({});
    expect(price?.breaks.map(({ from, price: each }) => [from, each.toString()])).toEqual([
      [0, '28.5'],
      [50, '26'],
    ]);
    expect([price?.minimum, price?.wholeRoll?.length]).toEqual([fromUnit(10, 'm'), fromUnit(50, 'm')]);
  });

  it.each([
    ['price', { price: 'dear' }, /^Ostrel, the price reads “dear”/],
    ['minimum', { price: '5', minimum: 'few' }, /^Ostrel, the least that is cut reads “few”/],
    ['rollPrice', { price: '5', rollLength: '60' }, /whole roll without its price. Enter both, or neither\./],
    ['rollLength', { rollPrice: '60' }, /whole roll without its length/],
  ] as const)('a fault of the %s is told at its field, and no price is taken', (field, typed, sentence) => {
    const read = readClothPrice('Ostrel', { ...NOTHING_TYPED, ...typed }, INCHES);
    expect(read.price).toBeUndefined();
    expect(read.faults[field]).toMatch(sentence);
  });

  it('take none for the client’s own cloth, and 0 as not set', () => {
    const read = readClothPrice(
      'Ostrel',
      { ...NOTHING_TYPED, price: 'none', rollLength: '60', rollPrice: 'None' },
      INCHES,
    );
    expect(read.faults).toEqual({});
    expect([read.price?.breaks[0]?.price.toNumber(), read.price?.wholeRoll?.price.toNumber()]).toEqual([
      0, 0,
    ]);
    expect(readClothPrice('Ostrel', { ...NOTHING_TYPED, price: '0' }, INCHES)).toEqual({
      price: undefined,
      faults: {},
    });
  });

  it('are none where nothing is typed', () => {
    expect(readClothPrice('Ostrel', NOTHING_TYPED, INCHES)).toEqual({ price: undefined, faults: {} });
  });
});
