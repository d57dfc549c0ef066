/** One open workbook with everything around it: what the kinds may ask for. */
import { holds, intersection, splitSheet, type Area } from './address';
import { accessDenied, type Thing } from './kind';
import {
  cellsIn,
  columnOf,
  isFilled,
  keyOf,
  rowOf,
  styleAt,
  type CellValue,
  type Sheet,
  type Workbook,
} from './model';

/** Works out every formula of the workbook, using `formulasOf` and `World.settle`. */
export type Calculator = (world: World) => void | Promise<void>;

/** A custom function's value, or the sentence and code of its error. */
export type FunctionAnswer =
  { readonly value: unknown } | { readonly sentence: string; readonly code: number };

export interface FormulaCell {
  readonly sheet: Sheet;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/** Excel shows #BUSY! until a custom function has answered. */
export const neverAnswers: Calculator = (world) => {
  for (const { sheet, row, column } of world.formulas()) world.settle(sheet, row, column, '#BUSY!');
};

export class World {
  calculator: Calculator = neverAnswers;
  dirty = false;
  readonly references = new Map<string, Thing>();
  /** What the client asked to be told of. */
  readonly listening = new Set<string>();
  /** Calls of custom functions that have no answer yet. */
  readonly calls = new Map<number, (answer: FunctionAnswer) => void>();
  /** Set while a batch must not calculate or repaint. */
  suspended = false;
  private lastReference = 0;

  constructor(readonly book: Workbook) {}

  keep(one: Thing): string {
    this.lastReference += 1;
    const id = `ref-${String(this.lastReference)}`;
    this.references.set(id, one);
    return id;
  }

  /** Refused where the sheet is protected and a cell of the area is locked. */
  mayWrite(sheet: Sheet, area: Area): void {
    if (sheet.protection === undefined) return;
    if (area.rows * area.columns > 1_000_000) throw accessDenied();
    for (let row = area.row; row < area.row + area.rows; row += 1) {
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        if (styleAt(sheet, row, column, 'Protection.Locked') !== false) throw accessDenied();
      }
    }
  }

  /** Refused on a protected sheet unless its protection allows it. */
  mayChange(sheet: Sheet, option: string): void {
    if (sheet.protection !== undefined && sheet.protection.options[option] !== true) throw accessDenied();
  }

  *formulas(): Generator<FormulaCell> {
    for (const sheet of this.book.sheets) {
      for (const [key, { formula }] of sheet.cells) {
        if (formula !== undefined) yield { sheet, row: rowOf(key), column: columnOf(key), formula };
      }
    }
  }

  /** Puts a worked-out value, or rows that spill, into a formula's cell. */
  settle(
    sheet: Sheet,
    row: number,
    column: number,
    result: CellValue | readonly (readonly CellValue[])[],
  ): void {
    const anchor = sheet.open(row, column);
    this.unspill(sheet, row, column);
    if (!Array.isArray(result)) {
      anchor.value = result as CellValue;
      return;
    }
    const rows = result as readonly (readonly CellValue[])[];
    const area = { row, column, rows: rows.length, columns: rows[0]?.length ?? 0 };
    if (area.rows === 1 && area.columns === 1) {
      anchor.value = rows[0]?.[0] ?? 0;
      return;
    }
    const inTable = this.book.tablesOn(sheet).some((table) => intersection(table.area, area) !== undefined);
    const blocked = [...cellsIn(sheet, area)].some(
      ([at, across, cell]) => (at !== row || across !== column) && isFilled(cell),
    );
    if (inTable || blocked) {
      anchor.value = '#SPILL!';
      return;
    }
    rows.forEach((line, down) => {
      line.forEach((value, across) => {
        const cell = sheet.open(row + down, column + across);
        cell.value = value;
        if (down > 0 || across > 0) cell.spilledFrom = keyOf(row, column);
      });
    });
    anchor.spill = { rows: area.rows, columns: area.columns };
  }

  unspill(sheet: Sheet, row: number, column: number): void {
    const anchor = sheet.cell(row, column);
    if (anchor?.spill === undefined) return;
    const key = keyOf(row, column);
    for (const [, , cell] of cellsIn(sheet, { row, column, ...anchor.spill })) {
      if (cell.spilledFrom === key) {
        cell.value = '';
        delete cell.spilledFrom;
      }
    }
    delete anchor.spill;
  }

  /** Whether merged cells lie across the area's border. */
  cutsMerge(sheet: Sheet, area: Area): boolean {
    return sheet.merged.some((merge) => intersection(merge, area) !== undefined && !holds(area, merge));
  }

  sheetOf(address: string, otherwise: Sheet): { sheet: Sheet | undefined; rest: string } {
    const { sheet, rest } = splitSheet(address);
    return { sheet: sheet === undefined ? otherwise : this.book.sheetNamed(sheet), rest };
  }
}
