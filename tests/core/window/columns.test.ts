import { expect, it } from 'vitest';
import { headingWords } from '../../../src/core/window/columns';

it('a heading’s words are its letters without a unit; a plural is kept: widths are counted', () => {
  expect(headingWords('Inside-width (in)')).toBe('insidewidth');
  expect([headingWords('Widths'), headingWords('Width')]).toEqual(['widths', 'width']);
});
