import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readTable, type NoTable, type TableRead } from '../../../../src/core/window/reader/read';

const point = (note: string, heading: string, drops: readonly [string, number, number][]): unknown => {
  const table: TableRead | NoTable = readTable(
    {
      rows: [
        [note],
        ['Room', 'Win W', heading, 'Fin length', 'Heading', 'Draw'],
        ...drops.map(([pleat, height, drop], at) => [`Room ${at}`, 60 + at, height, drop, pleat, 'pair']),
      ],
    },
    { unit: INCHES },
  );
  if ('columns' in table) return table.rows.find(({ is }) => is === 'window')?.values.measuredTo;
  throw new Error(table.none);
};

const UNDER: readonly [string, number, number][] = [
  ['pinch', 98, 96],
  ['grommet', 90, 92],
  ['goblet', 96.5, 94.5],
];

describe('the point that heights were measured to', () => {
  it('is a rod yet to be hung where drops end 2 in below it, on grommets above', () => {
    expect(point('Height = floor to middle of rod', 'Height', UNDER)).toBe('new rod');
    expect(point('', 'Floor to rod', UNDER)).toBe('new rod');
  });
  it('is a new rod where a line says that none is up', () => {
    const odd = UNDER.map(([pleat, height], at): [string, number, number] => [pleat, height, height - at]);
    expect(point('Rods are not up. Marks on the wall', 'Floor to rod', odd)).toBe('new rod');
  });
  it('is not told by drops where nothing speaks of a rod', () => {
    expect(point('', 'Height', UNDER)).toBeUndefined();
  });
  it('nor where the drops follow no rule', () => {
    const odd = UNDER.map(([pleat, height], at): [string, number, number] => [pleat, height, height - at]);
    expect(point('', 'Floor to rod', odd)).toBeUndefined();
  });
  it('is what a heading says outright, whatever the drops', () => {
    expect(point('', 'Floor to ceiling', UNDER)).toBe('ceiling');
    expect(point('', 'Floor to new rod', UNDER)).toBe('new rod');
  });
});
