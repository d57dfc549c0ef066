import { expect, it } from 'vitest';
import { priceOn, readPrices, sinceWhen } from '../../../src/core/audit/price-list';
import { DATE } from '../../../src/core/cell/day';
import { INCHES } from '../../../src/core/exact/unit';

const day = (text: string): number | undefined => DATE.read(text, { name: 'day', unit: INCHES })?.early;
const list = readPrices([
  ['fabric', 'price', 'from'],
  ['Linen', '31.50', '2026-02-01'],
  ['linen', 30, null],
  [],
  ['Velvet', '$1,048.00', ''],
]);

it('a price stands from its day on; without a day the latest does', () => {
  const price = (text: string | undefined) =>
    priceOn(list!, 'LINEN', text === undefined ? undefined : day(text))?.price.toNumber();
  expect([price('2026-01-31'), price('2026-02-01'), price(undefined)]).toEqual([30, 31.5, 31.5]);
  expect(priceOn(list!, 'Velvet', undefined)?.price.toNumber()).toBe(1048);
  expect(priceOn(list!, 'Silk', undefined)).toBeUndefined();
});

it('says since when', () => {
  expect(sinceWhen(priceOn(list!, 'linen', undefined)!)).toBe(' since 2026-02-01');
  expect(sinceWhen(priceOn(list!, 'velvet', undefined)!)).toBe('');
});

it('a list of one column, or a line without a price, is refused; an empty one is none', () => {
  expect(readPrices([[null, '']])).toBeUndefined();
  expect(() => readPrices([['Linen']])).toThrow(/two or three columns/);
  expect(() =>
    readPrices([
      ['Linen', 30],
      ['Velvet', null],
    ]),
  ).toThrow(/^prices row 2 reads/);
});
