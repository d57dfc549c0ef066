/** Tables that part decimals by a comma: “3,76” and, for the same reason, “2,955”. */
import type { Cell, Row } from './cells';

/** Figures only: thousands by points or spaces, then a comma and decimals. */
const BY_COMMA = /^(-?\d{1,3}(?:[. ]\d{3})+|-?\d+),(\d+)$/;
/** “3,76”, “1.842,30”: nothing but a decimal comma; “2,955” could part thousands. */
const SURELY = /^-?\d*(?:[. ]\d{3})*,(?:\d{1,2}|\d{4,})$/;
/** “3.76”, “1,842.30”, “1.5 yd”: a decimal point. */
const BY_POINT = /^-?\d{1,3}(?:,?\d{3})*\.\d{1,2}(?!\d|\.\d)/;
const FEWEST = 3;

/** Whether a table’s figures are written with a decimal comma and none with a decimal point. */
export function writesCommas(rows: readonly Row[]): boolean {
  let commas = 0;
  for (const row of rows)
    for (const cell of row) {
      if (typeof cell !== 'string') continue;
      if (BY_POINT.test(cell)) return false;
      if (SURELY.test(cell)) commas++;
    }
  return commas >= FEWEST;
}

/** A figure of such a table with a decimal point; everything else as it is. */
export function withPoint(cell: Cell): Cell {
  if (typeof cell !== 'string') return cell;
  const [, whole, part] = BY_COMMA.exec(cell) ?? [];
  return whole === undefined || part === undefined ? cell : `${whole.replace(/[. ]/g, '')}.${part}`;
}

/** Writes a table's decimal commas as points, where it has them; says whether it had. */
export function putPoints(rows: readonly Cell[][]): boolean {
  if (!writesCommas(rows)) return false;
  for (const row of rows) row.forEach((cell, at) => void (row[at] = withPoint(cell)));
  return true;
}
