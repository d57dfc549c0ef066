import { expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { findOrders } from '../../../../src/core/window/reader/orders';
import { found, KEPT } from './kept-orders';

it('the headings are found below a title, and every column has its meaning', () => {
  const { table, below, headerRows } = found();
  expect([below, headerRows]).toEqual([2, 1]);
  expect(table.found.map(({ key }) => key)).toEqual([
    'order',
    'room',
    'rodWidth',
    'finishedDrop',
    'heading',
    'fabricWidth',
    'widths',
    'yardage',
  ]);
});

it('headings may be given by their number of rows', () => {
  const given = findOrders(KEPT.slice(1), { unit: INCHES, headerRows: 1 });
  expect('none' in given ? given.none : given.below).toBe(1);
});

it('rows without a fact of a window are no table of orders', () => {
  const wages = [
    ['Name', 'Hours', 'Rate', 'Total'],
    ['Ames', 38, 21, 798],
    ['Birch', 40, 19, 760],
  ];
  expect(findOrders(wages, { unit: INCHES })).toHaveProperty('none');
});
