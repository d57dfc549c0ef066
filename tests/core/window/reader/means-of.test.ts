import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { shareOf } from '../../../../src/core/window/reader/means-of';
import { readTable, type TableRead } from '../../../../src/core/window/reader/read';

type Cell = string | number | null;
/** What a column of these cells means beside a rod and a drop. */
const meant = (heading: string, cells: readonly Cell[], more: readonly string[] = []): readonly string[] => {
  const rows: Cell[][] = [
    ['Rod width', 'Finished drop', 'Fabric width', heading, ...more],
    ...cells.map((cell, at) => [60 + at, 96, 54, cell, ...more.map(() => 'pair')]),
  ];
  return (readTable({ rows }, { unit: INCHES }) as TableRead).columns[3]?.means ?? [];
};

describe('what the cells of one column hold', () => {
  it('a treatment has the heading, the draw and the lining', () => {
    expect(meant('Heading', ['PP pr', 'pinch, one way L', 'GR pair'])).toEqual(['heading', 'draw']);
    expect(meant('Heading', ['pinch pair lined', 'goblet pair interlined'])).toEqual([
      'heading',
      'draw',
      'lining',
    ]);
    expect(meant('Heading', ['pinch', 'goblet', 'pinch'])).toEqual(['heading']);
  });

  it('a room has how many windows it stands for', () => {
    expect(meant('Room', ['Den (x2)', 'Hall', 'Loft'])).toEqual(['room', 'quantity']);
    expect(meant('Room', ['Den (3)', 'Hall (2)', 'Loft'])).toEqual(['room', 'quantity']);
    expect(meant('Room', ['Bed (1)', 'Bed (2)', 'Bed (3)'])).toEqual(['room']);
  });

  it('a repeat has its match behind it', () => {
    expect(meant('Vertical repeat', ['27 HD', '25 1/2 HD', '0'])).toEqual(['verticalRepeat', 'match']);
  });

  it('a share is of the texts alone', () => {
    expect(shareOf(['a', 3, null, 'b'], (text) => text === 'a')).toBe(0.5);
    expect(shareOf([3, null], () => true)).toBe(0);
  });
});
