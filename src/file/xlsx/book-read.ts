/** A workbook file as the book room reads one: what stands in it, and the cells as they are shown. */
import { areaAt, readAddress } from '../../book/address';
import type { Block, BookRead, Contents, TableSeen } from '../../book/book';
import { rowsOf, type Rows } from '../floor/windows';
import { typedText } from '../recalculate/collect';
import type { CellSeen } from './sheet';
import type { WorkbookFile, WorksheetFile } from './workbook';

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

/** The formulas of a sheet by row and column, as they are typed. */
function formulasOf({ seen }: WorksheetFile): ReadonlyMap<number, ReadonlyMap<number, string>> {
  const masters = new Map<string, CellSeen>();
  const rows = new Map<number, Map<number, string>>();
  for (const { row, cells } of seen.rows)
    for (const cell of cells) {
      const { formula, column } = cell;
      if (formula === undefined || formula.kind === 'table') continue;
      if (formula.shared !== undefined && formula.text !== undefined) masters.set(formula.shared, cell);
      const master = formula.text === undefined ? masters.get(formula.shared ?? '') : undefined;
      if (formula.text === undefined && master === undefined) continue;
      const line = rows.get(row) ?? new Map<number, string>();
      rows.set(row, line.set(column, typedText({ cell, master })));
    }
  return rows;
}

/** Only contents are read: no formats or merged cells. */
export function readingOf(file: WorkbookFile): BookRead {
  const rows = file.sheets.map(rowsOf);
  const contents = contentsOf(file, rows);
  const formulas = new Map<number, ReturnType<typeof formulasOf>>();
  const formulasAt = (at: number): ReturnType<typeof formulasOf> => {
    const sheet = file.sheets[at];
    const known = formulas.get(at) ?? (sheet === undefined ? new Map() : formulasOf(sheet));
    formulas.set(at, known);
    return known;
  };
  const blockOf = (area: Block['area']): Block => {
    const at = file.sheets.findIndex(({ name }) => name === area.sheet);
    const sheetRows = rows[at];
    const typed = formulasAt(at);
    const values = Array.from({ length: area.rows }, (_, down) =>
      Array.from(
        { length: area.columns },
        (__, right) => sheetRows?.get(area.row + down)?.[area.column + right] ?? null,
      ),
    );
    return {
      area,
      values,
      formulas: values.map((row, down) =>
        row.map((_, right) => typed.get(area.row + down)?.get(area.column + right) ?? null),
      ),
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
