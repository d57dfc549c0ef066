import { describe, expect, it } from 'vitest';
import {
  COLUMN_KEYS,
  columnOf,
  findColumns,
  headingWords,
  readWindow,
  WINDOW_COLUMNS,
} from '../../../src/core/window/columns';
import { inches } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';

describe('a heading', () => {
  it('is found by its own and its other words, whatever the case, the signs and the unit in brackets', () => {
    for (const key of COLUMN_KEYS)
      for (const words of [WINDOW_COLUMNS[key].heading, ...WINDOW_COLUMNS[key].also])
        expect(columnOf(words.toUpperCase()), words).toBe(key);
    expect(columnOf('Inside-width (in)')).toBe('openingWidth');
    expect(columnOf('Fab. W')).toBe('fabricWidth');
  });

  it('keeps its plural: widths are counted, a width is measured', () => {
    expect([headingWords('Widths'), columnOf('Widths')]).toEqual(['widths', undefined]);
  });
});

describe('the columns of a header row', () => {
  it('are those it has, each where it stands', () => {
    expect(findColumns(['Notes', 'W', null, ' Style '])).toEqual([
      { key: 'openingWidth', at: 1, heading: 'W' },
      { key: 'heading', at: 3, heading: 'Style' },
    ]);
  });

  it('may not be two of one meaning', () => {
    expect(() => findColumns(['W', 'opening'])).toThrow(
      /two columns for the inside width: “W” and “opening”/,
    );
  });
});

it('a row is read through its columns, and a refusal names the column as the sheet heads it', () => {
  const found = findColumns(['W', 'Style']);
  expect(readWindow([72, 'Pinch'], found, INCHES)).toEqual({ openingWidth: inches(72), heading: 'pinch' });
  expect(() => readWindow([72, 'pnch'], found, INCHES)).toThrow(/^Style reads “pnch”/);
});
