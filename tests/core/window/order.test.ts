import { describe, expect, it } from 'vitest';
import { MONEY } from '../../../src/core/cell/figure-kinds';
import { INCHES } from '../../../src/core/exact/unit';
import { Written } from '../../../src/core/window/order';
import { ordersUnder, tableUnder } from './ordered';

const place = { name: 'date', unit: INCHES };

it('a column that is written in two ways keeps the first of each', () => {
  const [column] = tableUnder(['rod width', 'heading'], [], INCHES).found;
  const written = new Written();
  for (const raw of [94, '94 in', '240 cm', '', null]) written.note(column!, raw);
  expect([...(written.marks.get(column!) ?? [])]).toEqual([
    ['bare', '94'],
    ['imperial', '“94 in”'],
    ['metric', '“240 cm”'],
  ]);
});

it('a heading’s unit is its column’s', () => {
  const [order] = ordersUnder(
    ['rod width (cm)', 'finished drop (mm)', 'return (in)'],
    [[254, '2540', 3.5]],
    INCHES,
  );
  expect([order?.window.rodWidth, order?.window.finishedDrop, order?.window.return]).toEqual([
    2_540_000_000, 2_540_000_000, 88_900_000,
  ]);
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
