import { expect, it } from 'vitest';
import { READING_FINDINGS as TABLE } from '../../../src/core/findings/reading';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE).filter((one) => !/^(tableAssumes|columnNotTold):/.test(one))).toEqual([]);
});

it('what a table leaves out is said with what is assumed there', () => {
  expect(TABLE.tableAssumes.says('draw', 1)).toBe('One row says nothing of draw: a pair is assumed there.');
  expect(TABLE.tableAssumes.says('quantity', 3)).toBe(
    '3 rows say nothing of quantity: one window is assumed there.',
  );
});
