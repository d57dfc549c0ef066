/** The @ before a range, as files store it: SINGLE(A1:A9) is the one cell in the formula's own row or column. */
import type { BaseFunction, BaseReferenceObject, BaseValueObject } from '@univerjs/engine-formula';
import type { Library } from './library';

interface Rows {
  get(row: number, column: number): BaseValueObject | null | undefined;
}

export function singleFunction({ formula }: Library): BaseFunction {
  class Single extends formula.BaseFunction {
    override minParams = 1;
    override maxParams = 1;
    override needsReferenceObject = true;

    override calculate(given: BaseValueObject): BaseValueObject {
      const nothing = formula.ErrorValueObject.create(formula.ErrorType.VALUE);
      if (given.isReferenceObject()) {
        const range = given as unknown as BaseReferenceObject;
        const { startRow, endRow, startColumn, endColumn } = range.getRangePosition();
        const row = startRow === endRow ? startRow : this.row;
        const column = startColumn === endColumn ? startColumn : this.column;
        if (row < startRow || row > endRow || column < startColumn || column > endColumn) return nothing;
        const rows = range.toArrayValueObject() as unknown as Rows;
        return rows.get(row - startRow, column - startColumn) ?? formula.NullValueObject.create();
      }
      return given.isArray() ? ((given as unknown as Rows).get(0, 0) ?? nothing) : given;
    }
  }
  return new Single('SINGLE');
}
