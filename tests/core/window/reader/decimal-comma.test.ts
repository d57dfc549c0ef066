import { expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { withPoint, writesCommas } from '../../../../src/core/window/reader/decimal-comma';
import { readTable } from '../../../../src/core/window/reader/read';

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
