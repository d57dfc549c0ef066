import { describe, expect, it } from 'vitest';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';
import { ratio } from '../../../src/core/exact/ratio';
import { writeStep } from '../../../src/core/cell/steps';
import { INCHES } from '../../../src/core/exact/unit';
import { lining, workLining, type Lined } from '../../../src/core/cloth/lining';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;
const yards = (length: Length): number => toUnit(length, 'yd');
const BARE: readonly Rule[] = [
  ['return', 0],
  ['overlap', 0],
  ['side hem', 0],
  ['seam', 0],
];

/** Rod 104 in pinch, 2.5: the face takes 6 widths of 54 in. */
const lined = (more: Partial<Lined> = {}): Lined => ({
  rodWidth: inches(104),
  finishedDrop: inches(96),
  heading: 'pinch',
  draw: 'pair',
  fabricWidth: inches(54),
  fullness: ratio(2.5),
  quantity: undefined,
  liningWidth: inches(54),
  layer: 'lining',
  ...more,
});
const steps = (lined: Lined, ...rules: readonly Rule[]): readonly string[] =>
  lining(lined, rulesOf(...rules)).steps.map((one) => writeStep(one, INCHES));

describe('a lining', () => {
  it('has the face’s widths on any bolt, where the house counts so', () => {
    const narrow = lined({ liningWidth: inches(48) });
    expect(workLining(narrow, rulesOf()).widths).toBeGreaterThan(6);
    expect(workLining(narrow, rulesOf(['lining widths', 'as the face'])).widths).toBe(6);
    expect(steps(narrow, ['lining widths', 'as the face'])).toContain(
      'lining widths: of 48 in: as many as the face = 6',
    );
  });

  it('has its own cut and no repeat', () => {
    // 96 − 1 + 4 + 4 = 103; 6 × 103 ÷ 36 = 17⅙, up to ⅛.
    expect(yards(lining(lined(), rulesOf()).value)).toBe(17.25);
  });

  it('of the face’s bolt width takes as many widths as the face, whatever the margins leave', () => {
    // 78 + 7 = 85; × 2.5 = 212½; 4 widths of 54 give 216 − 3 − 6 = 207, so 5.
    const tall = lined({ rodWidth: inches(78), finishedDrop: inches(210), draw: 'one-way left' });
    const wide: readonly Rule[] = [['lining margin leading', 20]];
    for (const rules of [[], wide]) {
      expect(workLining(tall, rulesOf(...rules)).widths).toBe(5);
      // 5 × (210 − 1 + 8) ÷ 36 = 30.14, up to ⅛.
      expect(yards(lining(tall, rulesOf(...rules)).value)).toBe(30.25);
    }
  });

  it('takes the half widths of its face', () => {
    // (100 + 7) × 2.5 = 267½ and, with hems, 139¾ a panel: 2½ widths give 135 − 2 = 133, 3 give 160.
    const half: Rule = ['widths rounding', 'half per panel'];
    const narrow: readonly Rule[] = [half, ['overlap', 0], ['return', 0], ['side hem', 0]];
    // 250 ÷ 2 = 125 a panel: 2½ widths of 54 give 133.
    expect(workLining(lined({ rodWidth: inches(100) }), rulesOf(...narrow)).widths).toBe(5);
  });

  it('of another width follows the flat width that the face’s widths deliver', () => {
    // 6 of 54 in two panels: 324 − 4 seams = 320 as seamed; less 6 a panel 308, 154 each.
    // 3 of 48 give 144 − 2 = 142 a panel, 4 give 189.
    const curtain = lined({ liningWidth: inches(48) });
    const whole: Rule = ['widths rounding', 'whole per panel'];
    expect(workLining(curtain, rulesOf(whole)).widths).toBe(8);
    expect(steps(curtain, whole).slice(0, 3)).toEqual([
      'widths of the face: of 54 in, counted for this rod = 6',
      'lining wanted in all, flat: 320 in face as seamed, before its side hems − 12 in turned over it = 308 in',
      'lining widths: of 48 in = 8',
    ]);
    // 118: 118 a panel is too little, two widths of it are 235.
    expect(workLining(lined({ liningWidth: inches(118) }), rulesOf(whole)).widths).toBe(4);
  });

  it('of another width loses the selvages of its own bolt', () => {
    // 108 × 2.5 = 270 in are 5 widths of 55 within ½ in selvages; 6 of 45 within theirs give 264, so 7.
    const curtain = lined({
      rodWidth: inches(108),
      draw: 'stationary cover',
      fabricWidth: inches(55),
      liningWidth: inches(45),
    });
    const bare: readonly Rule[] = [...BARE, ['lining margin leading', 0], ['lining margin outer', 0]];
    expect(workLining(curtain, rulesOf(...bare, ['selvage', 0.5])).widths).toBe(7);
    expect(workLining({ ...curtain, fabricWidth: inches(54) }, rulesOf(...bare)).widths).toBe(6);
  });

  it('reaches across its face also where the house takes the nearest widths', () => {
    // 100 × 2.5 = 250, nearest 5 widths: 270 as seamed, less 12. 52 in: 5 × 52 = 260 reach it, 4 do not.
    const nearest: readonly Rule[] = [...BARE, ['widths rounding', 'nearest']];
    const curtain = lined({ rodWidth: inches(90), liningWidth: inches(52) });
    // 90 × 2.5 = 225: nearest 4 widths of 54 = 216; less 12 is 204: 4 of 52 (208), not the nearest.
    expect(workLining(curtain, rulesOf(...nearest)).widths).toBe(4);
  });

  it('behind no known face follows one of the house’s usual width, and says so', () => {
    const curtain = lined({ fabricWidth: undefined });
    expect(workLining(curtain, rulesOf()).widths).toBe(6);
    expect(steps(curtain)[0]).toBe(
      'widths of the face: of 54 in, the house’s usual fabric width, counted for this rod = 6',
    );
    // 48 in: (111 or 117) × 2.5 ÷ 2 + 6 is more than 3 widths of 48 less seams, 142.
    expect(
      workLining(curtain, rulesOf(['usual fabric width', 48], ['widths rounding', 'whole per panel'])).widths,
    ).toBe(8);
  });

  it('follows the widths that the face is cut in, where they are known', () => {
    expect(workLining(lined({ faceWidths: 8 }), rulesOf()).widths).toBe(8);
  });

  it('loses its own shrinkage, not the face’s', () => {
    // 95 ÷ 0.95 = 100; + 8 = 108; × 6 = 18 yd.
    expect(yards(lining(lined(), rulesOf(['lining shrinkage', 0.05])).value)).toBe(18);
    expect(yards(lining(lined(), rulesOf(['shrinkage', 0.05])).value)).toBe(17.25);
  });

  it('gives its shrinkage to an interlining that is cut as it is', () => {
    // 95 ÷ 0.95 + 8 = 108.
    const rules = rulesOf(['lining shrinkage', 0.05], ['interlining cut', 'as the lining']);
    expect(toUnit(workLining(lined({ layer: 'interlining' }), rules).cut, 'in')).toBe(108);
  });

  it('that seams use up is refused', () => {
    expect(() => lining(lined({ liningWidth: inches(2) }), rulesOf())).toThrow(/lining_width reads 2 in/);
  });

  it('wider than its own cut could be turned, and it is said', () => {
    const codes = (wide: number) =>
      lining(lined({ liningWidth: inches(wide) }), rulesOf()).findings.map(({ code }) => code);
    expect(codes(103)).toEqual([]);
    expect(codes(104)).toEqual(['liningWiderThanCut']);
  });
});

describe('an interlining', () => {
  const inter = (more: Partial<Lined> = {}) => lined({ layer: 'interlining', ...more });

  it('is as long as the face’s cut and as many widths', () => {
    // 96 + 16 = 112; 60 × 112 ÷ 36 = 186⅔.
    expect(yards(lining(inter({ quantity: 10 }), rulesOf()).value)).toBe(186.75);
  });

  it('of another width goes full width into the turnings', () => {
    // 320 as seamed, 160 a panel: 3 of 54½ give 163½ − 2 = 161½; less 6 a panel, 3 of 52 would do for a lining.
    const whole: Rule = ['widths rounding', 'whole per panel'];
    expect(workLining(inter({ liningWidth: inches(54.5) }), rulesOf(whole)).widths).toBe(6);
    expect(workLining(inter({ liningWidth: inches(52) }), rulesOf(whole)).widths).toBe(8);
    expect(workLining(lined({ liningWidth: inches(52) }), rulesOf(whole)).widths).toBe(6);
  });

  it('may be cut as the lining, or by allowances of its own', () => {
    const as = (way: string) => lining(inter({ quantity: 10 }), rulesOf(['interlining cut', way])).value;
    // 60 × 103 ÷ 36 = 171⅔; 60 × (96 + 4) ÷ 36 = 166⅔.
    expect(yards(as('as the lining'))).toBe(171.75);
    expect(yards(as('own allowances'))).toBe(166.75);
    const narrow: readonly Rule[] = [
      ['widths rounding', 'whole per panel'],
      ['interlining cut', 'as the lining'],
    ];
    expect(workLining(inter({ liningWidth: inches(52) }), rulesOf(...narrow)).widths).toBe(6);
  });
});
