import { expect, it } from 'vitest';
import { CLOTH_FINDINGS as TABLE } from '../../../src/core/findings/cloth';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE)).toEqual([]);
});
