/** A cell as the engine keeps one. */
import type { CellValue } from './workbook';

export interface Range {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

export interface EngineCell {
  v?: string | number | boolean | null;
  t?: number;
  f?: string;
}

export type ByCell<T> = Record<number, Record<number, T>>;
export type BySheet<T> = Record<string, ByCell<T>>;

const TEXT = 1;
const NUMBER = 2;
const TRUTH = 3;

export function engineCell(value: CellValue): EngineCell {
  if (value === null) return {};
  if (typeof value === 'number') return { v: value, t: NUMBER };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: TRUTH };
  return { v: value, t: TEXT };
}

/** A formula that points at a blank gives 0, as a worksheet does. */
export function valueOf(cell: EngineCell | null | undefined): CellValue {
  const v = cell?.v;
  if (v === null || v === undefined) return 0;
  return cell?.t === TRUTH ? Number(v) === 1 : v;
}

/** A value in the middle of a calculation. */
interface Passing {
  isNull(): boolean;
  isBoolean(): boolean;
  getValue(): unknown;
}

export function plainValue(value: Passing | null | undefined): CellValue {
  if (value === null || value === undefined || value.isNull()) return 0;
  const found = value.getValue() as string | number | boolean;
  return value.isBoolean() ? Boolean(found) : found;
}
