import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readTable, type TableRead } from '../../../../src/core/window/reader/read';

const read = (rows: readonly (readonly (string | number | null)[])[]): TableRead =>
  readTable({ rows }, { unit: INCHES }) as TableRead;
const asked = ({ columns }: TableRead): readonly number[] =>
  columns.filter(({ sure }) => sure === 'asked').map(({ at }) => at);

describe('columns headed alike', () => {
  it('are all asked where nothing tells one from another', () => {
    const many = Array.from({ length: 196 }, () => 'Yards');
    const table = read([
      ['Room', 'Heading', 'Rod width', 'Finished drop', ...many],
      ...[1, 2, 3, 4].map((row) => [`R${row}`, 'pinch', 60 + row * 10, 96, ...many.map(() => 8 + row)]),
    ]);
    expect(asked(table)).toEqual(many.map((_, place) => place + 4));
  });

  it('are read where the figures of the rows tell them', () => {
    const table = read([
      ['Room', 'Width', 'Width', 'Left', 'Right', 'Drop', 'Heading'],
      ['1', 60, 40, 10, 10, 96, 'pinch'],
      ['2', 90, 66, 12, 12, 96, 'pinch'],
      ['3', 48, 36, 6, 6, 90, 'pinch'],
    ]);
    expect(asked(table)).toEqual([]);
    expect(table.columns.map(({ means }) => means[0])).toEqual([
      'room',
      'rodWidth',
      'openingWidth',
      'leftExtension',
      'rightExtension',
      'finishedDrop',
      'heading',
    ]);
  });

  it('say nothing of columns headed otherwise', () => {
    const table = read([
      ['Room', 'Rod width', 'Finished drop', 'Heading', 'Widths', 'Cuts'],
      ['1', 60, 96, 'pinch', 3, 3],
      ['2', 90, 96, 'pinch', 5, 5],
    ]);
    expect(asked(table)).toEqual([]);
  });
});
