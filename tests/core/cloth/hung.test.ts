import { describe, expect, it } from 'vitest';
import { readHouse } from '../../../src/core/house/house';
import { writeStep } from '../../../src/core/cell/steps';
import { HEADINGS, type Draw, type Heading } from '../../../src/core/cell/treatment';
import { finishedWidth, type Hung } from '../../../src/core/cloth/hung';
import { inches, toUnit } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { ratio } from '../../../src/core/exact/ratio';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;
const TRACK: Rule = ['hang on', 'track'];
const hung = (more: Partial<Hung> = {}): Hung => ({
  rodWidth: inches(104),
  heading: 'pinch',
  draw: undefined,
  ...more,
});
const panel = (hung: Hung, ...rules: readonly Rule[]): number =>
  toUnit(finishedWidth(hung, rulesOf(...rules)).value, 'in');
const codes = (hung: Hung): readonly string[] =>
  finishedWidth(hung, rulesOf()).findings.map(({ code }) => code);

describe('the finished width of a panel of a pair', () => {
  it('is rod ÷ 2 + return + overlap where carriers cross on a track', () => {
    expect(panel(hung(), TRACK)).toBe(58.5);
    expect(panel(hung({ draw: 'pair' }), TRACK, ['overlap', 1.5])).toBe(57);
  });

  it('has no overlap on rings on a pole unless the house sets one', () => {
    expect(panel(hung())).toBe(55.5);
    expect(panel(hung(), ['overlap on rings', 2])).toBe(57.5);
  });

  it('has none where the rod runs through the cloth, whatever the house’s overlaps are', () => {
    for (const { word } of HEADINGS.list) {
      const heading = word as Heading;
      const through = ['grommet', 'rod pocket', 'tab top'].includes(heading);
      expect(panel(hung({ heading }), TRACK, ['overlap on rings', 2]), heading).toBe(through ? 55.5 : 58.5);
      const onRings = through ? 55.5 : heading === 'wave' ? 58.5 : 57.5;
      expect(panel(hung({ heading }), ['overlap on rings', 2]), heading).toBe(onRings);
    }
  });

  it('keeps an overlap that is given, and says where nothing carries it', () => {
    expect(panel(hung({ overlap: inches(3), heading: 'grommet' }))).toBe(58.5);
    expect(codes(hung({ overlap: inches(3), heading: 'grommet' }))).toEqual(['overlapOnTheRod']);
    expect(codes(hung({ overlap: inches(3) }))).toEqual([]);
  });

  it('turns to the wall by the rod’s projection and half an inch, where the house knows it', () => {
    expect(panel(hung(), ['rod projection', 4])).toBe(56.5);
    expect(panel(hung(), ['rod projection', 4], ['return past projection', 1])).toBe(57);
    expect(panel(hung({ return: inches(2) }), ['rod projection', 4])).toBe(54);
  });
});

describe('the finished width of one panel', () => {
  it('is the rod and its returns, as the house has them', () => {
    expect(panel(hung({ draw: 'one-way left' }))).toBe(111);
    expect(panel(hung({ draw: 'one-way right' }), ['one way returns', 'one end'])).toBe(107.5);
    expect(panel(hung({ draw: 'stationary cover' }), ['one way returns', 'one end'])).toBe(111);
  });

  it('leaves an overlap out, and says so', () => {
    const panels = hung({ draw: 'stationary cover', overlap: inches(3) });
    expect(codes(panels)).toEqual(['overlapUnused']);
    expect(panel(panels)).toBe(111);
  });

  it('counts its widths itself, and says so of widths each', () => {
    expect(codes(hung({ widthsEach: 2 }))).toEqual(['widthsEachUnused']);
  });
});

describe('the finished width of a side panel', () => {
  const side = (draw: Draw, more: Partial<Hung> = {}) =>
    hung({ draw, fabricWidth: inches(54), fullness: ratio(2.5), ...more });

  it('is its flat width ÷ fullness, with the return in it', () => {
    // 54 − 6 in hems = 48; ÷ 2.5 = 19.2. Two widths: 108 − 1 − 6 = 101; ÷ 2.5 = 40.4.
    expect(panel(side('stationary'))).toBe(19.2);
    expect(panel(side('one stationary panel'))).toBe(19.2);
    expect(panel(side('stationary', { widthsEach: 2 }))).toBe(40.4);
    expect(panel(side('stationary'), ['stationary widths', 2])).toBe(40.4);
  });

  it('with flat returns pleats only the rest', () => {
    // (48 − 3½) ÷ 2.5 + 3½ = 21.3.
    expect(panel(side('stationary'), ['fullness basis', 'rod width'])).toBe(21.3);
  });

  it('of no known cloth is of the house’s usual one, and says so', () => {
    const panels = hung({ draw: 'stationary' });
    expect(panel(panels)).toBe(19.2);
    expect(finishedWidth(panels, rulesOf()).steps.map((one) => writeStep(one, INCHES))).toEqual([
      'flat width of each side panel: 1 width of 54 in, the house’s usual fabric width, hems and seams off = 48 in',
      'finished width of each panel: 48 in ÷ 2.5 fullness, 3 1/2 in return in it = 19.2 in',
    ]);
  });

  it('that would meet the other is a check', () => {
    // Five widths each: 270 − 4 − 6 = 260; ÷ 2.5 = 104, less 3½: two cover 201 of 104.
    expect(codes(side('stationary', { widthsEach: 5 }))).toEqual(['sidePanelsMeet']);
    expect(codes(side('stationary', { widthsEach: 2 }))).toEqual([]);
    expect(codes(side('one stationary panel', { widthsEach: 5 }))).toEqual([]);
  });

  it('of less cloth than its hems is refused', () => {
    expect(() => panel(side('stationary', { fabricWidth: inches(12), widthsEach: 0.5 }))).toThrow(/widths/);
  });
});
