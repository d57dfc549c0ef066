/** Where a workbook's formulas find its sheets, names and tables. */
import { inArea as inAddress } from './collect';
import { typed } from './formula';
import { referred, Unresolved } from './table-reference';
import { Unreadable, type Node } from '../../engine/native/parse';
import type { At, Directory } from '../../engine/native/compile';
import { readAddress } from '../../book/address';
import type { TableFile, WorkbookFile } from '../xlsx/workbook';

export type Named = Pick<WorkbookFile, 'sheets' | 'names' | 'tables'>;

/** The table whose cells a cell belongs to. */
export function tableAt(book: Named, at: At): TableFile | undefined {
  return book.tables.find((table) => {
    const area = table.sheet === at.sheet ? readAddress(table.ref) : undefined;
    return area !== undefined && inAddress(area, at.row, at.column);
  });
}

export function directoryOf(book: Named): Directory {
  const sheets = new Map(book.sheets.map(({ name }, at) => [name.toLowerCase(), at]));
  const tables = new Map(book.tables.map((table) => [table.name.toLowerCase(), table]));
  const key = (name: string, sheet: number | undefined): string => `${sheet ?? ''}!${name.toLowerCase()}`;
  const names = new Map(
    book.names
      .filter(({ name }) => name !== '' && !name.startsWith('_xlnm.'))
      .map(({ name, refersTo, sheet }) => [key(name, sheet), refersTo]),
  );
  return {
    sheet: (name) => sheets.get(name.toLowerCase()),
    defined(name, sheet) {
      const found = names.get(key(name, sheet)) ?? names.get(key(name, undefined));
      if (found !== undefined) return typed(found.replace(/^=/, ''));
      // A table's name alone means its rows.
      return tables.has(name.toLowerCase()) ? `${name}[]` : undefined;
    },
    table(name, inside, at) {
      const table = name === undefined ? tableAt(book, at) : tables.get(name.toLowerCase());
      if (table === undefined)
        throw new Unreadable(
          name === undefined ? 'it names a column without its table' : `there is no table ${name}`,
        );
      return cellsOf(table, inside, at);
    },
  };
}

/** A row of the table is counted from the formula's own cell; all else stays in its place. */
function cellsOf(table: TableFile, inside: string, at: At): Node {
  try {
    const { rows, columns, whole, thisRow } = referred(table, inside, at);
    const row = (number: number): { fixed: boolean; by: number } =>
      thisRow ? { fixed: false, by: number - at.row } : { fixed: true, by: number };
    return {
      kind: 'cells',
      sheet: undefined,
      lastSheet: undefined,
      onSheet: table.sheet,
      top: row(rows.from),
      bottom: row(rows.to),
      left: { fixed: true, by: whole.column + columns.from },
      right: { fixed: true, by: whole.column + columns.to },
    };
  } catch (thrown) {
    if (thrown instanceof Unresolved) throw new Unreadable(thrown.message);
    throw thrown;
  }
}
