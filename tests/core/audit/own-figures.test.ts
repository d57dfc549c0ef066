import { expect, it } from 'vitest';
import { figureIn, figuresDown } from '../../../src/core/audit/own-figures';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { tableUnder } from '../window/ordered';

it.each([
  [12.5, 12.5],
  ['83 3/4', 83.75],
  ['4½', 4.5],
  ['£1,048.76', 1048.76],
  ['1.842,30', 1842.3],
  [`10'-2 1/2"`, 122.5],
  ['pr', NaN],
  ['', NaN],
])('%s is the figure %d', (cell, figure) => {
  expect(figureIn(cell)).toBe(figure);
});

it('knows what is money, what was measured, and leaves out a column that hardly anybody fills', () => {
  const headings = ['room', 'rod width', 'heading', 'Zub', 'Prell', 'Quim'];
  const rows = Array.from({ length: 20 }, (_, at) => [
    `Den ${at}`, 60 + at, 'pinch', 3 + (at % 4), 12.55 + at, at < 2 ? 9 : null,
  ]); // prettier-ignore
  const found = figuresDown(tableUnder(headings, rows, DEFAULT_HOUSE.unit), rows);
  expect(found.map(({ at, isMoney, isGiven }) => [at, isMoney, isGiven])).toEqual([
    [1, false, true],
    [3, false, false],
    [4, true, false],
  ]);
});
