import { expect, it } from 'vitest';
import type { RowMistake, Truth } from '../../../src/make/houses/past-orders';
import { score } from '../../../src/make/houses/score';

const slip = (kind: string, changes = true): RowMistake => ({
  kind,
  column: 'C',
  touches: ['C', 'D'],
  changes,
});
const TRUTH: Truth = {
  columns: {},
  rows: [
    { row: 2, is: 'window', mistake: slip('a width short') },
    { row: 3, is: 'window', mistake: slip('a width short') },
    { row: 4, is: 'window', mistake: slip('odd grommets') },
    { row: 5, is: 'window', mistake: slip('odd grommets', false) },
    { row: 6, is: 'window' },
    { row: 7, is: 'window' },
    { row: 8, is: 'window', explained: 'extra width, client’s wish' },
    { row: 9, is: 'total' },
  ],
};

it('counts what is found by kind, the place, and the honest rows flagged', () => {
  const told = score(
    [
      { row: 2, column: 'D' },
      { row: 2, column: 'E' },
      { row: 4, column: 'F' },
      { row: 5, column: 'C' },
      { row: 7, column: null },
      { row: 8, column: 'C' },
      { row: 9, column: 'C' },
    ],
    TRUTH,
  );
  expect(told.kinds).toEqual([
    { kind: 'a width short', planted: 2, found: 1, placed: 1 },
    { kind: 'odd grommets', planted: 1, found: 1, placed: 0 },
  ]);
  expect(told).toMatchObject({ planted: 3, found: 2, placed: 1, honest: 2, flagged: 1, elsewhere: 1 });
  expect(told).toMatchObject({ explained: 1, explainedFlagged: 1, flaggedShare: 0.5 });
  expect(told.recall).toBeCloseTo(2 / 3);
});

it('finds nothing where nothing is said', () => {
  expect(score([], TRUTH)).toMatchObject({ found: 0, flagged: 0, recall: 0, flaggedShare: 0 });
});
