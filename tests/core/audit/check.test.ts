import { expect, it } from 'vitest';
import { RowChecked, type Check } from '../../../src/core/audit/check';
import { compareFigures } from '../../../src/core/audit/compare-figures';
import { told } from '../../../src/core/audit/finding';
import { finding, noAnswer, refuse } from '../../../src/core/cell/answer';
import { TooLarge } from '../../../src/core/exact/length';
import { checked } from './row';

const ROW = { 'rod width': 94, drop: 96, heading: 'pinch', 'fabric width': 54, widths: 8, yardage: 15.625 };
const { given } = checked(ROW);
const codes = (row: RowChecked, check: Check) => row.foundBy(check).map(({ code }) => code);

it('what a check explains is not compared, and only where it finds something', () => {
  const named = (finds: boolean): Check => ({
    explains: () => ['widths'],
    find: () => (finds ? [told(1, finding('oddGrommets', 'widths', 'widths', '8', '6'))] : []),
  });
  // Five widths are needed (5 × 112 in is 15 5/8 yd), so eight are wrong.
  expect(codes(new RowChecked(given, [compareFigures]), compareFigures)).toEqual(['figureDiffers']);
  expect(codes(new RowChecked(given, [named(false), compareFigures]), compareFigures)).toEqual([
    'figureDiffers',
  ]);
  expect(codes(new RowChecked(given, [named(true), compareFigures]), compareFigures)).toEqual([]);
});

it('a check is run once, whoever asks', () => {
  let runs = 0;
  const check: Check = { explains: () => [], find: () => (runs++, []) };
  const row = new RowChecked(given, [check]);
  row.foundBy(check);
  row.explained();
  row.foundBy(check);
  expect(runs).toBe(1);
});

it('a refusal of the row’s own input is said; what cannot be reckoned is passed over', () => {
  const throwing = (thrown: () => never): Check => ({ find: thrown });
  const found = (check: Check) =>
    new RowChecked(given, [check]).foundBy(check).map(({ sentence }) => sentence);
  expect(found(throwing(() => refuse('notWhole', 'Qty', 'Qty', '1.5', 'a whole number')))).toEqual([
    'Qty reads 1.5. It must be a whole number.',
  ]);
  expect(found(throwing(() => noAnswer('notDrawn', 'draw')))).toEqual([]);
  expect(
    found(
      throwing(() => {
        throw new TooLarge();
      }),
    ),
  ).toEqual([]);
  const fault = throwing(() => {
    throw new RangeError('a fault of ours');
  });
  expect(() => found(fault)).toThrow('a fault of ours');
});
