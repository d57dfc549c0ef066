import { describe, expect, it } from 'vitest';
import { windowUnder } from '../window/ordered';
import { WindowWork } from '../../../src/core/window/job';
import { money } from '../../../src/core/exact/money';
import { quote, type PriceList } from '../../../src/core/quote/quote';
import { readHouse } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';

const HEADERS = ['qty', 'rod width', 'finished drop', 'heading', 'fabric', 'fabric width', 'lining'];
const RULES = [
  ['labor pinch', 30],
  ['labor lined', 10],
  ['price per ring', 1],
  ['price per bracket', 10],
  ['price per rod foot', 4],
  ['price per finial', 12],
  ['installation per window', 60],
  ['freight', 85],
  ['sell rate', 0.5],
  ['tax rate', 0.0725],
];
const house = (...more: unknown[][]) => readHouse([...RULES, ...more]);
const windowOf = (row: readonly unknown[], rules = house().rules) =>
  new WindowWork(windowUnder(HEADERS, row, INCHES).window, rules);
const ROW = [10, 105, 96, 'pinch', 'Ostrel', 54, 'lined'];
const LINING = { breaks: [{ from: 0, price: money(8) }] };
const prices: PriceList = new Map([
  [
    'Ostrel',
    {
      breaks: [
        { from: 0, price: money(30) },
        { from: 100, price: money(25) },
      ],
    },
  ],
  ['lining', LINING],
]);

describe('the price of a job', () => {
  // By hand: 6 widths × 112 in × 10 ÷ 36 = 186⅔, up to 186.75 yd, at the break from 100: 25.00.
  const sold = quote([windowOf(ROW)], prices, house().rules);
  const line = (what: string) => sold.lines.find((one) => one.what === what);

  it('cloth is priced at the break its whole yardage reaches: 186.75 × 25 = 4,668.75', () => {
    expect(line('Ostrel')?.quantity).toBe(186.75);
    expect(line('Ostrel')?.cost?.toFixed(2)).toBe('4668.75');
    expect(line('Ostrel')?.price.toFixed(2)).toBe('7003.13');
  });

  it('lining: 6 widths × 103 in × 10 ÷ 36 = 171⅔, up to 171.75 yd at 8.00', () => {
    expect(line('lining')?.cost?.toFixed(2)).toBe('1374.00');
  });

  it('making: 60 widths × (30 + 10)', () => {
    expect(line('making')?.cost?.toFixed(2)).toBe('2400.00');
  });

  it('making by the panel or the window counts these, and says which: 10 pairs', () => {
    const madeBy = (by: string) => {
      const { rules } = house(['labor by', by]);
      const { lines } = quote([windowOf(ROW, rules)], prices, rules);
      const made = lines.find(({ kind }) => kind === 'making');
      return [made?.quantity, made?.unit, made?.cost?.toFixed(2)];
    };
    expect(madeBy('panel')).toEqual([20, 'panels', '800.00']);
    expect(madeBy('window')).toEqual([10, 'windows', '400.00']);
    expect(madeBy('width')).toEqual([60, 'widths', '2400.00']);
  });

  it('rods by the foot: 105 ÷ 12 × 10 = 87.5 ft at 4.00', () => {
    expect(line('rods')?.cost?.toFixed(2)).toBe('350.00');
  });

  it('hardware is what the heading has: no finials on a track, grommets in a grommet heading', () => {
    const all = house(['price per grommet', 0.75], ['price per end stop', 2]);
    const hardwareOf = (heading: string, rules = all.rules): readonly string[] =>
      quote([windowOf([1, 105, 96, heading, 'Ostrel', 54, 'unlined'], rules)], prices, rules)
        .lines.filter(({ kind }) => kind === 'hardware')
        .map(({ what, quantity }) => `${what} ${quantity}`);
    // Two panels of 15 pleats and 2 ends; 105 in is three spans of 48.
    expect(hardwareOf('pinch')).toEqual(['rods 8.75', 'rings and carriers 34', 'brackets 4', 'finials 2']);
    expect(hardwareOf('pinch', house(['hang on', 'track'], ['price per end stop', 2]).rules)).toEqual([
      'rods 8.75',
      'rings and carriers 34',
      'brackets 4',
      'end stops 2',
    ]);
    expect(hardwareOf('grommet')[1]).toMatch(/^grommets \d*[02468]$/);
    expect(hardwareOf('rod pocket')).toEqual(['rods 8.75', 'brackets 4']);
    expect(hardwareOf('wave')).toEqual(['rods 8.75', 'brackets 4']);
  });

  it('a rod with two prices is told', () => {
    const two = house(['price per rod piece', 30]);
    const told = quote([windowOf(ROW, two.rules)], prices, two.rules);
    expect(told.findings.map((one) => one.code)).toContain('rodPricedTwice');
    expect(sold.findings.map((one) => one.code)).not.toContain('rodPricedTwice');
  });

  it('the sum is the sum of its lines, and the total is sum − discount + tax', () => {
    const sum = sold.lines.reduce((all, one) => all.plus(one.price), money(0));
    expect(sold.sum.eq(sum)).toBe(true);
    expect(sold.total.eq(sold.sum.minus(sold.discount).plus(sold.tax))).toBe(true);
  });

  it('installation and freight are not marked up and not taxed', () => {
    expect(line('installation')?.price.toFixed(2)).toBe('600.00');
    expect([line('installation')?.taxed, line('freight')?.taxed]).toEqual([false, false]);
  });

  it('a deposit below the cost of cloth cut to order is a finding', () => {
    const low = quote([windowOf(ROW)], prices, house(['deposit', 0.2]).rules);
    expect(low.findings.map((one) => one.code)).toContain('depositBelowCloth');
    expect(sold.findings.map((one) => one.code)).not.toContain('depositBelowCloth');
  });

  it('a fabric without a price stands at nothing, and says so', () => {
    const none = quote([windowOf(ROW)], new Map([['lining', LINING]]), house().rules);
    expect(none.findings.map((one) => one.sentence)).toContain(
      'No price is set for Ostrel; it stands in the quote at nothing. Add it to the price list.',
    );
  });

  it('the least the mill cuts is priced where less is needed', () => {
    const few = windowOf([1, 20, 96, 'pinch', 'Ostrel', 54, 'unlined']);
    const list: PriceList = new Map([
      ['Ostrel', { breaks: [{ from: 0, price: money(30) }], minimum: (20 * 914_400_000) as never }],
    ]);
    const sold = quote([few], list, house().rules);
    expect(sold.lines[0]?.quantity).toBe(20);
    expect(sold.findings.map((one) => one.code)).toContain('belowMinimumCut');
  });

  it('a margin of 50 % doubles the cost; a markup of 50 % does not', () => {
    const margin = quote([windowOf(ROW)], prices, house(['sell basis', 'margin']).rules);
    expect(margin.lines[0]?.price.toFixed(2)).toBe('9337.50');
  });
});
