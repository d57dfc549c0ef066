/** A row inserted inside a table has the formulas of its columns at once, as in Excel; the grid alone leaves it bare. */
import type { ICellData, Univer } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import {
  InsertRowCommand,
  SetRangeValuesMutation,
  SheetInterceptorService,
  type IInsertRowCommandParams,
} from '@univerjs/preset-sheets-core';
import { TableManager } from '@univerjs/preset-sheets-table';
import { shifted } from '../book/formula';

/** The formula of the cell at a row and column, or undefined. */
export type FormulaAt = (row: number, column: number) => string | undefined;

export interface TablePlace {
  /** Of the row of headings. */
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

/**
 * By row and column, what rows from `first` to `last`, just inserted, are to hold. A column counts as
 * one formula where the rows above and below say the same; beside an end of the table one of them does.
 */
export function formulasFor(
  table: TablePlace,
  { first, last }: { readonly first: number; readonly last: number },
  formulaAt: FormulaAt,
): Record<number, Record<number, string>> {
  const [above, below] = [first - 1, last + 1];
  const filled: Record<number, Record<number, string>> = {};
  if (above < table.startRow || below > table.endRow) return filled;
  for (let column = table.startColumn; column <= table.endColumn; column++) {
    const next = formulaAt(below, column);
    const before = above === table.startRow ? undefined : formulaAt(above, column);
    const isOne =
      above === table.startRow || (before !== undefined && before === shiftedUp(next, below - above));
    if (next === undefined || !isOne) continue;
    for (let row = first; row <= last; row++) (filled[row] ??= {})[column] = shifted(next, row - below, 0);
  }
  return filled;
}

const shiftedUp = (formula: string | undefined, rows: number): string | undefined =>
  formula === undefined ? undefined : shifted(formula, -rows, 0);

export function fillInsertedRows(univer: Univer): void {
  const injector = univer.__getInjector();
  const formulas = injector.get(FormulaDataModel);
  const tables = injector.get(TableManager);
  injector.get(SheetInterceptorService).interceptAfterCommand({
    getMutations({ id, params }) {
      if (id !== InsertRowCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId, range } = params as IInsertRowCommandParams;
      const rows = { first: range.startRow, last: range.endRow };
      const formulaAt: FormulaAt = (row, column) =>
        formulas.getFormulaStringByCell(row, column, subUnitId, unitId) ?? undefined;
      const redos = tables.getTablesBySubunitId(unitId, subUnitId).flatMap((table) => {
        const filled = formulasFor(table.getRange(), rows, formulaAt);
        if (Object.keys(filled).length === 0) return [];
        const cellValue = Object.fromEntries(
          Object.entries(filled).map(([row, line]) => [
            row,
            Object.fromEntries(
              Object.entries(line).map(([column, f]): [string, ICellData] => [column, { f }]),
            ),
          ]),
        );
        return [{ id: SetRangeValuesMutation.id, params: { unitId, subUnitId, cellValue } }];
      });
      return { redos, undos: [] };
    },
  });
}
