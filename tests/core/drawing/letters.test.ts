import { expect, it } from 'vitest';
import { widthOf } from '../../../src/core/drawing/letters';

// Advances as Adobe's metrics of its core fonts have them for Helvetica, whose widths Arial keeps.
it.each([
  ['Library', 3056],
  ['Quote 7', 778 + 556 + 556 + 278 + 556 + 278 + 556],
  ['MW@%', 833 + 944 + 1015 + 889],
  ['Ærø', 1000 + 333 + 611],
  ['é', 556],
])('“%s” is as wide as its letters', (text, thousandths) => {
  expect(widthOf(text) * 1000).toBeGreaterThanOrEqual(thousandths);
  expect(widthOf(text) * 1000).toBeLessThanOrEqual(thousandths * 1.07);
});
