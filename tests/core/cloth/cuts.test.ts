import { describe, expect, it } from 'vitest';
import {
  clothForCuts,
  cutLength,
  furtherCut,
  liningCut,
  plainCut,
  repeatRuleFor,
} from '../../../src/core/cloth/cuts';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';
import type { RepeatRule } from '../../../src/core/cell/ways';

const rulesOf = (...rules: readonly (readonly [string, string | number])[]) =>
  readHouse(rules.length === 0 ? undefined : rules).rules;
const shown = (of: Length): number => toUnit(of, 'in');
const dropped = (drop: number) => ({ finishedDrop: inches(drop), heading: 'pinch' as const });

describe('a cut', () => {
  it('is the drop and its allowances by heading', () => {
    expect(shown(plainCut(dropped(96), rulesOf()))).toBe(112);
    expect(shown(plainCut({ finishedDrop: inches(96), heading: 'rod pocket' }, rulesOf()))).toBe(110);
  });

  it('is longer by what the drop loses, never by a share of the drop: 96 ÷ 0.96 is 100', () => {
    expect(shown(plainCut(dropped(96), rulesOf(['shrinkage', 0.04])))).toBe(116);
  });

  it('of a lining has its own allowances, or so much less than the face', () => {
    expect(shown(liningCut(dropped(96), 'lining', rulesOf()))).toBe(103);
    expect(shown(liningCut(dropped(96), 'lining', rulesOf(['lining cut', 'less than face'])))).toBe(102);
  });

  it('of an interlining is the face’s, the lining’s, or has its own allowances', () => {
    const by = (way: string) =>
      shown(liningCut(dropped(96), 'interlining', rulesOf(['interlining cut', way])));
    expect(shown(liningCut(dropped(96), 'interlining', rulesOf()))).toBe(112);
    expect(['as the face', 'as the lining', 'own allowances'].map(by)).toEqual([112, 103, 100]);
  });

  it('of a lining that leaves nothing is refused', () => {
    expect(() => liningCut(dropped(1), 'lining', rulesOf(['lining shorter', 20]))).toThrow(
      /leaves no lining to cut/,
    );
  });

  it('of a lining has no repeat, and says so where one is given', () => {
    const of = cutLength({ ...dropped(96), verticalRepeat: inches(24), layer: 'lining' }, rulesOf());
    expect(shown(of.value)).toBe(103);
    expect(of.findings.map(({ code }) => code)).toEqual(['liningHasNoRepeat']);
  });
});

/** 4 lengths of 84 in with a repeat of 24 (Project Gutenberg #63282), in yards. */
describe('cloth for 4 cuts of 84 in with a repeat of 24', () => {
  it.each<[RepeatRule, number, number]>([
    ['every cut up', 96, 32 / 3],
    ['first cut exact', 96, 31 / 3],
    ['one repeat each', 108, 34 / 3],
    ['half-drop alternating', 84, 28 / 3],
  ])('by “%s” takes %d in for a further cut, %d yd in all', (rule, further, yards) => {
    expect(shown(furtherCut(inches(84), inches(24), rule))).toBe(further);
    expect(toUnit(clothForCuts(4, inches(84), inches(24), rule), 'yd')).toBeCloseTo(yards, 12);
  });

  it('is plain where there is no repeat, and nothing for no cuts', () => {
    for (const rule of ['every cut up', 'one repeat each', 'half-drop alternating'] as const) {
      expect(clothForCuts(4, inches(84), undefined, rule)).toBe(inches(336));
      expect(clothForCuts(4, inches(84), inches(0), rule)).toBe(inches(336));
      expect(clothForCuts(0, inches(84), inches(24), rule)).toBe(0);
    }
  });

  it('of one cut by “first cut exact” or “one repeat each” is that cut', () => {
    expect(clothForCuts(1, inches(84), inches(24), 'first cut exact')).toBe(inches(84));
    expect(clothForCuts(1, inches(84), inches(24), 'one repeat each')).toBe(inches(84));
  });
});

describe('a half-drop', () => {
  it('goes up to an odd number of half repeats', () => {
    const cut = (of: number): number => shown(furtherCut(inches(of), inches(20), 'half-drop alternating'));
    expect([110, 110.015625, 112, 120, 130, 130.015625].map(cut)).toEqual([110, 130, 130, 130, 130, 150]);
  });

  it('keeps half a nanometre until the whole run is summed', () => {
    expect(clothForCuts(2, 1 as Length, 3 as Length, 'half-drop alternating')).toBe(3);
    expect(clothForCuts(1, 1 as Length, 3 as Length, 'half-drop alternating')).toBe(2);
  });

  it('is decided by the match; else the house rule stands', () => {
    expect(repeatRuleFor('half-drop', rulesOf())).toBe('half-drop alternating');
    expect(repeatRuleFor(undefined, rulesOf(['repeat rule', 'half-drop alternating']))).toBe(
      'half-drop alternating',
    );
    expect(repeatRuleFor('straight', rulesOf(['repeat rule', 'half-drop alternating']))).toBe('every cut up');
    expect(repeatRuleFor('straight', rulesOf(['repeat rule', 'first cut exact']))).toBe('first cut exact');
  });
});
