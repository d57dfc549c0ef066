/** Which cells a step of the grid changed: contents only, and not what formulas work out. */
import type { ICellData, IExecutionOptions, IObjectMatrixPrimitiveType, Nullable } from '@univerjs/core';
import {
  InsertColMutation,
  InsertRowMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  SetRangeValuesMutation,
} from '@univerjs/preset-sheets-core';
import { areaAt, wholeSheet, type Area } from '../book/address';

const MOVING: ReadonlySet<string> = new Set(
  [
    InsertColMutation,
    InsertRowMutation,
    MoveRangeMutation,
    MoveRowsMutation,
    RemoveColMutation,
    RemoveRowMutation,
  ].map(({ id }) => id),
);

interface Step {
  readonly id: string;
  readonly params?: unknown;
}
interface Params {
  readonly subUnitId?: string;
  readonly cellValue?: IObjectMatrixPrimitiveType<Nullable<ICellData>>;
}

const hasContent = (cell: Nullable<ICellData>): boolean =>
  cell !== null && cell !== undefined && ['v', 'f', 'si', 'p'].some((key) => key in cell);

/** Undefined where nothing of a sheet's contents changed; `named` gives a sheet's name by its id. */
export function changedBy(
  { id, params }: Step,
  how: IExecutionOptions | undefined,
  named: (id: string) => string | undefined,
): Area | undefined {
  const { subUnitId, cellValue } = (params ?? {}) as Params;
  const sheet = named(subUnitId ?? '');
  if (sheet === undefined) return undefined;
  if (MOVING.has(id)) return wholeSheet(sheet);
  if (id !== SetRangeValuesMutation.id || how?.fromFormula === true) return undefined;
  const cells = Object.entries(cellValue ?? {}).flatMap(([row, line]) =>
    Object.entries(line as Record<string, Nullable<ICellData>>).flatMap(([column, cell]) =>
      hasContent(cell) ? [[Number(row), Number(column)] as const] : [],
    ),
  );
  const [first] = cells;
  if (first === undefined) return undefined;
  let [top, left] = first;
  let [bottom, right] = first;
  for (const [row, column] of cells) {
    [top, bottom] = [Math.min(top, row), Math.max(bottom, row)];
    [left, right] = [Math.min(left, column), Math.max(right, column)];
  }
  return areaAt(sheet, top, left, bottom - top + 1, right - left + 1);
}
