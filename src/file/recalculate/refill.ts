/** A workbook file computed anew and written back: values, spills, and how calls of ours are stored. */
import { cellText, placeText, type Area } from '../../book/address';
import type { Library } from '../../engine/library';
import type { CellValue, Computed, Progress } from '../../engine/workbook';
import type { Parts } from '../xlsx/archive';
import { inArea, keyOf, type FormulaCell } from './collect';
import { storedForm } from './formula';
import { chainArrays, spillMark, storeHeldFormulas } from '../xlsx/marked';
import { patchSheet, type CellWrite } from '../xlsx/patch';
import { recalculate, type Result } from './recalculate';
import { bytesOfText } from '../xlsx/text';
import type { WorkbookFile, WorksheetFile } from '../xlsx/workbook';

export interface Refilled {
  /** The new file's parts; those that did not change are the old ones' own bytes. */
  readonly parts: Parts;
  readonly results: readonly Result[];
  /** Cells whose shown value changed. */
  readonly changed: number;
}

/** A program that computed before us may differ in a number's last digit: then its own stands. */
function sameValue(one: CellValue, other: CellValue): boolean {
  if (typeof one === 'number' && typeof other === 'number')
    return one === other || Math.abs(one - other) <= 1e-14 * Math.max(Math.abs(one), Math.abs(other));
  return one === other;
}

/** A link to us that a program broke, [2]!_xldudf_HEM_…, is mended with it. */
const mended = (stored: string): string => storedForm(stored.replace(/\[\d+\]!(?=_xldudf_HEM_)/gi, ''));

/** What is to be written into one sheet, and what stands there now. */
class SheetWork {
  readonly #writes = new Map<number, CellWrite>();
  readonly #old: ReadonlyMap<number, CellValue>;
  changed = 0;

  constructor({ seen }: WorksheetFile) {
    this.#old = new Map(
      seen.rows.flatMap(({ cells }) => cells.map((cell) => [keyOf(cell.row, cell.column), cell.value])),
    );
  }

  get writes(): readonly CellWrite[] {
    return [...this.#writes.values()];
  }

  shown(row: number, column: number): CellValue {
    return this.#old.get(keyOf(row, column)) ?? null;
  }

  put(write: CellWrite): void {
    this.#writes.set(keyOf(write.row, write.column), write);
  }

  /** A value beside its formula; one spill may take over what another leaves. */
  fill(row: number, column: number, value: CellValue): void {
    if (sameValue(this.shown(row, column), value)) this.#writes.delete(keyOf(row, column));
    else this.put({ row, column, value });
  }

  leave(row: number, column: number): void {
    if (!this.#writes.has(keyOf(row, column)) && this.shown(row, column) !== null)
      this.put({ row, column, value: null });
  }
}

export async function refill(file: WorkbookFile, library: Library, progress?: Progress): Promise<Refilled> {
  const { results, engine } = await recalculate(file, library, progress);
  engine.dispose();
  const parts: Parts = new Map(file.parts);
  const work = file.sheets.map((sheet) => new SheetWork(sheet));
  const made: { sheet: number; cell: string }[] = [];
  let mark: string | undefined;
  for (const { formula, given } of results)
    if (given !== undefined) leaveOld(work[formula.sheet], formula, given);
  for (const result of results) {
    const { formula } = result;
    const sheet = work[formula.sheet];
    if (sheet === undefined) continue;
    const values = valuesOf(result);
    const { row, column, old } = formula;
    const first = values[0]?.[0] ?? null;
    const value = sameValue(first, old) ? old : first;
    if (result.given !== undefined) fillBeside(sheet, formula, values);
    if (formula.kind !== 'dynamic') {
      if (value !== old) sheet.put({ row, column, value });
      continue;
    }
    const text = formula.ours ? mended(formula.stored) : formula.stored;
    const marked = isMarked(formula, file);
    const ref = placeText(result.given === undefined ? formula.reach : areaOf(formula, values));
    if (marked && value === old && text === formula.stored && ref === placeText(formula.reach)) continue;
    mark ??= spillMark(file, parts);
    if (!marked) made.push({ sheet: formula.sheet, cell: cellText(row, column) });
    sheet.put({
      row,
      column,
      value,
      spilling: { text, ref, mark: (marked ? formula.cell.metadata : undefined) ?? mark },
    });
  }
  let changed = 0;
  for (const [at, sheetWork] of work.entries()) {
    const sheet = file.sheets[at];
    const { writes } = sheetWork;
    if (sheet?.part === undefined || writes.length === 0) continue;
    changed += writes.filter(
      ({ row, column, value }) => !sameValue(sheetWork.shown(row, column), value),
    ).length;
    parts.set(sheet.part, bytesOfText(patchSheet(sheet.xml, sheet.part, sheet.seen, writes)));
  }
  storeHeldFormulas(file, parts);
  chainArrays(file, parts, made);
  return { parts, results, changed };
}

const isMarked = ({ cell }: FormulaCell, file: WorkbookFile): boolean =>
  cell.metadata !== undefined && file.dynamic.marks.has(cell.metadata);

const areaOf = (formula: FormulaCell, values: readonly (readonly CellValue[])[]): Area => ({
  ...formula.reach,
  rows: values.length,
  columns: values[0]?.length ?? 1,
});

/** The rows a formula fills: its spill, what an array of old must fill, or its one value. */
function valuesOf({ formula, given }: Result): readonly (readonly CellValue[])[] {
  if (given === undefined) return [[formula.old]];
  if (given.spill !== undefined && formula.kind !== 'plain') return given.spill;
  if (formula.kind !== 'array') return [[given.value]];
  const { rows, columns } = formula.reach;
  return Array.from({ length: rows }, () => Array.from({ length: columns }, () => given.value));
}

/** Cells a spill filled before and fills no more. */
function leaveOld(sheet: SheetWork | undefined, formula: FormulaCell, given: Computed): void {
  const now = areaOf(formula, valuesOf({ formula, given, sentence: undefined }));
  const { row, column, rows, columns } = formula.reach;
  for (let r = row; r < row + rows; r++) {
    for (let c = column; c < column + columns; c++) if (!inArea(now, r, c)) sheet?.leave(r, c);
  }
}

function fillBeside(sheet: SheetWork, formula: FormulaCell, values: readonly (readonly CellValue[])[]): void {
  for (const [down, line] of values.entries()) {
    for (const [right, value] of line.entries())
      if (down + right > 0) sheet.fill(formula.row + down, formula.column + right, value);
  }
}
