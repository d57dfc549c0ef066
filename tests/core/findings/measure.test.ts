import { expect, it } from 'vitest';
import { MEASURE_FINDINGS as TABLE } from '../../../src/core/findings/measure';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE)).toEqual([]);
});

it('the shortest reading of an uneven floor rules, and the sentence says so', () => {
  expect(TABLE.floorUneven.says('1 in', '95 in')).toBe(
    'The floor readings differ by 1 in; the shortest, 95 in, rules. Check them, or have the hem set to the floor on site.',
  );
});

/** Where work can hurt, a clearance is the maker's and local code decides: no figure of ours stands there. */
it('over a radiator no figure is given', () => {
  expect(TABLE.nearHeat.says()).not.toMatch(/\d/);
  expect(TABLE.nearHeat.says()).toMatch(/local codes and licensed practice decide/);
});
