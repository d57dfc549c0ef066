import { describe, expect, it } from 'vitest';
import type { Paid } from '../../../src/core/audit/between-rows';
import { ofAnotherDay, turningDays, usualOf } from '../../../src/core/audit/price-days';

const paid = (...all: readonly (readonly [day: number, value: number])[]): Paid[] =>
  all.map(([day, value]) => ({ day, value }));
const ASH = paid([1, 20], [5, 20], [9, 20], [22, 23], [25, 23], [31, 23], [33, 20]);
const ELM = paid([2, 31], [7, 31], [19, 34], [28, 34]);

describe('a new price list', () => {
  it('began on a day that most fabrics agree in', () => {
    expect(turningDays([ASH, ELM])).toEqual([19]);
  });

  it('is told of one fabric where three orders have either price, and of fewer not', () => {
    expect(turningDays([ASH])).toEqual([22]);
    expect(turningDays([ELM])).toEqual([]);
  });

  it('a price of before among those of after is doubted, and the first of a fabric after it is not', () => {
    const late = ASH[6] as Paid;
    expect(ofAnotherDay(late, ASH, [19])).toEqual({ usual: 23, turned: 19, later: false });
    expect(ASH.filter((one) => ofAnotherDay(one, ASH, [19]) !== undefined)).toEqual([late]);
    const oak = paid([1, 64], [4, 64], [6, 64], [24, 69]);
    expect(oak.filter((one) => ofAnotherDay(one, oak, [19]) !== undefined)).toEqual([]);
  });

  it('prices without days, or that go up and down, tell of none', () => {
    expect(turningDays([[{ day: undefined, value: 20 }]])).toEqual([]);
    expect(turningDays([paid([1, 20], [2, 23], [3, 20], [4, 23], [5, 20], [6, 23])])).toEqual([]);
  });
});

it('the usual price is what most paid', () => {
  expect(usualOf(ASH)).toEqual({ value: 20, count: 4 });
  expect(usualOf([])).toBeUndefined();
});
