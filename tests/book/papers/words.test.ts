import { expect, it } from 'vitest';
import { heightOf, linesOf } from '../../../src/book/papers/words';

it.each<[string, string, number, number]>([
  ['one word that fits', 'Library', 200, 1],
  ['a word longer than the line, broken within itself', 'L'.repeat(100), 100, 7],
  ['a paragraph of its own', 'one\ntwo', 200, 2],
])('%s', (_what, text, points, lines) => {
  expect(linesOf(text, points, 10)).toBe(lines);
});

it('more room never takes more lines, and more lines stand higher', () => {
  const text =
    'pair of interlined goblet-pleated draperies, Garden print, just touching the floor, on a 212 in rod';
  const lines = [80, 120, 200, 400, 900].map((points) => linesOf(text, points, 10));
  expect([...lines].sort((one, other) => other - one)).toEqual(lines);
  expect(lines.at(-1)).toBe(1);
  expect(heightOf(2, 10)).toBeGreaterThan(heightOf(1, 10));
});
