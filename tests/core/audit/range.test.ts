import { expect, it } from 'vitest';
import { outOfRange } from '../../../src/core/audit/range';
import { checked, findsBy } from './row';

it('a size out of the usual range is looked at, in the other unit where that would be usual', () => {
  expect(findsBy(outOfRange, { 'inside width': 240 })).toEqual([]);
  expect(findsBy(outOfRange, { 'inside width': 300 })).toEqual(['unitOutOfRange at inside width']);
  // 300 cm are 118.11 in.
  expect(checked({ 'inside width': 300 }).foundBy(outOfRange)[0]).toMatchObject({
    found: 300,
    expected: 118.11,
  });
  expect(findsBy(outOfRange, { 'inside width': 900 })).toEqual(['outOfRange at inside width']);
  expect(findsBy(outOfRange, { 'fabric width': 20 })).toEqual(['outOfRange at fabric width']);
  // A house in centimetres took 98 in for 98 cm below its shortest.
  expect(findsBy(outOfRange, { 'measured height': 28 }, [['unit', 'centimetres']])).toEqual([
    'unitOutOfRange at measured height',
  ]);
});

it('is left alone where the figures tell the mistake, or a cell could not be read', () => {
  const slipped = { 'inside width': 720, 'left ext': 11, 'right ext': 11, 'rod width': 94 };
  expect(findsBy(outOfRange, slipped)).toEqual([]);
  expect(findsBy(outOfRange, { 'inside width': 300, heading: 'smocked' })).toEqual([]);
});
