import { describe, expect, it } from 'vitest';
import { learnRules } from '../../../src/core/audit/learn';
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
      { rule: 'bottom allowance', value: 10, standing: 8, fit: 9, outOf: 10, fitStanding: 0, asGood: [] },
    ]);
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
