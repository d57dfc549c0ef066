import { expect, it } from 'vitest';
import { CENTIMETRES, INCHES } from '../../../../src/core/exact/unit';
import { withPoint, writesCommas } from '../../../../src/core/window/reader/decimal-comma';
import { OrderRows } from '../../../../src/core/window/reader/order-rows';
import { readTable } from '../../../../src/core/window/reader/read';
import { tableUnder } from '../ordered';

it('a table parts decimals by a comma where its figures do, and none has a point', () => {
  const rows = [['3,76', 'Salon', '2,955'], ['0,64', '14.03.2024', '1.842,30'], ['2,5']];
  expect(writesCommas(rows)).toBe(true);
  expect(writesCommas([...rows, ['12.5']])).toBe(false);
  // Thousands alone say nothing.
  expect(writesCommas([['2,955', '1,480', '1,234', '3,100']])).toBe(false);
  expect(rows.flat().map(withPoint)).toEqual([
    '3.76',
    'Salon',
    '2.955',
    '0.64',
    '14.03.2024',
    '1842.30',
    '2.5',
  ]);
  expect([withPoint('3, 4'), withPoint('a,5'), withPoint(7), withPoint(null)]).toEqual([
    '3, 4',
    'a,5',
    7,
    null,
  ]);
});

it('and so are rows that are read one by one', () => {
  const headings = ['Room', 'Rod width m', 'Finished drop m', 'Heading', 'Fabric width m'];
  const rows = [
    ['Salon', '3,85', '2,62', 'pinch', '1,40'],
    ['Study', '1,42', '2,605', 'pinch', '1,40'],
  ];
  const reader = new OrderRows(tableUnder(headings, rows, CENTIMETRES));
  const lines = rows.flatMap((cells, at) => reader.push(at, cells)).concat(reader.end());
  expect(lines.map(({ order }) => order?.window.finishedDrop)).toEqual([2_620_000_000, 2_605_000_000]);
});

it('a table in metres says so by its figures', () => {
  const read = readTable(
    {
      rows: [
        ['Room', 'Rod width', 'Finished drop', 'Heading', 'Fabric width'],
        ['Salon', 3.85, 2.62, 'pinch', 1.4],
        ['Study', 1.42, 2.6, 'pinch', 1.4],
        ['Hall', 2.1, 2.55, 'pinch', 2.8],
      ],
    },
    { unit: CENTIMETRES },
  );
  if (!('columns' in read)) throw new Error(read.none);
  expect(read.rows[0]?.values).toMatchObject({ rodWidth: 3_850_000_000, fabricWidth: 1_400_000_000 });
});

it('three decimals behind a comma are read like the two beside them', () => {
  const read = readTable(
    {
      rows: [
        ['Room', 'Rod width m', 'Finished drop m', 'Heading', 'Fabric width m'],
        ['Salon', '3,85', '2,62', 'pinch', '1,40'],
        ['Study', '1,42', '2,605', 'pinch', '1,40'],
      ],
    },
    { unit: INCHES },
  );
  if (!('columns' in read)) throw new Error(read.none);
  expect(read.rows[1]?.values.finishedDrop).toBe(2_605_000_000);
  expect(read.rows.every(({ unread }) => unread.length === 0)).toBe(true);
});
