import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/cell/answer';
import { shorterCut, widerBolts } from '../../../src/core/cloth/advice';
import { cuttingOf } from '../../../src/core/cloth/repeat';
import { widerBoltSaves, workYardage, yardage, type Covered } from '../../../src/core/cloth/yardage';
import { inches, toUnit } from '../../../src/core/exact/length';
import { ratio } from '../../../src/core/exact/ratio';
import { readHouse } from '../../../src/core/house/house';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;
const BARE: readonly Rule[] = [
  ['return', 0],
  ['side hem', 0],
  ['seam', 0],
];
const covered = (more: Partial<Covered> = {}): Covered => ({
  rodWidth: inches(152),
  finishedDrop: inches(94),
  heading: 'pinch',
  draw: 'pair',
  fabricWidth: inches(54),
  fullness: ratio(2.5),
  quantity: undefined,
  ...more,
});
const said = (worked: { findings: readonly Finding[] }, code: string): readonly string[] =>
  worked.findings.filter((one) => one.code === code).map(({ sentence }) => sentence);
const shorter = (more: Partial<Covered>, ...rules: readonly Rule[]): readonly string[] =>
  said(yardage(covered(more), rulesOf(...rules)), 'shorterCutSaves');

describe('a cut just past a repeat', () => {
  it('says what a little less saves: 8 cuts of 135 are 30 yd, of 108 they are 24', () => {
    expect(shorter({ verticalRepeat: inches(27) })).toEqual([
      '94 + 16 = 110 goes up to 135; 2 in less gives 108 and saves 6 yd.',
    ]);
    expect(shorter({ verticalRepeat: inches(27), quantity: 10 })).toEqual([
      '94 + 16 = 110 goes up to 135; 2 in less gives 108 and saves 60 yd.',
    ]);
  });

  it('says what the house’s rule of repeats leaves to be saved, and nothing where it adds a repeat to a cut', () => {
    const repeat = { verticalRepeat: inches(27) };
    // 110 + 7 × 135 = 1,055 in, 29⅜ yd; 108 × 8 is 24.
    expect(shorter(repeat, ['repeat rule', 'first cut exact'])[0]).toContain('saves 5 3/8 yd.');
    expect(shorter(repeat, ['repeat rule', 'one repeat each'])).toEqual([]);
    expect(shorter(repeat, ['repeat rule', 'one repeat with every length'])).toEqual([]);
  });

  it('is offered up to 3 in, never where the cut is on its repeat', () => {
    const over = (drop: number) => shorter({ verticalRepeat: inches(27), finishedDrop: inches(drop) }).length;
    expect([92, 92.125, 95, 95.125].map(over)).toEqual([0, 1, 1, 0]);
    expect(shorter({})).toEqual([]);
  });

  it('takes its drop before it shrinks: 94.09 ÷ 0.97 + 16 = 113 over 4 × 28', () => {
    // 8 × 140 = 31 1/9 yd, up to 31⅛; 8 × 112 = 24 8/9, up to 25.
    expect(shorter({ finishedDrop: inches(94.09), verticalRepeat: inches(28) }, ['shrinkage', 0.03])).toEqual(
      ['97 + 16 = 113 goes up to 140; 1 in less gives 112 and saves 6 1/8 yd.'],
    );
  });

  it('of a half-drop is just past half a repeat', () => {
    const cutting = cuttingOf(inches(112), inches(20), 'half-drop', rulesOf());
    expect(toUnit(shorterCut(cutting)?.less ?? inches(0), 'in')).toBe(2);
    // Panels of 4 are A B A B: 4 A, 4 B. 112 takes 120, or 130 before the other start: in two groups 7 × 120 + 130.
    // 110 takes 120 or, an odd number of halves, 110: in turn 7 × 110, and the last 120.
    const half = { finishedDrop: inches(96), verticalRepeat: inches(20), match: 'half-drop' } as const;
    expect(shorter(half)).toEqual(['96 + 16 = 112 goes up to 120; 2 in less gives 110 and saves 2 1/4 yd.']);
  });
});

describe('a step of widths less', () => {
  const cover = covered({ rodWidth: inches(110), finishedDrop: inches(96), draw: 'stationary cover' });

  it('names the widths saved, and the fullness that saves them: 5 × 54 = 270, 270 ÷ 110 = 2.454', () => {
    // 6 × 112 = 18⅔ yd, up to 18¾; 5 × 112 = 15 5/9, up to 15⅝.
    expect(said(yardage(cover, rulesOf(...BARE)), 'narrowerSaves')).toEqual([
      'A rod 2 in narrower, or a fullness of 2.45, would need 5 widths, 1 fewer, and save 3 1/8 yd.',
    ]);
    const less = workYardage({ ...cover, fullness: ratio(2.45) }, rulesOf(...BARE));
    expect(less.work.widths).toBe(5);
    expect(workYardage({ ...cover, fullness: ratio(2.46) }, rulesOf(...BARE)).work.widths).toBe(6);
  });

  it('goes by the rod alone where the fullness does', () => {
    // 110 × 2.5 + 7 = 282 takes 6; (270 − 7) ÷ 110 = 2.390, and a rod of 263 ÷ 2.5 = 105.2.
    const rules = rulesOf(['side hem', 0], ['seam', 0], ['fullness basis', 'rod width']);
    expect(said(yardage(cover, rules), 'narrowerSaves')[0]).toMatch(
      /^A rod 4\.8 in narrower, or a fullness of 2\.39, would need 5 widths/,
    );
  });

  it('is two where whole widths go into each panel', () => {
    const pair = covered({ rodWidth: inches(110) });
    // 275 in two panels: 137½ each takes 3 of 54, 2 serve 108.
    const rules = rulesOf(...BARE, ['widths rounding', 'whole per panel'], ['overlap', 0]);
    expect(said(yardage(pair, rules), 'narrowerSaves')).toEqual([]);
    const near = covered({ rodWidth: inches(88), fullness: ratio(2.5) });
    // 220: 3 each; 216 ÷ 2.5 = 86.4, 216 ÷ 88 = 2.4545.
    expect(said(yardage(near, rules), 'narrowerSaves')[0]).toMatch(
      /^A rod 1\.6 in narrower, or a fullness of 2\.45, would need 4 widths, 2 fewer/,
    );
  });
});

describe('another bolt', () => {
  it('is a little wider, and saves widths: 275 in are 6 of 54 or 5 of 60', () => {
    expect(widerBolts(inches(54), rulesOf()).map((one) => toUnit(one, 'in'))).toEqual([60]);
    expect(widerBolts(inches(48), rulesOf()).map((one) => toUnit(one, 'in'))).toEqual([54]);
    expect(widerBolts(inches(60), rulesOf())).toEqual([]);
    const cover = covered({ rodWidth: inches(110), finishedDrop: inches(96), draw: 'stationary cover' });
    const rules = rulesOf(...BARE);
    const saved = widerBoltSaves(cover, workYardage(cover, rules), rules);
    expect([saved?.widths, toUnit(saved?.yardage ?? inches(0), 'yd')]).toEqual([5, 15.625]);
    const five = covered({ rodWidth: inches(108), draw: 'stationary cover' });
    // 270 are 5 of either.
    expect(widerBoltSaves(five, workYardage(five, rules), rules)).toBeUndefined();
  });
});
