/** What the stand-in remembers of a workbook: plain data, no protocol. */
import { intersection, MAX_ROWS, type Area } from './address';

export type CellValue = string | number | boolean;
export type Style = Record<string, unknown>;
export type Plain = Record<string, unknown>;

export interface Cell {
  value: CellValue;
  formula?: string;
  style?: Style;
  /** The size of what this formula spills, itself included. */
  spill?: { rows: number; columns: number };
  /** The key of the formula that spilled here. */
  spilledFrom?: number;
}

export interface TableModel {
  id: string;
  name: string;
  sheet: Sheet;
  area: Area;
  columns: { id: number; name: string; filter: unknown }[];
  showHeaders: boolean;
  showTotals: boolean;
  style: string;
  bag: Plain;
}

export interface NameModel {
  name: string;
  formula: string;
  comment: string;
  visible: boolean;
  scope: Sheet | undefined;
}

export interface ConditionalFormatModel {
  id: string;
  sheet: Sheet;
  area: Area;
  type: string;
  bag: Plain;
  style: Style;
}

export interface CommentModel {
  id: string;
  sheet: Sheet;
  row: number;
  column: number;
  content: string;
  resolved: boolean;
}

/** A chart or a shape: what stands on a sheet above the cells. */
export interface Drawing {
  id: string;
  sheet: Sheet;
  bag: Plain;
  series: Plain[];
  source?: { sheet: Sheet; area: Area };
}

export class Sheet {
  readonly cells = new Map<number, Cell>();
  readonly columnStyles = new Map<number, Style>();
  readonly columnWidths = new Map<number, number>();
  readonly rowHeights = new Map<number, number>();
  readonly hiddenRows = new Set<number>();
  readonly hiddenColumns = new Set<number>();
  merged: Area[] = [];
  frozen: Area | undefined;
  filter: { area: Area; criteria: unknown[] } | undefined;
  protection: { options: Plain; password: string } | undefined;
  conditionalFormats: ConditionalFormatModel[] = [];
  charts: Drawing[] = [];
  shapes: Drawing[] = [];
  readonly page: Plain = {};
  readonly properties = new Map<string, unknown>();
  visibility = 'Visible';
  readonly bag: Plain = { TabColor: '', ShowGridlines: true, ShowHeadings: true, EnableCalculation: true };

  constructor(
    readonly id: string,
    public name: string,
  ) {}

  cell(row: number, column: number): Cell | undefined {
    return this.cells.get(keyOf(row, column));
  }

  /** The cell to write to, made where there is none. */
  open(row: number, column: number): Cell {
    const key = keyOf(row, column);
    let cell = this.cells.get(key);
    if (cell === undefined) this.cells.set(key, (cell = { value: '' }));
    return cell;
  }
}

export class Workbook {
  name = 'Book1.xlsx';
  readonly sheets: Sheet[] = [];
  tables: TableModel[] = [];
  names: NameModel[] = [];
  comments: CommentModel[] = [];
  readonly settings = new Map<string, unknown>();
  active: Sheet;
  selection: Area = { row: 0, column: 0, rows: 1, columns: 1 };
  calculationMode = 'Automatic';
  decimalSeparator = '.';
  thousandsSeparator = ',';
  private lastId = 0;

  constructor(...names: readonly string[]) {
    for (const name of names.length === 0 ? ['Sheet1'] : names) this.addSheet(name);
    this.active = this.sheets[0] as Sheet;
  }

  newId(): string {
    this.lastId += 1;
    return `{${String(this.lastId).padStart(8, '0')}-0000-0000-0000-000000000000}`;
  }

  newNumber(): number {
    return (this.lastId += 1);
  }

  addSheet(name: string): Sheet {
    const sheet = new Sheet(this.newId(), name);
    this.sheets.push(sheet);
    return sheet;
  }

  sheetNamed(name: string): Sheet | undefined {
    const wanted = name.toLowerCase();
    return this.sheets.find((sheet) => sheet.name.toLowerCase() === wanted || sheet.id === name);
  }

  tablesOn(sheet: Sheet): TableModel[] {
    return this.tables.filter((table) => table.sheet === sheet);
  }
}

export const keyOf = (row: number, column: number): number => row * 16_384 + column;
export const rowOf = (key: number): number => Math.floor(key / 16_384);
export const columnOf = (key: number): number => key % 16_384;

/** The cells of an area that are there, whatever the area's size. */
export function* cellsIn(sheet: Sheet, area: Area): Generator<[row: number, column: number, cell: Cell]> {
  if (area.rows * area.columns <= sheet.cells.size) {
    for (let row = area.row; row < area.row + area.rows; row += 1) {
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        const cell = sheet.cell(row, column);
        if (cell !== undefined) yield [row, column, cell];
      }
    }
    return;
  }
  for (const [key, cell] of [...sheet.cells]) {
    const row = rowOf(key);
    const column = columnOf(key);
    if (intersection(area, { row, column, rows: 1, columns: 1 }) !== undefined) yield [row, column, cell];
  }
}

export const isFilled = (cell: Cell | undefined): boolean =>
  cell !== undefined && (cell.formula !== undefined || cell.value !== '');

/** The smallest area holding every filled cell, or undefined on a blank sheet. */
export function usedArea(sheet: Sheet, within: Area, valuesOnly: boolean): Area | undefined {
  let top = Infinity;
  let left = Infinity;
  let bottom = -1;
  let right = -1;
  for (const [row, column, cell] of cellsIn(sheet, within)) {
    if (!isFilled(cell) && (valuesOnly || cell.style === undefined)) continue;
    top = Math.min(top, row);
    left = Math.min(left, column);
    bottom = Math.max(bottom, row);
    right = Math.max(right, column);
  }
  if (bottom < 0) return undefined;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** A whole column's style is kept once, not in a million cells. */
export function setStyle(sheet: Sheet, area: Area, key: string, value: unknown): void {
  if (area.rows === MAX_ROWS) {
    for (let column = area.column; column < area.column + area.columns; column += 1) {
      sheet.columnStyles.set(column, { ...sheet.columnStyles.get(column), [key]: value });
    }
    for (const [, , cell] of cellsIn(sheet, area)) delete cell.style?.[key];
    return;
  }
  for (let row = area.row; row < area.row + area.rows; row += 1) {
    for (let column = area.column; column < area.column + area.columns; column += 1) {
      const cell = sheet.open(row, column);
      (cell.style ??= {})[key] = value;
    }
  }
}

export const styleAt = (sheet: Sheet, row: number, column: number, key: string): unknown =>
  sheet.cell(row, column)?.style?.[key] ?? sheet.columnStyles.get(column)?.[key];
