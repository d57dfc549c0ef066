import { describe, expect, it } from 'vitest';
import { Compared } from '../../../src/core/audit/compared';
import { learnRules, notToldApart } from '../../../src/core/audit/learn';
import { ordersUnder } from '../window/ordered';
import { DEFAULT_HOUSE, readHouse, type House } from '../../../src/core/house/house';
import {
  chanceFrom,
  HEADINGS_OF_ORDERS,
  houseOf,
  rowCells,
  someRules,
  trueOrders,
} from '../../../src/make/orders';

/** The workroom's own practice stands in no column: it has to be told from the figures. */
const HEADINGS = HEADINGS_OF_ORDERS.filter((heading) => heading !== 'return' && heading !== 'overlap');

function ordersOf(house: House, seed: number, count: number, headings: readonly string[] = HEADINGS) {
  const rows = trueOrders(count, house, chanceFrom(seed)).map(({ row }) => rowCells(row, headings));
  return ordersUnder(headings, rows, house.unit);
}

describe('learning the house’s rules', () => {
  for (const unit of ['inches', 'centimetres'] as const) {
    for (const seed of [3, 4]) {
      it(`finds rules that every order fits, from 150 orders in ${unit} (${seed})`, () => {
        const house = houseOf(someRules(chanceFrom(seed), unit));
        const standing = readHouse([['unit', unit]]).rules;
        const { proposals, fitProposed, fitStanding, outOf } = learnRules(
          ordersOf(house, seed, 150),
          standing,
        );
        expect(fitStanding).toBeLessThan(outOf / 2);
        expect(fitProposed).toBeGreaterThanOrEqual(outOf * 0.95);
        for (const one of proposals) expect(one.fit).toBeGreaterThan(one.fitStanding);
      }, 60_000);
    }
  }

  it('says how many orders fit: 9 of 10 bottom hem 10', () => {
    const headings = ['finished drop', 'heading', 'cut length'];
    const orders = [84, 90, 96, 97, 98.5, 100, 101, 102, 108].map((drop) => [drop, 'pinch', drop + 18]);
    const read = ordersUnder(headings, [...orders, [96, 'pinch', 111]], DEFAULT_HOUSE.unit);
    const { proposals } = learnRules(read, DEFAULT_HOUSE.rules);
    expect(proposals).toEqual([
      {
        rule: 'bottom allowance',
        value: 10,
        standing: 8,
        fit: 9,
        outOf: 10,
        fitStanding: 0,
        asGood: [],
        orElse: [{ rule: 'top allowance pinch', value: 10 }],
      },
    ]);
    expect(proposals.map(notToldApart)).toEqual([
      ' These rules cannot be told apart from these orders: “bottom allowance” 10, “top allowance pinch” 10. Set the one that is the house’s.',
    ]);
  });

  it('tells two rules apart where the orders do: two headings share one hem', () => {
    const headings = ['finished drop', 'heading', 'cut length'];
    const orders = [84, 90, 96, 97, 98.5, 100, 101, 102, 108, 110].map((drop, at) =>
      at % 2 === 0 ? [drop, 'pinch', drop + 18] : [drop, 'grommet', drop + 18],
    );
    const { proposals } = learnRules(ordersUnder(headings, orders, DEFAULT_HOUSE.unit), DEFAULT_HOUSE.rules);
    expect(proposals).toMatchObject([{ rule: 'bottom allowance', value: 10, orElse: [] }]);
  });

  it.each([
    ['seam', 2, 'widths'],
    ['half width charged', 'as a whole', 'labor'],
    ['labor by', 'panel', 'labor'],
    ['lining widths', 'as the face', 'lining yardage'],
    ['interlining cut', 'as the lining', 'interlining yardage'],
  ] as const)('%s is learned from %s', (rule, value, figure) => {
    const more = [['labor pinch', 20], ['widths rounding', 'half per panel'], ['yardage step', 0]] as const; // prettier-ignore
    const house = readHouse([[rule, value], ...more]);
    const key = { 'widths': 'widths', 'labor': 'labor', 'lining yardage': 'liningYardage', 'interlining yardage': 'interliningYardage' } as const; // prettier-ignore
    const columns = [
      'rod width',
      'finished drop',
      'heading',
      'draw',
      'fabric width',
      'lining',
      'lining width',
    ];
    const rows = Array.from({ length: 40 }, (_, at) => {
      const cells = [
        40 + at * 7.5,
        84 + at,
        'pinch',
        at % 3 === 0 ? 'one-way left' : 'pair',
        48,
        'interlined',
        60,
      ];
      const [order] = ordersUnder(columns, [cells], house.unit);
      const figured = new Compared(order?.window ?? {}, {}, house.rules).expected(key[figure]) ?? 0;
      return [...cells, figure.includes('yardage') ? figured / 914_400_000 : figured];
    });
    const read = ordersUnder([...columns, figure], rows, house.unit);
    const { proposals } = learnRules(read, readHouse(more).rules);
    expect(proposals.map((one) => [one.rule, one.value])).toContainEqual([rule, value]);
  });

  it('keeps a rule that the orders bear out, and changes nothing', () => {
    const before = JSON.stringify(DEFAULT_HOUSE.rules);
    const { proposals, borneOut } = learnRules(ordersOf(DEFAULT_HOUSE, 9, 60), DEFAULT_HOUSE.rules);
    expect(proposals).toEqual([]);
    expect(borneOut.map(({ rule }) => rule)).toContain('bottom allowance');
    expect(JSON.stringify(DEFAULT_HOUSE.rules)).toBe(before);
  });

  it('learns nothing from too few orders', () => {
    const { proposals, borneOut } = learnRules(ordersOf(DEFAULT_HOUSE, 9, 3), DEFAULT_HOUSE.rules);
    expect([...proposals, ...borneOut]).toEqual([]);
  });
});
