import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../../functions/index';
import { readHouse } from '../../../src/core/house/house';
import { fromUnit, inches, toUnit, UNITS, type Length } from '../../../src/core/exact/length';
import { ratio } from '../../../src/core/exact/ratio';
import {
  clothWeight,
  cutsOf,
  railroaded,
  turnedYardage,
  yardage,
  type Covered,
} from '../../../src/core/cloth/yardage';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;
const yards = (length: Length): number => toUnit(length, 'yd');
const BARE: readonly Rule[] = [
  ['return', 0],
  ['overlap', 0],
  ['side hem', 0],
  ['seam', 0],
];

const window = (more: Partial<Covered> = {}): Covered => ({
  rodWidth: inches(104),
  finishedDrop: inches(96),
  heading: 'pinch',
  draw: 'pair',
  fabricWidth: inches(54),
  fullness: ratio(2.5),
  quantity: undefined,
  ...more,
});
const codes = (worked: { findings: readonly { code: string }[] }): readonly string[] =>
  worked.findings.map(({ code }) => code);

describe('yardage of a cloth that shrinks', () => {
  it('is exactly a step where its cuts together are: 7 × (255.5 ÷ 0.98 + 35) cm is 20.70 m', () => {
    const metric = rulesOf(
      ['unit', 'centimetres'],
      ['shrinkage', 0.02],
      ['top allowance pinch', 20],
      ['bottom allowance', 15],
      ['return', 0],
      ['side hem', 0],
      ['seam', 0],
    );
    const covered = window({
      finishedDrop: fromUnit(255.5, 'cm'),
      draw: 'one-way left',
      // 7 widths of 137 cm at a fullness of 2.
      rodWidth: fromUnit(479.5, 'cm'),
      fabricWidth: fromUnit(137, 'cm'),
      fullness: ratio(2),
    });
    expect(yardage(covered, metric).value).toBe(fromUnit(20.7, 'm'));
    expect(yardage({ ...covered, quantity: 12 }, metric).value).toBe(fromUnit(248.4, 'm'));
  });

  it('is what exact fractions say, over drops by the tape and the millimetre', () => {
    const drop = fc.oneof(
      fc.integer({ min: 20 * 64, max: 160 * 64 }).map((parts) => parts * (UNITS.in / 64)),
      fc.integer({ min: 500, max: 4000 }).map((parts) => parts * UNITS.mm),
      // Multiples of what is kept, so that many cuts come to a step exactly.
      fc.integer({ min: 1, max: 8 }).map((parts) => parts * 49 * UNITS.cm),
    );
    const share = fc.constantFrom(0.01, 0.015, 0.02, 0.025, 0.03, 0.04, 0.05);
    const counts = fc.record({
      widths: fc.integer({ min: 1, max: 12 }),
      windows: fc.integer({ min: 1, max: 20 }),
    });
    fc.assert(
      fc.property(drop, share, counts, fc.boolean(), (hangs, shrinks, { widths, windows }, metric) => {
        const rules = rulesOf(
          ['unit', metric ? 'centimetres' : 'inches'],
          ['shrinkage', shrinks],
          ['top allowance pinch', metric ? 20 : 8],
          ['bottom allowance', metric ? 15 : 8],
          ['return', 0],
          ['side hem', 0],
          ['seam', 0],
        );
        const covered = window({
          finishedDrop: hangs as Length,
          draw: 'one-way left',
          rodWidth: inches(54 * widths),
          fullness: ratio(1),
          quantity: windows,
        });
        const allowances = metric ? 35 * UNITS.cm : 16 * UNITS.in;
        const step = metric ? UNITS.m / 10 : UNITS.yd / 8;
        const cut = new Fraction(hangs).div(new Fraction(1).sub(shrinks)).add(allowances);
        const steps = cut
          .mul(widths * windows)
          .div(step)
          .ceil();
        expect(yardage(covered, rules).value).toBe(steps.mul(step).valueOf());
      }),
      { numRuns: 500 },
    );
  });
});

describe('yardage', () => {
  it('is widths × cut ÷ 36, up to the house’s step', () => {
    expect(yards(yardage(window(), rulesOf()).value)).toBe(18.75);
    expect(
      [0.25, 0.5, 1].map((step) => yards(yardage(window(), rulesOf(['yardage step', step])).value)),
    ).toEqual([18.75, 19, 19]);
    expect(yards(yardage(window(), rulesOf(['yardage step', 0])).value)).toBeCloseTo(56 / 3, 12);
  });

  it('is rounded once over the order, or window by window', () => {
    expect(yards(yardage(window({ quantity: 46 }), rulesOf()).value)).toBe(858.75);
    expect(yards(yardage(window({ quantity: 46 }), rulesOf(['yardage rounded by', 'window'])).value)).toBe(
      46 * 18.75,
    );
  });

  it('of no windows is nothing', () => {
    expect(yardage(window({ quantity: 0 }), rulesOf()).value).toBe(0);
  });

  it('is not an eighth more for a float: 11.1 m thrice is 33.3', () => {
    const { rules } = readHouse([
      ['unit', 'cm'],
      ['top allowance pinch', 0],
      ['bottom allowance', 0],
      ...BARE,
    ]);
    const covered = window({
      rodWidth: 2_800_000_000 as Length,
      finishedDrop: 2_775_000_000 as Length,
      fabricWidth: 1_400_000_000 as Length,
      fullness: ratio(2),
      quantity: 3,
    });
    expect(toUnit(yardage(covered, rules).value, 'm')).toBe(33.3);
  });

  it('buys half widths whole, unless windows may share them', () => {
    const half: Rule = ['widths rounding', 'half per panel'];
    expect(cutsOf(2.5, 3, rulesOf(half))).toBe(9);
    expect(cutsOf(2.5, 3, rulesOf(half, ['share half widths', 'yes']))).toBe(8);
    // Where each window's cloth is bought by itself there is no other to share with.
    const byWindow: Rule = ['yardage rounded by', 'window'];
    expect(cutsOf(2.5, 3, rulesOf(half, ['share half widths', 'yes'], byWindow))).toBe(9);
  });

  it('tells where turning the cloth or a slightly narrower rod would save', () => {
    expect(codes(yardage(window({ fabricWidth: inches(118) }), rulesOf()))).toContain('turningSaves');
    expect(codes(yardage(window(), rulesOf(['widths rounding', 'whole per panel'])))).toEqual([]);
    const narrow = yardage(window({ rodWidth: inches(110), draw: 'stationary cover' }), rulesOf(...BARE));
    expect(narrow.findings.map(({ sentence }) => sentence)).toContain(
      'A rod 2 in narrower, or a fullness of 2.45, would need 5 widths, 1 fewer, and save 3 1/8 yd.',
    );
  });

  it('of a half-drop without a repeat is taken as plain, and says so', () => {
    expect(codes(yardage(window({ match: 'half-drop' }), rulesOf()))).toContain('matchWithoutRepeat');
  });
});

describe('railroaded', () => {
  it('runs the flat width along the bolt, hems in it and no seams', () => {
    // 2 × (55½ × 2.5 + 6) = 289½ in are 8.04 yd.
    expect(yards(railroaded(window({ fabricWidth: inches(118) }), rulesOf()).value)).toBe(8.125);
  });

  it('fits a cut as long as the cloth is wide, and not a nanometre more', () => {
    expect(turnedYardage(window({ fabricWidth: inches(112) }), rulesOf())).toBeDefined();
    expect(turnedYardage(window({ fabricWidth: (inches(112) - 1) as Length }), rulesOf())).toBeUndefined();
    expect(() => railroaded(window(), rulesOf())).toThrow(/58 in short/);
  });

  it('needs no bottom allowance where the mill has finished the edge: a drop of 105 fits 118', () => {
    const fits = window({ fabricWidth: inches(118), finishedDrop: inches(105) });
    // 105 + 8 = 113; hemmed it would be 121.
    expect(turnedYardage(fits, rulesOf())).toBeUndefined();
    expect(turnedYardage(fits, rulesOf(['bottom edge', 'finished']))).toBeDefined();
    const tall = window({ fabricWidth: inches(118), finishedDrop: inches(110.125) });
    expect(turnedYardage(tall, rulesOf(['bottom edge', 'finished']))).toBeUndefined();
  });

  it('runs its shrinkage along the flat width, and rounds a panel once', () => {
    const covered = window({
      fabricWidth: inches(118),
      draw: 'stationary cover',
      rodWidth: 1_000_000_001 as Length,
      fullness: ratio(1.5),
    });
    // (1,000,000,001 × 1.5) ÷ 0.96 = 1,562,500,001.56 nm; rounded up before it would be 1,562,500,002.08.
    expect(turnedYardage(covered, rulesOf(...BARE, ['shrinkage', 0.04], ['yardage step', 0]))).toBe(
      1_562_500_001,
    );
  });

  it('makes no side hem longer for its shrinkage, as no allowance of a drop', () => {
    // A panel is 138¾ ÷ 0.96 + 6 = 150.53125; two are 8.363 yd. Of 144¾ ÷ 0.96 they would be 8.377.
    const covered = window({ fabricWidth: inches(118) });
    expect(yards(railroaded(covered, rulesOf(['shrinkage', 0.04])).value)).toBe(8.375);
  });

  it('keeps the vertical repeat along the bolt: panels begin at the same figure', () => {
    const covered = window({ fabricWidth: inches(118), verticalRepeat: inches(25) });
    // 144¾ goes up to 150; two are 8⅓ yd.
    expect(yards(railroaded(covered, rulesOf()).value)).toBe(8.375);
  });

  it('warns of pile and one-way patterns, and tells where the other way is cheaper', () => {
    expect(codes(railroaded(window({ fabricWidth: inches(118) }), rulesOf()))).toEqual(['mayNotTurn']);
    const short = window({ fabricWidth: inches(118), finishedDrop: inches(8), rodWidth: inches(60) });
    expect(codes(railroaded(short, rulesOf()))).toContain('uprightSaves');
  });
});

describe('the weight of the cloth', () => {
  it('is pounds from oz/yd², kilograms from g/m²', () => {
    expect(clothWeight({ ...window(), arealWeight: 12 }, rulesOf()).value).toBe(21);
    const { rules } = readHouse([
      ['unit', 'cm'],
      ...BARE,
      ['top allowance pinch', 0],
      ['bottom allowance', 0],
    ]);
    const covered = window({
      rodWidth: 1_000_000_000 as Length,
      finishedDrop: 1_000_000_000 as Length,
      fabricWidth: 1_000_000_000 as Length,
      fullness: ratio(1),
      draw: 'stationary cover',
    });
    expect(clothWeight({ ...covered, arealWeight: 300 }, rules).value).toBe(0.3);
  });

  it('is of one window, whatever the quantity', () => {
    expect(clothWeight({ ...window({ quantity: 9 }), arealWeight: 12 }, rulesOf()).value).toBe(21);
  });
});

describe('no windows', () => {
  it.each([
    ['YARDAGE', [104, 96, 'pinch', 54, null, 0]],
    ['LINING', [104, 96, 'pinch', 54, 0]],
    ['RAILROADED', [104, 96, 'pinch', 118, '0']],
  ])('are never 0 yards in silence: %s says what to write', (name, inputs) => {
    expect(functionNamed(name)?.call(inputs)).toMatchObject({
      error: '#VALUE!',
      finding: {
        code: 'noWindowGiven',
        sentence: expect.stringMatching(
          /^quantity reads 0, which is no window\. Write 1 or more\..*IF\(D7="","",D7\)/,
        ),
      },
    });
  });
});
