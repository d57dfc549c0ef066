import { INCHES } from '../../../../src/core/exact/unit';
import { findOrders, type OrdersFound } from '../../../../src/core/window/reader/orders';

/** Orders of our own invention, kept under a title and in short forms. */
export const KEPT = [
  ['Orders of the spring', null, null, null, null, null, null, null],
  ['PO', 'Rm', 'Rod', 'Fin L', 'Hdg', 'Fab W', 'Wds', 'Yds'],
  ['A12', 'Bar', 94, 96, 'PP', 54, 5, 15.625],
  [null, 'Snug', '7\' 10"', '96 1/2', 'Grom', 54, 5, 15.75],
  ['Total', null, null, null, null, null, null, 31.375],
];

export function found(): OrdersFound {
  const orders = findOrders(KEPT, { unit: INCHES });
  if ('none' in orders) throw new Error(orders.none);
  return orders;
}
