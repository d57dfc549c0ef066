/**
 * Which windows no count of pleats suits, told without the core: every rod from 30 to 240 in, three
 * fullnesses, four roundings, a pair on a track and a one-way panel, in cloth of 54 in with side hems
 * of 3, seams of 1, returns of 3½ and an overlap of 3. Whole eighths of an inch throughout.
 */
import { describe, expect, it } from 'vitest';
import { pleats } from '../../../src/core/heading/pleats';
import { readHouse } from '../../../src/core/house/house';
import { exact, inches } from '../../../src/core/exact/length';

const EIGHTH = inches(0.125);
const WIDTH = 8 * 54;
const SEAM = 8;
const HEMS = 8 * 6;
const ROUNDINGS = ['whole per panel', 'half per panel', 'whole per pair', 'nearest'] as const;

interface Window {
  readonly rod: number;
  readonly panels: 1 | 2;
  readonly widths: number;
  readonly rounding: (typeof ROUNDINGS)[number];
}

/** Flat cloth of one panel. */
const flatOf = (widthsEach: number): number => widthsEach * WIDTH - (Math.ceil(widthsEach) - 1) * SEAM - HEMS;
const finishedOf = (rod: number, panels: 1 | 2): number =>
  panels === 2 ? rod / 2 + 8 * 3.5 + 8 * 3 : rod + 8 * 7;

function widthsFor(rod: number, panels: 1 | 2, twiceFullness: number, rounding: Window['rounding']): number {
  const by = rounding === 'whole per panel' ? panels : rounding === 'half per panel' ? panels / 2 : 1;
  const wanted = (panels * finishedOf(rod, panels) * twiceFullness) / 2;
  const enough = (widths: number): boolean => {
    const flat = panels * flatOf(widths / panels);
    return rounding === 'nearest' ? flat + WIDTH / 2 > wanted : flat >= wanted;
  };
  let widths = by;
  while (!enough(widths)) widths += by;
  return widths;
}

/** Whether some count has its spaces and its take-up within these, given in eighths. */
function someCountKeeps({ rod, panels, widths }: Window, space: number, most: number): boolean {
  const excess = flatOf(widths / panels) - finishedOf(rod, panels);
  for (let count = 2; count < 400; count++) {
    const spaced = rod / panels >= space * (count - 1) && rod / panels <= 40 * (count - 1);
    if (spaced && excess >= 32 * count && excess <= most * count) return true;
  }
  return false;
}

function* windows(): Generator<Window> {
  for (let rod = 30; rod <= 240; rod++)
    for (const twiceFullness of [4, 5, 6])
      for (const rounding of ROUNDINGS)
        for (const panels of [2, 1] as const)
          yield {
            rod: 8 * rod,
            panels,
            rounding,
            widths: widthsFor(8 * rod, panels, twiceFullness, rounding),
          };
}

describe('the bands of pleats', () => {
  it('give a note or a finding to exactly the windows that no count suits', () => {
    const counted = { windows: 0, noUsual: 0, none: 0 };
    for (const window of windows()) {
      const { rules } = readHouse([
        ['hang on', 'track'],
        ['overlap', 3],
        ['widths rounding', window.rounding],
      ]);
      const { findings } = pleats(
        {
          rodWidth: exact(window.rod * EIGHTH),
          widths: window.widths,
          heading: 'pinch',
          draw: window.panels === 2 ? 'pair' : 'one-way left',
          fabricWidth: inches(54),
        },
        rules,
      );
      const usual = someCountKeeps(window, 24, 64);
      const wider = someCountKeeps(window, 20, 72);
      const wanted = usual ? [] : [wider ? 'pleatsOutsideUsual' : 'noPleatsSuit'];
      expect(
        findings.map(({ code }) => code),
        JSON.stringify(window),
      ).toEqual(wanted);
      counted.windows++;
      if (!usual) counted.noUsual++;
      if (!wider) counted.none++;
    }
    // 5.9 % and 1.2 %.
    expect(counted).toEqual({ windows: 5064, noUsual: 301, none: 61 });
  });
});
