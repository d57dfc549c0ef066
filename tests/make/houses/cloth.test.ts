import { describe, expect, it } from 'vitest';
import { dropOf, finishedWidthOf, fitsTurned, widthsOf, yardageOf } from '../../../src/make/houses/cloth';
import { exact, ONE } from '../../../src/make/houses/exact';
import type { House } from '../../../src/make/houses/house';
import type { Line } from '../../../src/make/houses/line';
import { PLAIN } from './plain-house';

describe('the finished drop (common practice, no source)', () => {
  it.each([
    ['pinch', 'new rod', '94'],
    ['pinch', 'hung ring', '95.5'],
    ['grommet', 'new rod', '98'],
    ['grommet', 'hung rod', '97.5'],
  ])('of %s measured 96 in to the %s is %s in', (heading, point, drop) => {
    const line: Line = { heading, 'measured height': exact(96), 'measured to': point };
    expect(dropOf(line, PLAIN).toString()).toBe(drop);
  });
});

describe('the finished width of a panel (common practice, no source)', () => {
  const track: House = { ...PLAIN, return: 3.5, overlap: 3, hangOn: 'track' };
  const line: Line = { heading: 'pinch', draw: 'pair', 'rod width': exact(96) };
  const widthOf = (other: Line, house: House = track): string =>
    finishedWidthOf({ ...line, ...other }, house).toString();

  it('of a pair has one return, and the overlap where leading carriers cross', () => {
    expect(widthOf({})).toBe('54.5');
    expect(widthOf({ heading: 'grommet' })).toBe('51.5');
    expect(widthOf({}, { ...track, hangOn: 'rings' })).toBe('51.5');
  });

  it('of a one-way panel has the house’s returns and no overlap', () => {
    expect(widthOf({ draw: 'one-way left' })).toBe('103');
    expect(widthOf({ draw: 'one-way left' }, { ...track, oneWayReturns: 'one end' })).toBe('99.5');
  });
});

it('counts seams again as the widths go up, and takes a half where the house does', () => {
  // 64 × 2½ = 160 in; with seams of 2, three widths of 54 bring 162 − 4 = 158: a half more, or one more.
  const line: Line = { heading: 'pinch', draw: 'one-way left', 'rod width': exact(64) };
  expect(widthsOf(line, { ...PLAIN, seam: 2 }).toString()).toBe('4');
  expect(widthsOf(line, { ...PLAIN, seam: 2, rounding: 'half per panel' }).toString()).toBe('3.5');
  expect(widthsOf(line, PLAIN).toString()).toBe('3');
});

it('turns cloth only where the cut fits its usable width, and then without seams', () => {
  const house: House = { ...PLAIN, top: { pinch: 8 }, bottom: 8, sideHem: 3 };
  const line: Line = {
    heading: 'pinch',
    draw: 'one-way left',
    railroaded: 'yes',
    'rod width': exact(60),
    'fabric width': exact(118),
    'finished drop': exact(102),
  };
  expect(fitsTurned(line, house)).toBe(true);
  expect(fitsTurned({ ...line, 'finished drop': exact('102.5') }, house)).toBe(false);
  // 150 + 6 = 156 in = 4⅓ yd, up to the eighth.
  expect(yardageOf(line, house, ONE).toString()).toBe('4.375');
});
