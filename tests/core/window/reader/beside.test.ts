import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readTable, type TableRead } from '../../../../src/core/window/reader/read';

type Cells = readonly (string | number | null)[];
/** What the columns of a table mean, by their headings. */
function meant(headings: Cells, ...rows: readonly Cells[]): Record<string, string> {
  const { columns } = readTable({ rows: [headings, ...rows] }, { unit: INCHES }) as TableRead;
  return Object.fromEntries(
    columns.map(({ heading, means, sure }) => [heading, sure === 'asked' ? 'asked' : means.join(' ')]),
  );
}

describe('what stands beside a column', () => {
  it('makes a bare width the cloth’s, behind the cloth’s name', () => {
    expect(
      meant(
        ['Room', 'Rod', 'Drop', 'Heading', 'Fabric', 'Width'],
        ['1', 60, 96, 'pinch', 'Ash', 54],
        ['2', 72, 96, 'pinch', 'Elm', 118],
      ),
    ).toMatchObject({ Rod: 'rodWidth', Width: 'fabricWidth' });
  });

  it('makes a tag the room, where no room is said, and nothing beside one', () => {
    const rows: readonly Cells[] = [
      ['A1', 60, 96, 'pinch'],
      ['A2', 72, 96, 'pinch'],
    ];
    expect(meant(['Tag', 'Rod', 'Drop', 'Heading'], ...rows)['Tag']).toBe('room');
    const both = meant(['Room', 'Tag', 'Rod', 'Drop', 'Heading'], ...rows.map((row) => ['Den', ...row]));
    expect([both['Room'], both['Tag']]).toEqual(['room', '']);
  });

  it('makes a name the client’s in a book of orders', () => {
    expect(
      meant(
        ['Order', 'Date', 'Name', 'Rod', 'Drop', 'Heading'],
        ['K14', '4/25/24', 'Ames', 60, 96, 'pinch'],
        ['K15', '4/28/24', 'Birch', 72, 96, 'pinch'],
      )['Name'],
    ).toBe('customer');
  });

  it('takes the widths in all before those of a panel', () => {
    expect(
      meant(
        ['Room', 'Rod', 'Drop', 'Heading', 'Widths/panel', 'Total widths'],
        ['1', 94, 96, 'pinch', 2.5, 5],
        ['2', 60, 96, 'pinch', 1.5, 3],
      ),
    ).toMatchObject({ 'Widths/panel': '', 'Total widths': 'widths' });
  });

  it('asks of one extension alone whether it is a side’s or each side’s', () => {
    expect(
      meant(
        ['Room', 'Opening', 'Ext', 'Drop', 'Heading'],
        ['1', 60, 8, 96, 'pinch'],
        ['2', 72, 10, 96, 'pinch'],
      )['Ext'],
    ).toBe('asked');
  });
});
