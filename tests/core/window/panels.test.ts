import { describe, expect, it } from 'vitest';
import { inches, toUnit } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import type { Rules } from '../../../src/core/house/rules';
import { windowUnder } from './ordered';
import { WindowWork } from '../../../src/core/window/job';
import { making, turnedMaking, type PanelMade } from '../../../src/core/window/panels';

const workOf = (given: Readonly<Record<string, unknown>>, rules: Partial<Rules> = {}) =>
  new WindowWork(windowUnder(Object.keys(given), Object.values(given), INCHES).window, {
    ...DEFAULT_RULES,
    ...rules,
  });
const sewn = ({ widths }: PanelMade): readonly string[] =>
  widths.map(({ cut, half }) => `${cut.number}${cut.start ?? ''}${half === undefined ? '' : ` ${half}`}`);
const lengths = (made: ReturnType<typeof making>): readonly number[] =>
  made.cuts.map(({ length }) => toUnit(length, 'in'));

/** Drop 96 + 8 + 8 = 112; fullness 3 on 101 in takes six widths. */
const SIX = {
  'rod width': 94,
  'finished drop': 96,
  heading: 'pinch',
  'fabric width': 54,
  fullness: 3,
  'vertical repeat': 20,
};

describe('a row’s cuts and panels', () => {
  it('cuts a half-drop by what follows: cut 112, repeat 20, A-B-A twice', () => {
    // By hand: 120 to a like start, 130 to the other, so all four A’s, half a repeat down, then both B’s.
    const made = making(workOf({ ...SIX, match: 'half-drop' }));
    expect(lengths(made)).toEqual([120, 120, 120, 130, 120, 120]);
    expect(made.cuts.map(({ start }) => start).join('')).toBe('AAAABB');
    expect(made.panels.map(sewn)).toEqual([
      ['1A', '5B', '2A'],
      ['3A', '6B', '4A'],
    ]);
  });

  it('gives the left half of a split width to the right panel', () => {
    const made = making(workOf({ ...SIX, fullness: 2.5 }));
    expect(made.panels.map(sewn)).toEqual([
      ['1', '2', '5 right'],
      ['3', '4', '5 left'],
    ]);
    expect(made.leftOver).toEqual([]);
  });

  it('runs a half-drop on through the window where the house does so', () => {
    const made = making(workOf({ ...SIX, fullness: 2.5, match: 'half-drop' }, { halfDropStarts: 'run on' }));
    const letters = made.panels.map(({ widths }) => widths.map(({ cut }) => cut.start));
    // From the window’s left: half A, then B A | B A, and half B out of the same, longer cut.
    expect(letters[0]?.slice(0, 2)).toEqual(['A', 'B']);
    expect(letters[1]?.slice(0, 2)).toEqual(['B', 'A']);
    expect(made.cuts).toHaveLength(5);
    expect(new Set(made.panels.map(({ widths }) => widths[2]?.cut.number)).size).toBe(1);
  });

  it('leaves half a cut over where nobody takes it', () => {
    const given = {
      'rod width': 50,
      'finished drop': 96,
      heading: 'pinch',
      'fabric width': 54,
      draw: 'one-way left',
    };
    const made = making(workOf(given, { widthsRounding: 'half per panel' }));
    expect(made.panels).toHaveLength(1);
    const [panel] = made.panels;
    const half = panel?.widths.at(-1)?.half;
    expect([half, made.leftOver.length]).toEqual(half === undefined ? [undefined, 0] : ['right', 1]);
  });

  it('uses every cut of every window, once for each width that it gives', () => {
    for (const quantity of [1, 2, 3])
      for (const fullness of [2, 2.5, 3])
        for (const match of ['straight', 'half-drop'])
          for (const rounded of ['line', 'window'] as const)
            for (const starts of ['run on', 'each panel alike'] as const) {
              const work = workOf(
                { ...SIX, fullness, match, quantity },
                { yardageRoundedBy: rounded, halfDropStarts: starts },
              );
              const made = making(work);
              const used = made.panels.flatMap(({ widths }) => widths);
              const halves = used.filter(({ half }) => half !== undefined).length;
              expect(used.length - halves + halves / 2).toBe(work.widths() * quantity);
              expect(new Set(used.map(({ cut }) => cut.number)).size).toBe(made.cuts.length);
              const cloth = made.cuts.reduce((sum, { length }) => sum + length, 0);
              expect(cloth).toBeLessThanOrEqual(work.cloth().yardageOfCuts);
              const flat = made.panels
                .filter(({ window }) => window === 1)
                .flatMap(({ widths }) => widths)
                .reduce((sum, one) => sum + one.flat, 0);
              expect(Math.abs(flat - work.cloth().work.flat)).toBeLessThanOrEqual(1);
            }
  });

  it('cuts a turned cloth by the panel', () => {
    const wide = { ...SIX, 'fabric width': 118, 'vertical repeat': 0 };
    const made = turnedMaking(workOf(wide));
    expect(made?.panels.map(sewn)).toEqual([['1'], ['2']]);
    // Flat 3 × 50 1/2 = 151 1/2, and two hems of 3.
    expect(made?.cuts[0]?.length).toBe(inches(157.5));
    expect(turnedMaking(workOf(SIX))).toBeUndefined();
  });
});
