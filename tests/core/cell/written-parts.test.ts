import { expect, it } from 'vitest';
import { COUNT } from '../../../src/core/cell/figure-kinds';
import { partsOf, readPart } from '../../../src/core/cell/written-parts';
import { INCHES } from '../../../src/core/exact/unit';

it('a cell’s parts stand between semicolons or on lines of their own; empty ones are none', () => {
  expect(partsOf(' 0 28.50; 50 26;\n\n100 24 ')).toEqual(['0 28.50', '50 26', '100 24']);
  expect(partsOf(' ; ')).toEqual([]);
});

it('a part may not be blank', () => {
  const place = { name: 'breaks', unit: INCHES };
  expect(readPart(COUNT, '50', place)).toBe(50);
  expect(() => readPart(COUNT, undefined, place)).toThrow('breaks is blank. Enter a whole number');
});
