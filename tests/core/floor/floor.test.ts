import { describe, expect, it } from 'vitest';
import { windowUnder } from '../window/ordered';
import { savings, whatIf } from '../../../src/core/floor/floor';
import { WindowWork } from '../../../src/core/window/job';
import { inches, toUnit, UNITS, type Length } from '../../../src/core/exact/length';
import { money } from '../../../src/core/exact/money';
import { ratio } from '../../../src/core/exact/ratio';
import { DEFAULT_RULES, readHouse } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';

const HEADINGS = [
  'qty',
  'rod width',
  'finished drop',
  'heading',
  'draw',
  'fullness',
  'fabric width',
  'v rep',
];
const windowOf = (...row: unknown[]) => windowUnder(HEADINGS, row, INCHES).window;
const BARE = readHouse([
  ['return', 0],
  ['overlap', 0],
  ['side hem', 0],
  ['seam', 0],
]).rules;
const yards = (length: Length | undefined): number => toUnit(length ?? NaN, 'yd');

describe('what a narrower rod saves over a floor', () => {
  it('2 in less saves one width at each of 46 windows: 46 × 112 ÷ 36 = 143.1 yd', () => {
    // 110 × 2.5 = 275 takes 6 widths of 54; 108 × 2.5 = 270 is exactly 5.
    const work = new WindowWork(windowOf(46, 110, 96, 'pinch', 'one-way left', 2.5, 54, null), BARE);
    const [saving] = savings([work], inches(4), () => money(20));
    expect(saving?.narrower).toBe(inches(2));
    expect(saving?.widthsSaved).toBe(46);
    // 276 cuts: 858.667 up to 858.75; 230 cuts: 715.556 up to 715.625.
    expect(yards(saving?.yardageSaved)).toBe(143.125);
    expect(saving?.worth.toFixed(2)).toBe('2862.50');
  });

  it('no rod is offered narrower than the house would have it, but a fullness that is not seen', () => {
    const work = new WindowWork(windowOf(46, 110, 96, 'pinch', 'one-way left', 2.5, 54, null), BARE);
    // 5 widths of 54 over 110 in are 2.4545.
    expect(savings([work], inches(1), () => undefined)).toMatchObject([
      { narrower: undefined, fullness: 24_500, widthsSaved: 46 },
    ]);
  });

  it('nothing is offered where neither is a little', () => {
    // 3 widths over 60 in at 2.4 are 2 short of it by 20 %: 108 ÷ 60 is 1.8.
    const work = new WindowWork(windowOf(1, 60, 96, 'pinch', 'one-way left', 2.4, 54, null), BARE);
    expect(savings([work], inches(4), () => undefined)).toEqual([]);
  });
});

describe('the what-if table', () => {
  const windows = [windowOf(10, 104, 96, 'pinch', 'pair', null, 54, null)];
  const wide = 118 * UNITS.in;

  it('gives each choice its yardage and marks the cheapest', () => {
    const table = whatIf(
      windows,
      [
        { direction: 'up the roll' },
        { direction: 'up the roll', fullness: ratio(2) },
        { direction: 'railroaded' },
        { direction: 'railroaded', fabricWidth: wide as Length },
      ],
      { price: { breaks: [{ from: 0, price: money(10) }] }, rollLength: (60 * UNITS.yd) as Length },
      DEFAULT_RULES,
    );
    // By hand: 60 cuts × 112 ÷ 36; at 2.0 each panel is 111 + 6 = 117 in, 2½ widths of 133, so 50 cuts;
    // 54 in is too narrow to turn; 20 panels × 144¾ ÷ 36 = 80.42.
    expect(table.map((one) => one.yardage && yards(one.yardage))).toEqual([186.75, 155.625, undefined, 80.5]);
    expect(table.map((one) => one.cheapest)).toEqual([false, false, false, true]);
    expect(table.map((one) => one.rolls)).toEqual([4, 3, undefined, 2]);
    expect(table[3]?.price?.toFixed(2)).toBe('805.00');
    expect(table[2]?.why).toContain('too narrow to railroad');
    expect(table.some(({ leastCloth }) => leastCloth)).toBe(false);
  });

  it('calls nothing cheapest without a price, since a wider cloth costs more a yard: the least cloth is marked', () => {
    const choices = [
      { direction: 'up the roll' },
      { direction: 'railroaded', fabricWidth: wide as Length },
    ] as const;
    const table = whatIf(windows, choices, {}, DEFAULT_RULES);
    expect(table.map(({ cheapest, leastCloth }) => [cheapest, leastCloth])).toEqual([
      [false, false],
      [false, true],
    ]);
  });
});
