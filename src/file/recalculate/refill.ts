/** A workbook file filled: what was computed written back, and how calls of ours are stored. */
import { cellText, placeText } from '../../book/address';
import { Grid } from '../../engine/native/values';
import type { CellValue } from '../../engine/workbook';
import type { Parts } from '../xlsx/archive';
import { inArea, keyOf, storedText, type FormulaCell } from './collect';
import { storedForm } from './formula';
import { chainArrays, spillMark, storeHeldFormulas } from '../xlsx/marked';
import { patchSheet, type CellWrite } from '../xlsx/patch';
import { asCell, recalculate, sameScalar, type Answer, type Recalculation, type Wish } from './recalculate';
import { hasValue, scalarOf } from './sheets';
import { bytesOfPieces, textPieces } from '../xlsx/text';
import type { WorkbookFile, WorksheetFile } from '../xlsx/workbook';

export interface Refilled {
  /** The new file's parts; those that did not change are the old ones' own bytes. */
  readonly parts: Parts;
  readonly done: Recalculation;
  /** Cells whose shown value changed. */
  readonly changed: number;
}

type Pack = (part: string, pieces: Iterable<Uint8Array>) => Uint8Array;

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const [first] = pieces;
  if (first !== undefined && pieces.length === 1) return first;
  const all = new Uint8Array(pieces.reduce((length, one) => length + one.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** A link to us that a program broke, [2]!_xldudf_HEM_…, is mended with it. */
const mended = (stored: string): string => storedForm(stored.replace(/\[\d+\]!(?=_xldudf_HEM_)/gi, ''));

/** What is to be written into one sheet, and what stands there now. */
class SheetWork {
  readonly #writes = new Map<number, CellWrite>();
  readonly #old: ReadonlyMap<number, CellValue>;
  changed = 0;

  constructor({ seen }: WorksheetFile, spills: boolean) {
    this.#old = new Map(
      spills
        ? seen.rows.flatMap(({ cells }) => cells.map((cell) => [keyOf(cell.row, cell.column), cell.value]))
        : [],
    );
  }

  get writes(): readonly CellWrite[] {
    return [...this.#writes.values()];
  }

  put(write: CellWrite): void {
    this.#writes.set(keyOf(write.row, write.column), write);
  }

  /** A value beside its formula; one spill may take over what another leaves. */
  fill(row: number, column: number, value: CellValue): void {
    const key = keyOf(row, column);
    const shown = this.#old.get(key) ?? null;
    if (shown !== null && value !== null && sameScalar(shown, value)) this.#writes.delete(key);
    else this.put({ row, column, value });
  }

  leave(row: number, column: number): void {
    const key = keyOf(row, column);
    if (!this.#writes.has(key) && (this.#old.get(key) ?? null) !== null)
      this.put({ row, column, value: null });
  }
}

/** `pack`: how a sheet is packed while it is written, where the parts are for a zip and nothing else. */
export function refill(file: WorkbookFile, wish: Wish & { readonly pack?: Pack } = {}): Refilled {
  const done = recalculate(file, wish);
  const { formulas, answers } = done;
  const parts: Parts = new Map(file.parts);
  const spills = file.sheets.map(() => false);
  for (const [at, formula] of formulas.entries())
    if (answers[at] !== undefined && (formula.kind !== 'plain' || answers[at]?.value instanceof Grid))
      spills[formula.sheet] = true;
  const work = file.sheets.map((sheet, at) => new SheetWork(sheet, spills[at] === true));
  for (const [at, formula] of formulas.entries()) {
    const answer = answers[at];
    if (answer !== undefined && answer.circle !== true) leaveOld(work[formula.sheet], formula, answer);
  }
  const made: { sheet: number; cell: string }[] = [];
  let mark: string | undefined;
  for (const [at, formula] of formulas.entries()) {
    const answer = answers[at];
    const sheet = work[formula.sheet];
    if (answer === undefined || answer.circle === true || sheet === undefined) continue;
    if (answer.value === undefined) {
      drop(sheet, formula);
      continue;
    }
    const write = writeOf(sheet, formula, answer, file, () => (mark ??= spillMark(file, parts)));
    if (write === undefined) continue;
    sheet.put(write);
    if (write.spilling !== undefined && !isMarked(formula, file))
      made.push({ sheet: formula.sheet, cell: cellText(formula.row, formula.column) });
  }
  let changed = 0;
  for (const [at, sheetWork] of work.entries()) {
    const sheet = file.sheets[at];
    const { writes } = sheetWork;
    if (sheet?.part === undefined || writes.length === 0) continue;
    changed += changedIn(sheet, writes);
    const { part, bytes, seen } = sheet;
    const pieces = bytesOfPieces(patchSheet(textPieces(bytes, part), part, seen, writes));
    parts.set(part, wish.pack === undefined ? joined([...pieces]) : wish.pack(part, pieces));
  }
  storeHeldFormulas(file, parts);
  chainArrays(file, parts, made);
  return { parts, done, changed };
}

/** How many of the cells written show something else than before. */
function changedIn({ seen }: WorksheetFile, writes: readonly CellWrite[]): number {
  const byCell = new Map(writes.map((write) => [keyOf(write.row, write.column), write.value]));
  let changed = 0;
  for (const { cells } of seen.rows)
    for (const { row, column, value } of cells) {
      const key = keyOf(row, column);
      const written = byCell.get(key);
      if (written === undefined) continue;
      byCell.delete(key);
      if (written !== value) changed += 1;
    }
  for (const value of byCell.values()) if (value !== null) changed += 1;
  return changed;
}

const isMarked = ({ cell }: FormulaCell, file: WorkbookFile): boolean =>
  cell.metadata !== undefined && file.dynamic.marks.has(cell.metadata);

/** No value is better than a wrong one: a program that opens the file computes it by the cell's own mark. */
function drop(sheet: SheetWork, formula: FormulaCell): void {
  const { row, column, cell } = formula;
  if (!hasValue(cell) && cell.formula?.always === true) return;
  sheet.put({ row, column, value: null, dropped: true });
}

function writeOf(
  sheet: SheetWork,
  formula: FormulaCell,
  answer: Answer,
  file: WorkbookFile,
  markOf: () => string,
): CellWrite | undefined {
  const { row, column, cell } = formula;
  const rows = answer.value instanceof Grid ? answer.value : undefined;
  const first = rows === undefined ? (answer.value ?? null) : rows.at(0, 0);
  const old = scalarOf(cell);
  const same = hasValue(cell) && sameScalar(first as typeof old, old);
  const value = same ? formula.old : asCell(first as typeof old);
  if (rows !== undefined)
    for (let r = 0; r < rows.rows; r++)
      for (let c = 0; c < rows.columns; c++)
        if (r + c > 0) sheet.fill(row + r, column + c, asCell(rows.at(r, c)));
  const computed = cell.formula?.always === true && !formula.shape.volatile;
  if (formula.kind !== 'dynamic') return same && !computed ? undefined : { row, column, value, computed };
  const stored = storedText(formula);
  const text = formula.shape.ours ? mended(stored) : stored;
  const marked = isMarked(formula, file);
  const ref = placeText({ ...formula.reach, rows: rows?.rows ?? 1, columns: rows?.columns ?? 1 });
  if (marked && text === stored && ref === placeText(formula.reach))
    return same && !computed ? undefined : { row, column, value, computed };
  const mark = (marked ? cell.metadata : undefined) ?? markOf();
  return { row, column, value, spilling: { text, ref, mark } };
}

/** Cells a spill filled before and fills no more. */
function leaveOld(sheet: SheetWork | undefined, formula: FormulaCell, { value }: Answer): void {
  if (formula.kind === 'plain') return;
  const { row, column, rows, columns } = formula.reach;
  const now = { ...formula.reach, rows: 1, columns: 1 };
  if (value instanceof Grid) Object.assign(now, { rows: value.rows, columns: value.columns });
  for (let r = row; r < row + rows; r++)
    for (let c = column; c < column + columns; c++) if (!inArea(now, r, c)) sheet?.leave(r, c);
}
