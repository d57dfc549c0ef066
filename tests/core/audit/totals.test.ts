import { expect, it } from 'vitest';
import { Totals } from '../../../src/core/audit/totals';
import { INCHES } from '../../../src/core/exact/unit';
import { tableUnder } from '../window/ordered';

const columns = tableUnder(['room', 'rod width', 'yardage', 'amount'], [], INCHES);
const added = (...rows: readonly (readonly unknown[])[]): Totals => {
  const totals = new Totals(columns);
  for (const row of rows) totals.add(totals.figuresOf(row));
  return totals;
};
const compared = (totals: Totals, at: number, row: readonly unknown[]) =>
  totals.compare(at, totals.figuresOf(row));

it('a total is what stands above it, since the last one or in all; lengths are not added', () => {
  const totals = added(['101', 94, 18.75, 375], ['102', 60, 12.25, '$245.00']);
  expect(compared(totals, 3, ['total', 0, 31, 620])).toEqual([]);
  totals.add(totals.figuresOf(['103', 60, 10, 200]));
  expect(compared(totals, 5, ['subtotal', '', 10, 820])).toEqual([]);
  expect(compared(totals, 6, ['total', '', 42, 820])).toMatchObject([
    { code: 'totalRowDiffers', column: 'yardage', found: 42, expected: 41 },
  ]);
});

it('says nothing of a column with a figure that could not be added', () => {
  expect(compared(added(['101', 94, 'ask', 375]), 2, ['total', '', 99, 375])).toEqual([]);
});

it('a total may count the other goods between the windows, or not', () => {
  const withGoods = (): Totals => {
    const totals = added(['101', 94, 18.75, 375]);
    totals.addGoods(totals.figuresOf(['pole', null, null, 45]));
    return totals;
  };
  expect(compared(withGoods(), 3, ['total', null, 18.75, 420])).toEqual([]);
  expect(compared(withGoods(), 3, ['total', null, 18.75, 375])).toEqual([]);
  expect(compared(withGoods(), 3, ['total', null, 18.75, 421])).toMatchObject([{ expected: 420 }]);
});
