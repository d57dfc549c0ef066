import { describe, expect, it } from 'vitest';
import { rings } from '../../../src/core/heading/rings';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { inches } from '../../../src/core/exact/length';
import { HEADINGS, type Heading } from '../../../src/core/cell/treatment';

describe('rings or carriers', () => {
  const ringsOf = (heading: Heading): number =>
    rings(
      {
        rodWidth: inches(105),
        widths: 6,
        heading,
        draw: undefined,
        overlap: inches(3),
        fabricWidth: inches(54),
      },
      DEFAULT_RULES,
    ).value;

  it('are the pleats and two ends of each panel, and none where the rod runs through', () => {
    expect(ringsOf('pinch')).toBe(2 * (15 + 2));
    expect([ringsOf('grommet'), ringsOf('rod pocket'), ringsOf('tab top')]).toEqual([0, 0, 0]);
  });

  it('are worked out for every heading', () => {
    for (const { word } of HEADINGS.list) expect(Number.isInteger(ringsOf(word)), word).toBe(true);
    expect(ringsOf('pencil')).toBe(2 * (Math.ceil(59 / 3) + 1));
    expect(ringsOf('flat')).toBe(2 * (Math.ceil(59 / 6) + 1));
  });
});
