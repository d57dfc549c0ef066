/** A workbook file as the book room reads one: what stands in it, and the cells as they are shown. */
import { areaAt, readAddress } from '../../book/address';
import type { Block, BookRead, Contents, TableSeen } from '../../book/book';
import { rowsOf, type Rows } from '../floor/windows';
import type { WorkbookFile } from './workbook';

/** The cells that hold anything. */
function usedOf(name: string, rows: Rows): Contents['sheets'][number]['used'] {
  const filled = [...rows].filter(([, cells]) => cells.some((cell) => cell !== null && cell !== ''));
  if (filled.length === 0) return undefined;
  const numbers = filled.map(([row]) => row);
  const top = numbers.reduce((least, row) => Math.min(least, row));
  const bottom = numbers.reduce((most, row) => Math.max(most, row));
  const wide = filled.reduce((most, [, cells]) => Math.max(most, cells.length), 0);
  return areaAt(name, top, 0, bottom - top + 1, wide);
}

function contentsOf(file: WorkbookFile, rows: readonly Rows[]): Contents {
  return {
    sheets: file.sheets.map(({ name }, at) => ({
      name,
      hidden: false,
      protected: false,
      used: usedOf(name, rows[at] ?? new Map()),
    })),
    tables: file.tables.flatMap(({ name, sheet, ref, headerRows, totalsRows, columns }): TableSeen[] => {
      const area = readAddress(ref, file.sheets[sheet]?.name);
      return area === undefined
        ? []
        : [{ name, area, headerRow: headerRows > 0, totalsRow: totalsRows > 0, columns }];
    }),
    names: file.names.map(({ name, refersTo }) => ({ name, area: readAddress(refersTo.replace(/\$/g, '')) })),
  };
}

/** Only what is shown is read: no formats, formulas or merged cells. */
export function readingOf(file: WorkbookFile): BookRead {
  const rows = file.sheets.map(rowsOf);
  const contents = contentsOf(file, rows);
  const blockOf = (area: Block['area']): Block => {
    const sheetRows = rows[file.sheets.findIndex(({ name }) => name === area.sheet)];
    const values = Array.from({ length: area.rows }, (_, down) =>
      Array.from(
        { length: area.columns },
        (__, right) => sheetRows?.get(area.row + down)?.[area.column + right] ?? null,
      ),
    );
    return {
      area,
      values,
      formulas: values.map((row) => row.map(() => null)),
      formats: [],
      merged: [],
      hiddenRows: [],
      table: undefined,
      protected: false,
    };
  };
  return {
    contents: () => Promise.resolve(contents),
    read: (areas) => Promise.resolve(areas.map(blockOf)),
  };
}
