import { describe, expect, it } from 'vitest';
import { writeStep } from '../../../src/core/cell/steps';
import { INCHES } from '../../../src/core/exact/unit';
import { grommets, type GrommetPanel } from '../../../src/core/heading/grommets';
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

  const panel = (flat: number, more: Omit<GrommetPanel, 'flatWidth'>) =>
    grommets({ flatWidth: inches(flat), ...more }, rulesOf());
  const centres = (set: ReturnType<typeof panel>): readonly number[] =>
    set.value.centres.map((centre) => Math.round((centre / UNITS.in) * 1000) / 1000);

  it('end at the return: the last stands where the rod ends', () => {
    // (45 − 3½) ÷ (8 − ½) = 5.533 apart, half of it from the leading edge.
    const set = panel(45, { returns: { leading: inches(0), outer: inches(3.5) } });
    expect(centres(set)).toEqual([2.767, 8.3, 13.833, 19.367, 24.9, 30.433, 35.967, 41.5]);
    // Both ends of a one-way panel: (49 − 7) ÷ 7 = 6.
    const both = panel(49, { returns: { leading: inches(3.5), outer: inches(3.5) } });
    expect(centres(both)).toEqual([3.5, 9.5, 15.5, 21.5, 27.5, 33.5, 39.5, 45.5]);
    // In a recess nothing turns: half a space at both.
    const none = panel(48, { returns: { leading: inches(0), outer: inches(0) } });
    expect(centres(none)).toEqual([3, 9, 15, 21, 27, 33, 39, 45]);
  });

  it('stand an inch from a seam or more, and the steps say which were moved', () => {
    const set = panel(48, { seams: [inches(20.5), inches(40)] });
    // 21 lies ½ in behind the seam at 20½; 39 lies just 1 in before the one at 40.
    expect(centres(set)).toEqual([3, 9, 15, 21.5, 27, 33, 39, 45]);
    expect(set.steps.map((one) => writeStep(one, INCHES)).at(-1)).toBe(
      'moved to 1 in from a seam: the spaces beside each are longer and shorter by as much = no. 4 by 1/2 in',
    );
    expect(centres(panel(48, { seams: [inches(21)] }))[3]).toBe(22);
    expect(centres(panel(48, { seams: [inches(21.25)] }))[3]).toBe(20.25);
  });
});
