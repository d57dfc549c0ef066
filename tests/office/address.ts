/** Where cells are: A1 addresses and areas, zero-based inside. */
export const MAX_ROWS = 1_048_576;
export const MAX_COLUMNS = 16_384;

export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export function columnName(column: number): string {
  let name = '';
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    name = String.fromCharCode(65 + ((left - 1) % 26)) + name;
  }
  return name;
}

export const columnNumber = (name: string): number =>
  [...name.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

const CELLS = /^\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/i;
const COLUMNS = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i;
const ROWS = /^\$?(\d{1,7}):\$?(\d{1,7})$/;

function between(top: number, left: number, bottom: number, right: number): Area | undefined {
  const area = {
    row: Math.min(top, bottom),
    column: Math.min(left, right),
    rows: Math.abs(bottom - top) + 1,
    columns: Math.abs(right - left) + 1,
  };
  return onSheet(area) ? area : undefined;
}

export const onSheet = (area: Area): boolean =>
  area.row >= 0 &&
  area.column >= 0 &&
  area.rows > 0 &&
  area.columns > 0 &&
  area.row + area.rows <= MAX_ROWS &&
  area.column + area.columns <= MAX_COLUMNS;

/** An address without a sheet's name, or undefined where it is none. */
export function readArea(address: string): Area | undefined {
  const cells = CELLS.exec(address);
  if (cells !== null) {
    const [, left = '', top = '', right = left, bottom = top] = cells;
    return between(Number(top) - 1, columnNumber(left), Number(bottom) - 1, columnNumber(right));
  }
  const columns = COLUMNS.exec(address);
  if (columns !== null) {
    return between(0, columnNumber(columns[1] ?? ''), MAX_ROWS - 1, columnNumber(columns[2] ?? ''));
  }
  const rows = ROWS.exec(address);
  if (rows !== null) return between(Number(rows[1]) - 1, 0, Number(rows[2]) - 1, MAX_COLUMNS - 1);
  return undefined;
}

export function writeArea(area: Area): string {
  const { row, column, rows, columns } = area;
  if (rows === MAX_ROWS && columns === MAX_COLUMNS) return `1:${String(MAX_ROWS)}`;
  if (rows === MAX_ROWS) return `${columnName(column)}:${columnName(column + columns - 1)}`;
  if (columns === MAX_COLUMNS) return `${String(row + 1)}:${String(row + rows)}`;
  const first = columnName(column) + String(row + 1);
  if (rows === 1 && columns === 1) return first;
  return `${first}:${columnName(column + columns - 1)}${String(row + rows)}`;
}

/** $A$1:$B$2, as a name's formula holds it. */
export const absolute = (area: Area): string => writeArea(area).replace(/[A-Z]+|\d+/g, (part) => `$${part}`);

export const quoted = (sheet: string): string =>
  /^[A-Za-z_][A-Za-z0-9_.]*$/.test(sheet) && readArea(sheet) === undefined
    ? sheet
    : `'${sheet.replaceAll("'", "''")}'`;

/** Splits `'My sheet'!A1` into the sheet's name and the rest. */
export function splitSheet(address: string): { sheet?: string; rest: string } {
  const at = address.lastIndexOf('!');
  if (at < 0) return { rest: address };
  const name = address.slice(0, at);
  return {
    sheet: name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name,
    rest: address.slice(at + 1),
  };
}

export function intersection(one: Area, other: Area): Area | undefined {
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return rows > 0 && columns > 0 ? { row, column, rows, columns } : undefined;
}

export function bounding(one: Area, other: Area): Area {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  return {
    row,
    column,
    rows: Math.max(one.row + one.rows, other.row + other.rows) - row,
    columns: Math.max(one.column + one.columns, other.column + other.columns) - column,
  };
}

export const same = (one: Area, other: Area): boolean =>
  one.row === other.row &&
  one.column === other.column &&
  one.rows === other.rows &&
  one.columns === other.columns;

export const holds = (outer: Area, inner: Area): boolean => {
  const shared = intersection(outer, inner);
  return shared !== undefined && same(shared, inner);
};
