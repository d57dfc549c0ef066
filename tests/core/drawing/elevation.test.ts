import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/core/cell/answer';
import { windowUnder } from '../window/ordered';
import type { Drawing } from '../../../src/core/drawing/drawing';
import { elevation } from '../../../src/core/drawing/elevation';
import { WindowWork } from '../../../src/core/window/job';
import { inches, toUnit } from '../../../src/core/exact/length';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';

const drawn = (given: Readonly<Record<string, unknown>>): Drawing => {
  const { window } = windowUnder(Object.keys(given), Object.values(given), INCHES);
  return elevation(new WindowWork(window, DEFAULT_RULES));
};
const PAIR = { 'inside width': 72, 'measured height': 98, heading: 'pinch', 'fabric width': 54 };
const dimensions = (drawing: Drawing): Readonly<Record<string, number>> =>
  Object.fromEntries(drawing.dimensions.map((one) => [one.what, toUnit(one.length, 'in')]));

describe('the elevation', () => {
  it('dimensions what was measured and what follows: 11 + 72 + 11 = 94, 98 − 2 = 96', () => {
    // A stack is a third of the rod’s half, by the default house rule: 47 × 0.33.
    expect(dimensions(drawn(PAIR))).toEqual({
      'left extension': 11,
      opening: 72,
      'right extension': 11,
      'rod width': 94,
      'finished drop': 96,
      'floor to rod': 98,
      'clear of the floor': 0.5,
      return: 3.5,
      stack: 15.51,
    });
  });

  it('is to scale: every dimension is as long as the figure it shows', () => {
    for (const { length, from, to, what } of drawn(PAIR).dimensions)
      expect([what, to - from]).toEqual([what, length]);
  });

  it('stands the opening where the extensions leave it', () => {
    const { boxes } = drawn({ ...PAIR, 'left extension': 14, 'right extension': 11 });
    expect(boxes.find((box) => box.part === 'opening')).toMatchObject({ x: inches(14), width: inches(72) });
  });

  it('draws two panels for a pair, one for a one-way draw, and stacks them where they are drawn to', () => {
    const parts = (draw: string, part: string) =>
      drawn({ ...PAIR, draw }).boxes.filter((box) => box.part === part);
    expect(parts('pair', 'cloth').map((box) => toUnit(box.width, 'in'))).toEqual([47, 47]);
    expect(parts('one-way left', 'cloth').map((box) => toUnit(box.width, 'in'))).toEqual([94]);
    expect(parts('one-way left', 'stack').map((box) => box.x)).toEqual([0]);
    expect(parts('one-way right', 'stack').map((box) => box.x + box.width)).toEqual([inches(94)]);
    expect(parts('stationary cover', 'stack')).toEqual([]);
  });

  it('puts the half width of a panel at its return edge', () => {
    // (52 + 3 1/2) × 2 a panel, 111 and 6 of hems: five widths for the pair, 2 1/2 in 52 in closed each.
    const given = { 'rod width': 104, 'measured height': 98, heading: 'grommet', 'fabric width': 54 };
    const seams = drawn(given).lines.flatMap(({ part, from }) =>
      part === 'seam' ? [Math.round(toUnit(from[0], 'in') * 10) / 10] : [],
    );
    // A half is 10.4 in wide: from the left wall to its seam, and from the right one's to the wall.
    expect(seams.sort((one, other) => one - other)).toEqual([10.4, 31.2, 72.8, 93.6]);
  });

  it('stands on the sill where the drop is measured from it, and passes it over an apron', () => {
    const {
      dimensions: over,
      bottom,
      notes,
    } = drawn({ ...PAIR, 'measured height': 60, 'floor finish': 'apron' });
    expect(over.map(({ what }) => what)).toContain('sill to rod');
    expect(toUnit(bottom, 'in')).toBe(-4);
    expect(notes.join(' ')).toContain('the sill, from which the heights are measured');
    expect(notes.join(' ')).not.toContain('lies on the floor');
    expect(dimensions(drawn({ ...PAIR, 'floor finish': 'sill' }))).toMatchObject({
      'clear of the sill': 0.5,
    });
  });

  it('lets cloth that is longer than it hangs lie on the floor, and says so', () => {
    const { boxes, notes } = drawn({ ...PAIR, 'floor finish': 'puddle' });
    expect(boxes.find((box) => box.part === 'cloth')?.y).toBe(0);
    expect(notes.join(' ')).toContain('lies on the floor');
  });

  it('puts the rod of a grommet heading below the cloth’s edge, and of rings above it', () => {
    const rodAbove = (heading: string): number => {
      const { boxes } = drawn({ ...PAIR, heading });
      const [cloth, rod] = ['cloth', 'rod'].map((part) => boxes.find((box) => box.part === part));
      return (rod?.y ?? NaN) - (cloth?.y ?? NaN) - (cloth?.height ?? NaN);
    };
    expect(rodAbove('pinch')).toBeGreaterThan(0);
    expect(rodAbove('grommet')).toBeLessThan(0);
  });

  it('refuses a window without a drop, naming what is missing', () => {
    expect(() => drawn({ 'inside width': 72, heading: 'pinch' })).toThrow(Refusal);
  });
});
