/**
 * What a change is about to do to a workbook, and what takes it back. It is kept in the workbook while the
 * change is written, so that a pane that was closed in the middle, or lost its connection, finds it again.
 */
import { sameSheet, type Area } from './address';
import type { Block, CellPut, Changes, Contents, Put } from './book';
import { plainly, sameFormula } from './formula';

/** Cells that stood there before. */
export interface Touched {
  /** What is put into them; one row stands for all where all are alike. */
  readonly put: Put;
  /** What they held; left out where all were empty. */
  readonly held?: readonly (readonly CellPut[])[];
  /** They had no looks of their own either. */
  readonly bare?: boolean;
}
/** Cells of a new sheet: a formula for them all, or the print of what was put there. */
export interface Written {
  readonly area: Area;
  readonly formula?: string;
  readonly print?: string;
}
interface Moved {
  readonly name: string;
  readonly from: Area;
  readonly to: Area;
}

export interface Journal {
  readonly says: string;
  /** Whose pane writes it (Book.owner), and since when (ISO 8601): everyone in the workbook can see it. */
  readonly owner: string;
  readonly since: string;
  readonly touched: readonly Touched[];
  readonly sheets: readonly { readonly name: string; readonly written: readonly Written[] }[];
  readonly names: readonly string[];
  readonly tables: readonly Moved[];
  readonly movedNames: readonly Moved[];
}

export const JOURNAL = 'unfinished';

/** Settings of a workbook hold two million characters; sources: Office.Settings.set, office-js #621. */
export const MOST_KEPT = 500_000;

export const blank = (value: unknown): boolean => value === null || value === undefined || value === '';

export const sameCell = (one: CellPut, other: CellPut): boolean => {
  if (blank(one) || blank(other)) return blank(one) && blank(other);
  if (typeof one !== 'object' || typeof other !== 'object') return one === other;
  return sameFormula(one?.formula ?? '', other?.formula ?? '');
};

/** What the cells of a block hold, as it would be put there. */
export const heldBy = (block: Block): CellPut[][] =>
  block.values.map((row, i) =>
    row.map((value, j) => {
      const formula = block.formulas[i]?.[j] ?? null;
      return formula === null ? value : { formula };
    }),
  );

/** One figure down a whole column is kept once. */
function briefly(put: Put): Put {
  const [first, ...rest] = put.cells ?? [];
  const text = JSON.stringify(first);
  return first !== undefined && rest.every((row) => JSON.stringify(row) === text)
    ? { area: put.area, cells: [first] }
    : put;
}

/** The journal of a change; `blocks` is how the old cells stood that it puts something into. */
export function journalOf(
  { says, owner }: { readonly says: string; readonly owner: string },
  parts: readonly Changes[],
  changes: Changes,
  contents: Contents,
  blocks: ReadonlyMap<Put, Block>,
): Journal {
  const { newSheets = [], newNames = [], resize = [], movedNames = [] } = changes;
  const moves = <T extends { readonly area: Area }>(
    list: readonly T[],
    named: (one: T) => string,
    known: Contents['tables'] | Contents['names'],
  ): Moved[] =>
    list.flatMap((one) => {
      const from = known.find(({ name }) => name === named(one))?.area;
      return from === undefined ? [] : [{ name: named(one), from, to: one.area }];
    });
  return {
    says,
    owner,
    since: new Date().toISOString(),
    touched: [...blocks].map(([put, block]) => ({
      put: briefly(put),
      ...(block.values.every((row) => row.every(blank)) && block.formulas.every((row) => row.every(blank))
        ? {}
        : { held: heldBy(block) }),
      ...(block.bare === true && { bare: true }),
    })),
    sheets: newSheets.map(({ name }) => ({
      name,
      written: parts
        .flatMap(({ puts = [] }) => puts)
        .filter(({ area }) => sameSheet(area.sheet, name))
        .map(({ area, cells, formula }) =>
          formula === undefined ? { area, print: printOf(cells ?? []) } : { area, formula },
        ),
    })),
    names: newNames.map(({ name }) => name),
    tables: moves(resize, ({ table }) => table, contents.tables),
    movedNames: moves(movedNames, ({ name }) => name, contents.names),
  };
}

/** FNV-1a, of what cells hold: enough to tell a changed stretch from one as it was written. */
export function printOf(cells: readonly (readonly CellPut[])[]): string {
  const plain = (one: CellPut): unknown =>
    blank(one) ? null : typeof one === 'object' && one !== null ? [plainly(one.formula)] : one;
  let hash = 0x811c9dc5;
  for (const letter of JSON.stringify(cells.map((row) => row.map(plain)))) {
    hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  return hash.toString(16);
}
