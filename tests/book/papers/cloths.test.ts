import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { Cells } from '../../../src/book/papers/cells';
import { clothsIn, suppliersIn } from '../../../src/book/papers/cloths';

/** One table at A1 of a sheet “Cloths”. */
type Rows = readonly (readonly (string | number | null)[])[];
function cellsOf(...rows: Rows): Cells {
  const columns = rows[0]?.map(String) ?? [];
  const area = areaAt('Cloths', 0, 0, rows.length, columns.length);
  const contents = {
    sheets: [{ name: 'Cloths', used: area }],
    tables: [{ name: 'any', area, columns }],
    names: [],
  };
  return new Cells(contents as unknown as Cells['contents'], [{ name: 'Cloths', rows }]);
}
const values = (rows: Rows): Record<string, unknown>[] =>
  clothsIn(cellsOf(...rows)).map((cloth) =>
    Object.fromEntries(
      Object.entries(cloth).map(([key, one]) => [key, typeof one === 'string' ? one : one.value]),
    ),
  );

describe('the cloths of a table', () => {
  it('are read by the words of our own sheet of fabrics', () => {
    expect(
      values([
        ['fabric', 'supplier', 'fabric width (in)', 'vertical repeat (in)', 'price a yd', 'whole roll (yd)', 'price a yd in rolls', 'colour', 'content', 'reserve number', 'needed by', 'needed (yd)', 'to order (yd)'],
        ['Heron', 'Quill', 54, 25, 38, 60, 30, 'Fog', 'linen', 'R-31', 46_400, 11, 12],
      ]), // prettier-ignore
    ).toEqual([
      {
        name: 'Heron', supplier: 'Quill', width: 54, verticalRepeat: 25, price: 38, wholeRoll: 60,
        colour: 'Fog', content: 'linen', reserve: 'R-31', neededBy: 46_400, toOrder: 12,
      }, // prettier-ignore
    ]);
  });
  it('are read by the user’s own words, as the reader of tables takes them', () => {
    expect(
      values([
        ['Cloth', 'Mill', 'Goods W', 'V repeat', 'Color', 'Required by', 'Match', 'oz/yd²'],
        ['Heron', 'Quill', 54, 25.25, 'Fog', 46_400, 'half-drop', 10.5],
      ]),
    ).toEqual([
      { name: 'Heron', supplier: 'Quill', width: 54, verticalRepeat: 25.25, colour: 'Fog', neededBy: 46_400, match: 'half-drop', weight: 10.5 }, // prettier-ignore
    ]);
  });
  it('are none where the table is of windows, or says no width', () => {
    expect(values([['room', 'inside width', 'fabric', 'fabric width'], ['Hall', 72, 'Heron', 54]])).toEqual([]); // prettier-ignore
    expect(values([['fabric', 'sold'], ['Heron', 3]])).toEqual([]); // prettier-ignore
  });
  it('bear no figure where a cell is blank or 0', () => {
    expect(values([['fabric', 'fabric width', 'vertical repeat'], ['Heron', 54, 0], [null, 3, 3]])).toEqual([
      { name: 'Heron', width: 54 },
    ]); // prettier-ignore
  });
});

it('suppliers are read from the table of the house’s sheet', () => {
  const cells = cellsOf(
    ['supplier', 'our account', 'their address', 'ship by'],
    ['Quill', 'A-7', 'Weir Row', null],
  );
  expect(suppliersIn(cells).map(({ name, account, shipBy }) => [name, account?.value, shipBy])).toEqual([
    ['Quill', 'A-7', undefined],
  ]);
});
