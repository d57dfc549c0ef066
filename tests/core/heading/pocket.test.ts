import { describe, expect, it } from 'vitest';
import { pocket } from '../../../src/core/heading/pocket';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit } from '../../../src/core/exact/length';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;

describe('a rod pocket', () => {
  it('is half the round and the ease: 3 1/8 takes 1 7/8 (Project Gutenberg #70586)', () => {
    expect(toUnit(pocket({ rodAround: inches(3.125) }, rulesOf()).value, 'in')).toBe(1.875);
    expect(toUnit(pocket({ rodAround: undefined }, rulesOf(['rod around', 6.375])).value, 'in')).toBe(3.5);
  });
});
