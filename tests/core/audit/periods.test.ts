import { describe, expect, it } from 'vitest';
import { readHouse } from '../../../src/core/house/house';
import { inches } from '../../../src/core/exact/length';
import { periodsOf } from '../../../src/core/audit/periods';

const TWO_YEARS = [
  ['rule', 'value'],
  ['in force from', '2026-03-01'],
  ['bottom allowance', 10],
  ['rule', 'value'],
  ['in force from', 45_658],
  ['bottom allowance', 8],
  ['side hem', 2],
] as const;

describe('house rules by the day they began', () => {
  it('stand one below the other in a range, each set from its row “in force from” on', () => {
    const house = readHouse(TWO_YEARS);
    // The newest is in force for every function, wherever it stands.
    expect(house.rules.bottomAllowance).toBe(inches(10));
    expect(house.findings).toEqual([]);
    expect(
      periodsOf(house).map(({ from, house }) => [from, house.rules.bottomAllowance, house.rules.sideHem]),
    ).toEqual([
      [45_658, inches(8), inches(2)],
      [46_082, inches(10), inches(3)],
    ]);
  });

  it('come from several ranges, the undated one for all that was before', () => {
    const old = readHouse([['bottom allowance', 6]]);
    const froms = periodsOf(readHouse(TWO_YEARS), old).map(({ from }) => from);
    expect(froms).toEqual([undefined, 45_658, 46_082]);
  });

  it('begin a set only where one has been: a first rule above “in force from” belongs to it', () => {
    const { earlier, rules } = readHouse([
      ['in force from', ''],
      ['unit', 'inches'],
      ['bottom allowance', 9],
    ]);
    expect([earlier, rules.inForceFrom, rules.bottomAllowance]).toEqual([[], undefined, inches(9)]);
  });

  it.each([
    ['a date that could be two', [['in force from', '03/04/2026']], 'which could be 2026-03-04 or 2026-04-03'],
    ['no date', [['in force from', 'spring']], 'house rule “in force from” reads “spring”, which is not a date. Write it like 2026-03-09.'],
    ['two sets of one day', [['in force from', '2026-03-01'], ['seam', 1], ['in force from', '2026-03-01']], 'Two sets of house rules stand from 2026-03-01 on.'],
    ['two sets of no day', [['in force from', ''], ['seam', 1], ['in force from', '']], 'Two sets of house rules stand for every day. Write the first day of the newer one'],
    ['two units', [['in force from', '2026-03-01'], ['seam', 1], ['in force from', '2025-03-01'], ['unit', 'cm']], 'different units, centimetres and inches'],
  ])('are refused with a sentence: %s', (_, rows, sentence) => {
    expect(() => periodsOf(readHouse(rows))).toThrow(sentence);
  }); // prettier-ignore
});
