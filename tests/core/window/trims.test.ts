import { expect, it } from 'vitest';
import { inches } from '../../../src/core/exact/length';
import { trimAlong } from '../../../src/core/window/trims';
import { READING_ROOM, windowAs } from '../papers/invented';

// Two panels, 96 in long; three widths of 54 in each: 162 − 2 seams of 1 in − 2 hems of 3 in = 154 in flat.
const { work } = windowAs(READING_ROOM);
const three = windowAs({ ...READING_ROOM, quantity: 3 }).work;

it.each([
  ['leading edges', 2 * (96 + 3)],
  ['bottom edges', 2 * (154 + 3)],
  ['leading and bottom edges', 2 * (96 + 3) + 2 * (154 + 3)],
] as const)('%s of a window, and of three alike', (edges, long) => {
  expect(trimAlong(work, edges)).toBe(inches(long));
  expect(trimAlong(three, edges)).toBe(inches(3 * long));
});
