import { expect, it } from 'vitest';
import { heightOf, linesOf } from '../../../src/book/papers/words';

it.each<[string, string, number, number]>([
  ['one word that fits', 'Library', 200, 1],
  ['a word longer than the line, broken within itself', 'L'.repeat(100), 100, 6],
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

// Advances as Adobe's metrics of its core fonts have them for Helvetica, whose widths Arial keeps.
it.each([
  ['Library', 3056],
  ['Quote 7', 556 + 778 + 556 + 556 + 278 + 556 + 278],
  ['MW@%', 833 + 944 + 1015 + 889],
  ['Ærø', 1000 + 333 + 611],
])('“%s” has room in what it takes, and not in less', (text, thousandths) => {
  const points = thousandths / 100;
  expect(linesOf(text.replace(' ', '.'), points * 1.06, 10)).toBe(1);
  expect(linesOf(text.replace(' ', '.'), points * 0.95, 10)).toBe(2);
});
