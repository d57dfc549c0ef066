import { expect, it } from 'vitest';
import { rowTooLong, unreadCells } from '../../../src/core/audit/reading';
import { checked, findsBy } from './row';

it('a cell that cannot be read is said, and what rests on it is not compared', () => {
  const row = { 'inside width': '7 x 2', 'rod width': 94, heading: 'pinch', 'fabric width': 54, widths: 9 };
  expect(findsBy(unreadCells, row)).toEqual(['unreadable at inside width']);
  // The rod follows from the opening, and all that follows may.
  expect([...checked(row).explained()]).toEqual(['rodWidth', 'widths']);
  expect(findsBy(unreadCells, { ...row, 'inside width': 72 })).toEqual([]);
});

it('a row longer than its headings is said where a cell of it cannot be read', () => {
  expect(findsBy(rowTooLong, { 'rod width': 94, heading: 'smocked', '': 54 })).toEqual([
    'rowTooLong at heading',
  ]);
  expect(findsBy(rowTooLong, { 'rod width': 94, heading: 'pinch', '': 54 })).toEqual([]);
});

it('no size is passed over for a price that cannot be read', () => {
  const row = { 'rod width': 94, heading: 'pinch', 'fabric width': 54, widths: 9, 'unit price': 'dear' };
  expect(findsBy(unreadCells, row)).toEqual(['unreadable at unit price']);
  expect([...checked(row).explained()]).toEqual([]);
});
