/** Between a workbook's cells as the port has them and as the grid keeps them. */
import { CellValueType, type ICellData, type IRange, type Nullable } from '@univerjs/core';
import type { Area } from '../book/address';
import type { CellPut, CellValue } from '../book/book';

export const rangeOf = (area: Area): IRange => ({
  startRow: area.row,
  endRow: area.row + area.rows - 1,
  startColumn: area.column,
  endColumn: area.column + area.columns - 1,
});

export const areaOf = (sheet: string, range: IRange): Area => ({
  sheet,
  row: range.startRow,
  column: range.startColumn,
  rows: range.endRow - range.startRow + 1,
  columns: range.endColumn - range.startColumn + 1,
});

export function valueOf(cell: Nullable<ICellData>): CellValue {
  if (!cell) return null;
  const v = cell.v;
  if (v === null || v === undefined || v === '') return typeof cell.p === 'object' ? richText(cell) : null;
  return cell.t === CellValueType.BOOLEAN ? Number(v) === 1 : v;
}

/** A cell written in several styles keeps its text in a document. */
function richText(cell: ICellData): CellValue {
  const text = cell.p?.body?.dataStream.replace(/\r\n$/, '') ?? '';
  return text === '' ? null : text;
}

/** Everything the cell held goes: value, formula, shared formula, rich text. Its style stays. */
const EMPTY: ICellData = { v: null, f: null, si: null, p: null, t: null };

export function cellOf(put: Exclude<CellPut, undefined>): ICellData {
  if (put === null || put === '') return EMPTY;
  if (typeof put === 'object') return { ...EMPTY, f: put.formula };
  if (typeof put === 'number') return { ...EMPTY, v: put, t: CellValueType.NUMBER };
  if (typeof put === 'boolean') return { ...EMPTY, v: put ? 1 : 0, t: CellValueType.BOOLEAN };
  return { ...EMPTY, v: put, t: CellValueType.STRING };
}
