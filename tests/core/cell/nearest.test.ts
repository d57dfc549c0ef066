import { expect, it } from 'vitest';
import { distance } from '../../../src/core/cell/nearest';

it.each([
  ['', 'abc', 3],
  ['abc', 'abc', 0],
  ['kitten', 'sitting', 3],
  ['drop', 'drpo', 2],
  ['x'.repeat(60), 'x'.repeat(59), 1],
  ['x'.repeat(61), 'x'.repeat(60), 61],
])('“%s” is from “%s”: %d', (one, other, far) => {
  expect(distance(one, other)).toBe(far);
  expect(distance(other, one)).toBe(far);
});
