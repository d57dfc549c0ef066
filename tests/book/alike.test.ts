import { expect, it } from 'vitest';
import { addressesOf, downward, dressAlike, rowsAlike } from '../../src/book/alike';
import { areaAt } from '../../src/book/address';

it('areas of the same columns that follow each other are one', () => {
  const areas = [areaAt('S', 2, 0, 1, 3), areaAt('S', 0, 0, 1, 3), areaAt('S', 1, 0, 1, 3), areaAt('S', 1, 4), areaAt('S', 5, 0, 1, 3)]; // prettier-ignore
  expect(downward(areas)).toEqual([areaAt('S', 0, 0, 3, 3), areaAt('S', 5, 0, 1, 3), areaAt('S', 1, 4)]);
});

it('many areas are few addresses, none longer than a host takes', () => {
  const areas = Array.from({ length: 1_000 }, (_, row) => areaAt('S', row * 2, 0, 1, 3));
  const addresses = addressesOf(areas);
  expect(addresses.length).toBeLessThan(10);
  expect(Math.max(...addresses.map(({ length }) => length))).toBeLessThan(2_020);
  expect(addresses.join(',').split(',')).toHaveLength(1_000);
  expect(addressesOf([areaAt('S', 0, 0), areaAt('S', 3, 1, 1, 2)])).toEqual(['A1,B4:C4']);
});

it('rows of one height are told together', () => {
  expect(rowsAlike('S', { 0: 15, 1: 15, 2: 20, 3: 15 })).toEqual([
    { points: 15, areas: [areaAt('S', 0, 0, 2, 1), areaAt('S', 3, 0)] },
    { points: 20, areas: [areaAt('S', 2, 0)] },
  ]);
});

it('cells of one look go together, those lined within apart from single ones', () => {
  const groups = dressAlike([
    { area: areaAt('S', 0, 0), role: 'line' },
    { area: areaAt('S', 1, 0), role: 'line' },
    { area: areaAt('S', 2, 0, 1, 3), role: 'line' },
    { area: areaAt('S', 3, 0), role: 'line', align: 'right' },
  ]);
  expect(groups.map(({ areas }) => areas.length)).toEqual([2, 1, 1]);
});
