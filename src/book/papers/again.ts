/**
 * Papers made again: one that nobody touched is made anew in its place, one that somebody edited is kept
 * and the new one stands beside it. A paper carries a mark of what it was made with, outside what is printed.
 */
import { PAPER_KINDS, type PaperKind } from '../../core/papers/paper';
import type { Block, BookRead, CellPut, CellValue, Contents } from '../book';

/** A paper that stands in the workbook. */
export interface Standing {
  readonly sheet: string;
  readonly kind: PaperKind;
  readonly edited: boolean;
}

/** What one cell holds, as it is typed. */
interface Held {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** A short number for what the cells hold (FNV-1a, 32 bits). */
function numberOf(held: readonly Held[]): string {
  let hash = 0x811c9dc5;
  const inOrder = [...held].sort((one, other) => one.row - other.row || one.column - other.column);
  for (const { row, column, text } of inOrder)
    for (const character of `${row},${column},${text};`) {
      hash ^= character.codePointAt(0) ?? 0;
      hash = Math.imul(hash, 0x01000193) >>> 0;
    }
  return hash.toString(16).padStart(8, '0');
}

const POINTS_AT_A_CELL = /^=IF\(LEN\((.+)\)=0,"",\1\)$/;

/** What a paper's cell shows where it points at a cell of the job, as a formula. */
export const pointingAt = (cell: string): string => `=IF(LEN(${cell})=0,"",${cell})`;

/** Where a formula points is Excel's to follow: a row inserted above or a sheet renamed is no edit. */
const textOf = (put: CellPut | CellValue): string => {
  const text = typeof put === 'object' && put !== null ? put.formula : String(put ?? '');
  return POINTS_AT_A_CELL.test(text) ? '=' : text;
};

const MARK = /^Made from the job; made anew unless you change it · (\w+) ([0-9a-f]{8})$/;

/** The words of a paper's mark. */
export function markOf(
  kind: PaperKind,
  puts: readonly { readonly row: number; readonly column: number; readonly put: CellPut }[],
): string {
  const held = puts.map(({ row, column, put }) => ({ row, column, text: textOf(put) }));
  return `Made from the job; made anew unless you change it · ${kind} ${numberOf(held)}`;
}

/** What a sheet holds, read as a paper; undefined where it bears no mark. */
export function standingPaper(sheet: string, { area, values, formulas }: Block): Standing | undefined {
  let mark: RegExpExecArray | undefined;
  const held: Held[] = [];
  for (const [down, row] of values.entries())
    for (const [right, value] of row.entries()) {
      const formula = formulas[down]?.[right] ?? null;
      if (formula === null && (value === null || value === '')) continue;
      const found = typeof value === 'string' ? MARK.exec(value) : null;
      if (found !== null) mark = found;
      else held.push({ row: area.row + down, column: area.column + right, text: textOf(formula ?? value) });
    }
  const kind = PAPER_KINDS.find((one) => one === mark?.[1]);
  return mark === undefined || kind === undefined
    ? undefined
    : { sheet, kind, edited: mark[2] !== numberOf(held) };
}

/** The papers that stand in a workbook already. */
export async function papersIn(book: BookRead, contents: Contents): Promise<readonly Standing[]> {
  const used = contents.sheets.flatMap((sheet) => sheet.used ?? []);
  const blocks = await book.read(used, 'contents');
  return blocks.flatMap((block) => standingPaper(block.area.sheet, block) ?? []);
}
