import { describe, expect, it } from 'vitest';
import { exact } from '../../../src/make/houses/exact';
import type { Line } from '../../../src/make/houses/line';
import { liningWidthsOf, liningYardageOf } from '../../../src/make/houses/lining';
import { PLAIN } from './plain-house';

const LINED: Line = {
  heading: 'pinch',
  draw: 'pair',
  lining: 'lined',
  'rod width': exact(96),
  'finished drop': exact(96),
  'fabric width': exact(54),
  'vertical repeat': exact(27),
};

/** Rules of common practice, no source; figures worked by hand. */
describe('the lining', () => {
  it('has as many widths as a face of its own width, halves too', () => {
    // 48 × 2½ = 120 in a panel: 2½ × 54 = 135.
    const halves = { ...PLAIN, rounding: 'whole per pair' } as const;
    expect(liningWidthsOf(LINED, halves)?.toString()).toBe('5');
  });

  it('takes no repeat: 6 × 96 in is 16 yd', () => {
    expect(liningYardageOf(LINED, PLAIN)?.toString()).toBe('16');
  });

  it('of another width covers the cloth delivered, not what was asked: 162 in by 48 is 4 a panel', () => {
    const house = { ...PLAIN, lining: { ...PLAIN.lining, width: 48 } };
    expect(liningWidthsOf(LINED, house)?.toString()).toBe('8');
  });

  it('is left open where margins off or on decide the count', () => {
    // 162 in delivered is three of 54 exactly; with hems of 3 on it four of 55, with margins off three.
    const lining = { ...PLAIN.lining, width: 55, marginLeading: 2, marginOuter: 1 };
    expect(liningWidthsOf(LINED, { ...PLAIN, sideHem: 3, lining })).toBeUndefined();
  });

  it('cut shorter than the face by a rule is left open where the face has a repeat', () => {
    const house = { ...PLAIN, lining: { ...PLAIN.lining, cut: 'less than face', less: 10 } } as const;
    expect(liningYardageOf(LINED, house)).toBeUndefined();
    // Six cuts of 96 − 10 in are 516 in: 14⅓ yd, up to the eighth.
    const plainCloth = { ...LINED, 'vertical repeat': undefined };
    expect(liningYardageOf(plainCloth, house)?.toString()).toBe('14.375');
  });

  it('is none where the cloth is turned or unlined', () => {
    expect(liningYardageOf({ ...LINED, railroaded: 'yes' }, PLAIN)).toBeUndefined();
    expect(liningYardageOf({ ...LINED, lining: 'unlined' }, PLAIN)).toBeUndefined();
  });
});
