/** What a formula sees of its workbook while it is computed. */
import type { CellFunction, Outcome } from '../../../functions/declare';
import { Area, Areas, Fault, Grid, unproven, VALUE, Wanting, type Scalar, type Value } from './values';

/** Names given by LET and LAMBDA, the innermost first. */
export interface Bound {
  readonly name: string;
  readonly value: Value;
  readonly next: Bound | undefined;
}

export const PENDING = new Fault('pending');
/** In place of a value that could not be computed. */
export class Dropped extends Fault {
  constructor(readonly why: string) {
    super('dropped');
  }
}

/** A sheet's values, column by column, blanks left out. */
export type Columns = readonly (readonly (Scalar | undefined)[] | undefined)[];

export interface Sheets {
  readonly names: readonly string[];
  columns(sheet: number): Columns;
  /** How far the sheet is filled. */
  rows(sheet: number): number;
  hidden(sheet: number, row: number): 'no' | 'hidden' | 'filtered';
  /** The formula of a cell as typed, with “=”. */
  formula(sheet: number, row: number, column: number): string | undefined;
  /** The cells that the spill of this cell fills. */
  spill(sheet: number, row: number, column: number): Area | undefined;
  name(area: Area): string;
  readonly from1904: boolean;
  /** The program that saved it spoke another language: its texts of numbers may read otherwise. */
  readonly elsewhere?: boolean;
}

export class World {
  sheet = 0;
  row = 0;
  column = 0;
  bound: Bound | undefined;
  heard: ((called: CellFunction, outcome: Outcome) => void) | undefined;

  constructor(readonly sheets: Sheets) {}

  at(sheet: number, row: number, column: number): void {
    this.sheet = sheet;
    this.row = row;
    this.column = column;
    this.bound = undefined;
  }

  cell(sheet: number, row: number, column: number): Scalar {
    const value = this.sheets.columns(sheet)[column]?.[row];
    if (value === undefined) return null;
    return value instanceof Fault && !value.code.startsWith('#')
      ? this.#wait(value, sheet, row, column)
      : value;
  }

  #wait(value: Fault, sheet: number, row: number, column: number): never {
    if (value instanceof Dropped) return unproven(value.why);
    throw new Wanting(sheet, row, column);
  }

  /** The part of an area that can hold anything. */
  filled(area: Area): Area {
    const rows = Math.max(0, Math.min(area.rows, this.sheets.rows(area.sheet) - area.row));
    const columns = Math.max(0, Math.min(area.columns, this.sheets.columns(area.sheet).length - area.column));
    return rows === area.rows && columns === area.columns
      ? area
      : new Area(area.sheet, area.row, area.column, rows, columns);
  }

  /** Every filled cell, row by row. */
  each(area: Area, visit: (value: Scalar, row: number, column: number) => void): void {
    const { sheet, row, column, rows, columns } = this.filled(area);
    const all = this.sheets.columns(sheet);
    for (let r = row; r < row + rows; r++)
      for (let c = column; c < column + columns; c++) {
        const value = all[c]?.[r];
        if (value === undefined || value === null) continue;
        visit(
          value instanceof Fault && !value.code.startsWith('#') ? this.#wait(value, sheet, r, c) : value,
          r,
          c,
        );
      }
  }

  /** An area's cells as values; what lies beyond the filled part is left out where `cut` allows it. */
  grid(area: Area, cut = false): Grid {
    const part = cut ? this.filled(area) : area;
    const [rows, columns] = cut
      ? [Math.max(part.rows, 1), Math.max(part.columns, 1)]
      : [part.rows, part.columns];
    if (rows * columns > MOST_CELLS)
      unproven(`works on ${(rows * columns).toLocaleString('en-US')} cells at once`);
    const cells = new Array<Scalar>(rows * columns).fill(null);
    this.each(part, (value, row, column) => {
      cells[(row - area.row) * columns + column - area.column] = value;
    });
    return new Grid(rows, columns, cells);
  }

  /** One cell's value, or the cells of an area as they stand. */
  value(value: Value): Scalar | Grid {
    if (value instanceof Area)
      return value.rows === 1 && value.columns === 1
        ? this.cell(value.sheet, value.row, value.column)
        : this.grid(value);
    if (value instanceof Areas) return unproven('takes several areas where one belongs');
    if (value instanceof Grid) return value.rows === 1 && value.columns === 1 ? value.at(0, 0) : value;
    if (isScalar(value)) return value;
    return unproven('hands on a LAMBDA that is not called');
  }

  /** Of a range where one value belongs, the cell beside or above: implicit intersection. */
  beside(area: Area): Scalar {
    const { sheet, row, column, rows, columns } = area;
    if (rows === 1 && columns === 1) return this.cell(sheet, row, column);
    if (columns === 1 && this.row >= row && this.row < row + rows) return this.cell(sheet, this.row, column);
    if (rows === 1 && this.column >= column && this.column < column + columns)
      return this.cell(sheet, row, this.column);
    return VALUE;
  }
}

const MOST_CELLS = 200_000;

export const isScalar = (value: Value): value is Scalar =>
  value === null || typeof value !== 'object' || value instanceof Fault;

export function lookUp(bound: Bound | undefined, name: string): Value | undefined {
  for (let one = bound; one !== undefined; one = one.next) if (one.name === name) return one.value;
  return undefined;
}
