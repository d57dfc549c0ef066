import { expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { aboutAlike, headedAlike } from '../../../../src/core/window/reader/alike';
import { readTable, type TableRead } from '../../../../src/core/window/reader/read';

const read = (headings: readonly string[]): TableRead =>
  readTable(
    {
      rows: [
        ['Room', 'Heading', 'Rod width', 'Finished drop', ...headings],
        ...[1, 2, 3].map((row) => [`R${row}`, 'pinch', 60 + row * 10, 96, ...headings.map(() => 8 + row)]),
      ],
    },
    { unit: INCHES },
  ) as TableRead;

it('columns headed alike that nothing tells apart are said once, with their count', () => {
  const { columns, findings } = read(['Yards', 'Yards', 'Yards']);
  expect([...headedAlike(columns).values()].map((list) => list.length)).toEqual([3]);
  expect(aboutAlike(columns)).toHaveLength(1);
  expect(findings.filter(({ about }) => about === 'Yards').map(({ sentence }) => sentence)).toEqual([
    '3 columns are headed “Yards”, and nothing tells which of them is the yardage: none of them is read. Rename those that mean something else.',
  ]);
});

it('one column of a heading is alike to none', () => {
  expect(aboutAlike(read(['Yards']).columns)).toEqual([]);
});
