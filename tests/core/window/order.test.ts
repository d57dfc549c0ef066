import { describe, expect, it } from 'vitest';
import { OrderReader, orderColumns, rowKind } from '../../../src/core/window/order';
import { MONEY } from '../../../src/core/cell/figure-kinds';
import { INCHES } from '../../../src/core/exact/unit';

const meanings = (...headings: string[]): Record<string, string> =>
  Object.fromEntries(orderColumns(headings, INCHES).found.map(({ heading, key }) => [heading, key]));
const place = { name: 'date', unit: INCHES };

describe('the columns of past orders', () => {
  it('widths are counted and a width is measured', () => {
    expect(meanings('Width', 'Widths')).toEqual({ Width: 'openingWidth', Widths: 'widths' });
  });

  it('pleats are a count beside a heading, and the price is not the amount', () => {
    expect(meanings('Style', 'Pleats', 'Price', 'Amount', 'Draw', 'Control')).toEqual({
      Style: 'heading',
      Pleats: 'marks',
      Price: 'unitPrice',
      Amount: 'amount',
      Draw: 'draw',
      Control: 'drawnBy',
    });
  });

  it('what the user says goes before the heading', () => {
    const { found } = orderColumns(['Width', 'Rod'], INCHES, { 0: 'fabricWidth', 1: null });
    expect(found.map(({ key }) => key)).toEqual(['fabricWidth']);
  });

  it('a heading’s unit is its column’s', () => {
    const reader = new OrderReader(orderColumns(['Rod width (cm)', 'Drop [mm]', 'Return (in)'], INCHES));
    const { window } = reader.read([254, '2540', 3.5]);
    expect([window.rodWidth, window.finishedDrop, window.return]).toEqual([
      2_540_000_000, 2_540_000_000, 88_900_000,
    ]);
  });

  it('totals, sections and repeated headings are no orders', () => {
    const columns = orderColumns(['room', 'rod width', 'heading', 'yardage'], INCHES);
    expect(rowKind(['101', 94, 'pinch', 18.75], columns)).toBe('order');
    expect(rowKind(['Sub-total', '', '', 40], columns)).toBe('total');
    expect(rowKind(['Second floor', '', '', ''], columns)).toBe('section');
    expect(rowKind(['Room', 'Rod Width', 'Heading', 'Yardage'], columns)).toBe('heading');
    expect(rowKind(['', ' ', null, undefined], columns)).toBe('blank');
    // A room called “Total care” with its figures is an order.
    expect(rowKind(['Total care', 94, 'pinch', 18.75], columns)).toBe('order');
  });
});

describe('amounts as sheets write them', () => {
  it('amounts lose their signs and thousands, and keep their cents', () => {
    const amount = (text: unknown): string | undefined => MONEY.read(text, place)?.toString();
    expect(['$1,234.50', '1.234,50 €', '(25.00)', '1,234', 'USD 12', '£ 0.50', 12.46].map(amount)).toEqual([
      '1234.5',
      '1234.5',
      '-25',
      '1234',
      '12',
      '0.5',
      '12.46',
    ]);
    expect(amount('')).toBeUndefined();
    expect(() => amount('ask')).toThrow('an amount');
  });
});
