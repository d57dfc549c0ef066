/** Every formula of a workbook file, as it is computed: its shape, where it fills, what the file shows for it. */
import { areaAt, readAddress, type Area } from '../../book/address';
import type { CellValue } from '../../engine/workbook';
import { DATA_TABLE, type Shape, type Shapes } from './shapes';
import { shifted } from '../../book/formula';
import { typed } from './formula';
import type { At } from './table-reference';
import type { CellSeen } from '../xlsx/sheet';
import type { WorkbookFile } from '../xlsx/workbook';

export class FormulaCell implements At {
  constructor(
    readonly sheet: number,
    readonly shape: Shape,
    /** plain gives one value; dynamic spills as far as it likes; array fills its reach, no more. */
    readonly kind: 'plain' | 'dynamic' | 'array' | 'table',
    readonly cell: CellSeen,
    /** The cell that holds its text, where several share one. */
    readonly master: CellSeen | undefined,
  ) {}

  get row(): number {
    return this.cell.row;
  }
  get column(): number {
    return this.cell.column;
  }
  /** What the file shows for it. */
  get old(): CellValue {
    return this.cell.value;
  }
  /** The cells the file says it fills. */
  get reach(): Area {
    const { row, column, formula } = this.cell;
    const fills = (formula?.kind === 'array' || formula?.kind === 'table') && !formula.alone;
    return (fills ? readAddress(formula.ref ?? '') : undefined) ?? areaAt('', row, column);
  }
}

export interface Collected {
  readonly formulas: readonly FormulaCell[];
  /** The cells a spill or an array had filled, with the number of its formula. */
  readonly inner: readonly { readonly owner: number; readonly cell: CellSeen }[];
}

export const keyOf = (row: number, column: number): number => row * 16_384 + column;
export const inArea = (area: Area, row: number, column: number): boolean =>
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;

/** As the file holds it, without “=”. */
export function storedText({ cell, master }: Pick<FormulaCell, 'cell' | 'master'>): string {
  const own = cell.formula?.text;
  if (own !== undefined || master === undefined) return own ?? '';
  return shifted(master.formula?.text ?? '', cell.row - master.row, cell.column - master.column);
}
/** As a person types it, with “=”. */
export const typedText = (formula: Pick<FormulaCell, 'cell' | 'master'>): string =>
  `=${typed(storedText(formula))}`;

export function collect(file: WorkbookFile, shapes: Shapes): Collected {
  const formulas: FormulaCell[] = [];
  const inner: { owner: number; cell: CellSeen }[] = [];
  for (const [sheet, { seen }] of file.sheets.entries()) {
    const masters = new Map<string, CellSeen>();
    const filled = new Map<number, number>();
    const rest: CellSeen[] = [];
    for (const { cells } of seen.rows)
      for (const cell of cells) {
        const { formula, held } = cell;
        if (formula === undefined) {
          rest.push(cell);
          continue;
        }
        if (formula.shared !== undefined && held !== undefined) masters.set(formula.shared, cell);
        const master = held === undefined ? masters.get(formula.shared ?? '') : undefined;
        // An array's inner cells may carry an empty <f>: they belong to its first cell.
        if (held === undefined && master === undefined && formula.kind !== 'table') continue;
        const one = asFormula(file, { sheet, cell, master }, shapes);
        formulas.push(one);
        if (one.kind === 'plain') continue;
        const { reach } = one;
        for (let row = one.row; row < one.row + reach.rows; row++)
          for (let column = one.column; column < one.column + reach.columns; column++)
            if (row !== one.row || column !== one.column) filled.set(keyOf(row, column), formulas.length - 1);
      }
    if (filled.size > 0)
      for (const cell of rest) {
        const owner = filled.get(keyOf(cell.row, cell.column));
        if (owner !== undefined) inner.push({ owner, cell });
      }
  }
  return { formulas, inner };
}

interface Found {
  readonly sheet: number;
  readonly cell: CellSeen;
  readonly master: CellSeen | undefined;
}

function asFormula(file: WorkbookFile, { sheet, cell, master }: Found, shapes: Shapes): FormulaCell {
  const { formula } = cell;
  const dynamic = cell.metadata !== undefined && file.dynamic.marks.has(cell.metadata);
  const spills = dynamic || formula?.kind === 'array';
  const from = cell.held === undefined && master !== undefined ? master : cell;
  const shape =
    formula?.kind === 'table'
      ? DATA_TABLE
      : shapes.of(from.held ?? '', { sheet, row: from.row, column: from.column }, spills);
  const plain = new FormulaCell(sheet, shape, 'plain', cell, master);
  const single = plain.reach.rows * plain.reach.columns === 1;
  const kind = kindOf(formula?.kind, dynamic || (single && shape.direct));
  return kind === 'plain' ? plain : new FormulaCell(sheet, shape, kind, cell, master);
}

function kindOf(kind: string | undefined, spills: boolean): FormulaCell['kind'] {
  if (kind === 'table') return 'table';
  if (spills) return 'dynamic';
  return kind === 'array' ? 'array' : 'plain';
}
