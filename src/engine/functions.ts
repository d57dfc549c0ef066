/** Every function of the catalogue, as the engine calls one: nothing here knows any of them by name. */
import type { BaseFunction, BaseReferenceObject, BaseValueObject } from '@univerjs/engine-formula';
import type { CellFunction, Outcome } from '../../functions/declare';
import { CATALOGUE, NAMESPACE } from '../../functions/index';
import type { CellIn, CellOut } from '../core/cell/fields';
import type { Library } from './library';

/** The cell whose formula called. */
export interface Caller {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** One call as it was answered, with its steps and findings. */
export interface Call {
  readonly cellFunction: CellFunction;
  readonly outcome: Outcome;
}

export type Listener = (caller: Caller, call: Call) => void;

/** What an empty cell is handed over as: null on the web, 0 by Excel on Windows and Mac. */
export type Empties = 'null' | 'zero';

/** The engine takes a formula's "" for an empty cell; the cell itself knows better. */
function withTexts(range: BaseReferenceObject): CellIn {
  const { startRow, startColumn } = range.getRangePosition();
  const rows = rowsIn(range.toArrayValueObject());
  return oneOrRows(
    rows.map((row, at) =>
      Array.from(
        row,
        (cell, column) =>
          fromEngine(cell) ?? (range.getCellData(startRow + at, startColumn + column)?.v === '' ? '' : 0),
      ),
    ),
  );
}

const rowsIn = (value: unknown): (BaseValueObject | null)[][] =>
  (value as { getArrayValue(): (BaseValueObject | null)[][] }).getArrayValue();
const oneOrRows = (cells: CellIn[][]): CellIn =>
  cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : cells;

/** As a cell hands it over: null or 0 where empty, an error as an object, one cell plain, a range as rows. */
export function fromEngine(value: BaseValueObject | null | undefined, empties: Empties = 'null'): CellIn {
  // What was left out is null on every host: only cells are 0.
  if (value === null || value === undefined) return null;
  if (value.isReferenceObject()) return withTexts(value as unknown as BaseReferenceObject);
  if (value.isNull()) return null;
  if (value.isError()) return { type: 'Error', basicValue: String(value.getValue()) };
  if (value.isArray()) {
    const empty = empties === 'zero' ? 0 : null;
    return oneOrRows(rowsIn(value).map((row) => Array.from(row, (cell) => fromEngine(cell) ?? empty)));
  }
  const plain = value.getValue();
  return typeof plain === 'number' && value.isBoolean() ? plain === 1 : plain;
}

function toEngine({ formula }: Library, cell: CellOut): BaseValueObject {
  if (typeof cell === 'number') return formula.NumberValueObject.create(cell);
  if (typeof cell === 'boolean') return formula.BooleanValueObject.create(cell);
  return formula.StringValueObject.create(cell);
}

/** Make these after the first workbook stands, and register them with the engine's IFunctionService. */
export function ourFunctions(
  library: Library,
  listener?: Listener,
  empties: () => Empties = () => 'null',
): BaseFunction[] {
  const { BaseFunction, ErrorValueObject, ArrayValueObject, ErrorType } = library.formula;

  class Ours extends BaseFunction {
    constructor(private readonly cellFunction: CellFunction) {
      super(`${NAMESPACE}.${cellFunction.name}`);
      this.minParams = -1;
      this.maxParams = -1;
      Object.defineProperty(this, 'needsReferenceObject', { get: () => empties() === 'zero' });
    }

    /** Text stays text: "1/2" is half an inch, never the second of January. */
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...given: BaseValueObject[]): BaseValueObject {
      const outcome = this.cellFunction.call(given.map((one) => fromEngine(one, empties())));
      listener?.(
        { sheet: this.subUnitId ?? '', row: this.row, column: this.column },
        { cellFunction: this.cellFunction, outcome },
      );
      if ('error' in outcome) {
        return ErrorValueObject.create(outcome.error === '#N/A' ? ErrorType.NA : ErrorType.VALUE);
      }
      const { cells } = outcome;
      if (!Array.isArray(cells)) return toEngine(library, cells as CellOut);
      const rows = cells as readonly (readonly CellOut[])[];
      return ArrayValueObject.create({
        calculateValueList: rows.map((row) => row.map((cell) => toEngine(library, cell))),
        rowCount: rows.length,
        columnCount: rows[0]?.length ?? 0,
        unitId: this.unitId ?? '',
        sheetId: this.subUnitId ?? '',
        row: this.row,
        column: this.column,
      });
    }
  }

  return CATALOGUE.map((cellFunction) => new Ours(cellFunction));
}
