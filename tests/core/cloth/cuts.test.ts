import { describe, expect, it } from 'vitest';
import { cutLength, liningCut, plainCut } from '../../../src/core/cloth/cuts';
import { writeStep } from '../../../src/core/cell/steps';
import { INCHES } from '../../../src/core/exact/unit';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';

const rulesOf = (...rules: readonly (readonly [string, string | number])[]) =>
  readHouse(rules.length === 0 ? undefined : rules).rules;
const shown = (length: Length): number => toUnit(length, 'in');
const dropped = (drop: number) => ({ finishedDrop: inches(drop), heading: 'pinch' as const });

describe('a cut', () => {
  it('is the drop and its allowances by heading', () => {
    expect(shown(plainCut(dropped(96), rulesOf()))).toBe(112);
    expect(shown(plainCut({ finishedDrop: inches(96), heading: 'rod pocket' }, rulesOf()))).toBe(110);
  });

  it('is longer by what the drop loses, never by a share of the drop: 96 ÷ 0.96 is 100', () => {
    expect(shown(plainCut(dropped(96), rulesOf(['shrinkage', 0.04])))).toBe(116);
  });

  it('of a rod pocket has what the pocket takes up on the rod, where the house says so', () => {
    const pocket = (heading: 'rod pocket' | 'pinch') =>
      plainCut({ finishedDrop: inches(96), heading }, rulesOf(['pocket take-up', 0.75]));
    expect([shown(pocket('rod pocket')), shown(pocket('pinch'))]).toEqual([110.75, 112]);
    const given = {
      finishedDrop: inches(96),
      heading: 'rod pocket',
      verticalRepeat: undefined,
      layer: undefined,
    } as const;
    const [said] = cutLength(given, rulesOf(['pocket take-up', 0.75])).steps.map((one) =>
      writeStep(one, INCHES),
    );
    expect(said).toBe('cut length: 96 in drop + 6 in top + 8 in bottom + 3/4 in pocket take-up = 110 3/4 in');
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

  it('of a sheer has a hem of its own, 5 in turned twice', () => {
    const sheer = { ...dropped(95.5), verticalRepeat: undefined, layer: 'sheer' } as const;
    expect(shown(cutLength(sheer, rulesOf()).value)).toBe(113.5);
    expect(shown(cutLength(sheer, rulesOf(['sheer bottom allowance', 6])).value)).toBe(109.5);
  });

  it('of a lining that leaves nothing is refused', () => {
    expect(() => liningCut(dropped(1), 'lining', rulesOf(['lining shorter', 20]))).toThrow(
      /leaves no lining to cut/,
    );
  });

  it('of a lining has no repeat, and says so where one is given', () => {
    const worked = cutLength({ ...dropped(96), verticalRepeat: inches(24), layer: 'lining' }, rulesOf());
    expect(shown(worked.value)).toBe(103);
    expect(worked.findings.map(({ code }) => code)).toEqual(['liningHasNoRepeat']);
  });

  it('is the longest where not all are alike, and its steps say which are shorter', () => {
    const cut = (rule: string) =>
      cutLength(
        { ...dropped(68), verticalRepeat: inches(24), layer: undefined },
        rulesOf(['repeat rule', rule]),
      );
    const shorter = (rule: string) =>
      cut(rule).steps.flatMap(({ what, result }) =>
        what.includes('as it is') && result.as === 'length' ? [shown(result.value)] : [],
      );
    // 68 + 16 = 84: 4 repeats are 96, 84 + 24 is 108; an odd number of half repeats is 84, so 96 is the longest.
    const rules = [
      ['every cut up', 96, []],
      ['first cut exact', 96, [84]],
      ['one repeat each', 108, [84]],
      ['one repeat with every length', 108, []],
      ['half-drop alternating', 96, []],
    ] as const;
    for (const [rule, longest, first] of rules)
      expect([rule, shown(cut(rule).value), shorter(rule)]).toEqual([rule, longest, first]);
  });

  it('shorter than its repeat is looked at before it is cut', () => {
    const worked = cutLength({ ...dropped(10), verticalRepeat: inches(27), layer: undefined }, rulesOf());
    expect(worked.findings.map(({ code }) => code)).toEqual(['repeatTallerThanCut']);
  });
});
