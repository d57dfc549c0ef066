import { describe, expect, it } from 'vitest';
import { each, heads, listOf, own, rule, yards, YOURS } from '../../../src/core/cell/rule';
import { HEADINGS } from '../../../src/core/cell/treatment';
import { SIZE } from '../../../src/core/cell/length-kinds';
import { inches } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';

describe('a house rule', () => {
  it('of one figure keeps its default, words and source', () => {
    expect(rule(SIZE, inches(44), 'words', 'source')).toEqual({
      kind: SIZE,
      standard: inches(44),
      says: 'words',
      source: 'source',
    });
  });

  it('that only the workroom can set says so and has no default', () => {
    expect(own(SIZE, 'words')).toEqual({ ownKind: SIZE, says: 'words', source: YOURS });
  });

  it('of a heading has one figure for each heading, the rest alike', () => {
    const figures = heads(1, { wave: 2 });
    expect(Object.keys(figures)).toEqual(HEADINGS.list.map(({ word }) => word));
    expect([figures.wave, figures.pinch, figures.grommet]).toEqual([2, 1, 1]);
    expect(each(SIZE as never, figures, 'words', 'source').each).toBe(figures);
  });
});

describe('a list in one cell', () => {
  const LENGTHS = listOf(SIZE, 'rod lengths');
  it.each([
    ['48, 72, 96', [48, 72, 96]],
    ['48; 72;96', [48, 72, 96]],
    [48, [48]],
  ])('%j is parted by semicolons, or commas with a space', (cell, wanted) => {
    expect(LENGTHS.read(cell, { name: 'rods', unit: INCHES })).toEqual(wanted.map(inches));
  });

  it('a comma without a space stands in a figure: 1,5 cm is no two lengths', () => {
    expect(LENGTHS.read('120; 150,5', { name: 'rods', unit: CENTIMETRES })).toEqual([
      1_200_000_000, 1_505_000_000,
    ]);
  });

  it('blank holds none, whether it comes as nothing or as an empty text', () => {
    for (const blank of [null, ''])
      expect(LENGTHS.read(blank, { name: 'rods', unit: INCHES })).toBeUndefined();
  });

  it('is written as it is read', () => {
    expect(LENGTHS.write?.([inches(48), inches(72.5)], INCHES)).toBe('48; 72.5');
  });
});

it('a yard is 36 in of 25,400,000 nm', () => {
  expect(yards(1)).toBe(36 * 25_400_000);
  expect(yards(1 / 8)).toBe(114_300_000);
});
