/** Moving cells aside: inserted and deleted cells carry tables, names, merges and formulas along. */
import {
  columnName,
  columnNumber,
  holds,
  intersection,
  MAX_COLUMNS,
  MAX_ROWS,
  quoted,
  readArea,
  writeArea,
  type Area,
} from './address';
import { ExcelError, invalidArgument } from './kind';
import { cellsIn, isFilled, keyOf, type Cell, type Sheet } from './model';
import type { World } from './world';

export interface Shift {
  readonly sheet: Sheet;
  /** Everything from here to the sheet's edge moves. */
  readonly band: Area;
  readonly down: number;
  readonly across: number;
}

export function insertion(sheet: Sheet, area: Area, way: string): Shift {
  return way === 'Down'
    ? { sheet, band: { ...area, rows: MAX_ROWS - area.row }, down: area.rows, across: 0 }
    : { sheet, band: { ...area, columns: MAX_COLUMNS - area.column }, down: 0, across: area.columns };
}

export function deletion(sheet: Sheet, area: Area, way: string): Shift {
  const below = area.row + area.rows;
  const after = area.column + area.columns;
  return way === 'Up'
    ? { sheet, band: { ...area, row: below, rows: MAX_ROWS - below }, down: -area.rows, across: 0 }
    : {
        sheet,
        band: { ...area, column: after, columns: MAX_COLUMNS - after },
        down: 0,
        across: -area.columns,
      };
}

/** Moves what stands in the band; refused where it would cut a table or a merged cell, or push cells off the sheet. */
export function shiftCells(world: World, shift: Shift): void {
  const { sheet, band, down, across } = shift;
  for (const table of world.book.tablesOn(sheet)) {
    if (
      intersection(table.area, band) !== undefined &&
      !holds(band, table.area) &&
      cutsAcross(table.area, shift)
    ) {
      throw new ExcelError(
        'InvalidOperation',
        'This operation is not allowed. It would shift cells in a table on the worksheet.',
      );
    }
  }
  const moving = [...cellsIn(sheet, band)];
  for (const [row, column, cell] of moving) {
    if (isFilled(cell) && (row + down >= MAX_ROWS || column + across >= MAX_COLUMNS)) {
      throw new ExcelError(
        'NonBlankCellOffSheet',
        "To prevent data loss, Excel can't insert new cells because they would push non-empty cells off the end of the worksheet.",
      );
    }
  }
  for (const [row, column] of moving) sheet.cells.delete(keyOf(row, column));
  for (const [row, column, cell] of moving) sheet.cells.set(keyOf(row + down, column + across), cell);
  const moved = (area: Area): Area =>
    holds(band, area)
      ? { ...area, row: area.row + down, column: area.column + across }
      : stretched(area, shift);
  for (const table of world.book.tablesOn(sheet)) {
    if (holds(band, table.area)) table.area = moved(table.area);
  }
  sheet.merged = sheet.merged.map(moved);
  for (const one of sheet.conditionalFormats) one.area = moved(one.area);
  for (const comment of world.book.comments) {
    if (comment.sheet !== sheet) continue;
    const at = moved({ row: comment.row, column: comment.column, rows: 1, columns: 1 });
    comment.row = at.row;
    comment.column = at.column;
  }
  if (band.columns === MAX_COLUMNS || band.column + band.columns === MAX_COLUMNS) moveBands(shift);
  for (const on of world.book.sheets) {
    for (const cell of on.cells.values()) {
      if (cell.formula !== undefined) cell.formula = moveReferences(cell.formula, on === sheet, shift);
    }
  }
  for (const name of world.book.names)
    name.formula = moveReferences(name.formula, name.scope === sheet, shift);
  world.dirty = true;
}

/** A shift along a table's length that starts inside it is fine when it spans the table; otherwise it cuts it. */
function cutsAcross(table: Area, { band, across }: Shift): boolean {
  return across === 0
    ? band.column > table.column || band.column + band.columns < table.column + table.columns
    : band.row > table.row || band.row + band.rows < table.row + table.rows;
}

/** An area that the insertion or deletion falls into grows or shrinks when it lies wholly in the band's lane. */
function stretched(area: Area, { band, down, across }: Shift): Area {
  const shared = intersection(area, band);
  if (shared === undefined) return area;
  if (
    across === 0 &&
    band.column <= area.column &&
    band.column + band.columns >= area.column + area.columns
  ) {
    return { ...area, rows: Math.max(1, area.rows + down) };
  }
  if (down === 0 && band.row <= area.row && band.row + band.rows >= area.row + area.rows) {
    return { ...area, columns: Math.max(1, area.columns + across) };
  }
  return area;
}

/** Whole columns and rows take their widths and hidden state along. */
function moveBands({ sheet, band, down, across }: Shift): void {
  const along = <V>(map: Map<number, V>, from: number, by: number): void => {
    const entries = [...map].map(([at, value]): [number, V] => [at >= from ? at + by : at, value]);
    map.clear();
    for (const [at, value] of entries) map.set(at, value);
  };
  const hide = (set: Set<number>, from: number, by: number): void => {
    const all = [...set].map((at) => (at >= from ? at + by : at));
    set.clear();
    for (const at of all) set.add(at);
  };
  if (band.rows === MAX_ROWS && across !== 0) {
    along(sheet.columnWidths, band.column, across);
    along(sheet.columnStyles, band.column, across);
    hide(sheet.hiddenColumns, band.column, across);
  }
  if (band.columns === MAX_COLUMNS && down !== 0) {
    along(sheet.rowHeights, band.row, down);
    hide(sheet.hiddenRows, band.row, down);
  }
}

const TOKEN =
  /("(?:[^"]|"")*")|((?:'(?:[^']|'')+'|[A-Za-z_][A-Za-z0-9_.]*)!)?(\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?)(?![A-Za-z0-9_(.!])/g;

/** Adjusts the A1 references of a formula that point into the band; a deleted one becomes #REF!. */
export function moveReferences(formula: string, own: boolean, shift: Shift): string {
  return formula.replace(
    TOKEN,
    (whole, text: string | undefined, prefix: string | undefined, reference: string, at: number) => {
      if (text !== undefined || /[A-Za-z0-9_.[]/.test(formula.charAt(at - 1))) return whole;
      const here = prefix === undefined ? own : prefix.slice(0, -1) === quoted(shift.sheet.name);
      const area = here ? readArea(reference) : undefined;
      if (area === undefined) return whole;
      const { band, down, across } = shift;
      const gone =
        down < 0 || across < 0
          ? {
              ...band,
              row: band.row + Math.min(down, 0),
              column: band.column + Math.min(across, 0),
              rows: down < 0 ? -down : band.rows,
              columns: across < 0 ? -across : band.columns,
            }
          : undefined;
      if (gone !== undefined && holds(gone, area)) return `${prefix ?? ''}#REF!`;
      const to = holds(band, area)
        ? { ...area, row: area.row + down, column: area.column + across }
        : stretched(area, shift);
      return (prefix ?? '') + withDollars(reference, to);
    },
  );
}

/** Writes the area with the dollar signs that the reference had. */
function withDollars(reference: string, area: Area): string {
  const corners = reference.split(':');
  const cells = writeArea({ ...area, rows: 1, columns: 1 });
  const last = writeArea({
    row: area.row + area.rows - 1,
    column: area.column + area.columns - 1,
    rows: 1,
    columns: 1,
  });
  return corners
    .map((corner, at) => {
      const [, column = '', row = ''] = /^([A-Z]+)(\d+)$/.exec(at === 0 ? cells : last) ?? [];
      const [, before = '', between = ''] = /^(\$?)[A-Z]+(\$?)\d+$/.exec(corner) ?? [];
      return before + column + between + row;
    })
    .join(':');
}

/** A formula carried to another cell: relative references move with it. */
export function carried(formula: string, down: number, across: number): string {
  return formula.replace(
    TOKEN,
    (whole, text: string | undefined, prefix: string | undefined, reference: string, at: number) => {
      if (text !== undefined || /[A-Za-z0-9_.[]/.test(formula.charAt(at - 1))) return whole;
      return (
        (prefix ?? '') +
        reference.replace(
          /(\$?)([A-Z]+)(\$?)(\d+)/g,
          (_, fixed: string, column: string, held: string, row: string) =>
            `${fixed}${fixed === '' ? columnName(columnNumber(column) + across) : column}${held}${held === '' ? String(Number(row) + down) : row}`,
        )
      );
    },
  );
}

export function removeCells(world: World, sheet: Sheet, area: Area): void {
  if (
    world.book
      .tablesOn(sheet)
      .some(
        (table) =>
          intersection(table.area, area) !== undefined &&
          !holds(area, table.area) &&
          area.rows < MAX_ROWS &&
          area.columns < MAX_COLUMNS,
      )
  )
    throw invalidArgument();
  for (const [row, column] of [...cellsIn(sheet, area)]) sheet.cells.delete(keyOf(row, column));
  sheet.merged = sheet.merged.filter((merge) => !holds(area, merge));
  world.book.comments = world.book.comments.filter(
    (one) => one.sheet !== sheet || intersection(area, { ...one, rows: 1, columns: 1 }) === undefined,
  );
  world.book.tables = world.book.tables.filter((table) => table.sheet !== sheet || !holds(area, table.area));
}

export const copyOf = (cell: Cell): Cell => ({
  ...cell,
  ...(cell.style === undefined ? {} : { style: { ...cell.style } }),
});
