import { describe, expect, it } from 'vitest';
import { bandOf, bottomTrim, leadingTrim } from '../../../src/core/cloth/trims';
import { inches } from '../../../src/core/exact/length';

const RULES = { trimTurning: inches(1.5), seam: inches(1) };

describe('a trim', () => {
  it('of the leading edges is a drop and two turnings for each panel', () => {
    // 2 × (96 + 2 × 1½) in.
    expect(leadingTrim({ panels: 2, drop: inches(96), flat: 0 }, RULES)).toBe(inches(198));
    expect(leadingTrim({ panels: 1, drop: inches(96), flat: 0 }, RULES)).toBe(inches(99));
  });
  it('of the bottom is the flat cloth of all the panels, and two turnings for each', () => {
    // Two panels of 154 in flat: 308 + 2 × 2 × 1½ in.
    expect(bottomTrim({ panels: 2, drop: inches(96), flat: inches(308) }, RULES)).toBe(inches(314));
  });
});

describe('a band cut across the cloth', () => {
  const cloth = { fabricWidth: inches(54), cutWidth: inches(6) };
  it.each([
    // One strip of 54 in serves all of it.
    [54, 1],
    // Every strip gives a seam allowance to its neighbour: of 54 in, 52 go on.
    [55, 2],
    [106, 2],
    [107, 3],
  ])('%d in long takes %d strips', (long, strips) => {
    expect(bandOf(inches(long), cloth, RULES)).toEqual({ strips, cloth: inches(strips * 6) });
  });
});
