import { describe, expect, it } from 'vitest';
import { readHouse } from '../../../src/core/house/house';
import { inches } from '../../../src/core/exact/length';
import { money, type Rounding } from '../../../src/core/exact/money';
import { breakPrice, labor, readPriceBreaks, salesTax, sellPrice } from '../../../src/core/price/price';
import type { Lining } from '../../../src/core/cell/treatment';

describe('a price at its break', () => {
  const breaks = readPriceBreaks([
    ['from', 'price'],
    [60, 44],
    [0, 48.5],
    [null, ''],
    [300, '39,75'],
  ]);
  const at = (quantity: number): string => breakPrice({ quantity, priceBreaks: breaks }).value.toString();

  it('holds from its quantity on, in whatever order the list stands', () => {
    expect([0, 59.875, 60, 299.9, 300, 5000].map(at)).toEqual(['48.5', '48.5', '44', '44', '39.75', '39.75']);
  });

  it('is none below the first break', () => {
    const later = readPriceBreaks([[10, 5]]);
    expect(() => breakPrice({ quantity: 9, priceBreaks: later })).toThrow(/below the first price break, 10/);
  });

  it('is refused where the list says two things, names no price, or has one column', () => {
    expect(() =>
      readPriceBreaks([
        [0, 5],
        [0, 6],
      ]),
    ).toThrow(/two prices from 0/);
    expect(() => readPriceBreaks([[5, '']])).toThrow(/row 1/);
    expect(() => readPriceBreaks([[-5, 3]])).toThrow(/row 1/);
    expect(() => readPriceBreaks([[5]])).toThrow(/two columns/);
    expect(
      readPriceBreaks([
        [0, 5],
        [0, 5],
      ]),
    ).toHaveLength(2);
  });
});

describe('the making charge', () => {
  const rules = readHouse([
    ['labor pinch', 32.5],
    ['labor lined', 9],
    ['labor blackout', 11],
    ['labor height surcharge', '15 %'],
  ]).rules;
  const laborOf = (drop: number, lining?: Lining): string =>
    labor({ widths: 6, heading: 'pinch', finishedDrop: inches(drop), lining }, rules).value.toFixed(2);

  it('is widths × (heading + lining)', () => {
    expect(laborOf(96)).toBe('195.00');
    expect(laborOf(96, 'lined')).toBe('249.00');
    expect(laborOf(96, 'blackout')).toBe('261.00');
  });

  it('bears the surcharge above the height, not at it', () => {
    expect(laborOf(108)).toBe('195.00');
    expect(laborOf(108.015625)).toBe('224.25');
  });

  it('shows its own below the least of a job, and says so', () => {
    const least = readHouse([
      ['labor pinch', 12],
      ['making minimum', 140],
    ]).rules;
    const made = (widths: number) =>
      labor({ widths, heading: 'pinch', finishedDrop: inches(96), lining: undefined }, least);
    expect(made(6).value.toFixed(2)).toBe('72.00');
    expect(made(6).steps.map(({ what }) => what)).toEqual(['making charge', 'making minimum']);
    expect(made(12).steps.map(({ what }) => what)).toEqual(['making charge']);
  });

  it('by the panel is not told by widths; by the window it is one', () => {
    const chargedBy = (by: string) =>
      labor(
        { widths: 6, heading: 'pinch', finishedDrop: inches(96), lining: 'lined' },
        readHouse([
          ['labor by', by],
          ['labor pinch', 45],
          ['labor lined', 9],
        ]).rules,
      ).value.toFixed(2);
    expect(() => chargedBy('panel')).toThrow(/SCHEDULE/);
    expect(chargedBy('a window')).toBe('54.00');
    expect(chargedBy('width')).toBe('324.00');
  });

  it('asks for the heading’s price where none is set', () => {
    expect(() =>
      labor({ widths: 6, heading: 'box', finishedDrop: inches(96), lining: undefined }, rules),
    ).toThrow(/“labor box”/);
  });

  it('of half widths is to the cent by the house’s rounding', () => {
    const odd = readHouse([
      ['labor pinch', 32.33],
      ['cent rounding', 'down'],
    ]).rules;
    expect(
      labor(
        { widths: 2.5, heading: 'pinch', finishedDrop: inches(96), lining: undefined },
        odd,
      ).value.toFixed(3),
    ).toBe('80.820');
  });
});

describe('the selling price', () => {
  const priceOf = (cost: number, rate: number, basis: Parameters<typeof sellPrice>[0]['basis']): string =>
    sellPrice({ cost: money(cost), rate: money(rate), basis }).value.toFixed(2);

  it('by markup and by margin are two things', () => {
    expect(priceOf(120, 0.5, 'markup on cost')).toBe('180.00');
    expect(priceOf(120, 0.5, 'margin on selling price')).toBe('240.00');
    expect(priceOf(100, 0, 'margin on selling price')).toBe('100.00');
    // 1 ÷ 0.75 is 1.3333, 2 ÷ 0.75 is 2.6667: to the nearest cent.
    expect([
      priceOf(1, 0.25, 'margin on selling price'),
      priceOf(2, 0.25, 'margin on selling price'),
    ]).toEqual(['1.33', '2.67']);
  });

  it('has no margin of the whole', () => {
    expect(() => priceOf(120, 1, 'margin on selling price')).toThrow(/below 100 %/);
  });

  it('is decimal: 1.005 at no markup is 1.01', () => {
    expect(priceOf(1.005, 0, 'markup on cost')).toBe('1.01');
  });
});

describe('sales tax', () => {
  const taxOf = (
    amounts: readonly number[],
    rate: number,
    basis?: 'line' | 'invoice',
    rounding?: Rounding,
  ): string => salesTax({ amounts: amounts.map(money), rate: money(rate), basis, rounding }).value.toFixed(2);

  it('of 3 × 12.46 at 7.25 % is 2.70 by line and 2.71 by invoice', () => {
    expect(taxOf([12.46, 12.46, 12.46], 0.0725)).toBe('2.70');
    expect(taxOf([12.46, 12.46, 12.46], 0.0725, 'invoice')).toBe('2.71');
  });

  it('is rounded by name', () => {
    expect(
      ['half up', 'half even', 'up', 'down'].map((one) => taxOf([2.45], 0.1, 'line', one as Rounding)),
    ).toEqual(['0.25', '0.24', '0.25', '0.24']);
  });

  it('of a credit goes the same way', () => {
    expect(taxOf([-12.46], 0.0725)).toBe('-0.90');
  });

  it('at a rate above 30 % is worth a check', () => {
    expect(
      salesTax({
        amounts: [money(1)],
        rate: money(0.35),
        basis: undefined,
        rounding: undefined,
      }).findings.map(({ code }) => code),
    ).toEqual(['rateLooksHigh']);
  });
});

describe('a price to the cent', () => {
  it('obeys the rounding it is given: 0.03 at 50 % is 0.045, and 1 at a margin of 30 % is 1.428…', () => {
    const sold = (cost: string, rate: string, basis: 'markup on cost' | 'margin on selling price') =>
      (['half up', 'half even', 'up', 'down'] as const).map((rounding) =>
        sellPrice({ cost: money(cost), rate: money(rate), basis, rounding }).value.toFixed(2),
      );
    expect(sold('0.03', '0.5', 'markup on cost')).toEqual(['0.05', '0.04', '0.05', '0.04']);
    expect(sold('1', '0.3', 'margin on selling price')).toEqual(['1.43', '1.43', '1.43', '1.42']);
    // 0.71 ÷ 0.7 is 1.0142…: it is not rounded up unless the house rounds up.
    expect(sold('0.71', '0.3', 'margin on selling price')).toEqual(['1.01', '1.01', '1.02', '1.01']);
  });
});
