import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { readingOf } from '../../../src/file/xlsx/book-read';
import { golden, opened } from '../book';

describe('a workbook file, looked at', () => {
  it('tells its sheets, tables and names, and what its cells show', async () => {
    const file = await opened(golden('floor.xlsx'));
    const book = readingOf(file);
    const { sheets, tables, names } = await book.contents();
    expect(sheets.map(({ name }) => name)).toEqual(file.sheets.map(({ name }) => name));
    expect(tables).toHaveLength(file.tables.length);
    expect(names).toHaveLength(file.names.length);
    for (const { area, columns } of tables) {
      const [header] = await book.read([{ ...area, rows: 1 }]);
      expect(header?.values[0]).toEqual(columns);
    }
    for (const { used } of sheets) {
      if (used === undefined) continue;
      // The last row and the last column hold something, and nothing stands beyond them.
      const [within, below, beside] = await book.read([
        areaAt(used.sheet, used.row + used.rows - 1, 0, 1, used.columns),
        areaAt(used.sheet, used.row + used.rows, 0, 5, used.columns),
        areaAt(used.sheet, used.row, used.columns, used.rows, 5),
      ]);
      expect(within?.values.flat().some((cell) => cell !== null && cell !== '')).toBe(true);
      expect(
        [...(below?.values ?? []), ...(beside?.values ?? [])].flat().every((cell) => cell === null),
      ).toBe(true);
    }
  });
});
