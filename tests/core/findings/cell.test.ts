import { expect, it } from 'vitest';
import { CELL_FINDINGS as TABLE } from '../../../src/core/findings/cell';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE)).toEqual([]);
});

it('one column is said in the singular', () => {
  expect(TABLE.rangeTooNarrow.says('rows', 'two columns', 1)).toMatch(/has 1 column\./);
  expect(TABLE.rangeTooNarrow.says('rows', 'three columns', 2)).toMatch(/has 2 columns\./);
});
