import { expect, it } from 'vitest';
import { PRICE_FINDINGS as TABLE } from '../../../src/core/findings/price';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE)).toEqual([]);
});

it('a mock-up of every window says whether there is one or more', () => {
  expect(TABLE.mockUpIsAll.says(1)).toMatch(/takes the only window, /);
  expect(TABLE.mockUpIsAll.says(4)).toMatch(/takes all 4 windows, /);
});
