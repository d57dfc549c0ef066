import { expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readTable, type TableRead } from '../../../../src/core/window/reader/read';

type Cell = string | number;
/** For how much each column's figures stand, by its heading. */
function pers(headings: readonly string[], ...rows: readonly (readonly Cell[])[]): Record<string, unknown> {
  const { columns } = readTable({ rows: [headings, ...rows] }, { unit: INCHES }) as TableRead;
  return Object.fromEntries(columns.map(({ heading, per, perTold }) => [heading, [per, perTold]]));
}

it('a heading says for how much its figures stand', () => {
  expect(
    pers(
      ['Room', 'Rod', 'Drop', 'Heading', 'Widths/panel', 'Fin. width per panel', 'Price/yd'],
      ['1', 94, 96, 'pinch', 2.5, 54, 20],
      ['2', 60, 96, 'pinch', 1.5, 37, 20],
    ),
  ).toMatchObject({
    'Widths/panel': ['panel', false],
    'Fin. width per panel': ['panel', false],
    'Price/yd': [undefined, false],
  });
});

it('else the figures tell: yards for one window of several', () => {
  expect(
    pers(
      ['Room', 'Rod', 'Drop', 'Heading', 'Fabric width', 'Widths', 'Cut length', 'Qty', 'Yards'],
      ['1', 94, 96, 'pinch', 54, 5, 112, 2, 15.625],
      ['2', 60, 96, 'pinch', 54, 3, 112, 3, 9.375],
      ['3', 72, 96, 'pinch', 54, 4, 112, 2, 12.5],
    )['Yards'],
  ).toEqual(['window', true]);
});
