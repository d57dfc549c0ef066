import { describe, expect, it } from 'vitest';
import { BREAKPRICE, SALESTAX, SELLPRICE } from '../../functions/price';
import type { CellIn } from '../../src/core/cell/fields';

const cells = (outcome: ReturnType<typeof SALESTAX.call>): unknown =>
  'error' in outcome ? outcome.finding.sentence : outcome.cells;

describe('figures from a cell', () => {
  const breaks = [
    [0, 48.5],
    [60, 44],
  ];
  it('shed what binary arithmetic left in them, at a break, in an amount and in a rate', () => {
    expect(cells(BREAKPRICE.call([59.99999999999999, breaks]))).toBe(44);
    expect(cells(BREAKPRICE.call([60.00000000000001, breaks]))).toBe(44);
    expect(
      cells(
        BREAKPRICE.call([
          60,
          [
            [0, 48.5],
            [60.00000000000001, 44],
          ],
        ]),
      ),
    ).toBe(44);
    // 2.35 × 10 % is 0.235, half up to 0.24 (Streamlined Sales and Use Tax Agreement, section 324).
    expect(cells(SALESTAX.call([[[2.3499999999999996]], 0.1]))).toBe(0.24);
    expect(cells(SALESTAX.call([[[2.35]], 0.09999999999999999]))).toBe(0.24);
    expect(cells(SELLPRICE.call([0.30000000000000004, 0, 'markup on cost']))).toBe(0.3);
  });
});

describe('a quantity of nothing', () => {
  it.each([[null], [0], ['']] as CellIn[][])(
    '%j is refused in a lone cell, never a price in silence',
    (empty) => {
      const breaks = [
        [0, 48.5],
        [60, 44],
      ];
      expect(cells(BREAKPRICE.call([empty, breaks]))).toMatch(/^quantity (is|reads) /);
    },
  );
});

describe('a rate above the whole', () => {
  it('is refused for a tax, and offered as so many per cent', () => {
    expect(cells(SALESTAX.call([[[12.46]], 8.25]))).toBe(
      'rate reads 8.25, more than the most taken here, 1. Write it like 8.25 %.',
    );
  });

  it('is refused as a margin, and fine as a markup', () => {
    expect(cells(SELLPRICE.call([100, 8.25, 'margin on selling price']))).toBe(
      'rate reads 825 % as a margin on the selling price. It must be below 100 %: write 8.25 % if that is meant, or name a markup.',
    );
    expect(cells(SELLPRICE.call([100, 1.5, 'markup on cost']))).toBe(250);
  });
});
