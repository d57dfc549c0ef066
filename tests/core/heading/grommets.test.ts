import { describe, expect, it } from 'vitest';
import { grommets } from '../../../src/core/heading/grommets';
import { readHouse } from '../../../src/core/house/house';
import { inches, UNITS } from '../../../src/core/exact/length';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;

describe('grommets', () => {
  const set = (flat: number, ...rules: readonly Rule[]) => {
    const { count, spacing, firstCentre } = grommets({ flatWidth: inches(flat) }, rulesOf(...rules)).value;
    return [count, spacing / UNITS.in, firstCentre / UNITS.in];
  };

  it('are even, the first centre half a spacing from the edge', () => {
    expect(set(96)).toEqual([16, 6, 3]);
    expect(set(96.015625)[0]).toBe(18);
    expect(set(4)).toEqual([2, 2, 1]);
  });

  it('or where the house has it', () => {
    const [count, spacing, first] = set(99, ['grommet edge', 1.5]);
    expect([count, first]).toEqual([18, 1.5]);
    expect(spacing).toBeCloseTo(96 / 17, 12);
    expect(() => set(3, ['grommet edge', 1.5])).toThrow(/too narrow/);
  });
});
