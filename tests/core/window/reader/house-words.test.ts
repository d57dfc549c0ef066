import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readHouseWords, saidByWords } from '../../../../src/core/window/reader/house-words';
import { readTable, type TableRead } from '../../../../src/core/window/reader/read';

const SHEET = [
  ['The words of our workroom'],
  ['Heading', 'Means', 'note'],
  ['Zot', 'rod width', 'since 2019'],
  ['Fab | W', 'fabric width'],
  ['Sz', 'inside width + measured height'],
  ['Bin', ''],
];

describe('the words of a house', () => {
  it('are read from two columns, a blank for none of ours', () => {
    const { words, unknown } = readHouseWords(SHEET)!;
    expect([...words]).toEqual([
      ['zot', ['rodWidth']],
      ['fab | w', ['fabricWidth']],
      ['sz', ['openingWidth', 'measured']],
      ['bin', []],
    ]);
    expect(unknown).toEqual([]);
  });

  it('that mean nothing of ours are named', () => {
    expect(readHouseWords([...SHEET, ['Q', 'breadth of it']])?.unknown).toEqual(['breadth of it']);
    expect(readHouseWords([['Room', 'Width']])).toBeUndefined();
  });

  it('come before the evidence, and the user’s word for a column before them', () => {
    const { words } = readHouseWords(SHEET)!;
    const rows = [
      ['Room', 'ZOT.', 'Drop', 'Heading', 'Bin'],
      ['1', 60, 96, 'pinch', 54],
      ['2', 72, 96, 'pinch', 54],
    ];
    const meant = (options: object) =>
      (readTable({ rows }, { unit: INCHES, ...options }) as TableRead).columns.map(({ means }) => means[0]);
    expect(meant({ words })).toEqual(['room', 'rodWidth', 'finishedDrop', 'heading', undefined]);
    expect(meant({ words, said: new Map([[1, ['openingWidth']]]) })[1]).toBe('openingWidth');
    expect(meant({})[1]).not.toBe('rodWidth');
  });

  it('give one meaning to one column', () => {
    const { words } = readHouseWords(SHEET)!;
    expect([...(saidByWords([['Zot'], ['zot']], words, undefined) ?? [])]).toEqual([[0, ['rodWidth']]]);
  });
});
