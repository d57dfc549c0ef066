import { expect, it } from 'vitest';
import { charactersOf, pixelsOf, pointsOf } from '../../src/book/column-width';

// 64 pixels are Excel's usual 8.43 characters of Calibri 11.
it('64 pixels are 8.43 characters', () => {
  expect(charactersOf(48)).toBeCloseTo(8.43, 2);
  expect(Math.round(pixelsOf(8.43))).toBe(64);
});

it.each([9, 48, 189, 198.425])('%d points are never more once they are characters', (points) => {
  const back = pointsOf(charactersOf(points));
  expect(back).toBeLessThanOrEqual(points);
  expect(back).toBeGreaterThan(points - 0.02);
});
