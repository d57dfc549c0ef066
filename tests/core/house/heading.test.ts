import { expect, it } from 'vitest';
import { HEADING_RULES as RULES } from '../../../src/core/house/heading';
import { readBack } from './read-back';

it('every default is read from a cell as it is written there', () => {
  expect(readBack(RULES)).toBeGreaterThan(30);
});

/** A pinch-pleat brochure prints five pleats to a width. */
it('pleats are counted by the width, five to one', () => {
  expect([RULES.pleatsBy.standard, RULES.pleatsAWidth.standard]).toEqual(['width', 5]);
});
