import { expect, it } from 'vitest';
import { inches } from '../../../src/core/exact/length';
import { CLOTH_RULES as RULES } from '../../../src/core/house/cloth';
import { ownOnes, readBack } from './read-back';

it('every default is read from a cell as it is written there', () => {
  expect(readBack(RULES)).toBeGreaterThan(60);
});

/** UFGS 12 22 00 (2010): a pair overlaps by at least 3 in; each leading edge carries its own part of it. */
it('a pair on a track covers its centre by no less than the published 3 in', () => {
  expect(2 * Number(RULES.overlap.standard)).toBeGreaterThanOrEqual(inches(3));
  expect(RULES.overlapOnRings.standard).toBe(0);
});

it('the projection of a rod is asked for, never assumed', () => {
  expect(ownOnes(RULES)).toContain('rodProjection');
});
