/** Every formula of a workbook file, spelled out: shared ones moved to their cell, arrays with their reach. */
import { readAddress, type Area } from '../../book/address';
import { shifted } from '../../book/formula';
import type { CellValue } from '../../engine/workbook';
import { callsOurs, typed } from './formula';
import type { At } from './resolve';
import type { CellSeen } from '../xlsx/sheet';
import type { WorkbookFile } from '../xlsx/workbook';

export interface FormulaCell extends At {
  /** As the file holds it, without “=”. */
  readonly stored: string;
  /** As a person types it, with “=”. */
  readonly typed: string;
  /** plain gives one value; dynamic spills as far as it likes; array fills its reach, no more. */
  readonly kind: 'plain' | 'dynamic' | 'array' | 'table';
  /** The cells the file says it fills. */
  readonly reach: Area;
  readonly ours: boolean;
  /** What the file shows for it. */
  readonly old: CellValue;
  readonly cell: CellSeen;
}

export interface Collected {
  readonly formulas: readonly FormulaCell[];
  /** Everything else that is filled, by sheet; cells a spill filled are no contents of their own. */
  readonly constants: readonly (readonly CellSeen[])[];
  /** The cells a spill or an array had filled, by sheet. */
  readonly inner: readonly (readonly CellSeen[])[];
}

export const keyOf = (row: number, column: number): number => row * 16_384 + column;
export const inArea = (area: Area, row: number, column: number): boolean =>
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;

export function collect(file: WorkbookFile): Collected {
  const formulas: FormulaCell[] = [];
  const inner: (readonly CellSeen[])[] = [];
  const constants = file.sheets.map(({ name, seen }, sheet) => {
    const masters = new Map<string, CellSeen>();
    const filled = new Set<number>();
    const rest: CellSeen[] = [];
    for (const { cells } of seen.rows) {
      for (const cell of cells) {
        const { formula } = cell;
        if (formula === undefined) {
          rest.push(cell);
          continue;
        }
        if (formula.shared !== undefined && formula.text !== undefined) masters.set(formula.shared, cell);
        const stored = textOf(cell, masters);
        // An array's inner cells may carry an empty <f>: they belong to its first cell.
        if (stored === undefined && formula.kind !== 'table') continue;
        const one = asFormula(file, sheet, name, cell, stored ?? '');
        formulas.push(one);
        if (one.kind === 'plain' || one.kind === 'table') continue;
        for (let row = 0; row < one.reach.rows; row++) {
          for (let column = 0; column < one.reach.columns; column++) {
            if (row + column > 0) filled.add(keyOf(one.row + row, one.column + column));
          }
        }
      }
    }
    inner.push(rest.filter(({ row, column }) => filled.has(keyOf(row, column))));
    return rest.filter(({ row, column }) => !filled.has(keyOf(row, column)));
  });
  return { formulas, constants, inner };
}

function textOf(cell: CellSeen, masters: ReadonlyMap<string, CellSeen>): string | undefined {
  const { formula } = cell;
  if (formula?.text !== undefined) return formula.text;
  const master = formula?.shared === undefined ? undefined : masters.get(formula.shared);
  const text = master?.formula?.text;
  if (master === undefined || text === undefined) return undefined;
  return shifted(text, cell.row - master.row, cell.column - master.column);
}

function asFormula(
  file: WorkbookFile,
  sheet: number,
  name: string,
  cell: CellSeen,
  stored: string,
): FormulaCell {
  const { row, column, formula } = cell;
  const own: Area = { sheet: name, row, column, rows: 1, columns: 1 };
  const dynamic = cell.metadata !== undefined && file.dynamic.marks.has(cell.metadata);
  const text = `=${typed(stored)}`;
  const ours = callsOurs(text);
  const reach = formula?.kind === 'array' ? (readAddress(formula.ref ?? '', name) ?? own) : own;
  const single = reach.rows * reach.columns === 1;
  const kind =
    formula?.kind === 'table'
      ? 'table'
      : dynamic || (ours && single)
        ? 'dynamic'
        : formula?.kind === 'array'
          ? 'array'
          : 'plain';
  return { sheet, row, column, stored, typed: text, kind, reach, ours, old: cell.value, cell };
}
