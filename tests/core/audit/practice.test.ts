import { expect, it } from 'vitest';
import { NO_PRACTICE, practised } from '../../../src/core/audit/practice';

it.each([
  ['none', 74.25, NO_PRACTICE, 74.25],
  ['up to the whole amount', 74.25, { ...NO_PRACTICE, step: 1 }, 75],
  ['the whole amount itself', 74.0000001, { ...NO_PRACTICE, step: 1 }, 74],
  ['to the nearest', 74.25, { ...NO_PRACTICE, step: 1, up: false }, 74],
  ['a half goes up', 74.5, { ...NO_PRACTICE, step: 1, up: false }, 75],
  ['so many times as much', 75, { ...NO_PRACTICE, factor: 1.4 }, 105],
  ['at least', 52, { ...NO_PRACTICE, least: 140 }, 140],
  ['above the least', 152, { ...NO_PRACTICE, least: 140 }, 152],
] as const)('%s: %d', (_what, figure, practice, expected) => {
  expect(practised(figure, practice)).toBeCloseTo(expected, 6);
});
