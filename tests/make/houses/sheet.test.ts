import { describe, expect, it } from 'vitest';
import { chanceFrom } from '../../../src/make/houses/chance';
import { drawOrders } from '../../../src/make/houses/draw';
import { plain, sum, ZERO } from '../../../src/make/houses/exact';
import { lettersOf, valuesOf, writeSheet } from '../../../src/make/houses/sheet';
import { cressfold } from '../../../src/make/houses/styles/cressfold';
import { quillhollow } from '../../../src/make/houses/styles/quillhollow';

it('names the columns A, Z, AA, AZ, BA', () => {
  expect([0, 25, 26, 51, 52].map(lettersOf)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA']);
});

describe('a sheet', () => {
  const orders = drawOrders(cressfold, 80, chanceFrom(3));
  const sheet = writeSheet(cressfold, orders, chanceFrom(4));
  const kinds = (kind: string) => sheet.below.filter(({ is }) => is === kind);

  it('has a section and a total to each order, headings again, and notes at the foot', () => {
    expect(kinds('section')).toHaveLength(orders.length);
    expect(kinds('total')).toHaveLength(orders.length);
    expect(kinds('window')).toHaveLength(80);
    expect(kinds('repeat header')).toHaveLength(2);
    expect(sheet.below.at(-1)?.is).toBe('note');
    expect(sheet.header).toEqual([3, 4]);
  });

  it('adds up the yards of an order in its total row', () => {
    const [order] = orders;
    const yards = plain(sum(order!.lines.map(({ yardage }) => yardage ?? ZERO)));
    expect(sheet.rows[kinds('total')[0]!.row - 1]).toContain(yards);
  });

  it('reads back only what a column holds', () => {
    const [line] = drawOrders(quillhollow, 1, chanceFrom(8))[0]!.lines;
    const values = valuesOf(line!, quillhollow);
    expect(values).toMatchObject({ 'order no': '1101', 'rod width': plain(line!['rod width'] ?? ZERO) });
    expect(values).not.toHaveProperty('panels');
  });
});

it('puts other goods among the windows and into the order’s total', () => {
  const orders = drawOrders(quillhollow, 200, chanceFrom(5));
  const sheet = writeSheet(quillhollow, orders, chanceFrom(6));
  const goods = sheet.below.filter(({ is }) => is === 'other goods');
  expect(goods.length).toBeGreaterThan(10);
  const at = quillhollow.layout.columns.findIndex(({ means }) => means === 'total');
  const ofKind = (kind: string): number =>
    sheet.below
      .filter(({ is }) => is === kind)
      .reduce((all, { row }) => all + Math.round(Number(sheet.rows[row - 1]?.[at]) * 100), 0);
  expect(ofKind('total')).toBe(ofKind('window') + ofKind('other goods'));
});
