/** Where things stand in a workbook. Rows and columns count from 0, as the hosts count them. */

import { letters } from '../core/cell/letters';

export { letters };

export interface Area {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

export const areaAt = (sheet: string, row: number, column: number, rows = 1, columns = 1): Area => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

export const columnOf = (text: string): number =>
  [...text.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** A1, or with $ where it must not move when the formula is filled on. */
export const cellText = (row: number, column: number, fixed: { row?: boolean; column?: boolean } = {}) =>
  `${fixed.column === true ? '$' : ''}${letters(column)}${fixed.row === true ? '$' : ''}${row + 1}`;

/** Windows, or 'Ground floor' where a plain word would not do. */
export const sheetText = (sheet: string): string =>
  /^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet) && !/^([A-Za-z]{1,3}\d+|[Rr]\d*[Cc]\d*|[RrCc])$/.test(sheet)
    ? sheet
    : `'${sheet.replace(/'/g, "''")}'`;

/** A1:C9 without its sheet. */
export function placeText(area: Area, fixed = false): string {
  const dollars = { row: fixed, column: fixed };
  const first = cellText(area.row, area.column, dollars);
  if (area.rows === 1 && area.columns === 1) return first;
  return `${first}:${cellText(area.row + area.rows - 1, area.column + area.columns - 1, dollars)}`;
}

/** Windows!A1:C9, as it stands in a formula. */
export const areaText = (area: Area, fixed = false): string =>
  `${sheetText(area.sheet)}!${placeText(area, fixed)}`;

const CELL = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/;

/** Reads “Windows!A1:C9” or “A1”; undefined where it is no address. A sheet left out is `sheet`. */
export function readAddress(text: string, sheet = ''): Area | undefined {
  const parts = /^(?:(?:'((?:[^']|'')+)'|([^'!]+))!)?([^!:]+)(?::([^!:]+))?$/.exec(text.trim());
  if (parts === null) return undefined;
  const from = CELL.exec(parts[3] ?? '');
  const to = CELL.exec(parts[4] ?? parts[3] ?? '');
  if (from === null || to === null) return undefined;
  const rows = [Number(from[2]) - 1, Number(to[2]) - 1] as const;
  const columns = [columnOf(from[1] ?? ''), columnOf(to[1] ?? '')] as const;
  return {
    sheet: parts[1]?.replace(/''/g, "'") ?? parts[2] ?? sheet,
    row: Math.min(...rows),
    column: Math.min(...columns),
    rows: Math.abs(rows[1] - rows[0]) + 1,
    columns: Math.abs(columns[1] - columns[0]) + 1,
  };
}

export const wholeSheet = (sheet: string): Area => areaAt(sheet, 0, 0, MOST_ROWS, MOST_COLUMNS);

export const sameSheet = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** What two areas share, or undefined. */
export function common(one: Area, other: Area): Area | undefined {
  if (!sameSheet(one.sheet, other.sheet)) return undefined;
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return rows > 0 && columns > 0 ? { sheet: one.sheet, row, column, rows, columns } : undefined;
}

export const within = (inner: Area, outer: Area): boolean => {
  const shared = common(inner, outer);
  return shared !== undefined && shared.rows === inner.rows && shared.columns === inner.columns;
};
