import { expect, it } from 'vitest';
import { toUnit, UNITS } from '../../../../src/core/exact/length';
import { OrderRows } from '../../../../src/core/window/reader/order-rows';
import { INCHES } from '../../../../src/core/exact/unit';
import { ordersUnder } from '../ordered';
import { found, KEPT } from './kept-orders';

it('every row is told, an order read exactly, and its number said once holds for the next line', () => {
  const { table } = found();
  const reader = new OrderRows(table);
  const lines = [
    ...KEPT.slice(2).flatMap((row, at) => reader.push(at + 2, row)),
    ...reader.push(5, [0, 0, 0, 0, 0, 0, 0, 0]),
    ...reader.end(),
  ];
  expect(lines.map(({ at, is }) => [at, is])).toEqual([
    [2, 'window'],
    [3, 'window'],
    [4, 'total'],
    [5, 'blank'],
  ]);
  const [first, second] = lines.map(({ order }) => order);
  expect(first?.facts.order).toBe('A12');
  expect(second?.facts.order).toBe('A12');
  expect(second?.window.heading).toBe('grommet');
  // 7 ft 10 in are 94 in; 15 3/4 yd are 567 in.
  expect(toUnit(second?.window.rodWidth as never, 'in')).toBe(94);
  expect(second?.ordered.yardage).toBe(15.75 * UNITS.yd);
});

it.each([
  ['<<', 'one-way left'],
  ['>>', 'one-way right'],
  ['<-', 'one-way left'],
  ['<->', 'pair'],
] as const)('“%s” points where a curtain stacks, and “pl” says that a cloth is plain', (arrow, draw) => {
  const headings = ['room', 'rod width', 'finished drop', 'heading', 'draw', 'vertical repeat'];
  const rows = [['Den', 60, 84, 'pinch', 'pr', 27], ['Hall', 70, 84, 'pinch', arrow, 'pl']]; // prettier-ignore
  const [, order] = ordersUnder(headings, rows, INCHES);
  expect(order?.unread).toEqual([]);
  expect(order?.window).toMatchObject({ draw });
  expect(order?.window.verticalRepeat).toBeUndefined();
});

it('one panel to a side that is not said is cut as one panel, and nothing of it is unread', () => {
  const headings = ['room', 'rod width', 'finished drop', 'heading', 'draw', 'fabric width'];
  const rows = [['Den', 60, 84, 'pinch', 'pair', 54], ['Hall', 70, 84, 'pinch', 'Curtain, single', 54]]; // prettier-ignore
  const [, order] = ordersUnder(headings, rows, INCHES);
  expect(order?.unread).toEqual([]);
  expect(order?.window.draw).toBe('one-way left');
});

it.each(['COM', 'cust. own', 'Own', 'client’s fabric', 'customer supplied', 'free issue'])(
  '“%s” in the place of a price is no price, and leaves nothing unread',
  (word) => {
    const headings = ['room', 'rod width', 'finished drop', 'heading', 'fabric width', 'unit price'];
    const rows = [['Den', 60, 84, 'pinch', 54, 28], ['Hall', 70, 84, 'pinch', 54, word]]; // prettier-ignore
    const [, order] = ordersUnder(headings, rows, INCHES);
    expect(order?.unread).toEqual([]);
    expect(order?.facts.unitPrice).toBeUndefined();
  },
);
