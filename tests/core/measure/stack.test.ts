import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HEADINGS, type Draw, type Heading, type Lining } from '../../../src/core/cell/treatment';
import { writeStep } from '../../../src/core/cell/steps';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { readHouse } from '../../../src/core/house/house';
import { clearExtension, stack, stackOverGlass } from '../../../src/core/measure/stack';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;

describe('the stack', () => {
  const stackOf = (heading: Heading, draw?: Draw, lining?: Lining) =>
    stack({ rodWidth: inches(100), heading, draw, lining }, rulesOf());

  it('is a share of the rod on each side, more where lined', () => {
    expect(toUnit(stackOf('pinch').value, 'in')).toBe(16.5);
    expect(toUnit(stackOf('pinch', 'one-way left').value, 'in')).toBe(33);
    expect(toUnit(stackOf('grommet', 'one-way left', 'lined').value, 'in')).toBe(27.5);
    expect(toUnit(stackOf('grommet', 'one-way left', 'blackout').value, 'in')).toBe(27.5);
    expect(toUnit(stackOf('grommet', 'one-way left', 'interlined').value, 'in')).toBe(31.25);
  });

  it('of a stationary panel is none, and of a pocket only a guide', () => {
    expect(() => stackOf('pinch', 'stationary cover')).toThrow(/not drawn back/);
    expect(stackOf('rod pocket').findings.map(({ code }) => code)).toEqual(['pocketIsNotDrawn']);
  });
});

describe('the extension that clears the stack', () => {
  const clear = (opening: number, heading: Heading, draw?: Draw, lining?: Lining): number =>
    toUnit(clearExtension(inches(opening), { heading, draw, lining }, rulesOf()).value, 'in');

  it('of a pinch pair over 96 in is 23.64: a stack of 0.165 of the rod, 96 × 0.165 ÷ 0.67', () => {
    expect(clear(96, 'pinch')).toBeCloseTo(23.6418, 4);
    // A sixth of the window, as a stacking guide prints it, would be 16.
    expect(clear(96, 'pinch')).toBeGreaterThan(16);
  });

  it('counts the lining, and one stack for both sides of a one-way draw', () => {
    // 0.25 × 1.1 = 0.275 of the rod: 60 × 0.275 ÷ 0.45.
    expect(clear(60, 'grommet', 'one-way left', 'lined')).toBeCloseTo(36.6667, 4);
  });

  it('is no less than the stack of its rod, and nothing less would be', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 12 * 64, max: 300 * 64 }),
        fc.constantFrom(...HEADINGS.list.map(({ word }) => word)),
        fc.constantFrom<Draw>('pair', 'one-way left', 'one-way right'),
        fc.constantFrom<Lining>('unlined', 'lined', 'interlined', 'blackout'),
        (sixtyFourths, heading, draw, lining) => {
          fc.pre(!(draw !== 'pair' && (heading === 'rod pocket' || heading === 'tab top')));
          const opening = inches(sixtyFourths / 64);
          const e = clearExtension(opening, { heading, draw, lining }, rulesOf()).value;
          const over = (extension: number): number =>
            stack({ rodWidth: (opening + 2 * extension) as Length, heading, draw, lining }, rulesOf()).value -
            extension;
          // The stack itself goes up to whole nanometres, thrice.
          expect(over(e)).toBeLessThanOrEqual(3);
          expect(over(e - 100)).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('has no answer where the stack takes half the rod, or where nothing is drawn', () => {
    expect(() => clear(60, 'rod pocket', 'one-way left')).toThrow(
      'The stack (rod pocket, one-way left, unlined) takes half the rod or more: no side extension clears it.',
    );
    expect(() => clear(60, 'pinch', 'stationary')).toThrow(/not drawn back/);
  });
});

describe('a stack over the glass', () => {
  it('is told by how much, and not where it clears', () => {
    const rod = { heading: 'pinch', draw: undefined, lining: undefined, rodWidth: inches(118) } as const;
    // 59 × 0.33 = 19.47.
    expect(stackOverGlass(rod, inches(11), rulesOf()).map((one) => writeStep(one, INCHES))).toEqual([
      'over the glass when drawn back (pinch, pair, unlined): 19.47 in stack − 11 in extension = 8.47 in',
    ]);
    expect(stackOverGlass(rod, inches(20), rulesOf())).toEqual([]);
    expect(stackOverGlass({ ...rod, draw: 'stationary' }, inches(0), rulesOf())).toEqual([]);
  });
});
