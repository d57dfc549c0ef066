/** What goes into the engine and what comes out of it, in plain terms. */
import type { Call } from './functions';

/** null where blank; an error as its text, “#N/A”. */
export type CellValue = number | string | boolean | null;

export interface CellAt {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  /** “=…”; `value` is then left aside. */
  readonly formula?: string;
}

export interface SheetOf {
  readonly name: string;
  readonly cells: readonly CellAt[];
}

export interface NameOf {
  readonly name: string;
  /** Without “=”: Rules!$A$2:$B$9. */
  readonly refersTo: string;
}

/** Formulas as typed (HEM.X, no file prefixes), table references already made plain ranges. */
export interface WorkbookOf {
  readonly sheets: readonly SheetOf[];
  readonly names: readonly NameOf[];
}

/** What a formula gave. */
export interface Given {
  readonly value: CellValue;
  /** Where it fills more than its own cell: every row of it, its own cell first. */
  readonly spill?: readonly (readonly CellValue[])[];
  /** The calls of our functions in this formula, in the order they were answered. */
  readonly calls: readonly Call[];
  /** The engine failed at it: its value means nothing. */
  readonly fault?: string;
}

/** What a cell's formula gave. */
export interface Computed extends Given {
  /** Its sheet's place in the workbook, from 0. */
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  /** Where it wanted to spill and could not (#SPILL!): how far it would reach. */
  readonly wanted?: { readonly rows: number; readonly columns: number };
}

export type Progress = (done: number, total: number) => void;
