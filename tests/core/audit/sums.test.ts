import { describe, expect, it } from 'vitest';
import { RowChecked } from '../../../src/core/audit/check';
import { holdsAt } from '../../../src/core/audit/own-sums';
import { sums } from '../../../src/core/audit/sums';
import { checked, findsBy } from './row';

it('a total is the sum of its parts less the discount', () => {
  const row = { amount: 400, 'lining amount': 100, labor: 200, discount: 50, total: 650 };
  expect(findsBy(sums, row)).toEqual([]);
  expect(findsBy(sums, { ...row, discount: -50 })).toEqual([]);
  expect(findsBy(sums, { ...row, total: 700 })).toEqual(['partsDoNotAdd at total']);
  // A part that cannot be read leaves nothing to say of the sum.
  expect(findsBy(sums, { ...row, total: 700, discount: 'ask' })).toEqual([]);
});

it('a deposit is not above the total', () => {
  expect(findsBy(sums, { total: 650, deposit: 650 })).toEqual([]);
  expect(findsBy(sums, { total: 650, deposit: 660 })).toEqual(['depositAboveTotal at deposit']);
});

describe('an amount is the unit price times what is priced', () => {
  const row = { yardage: 18.75, 'unit price': 20, amount: 375, quantity: 2, widths: 6 };
  it.each([375, 40, 120, 240])('%d: by the yard, the window, the width or all the widths', (amount) => {
    expect(findsBy(sums, { ...row, amount })).toEqual([]);
  });
  it('or what it is in nearly all orders of its table', () => {
    // 90 % of yards × price.
    const { given, checks } = checked({ ...row, amount: 337.5 });
    const at = (key: string): number => given.headings.indexOf(key);
    const way = { target: at('amount'), factors: [], taken: [], within: 0.01, held: 39, outOf: 40 };
    const by = (share: number): number => {
      const ways = [{ ...way, added: [at('unit price')], share }];
      const holds = (place: number): boolean => holdsAt(ways, place, given.cells);
      return new RowChecked({ ...given, ways, holdsAt: holds }, checks).foundBy(sums).length;
    };
    expect(by(16.875)).toBe(0);
    expect(by(16)).toBe(1);
  });
  it('else the difference is told in money', () => {
    expect(findsBy(sums, { ...row, amount: 380 })).toEqual(['amountDiffers at amount']);
    expect(checked({ ...row, amount: 380 }).foundBy(sums)[0]).toMatchObject({ expected: 375, money: 5 });
  });
});

it('left and right widths are the widths', () => {
  const row = { 'left widths': 3, 'right widths': 3, widths: 6 };
  expect(findsBy(sums, row)).toEqual([]);
  expect(findsBy(sums, { ...row, widths: 7 })).toEqual(['partsDoNotAdd at widths']);
});

it('an amount that is wrong is one mistake, where the total was added up with the right one', () => {
  // 18.75 × 20 = 375; with making of 100 the total is 475. The amount was typed as 357.
  const row = { yardage: 18.75, 'unit price': 20, amount: 357, labor: 100, total: 475 };
  expect(findsBy(sums, row)).toEqual(['amountDiffers at amount']);
  expect(findsBy(sums, { ...row, total: 457 })).toEqual(['amountDiffers at amount']);
  expect(findsBy(sums, { ...row, total: 500 })).toEqual([
    'amountDiffers at amount',
    'partsDoNotAdd at total',
  ]);
});

it('a making that is wrong is one mistake, where the total was added up with the right one', () => {
  // 5 widths at 20 are 100, typed as 1130; with an amount of 375 the total is 475.
  const row = {
    'rod width': 94,
    'finished drop': 84,
    heading: 'pinch',
    'fabric width': 54,
    widths: 5,
    labor: 1130,
    amount: 375,
    total: 475,
  };
  const rules = [['labor pinch', 20]];
  expect(findsBy(sums, row, rules)).toEqual([]);
  expect(findsBy(sums, { ...row, total: 600 }, rules)).toEqual(['partsDoNotAdd at total']);
});

it('a net is the sum before tax, and the total with it', () => {
  const amounts = [310, 95, 720, 1205];
  const among = amounts.map((amount) => [
    amount,
    200,
    (amount + 200) / 5,
    amount + 200,
    (amount + 200) * 1.2,
  ]);
  const found = (net: number, gross: number) =>
    findsBy(
      sums,
      { amount: 400, labor: 200, VAT: 120, 'Net £': net, 'Gross £': gross },
      undefined,
      undefined,
      among,
    );
  expect(found(600, 720)).toEqual([]);
  expect(found(600, 700)).toEqual(['partsDoNotAdd at Gross £']);
  // One mistake carried on is one finding.
  expect(found(500, 620)).toEqual(['partsDoNotAdd at Net £']);
  // Some call net what is left to pay, tax and all.
  expect(found(720, 720)).toEqual([]);
});

it('a column of money of which nobody knows what it is for may be a part of the total', () => {
  const row = { amount: 400, labor: 200, 'Sundry £': 35, total: 635 };
  expect(findsBy(sums, row)).toEqual([]);
  expect(findsBy(sums, { ...row, total: 600 })).toEqual([]);
  expect(findsBy(sums, { ...row, total: 640 })).toEqual(['partsDoNotAdd at total']);
});
