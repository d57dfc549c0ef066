import { describe, expect, it } from 'vitest';
import { headingMarks, headingsDrawn } from '../../../src/core/drawing/heading-marks';
import { toUnit } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { windowUnder } from '../window/ordered';
import { WindowWork } from '../../../src/core/window/job';
import { making } from '../../../src/core/window/panels';

const drawn = (given: Readonly<Record<string, unknown>>, at = 0) => {
  const window = windowUnder(Object.keys(given), Object.values(given), INCHES).window;
  const work = new WindowWork(window, DEFAULT_RULES);
  const panel = making(work).panels[at];
  if (panel === undefined) throw new Error('no such panel');
  return headingMarks(work, panel);
};
const PAIR = { 'rod width': 94, 'measured height': 98, heading: 'pinch', 'fabric width': 54, fullness: 3 };
const dimension = (drawing: ReturnType<typeof drawn>, what: string): number =>
  toUnit(drawing?.dimensions.find((one) => one.what === what)?.length ?? NaN, 'in');

describe('heading marks', () => {
  it('stand a space apart, the seams behind pleats: rod 94, three widths a panel on rings', () => {
    // By hand: 94 ÷ 2 = 47 between the leading edge and the return; 15 pleats leave 14 spaces of 47 ÷ 14.
    const left = drawn(PAIR);
    expect(left?.title).toContain('15 pleats');
    expect(dimension(left, 'space')).toBeCloseTo(47 / 14, 6);
    expect(dimension(left, 'return edge')).toBe(3.5);
    expect(dimension(left, 'finished width')).toBe(50.5);
    const pleats = left?.lines.filter(({ part }) => part === 'pleat').map(({ from }) => from[0]) ?? [];
    const seams = left?.lines.filter(({ part }) => part === 'seam').map(({ from }) => from[0]) ?? [];
    expect(seams).toHaveLength(2);
    for (const seam of seams) expect(pleats).toContain(seam);
  });

  it('lead to the middle of the window: the left panel’s edge is at its right', () => {
    const edgeOf = (at: number) =>
      drawn({ ...PAIR, overlap: 3, 'hang on': 'track' }, at)?.dimensions.find(
        ({ what }) => what === 'leading edge',
      );
    expect(toUnit(edgeOf(0)?.to ?? NaN, 'in')).toBe(53.5);
    expect(edgeOf(1)?.from).toBe(0);
  });

  it('measure a box pleat to the edges of its face', () => {
    const box = drawn({ ...PAIR, heading: 'box', overlap: 3, 'hang on': 'track' });
    const pleats = box?.boxes.filter(({ part }) => part === 'pleat') ?? [];
    const faces = pleats.length * 2;
    // By hand: between the overlap of 3 and the return of 3 1/2 lie 47 in of faces and spaces.
    expect(dimension(box, 'space')).toBeCloseTo((47 - faces) / (pleats.length - 1), 6);
    expect(dimension(box, 'leading edge')).toBe(3);
  });

  it('name each width by its cut and the half that it is', () => {
    const labels = drawn({ ...PAIR, fullness: 2.5 }, 1)?.labels.map(({ words }) => words);
    expect(labels).toContain('5, left half');
  });

  it('stand beside each other where both panels are narrow, each to the same scale', () => {
    const { window } = windowUnder(Object.keys(PAIR), Object.values(PAIR), INCHES);
    const work = new WindowWork(window, DEFAULT_RULES);
    const { panels } = making(work);
    const [both, ...others] = headingsDrawn(work, panels);
    expect(others).toEqual([]);
    const cloths = both?.boxes.filter(({ part }) => part === 'cloth') ?? [];
    expect(cloths.map(({ width }) => toUnit(width, 'in'))).toEqual([50.5, 50.5]);
    expect((cloths[1]?.x ?? 0) - (cloths[0]?.width ?? 0)).toBeGreaterThan(0);
    const finished = both?.dimensions.filter(({ what }) => what === 'finished width') ?? [];
    expect(finished.map(({ from, to }) => toUnit(to - from, 'in'))).toEqual([50.5, 50.5]);
    expect(finished[1]?.from).toBe(cloths[1]?.x);
  });

  it('are none where the heading has none', () => {
    expect(drawn({ ...PAIR, heading: 'rod pocket' })).toBeUndefined();
  });
});
