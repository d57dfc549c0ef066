import { expect, it } from 'vitest';
import { isListed, priceOffList } from '../../../src/core/audit/price-off-list';
import { checked, findsBy } from './row';

const LIST = [
  ['Wool sateen', 48.5, ''],
  ['Wool sateen', 52, '2026-01-01'],
];
const row = { date: '2026-03-01', fabric: 'wool sateen', 'unit price': 52, yardage: 10 };

it('a unit price is the listed one of its day', () => {
  expect(findsBy(priceOffList, row, [], LIST)).toEqual([]);
  expect(findsBy(priceOffList, { ...row, date: '2025-03-01' }, [], LIST)).toEqual([
    'priceOffList at unit price',
  ]);
  const [found] = checked({ ...row, 'unit price': 50 }, [], LIST).foundBy(priceOffList);
  // 2.00 too little on 10 yards.
  expect(found).toMatchObject({ found: 50, expected: 52, money: -20 });
});

it('nothing is said of a fabric that no list has', () => {
  expect(findsBy(priceOffList, { ...row, fabric: 'Linen' }, [], LIST)).toEqual([]);
  expect(isListed(checked(row, [], LIST).given)).toBe(true);
  expect(isListed(checked({ ...row, fabric: 'Linen' }, [], LIST).given)).toBe(false);
  expect(isListed(checked(row).given)).toBe(false);
});
