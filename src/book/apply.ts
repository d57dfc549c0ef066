/**
 * The one way a change reaches a workbook: looked over first, written in few parts with progress,
 * one undo step, and put back as it was when it is stopped or fails midway.
 */
import { areaText, common, placeText, sameSheet, type Area } from './address';
import type { Block, Book, Changes, Contents, Put } from './book';
import { shifted } from './formula';
import { Trouble, trouble } from './trouble';

export interface Watch {
  readonly signal?: AbortSignal;
  /** Cells written so far, and in all. */
  readonly progress?: (done: number, of: number) => void;
  /** Areas whose filled cells may be overwritten. */
  readonly mayOverwrite?: readonly Area[];
  /** Filled too where rows are hidden or filtered away. */
  readonly hiddenRowsToo?: boolean;
}

/** Cells in one request: well under what a host takes, and few requests for ten thousand rows. */
export const MOST_AT_ONCE = 20_000;

const cellsOf = (area: Area): number => area.rows * area.columns;
const hasFormula = (put: Put): boolean =>
  put.formula !== undefined ||
  (put.cells ?? []).some((row) => row.some((cell) => typeof cell === 'object' && cell !== null));

/** A put in pieces of so many rows that each stays small enough. */
function pieces(put: Put): readonly Put[] {
  const rows = Math.max(1, Math.floor(MOST_AT_ONCE / put.area.columns));
  const list: Put[] = [];
  for (let at = 0; at < put.area.rows; at += rows) {
    const area = { ...put.area, row: put.area.row + at, rows: Math.min(rows, put.area.rows - at) };
    list.push(
      put.formula === undefined
        ? { area, cells: (put.cells ?? []).slice(at, at + area.rows) }
        : { area, formula: shifted(put.formula, at, 0) },
    );
  }
  return list;
}

/** Puts gathered into requests, in order. */
function requests(puts: readonly Put[]): readonly (readonly Put[])[] {
  const list: Put[][] = [];
  let room = 0;
  for (const piece of puts.flatMap(pieces)) {
    const size = cellsOf(piece.area);
    if (list.length === 0 || size > room) {
      list.push([]);
      room = MOST_AT_ONCE;
    }
    list.at(-1)?.push(piece);
    room -= size;
  }
  return list;
}

const ordinaryName = /^[A-Za-z_\\][\w.\\]{0,254}$/;
const likeACell = /^([A-Za-z]{1,3}\d+|[Rr]\d*([Cc]\d*)?|[Cc]\d*)$/;

/** Why a text cannot name a table or a range, or undefined. */
export function nameFault(name: string): string | undefined {
  if (likeACell.test(name)) return 'it reads like the address of a cell';
  return ordinaryName.test(name)
    ? undefined
    : 'a name begins with a letter and holds letters, digits, dots and underscores only';
}

/** Why a text cannot name a sheet, or undefined. */
export function sheetNameFault(name: string): string | undefined {
  if (name.trim() === '') return 'a sheet needs a name';
  if (name.length > 31) return 'a sheet’s name holds 31 characters at most';
  if (/[\\/?*[\]:]/.test(name)) return 'a sheet’s name cannot hold \\ / ? * [ ] :';
  return /^'|'$/.test(name) ? 'a sheet’s name cannot begin or end with an apostrophe' : undefined;
}

function checkNames(changes: Changes, contents: Contents): void {
  const sheets = contents.sheets.map((one) => one.name.toLowerCase());
  for (const { name } of changes.newSheets ?? []) {
    const fault = sheetNameFault(name);
    if (fault !== undefined) throw trouble('badName', name, fault);
    if (sheets.includes(name.toLowerCase())) throw trouble('nameClash', name);
    sheets.push(name.toLowerCase());
  }
  const names = [...contents.tables, ...contents.names].map((one) => one.name.toLowerCase());
  for (const { name } of [...(changes.newTables ?? []), ...(changes.newNames ?? [])]) {
    const fault = nameFault(name);
    if (fault !== undefined) throw trouble('badName', name, fault);
    if (names.includes(name.toLowerCase())) throw trouble('nameClash', name);
    names.push(name.toLowerCase());
  }
}

/** “Rows 4 to 9 and 12”: sheet rows as people count them. */
export function rowsInWords(rows: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last !== undefined && row === last[1] + 1) last[1] = row;
    else runs.push([row, row]);
  }
  const shown = runs
    .slice(0, 4)
    .map(([from, to]) => (from === to ? String(from + 1) : `${from + 1} to ${to + 1}`));
  if (runs.length > 4) shown.push(`${runs.length - 4} more stretches`);
  const list = shown.length > 1 ? `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}` : shown[0];
  return `${rows.length === 1 ? 'Row' : 'Rows'} ${list ?? ''}`;
}

/** The first cell of a put that holds something already, where that is not allowed. */
function firstFilled(put: Put, block: Block, allowed: readonly Area[]): Area | undefined {
  for (const [i, row] of block.values.entries()) {
    for (const [j, value] of row.entries()) {
      if (put.cells !== undefined && put.cells[i]?.[j] === undefined) continue;
      if ((value === null || value === '') && (block.formulas[i]?.[j] ?? null) === null) continue;
      const cell = { ...put.area, row: put.area.row + i, column: put.area.column + j, rows: 1, columns: 1 };
      if (!allowed.some((area) => common(area, cell) !== undefined)) return cell;
    }
  }
  return undefined;
}

/** Throws the first Trouble the workbook as it stands would make; nothing is written. */
function lookOver(puts: readonly Put[], blocks: readonly Block[], watch: Watch): void {
  for (const [at, put] of puts.entries()) {
    const block = blocks[at] as Block;
    if (block.protected) throw trouble('protected', put.area.sheet);
    const merged = block.merged[0];
    if (merged !== undefined) throw trouble('merged', placeText(merged));
    if (block.hiddenRows.length > 0 && watch.hiddenRowsToo !== true) {
      const are = block.hiddenRows.length === 1 ? 'is' : 'are';
      throw trouble('hidden', `${rowsInWords(block.hiddenRows)} of “${put.area.sheet}” ${are} hidden`);
    }
    const filled = firstFilled(put, block, watch.mayOverwrite ?? []);
    if (filled !== undefined) throw trouble('filled', `${placeText(filled)} of “${put.area.sheet}”`);
  }
}

const asItWas = (block: Block): Put => ({
  area: block.area,
  cells: block.values.map((row, i) =>
    row.map((value, j) => {
      const formula = block.formulas[i]?.[j] ?? null;
      return formula === null ? value : { formula };
    }),
  ),
});

/** What is taken back when the step does not come to its end. */
function putBack(changes: Changes, contents: Contents, blocks: readonly Block[]): Changes {
  const moved = new Set((changes.movedNames ?? []).map((one) => one.name));
  return {
    movedNames: contents.names.flatMap(({ name, area }) =>
      area !== undefined && moved.has(name) ? [{ name, area }] : [],
    ),
    resize: (changes.resize ?? []).flatMap(({ table }) => {
      const old = contents.tables.find((one) => one.name === table);
      return old === undefined ? [] : [{ table, area: old.area }];
    }),
    puts: blocks.flatMap((block) => pieces(asItWas(block))),
    remove: {
      sheets: (changes.newSheets ?? []).map((one) => one.name),
      names: (changes.newNames ?? []).map((one) => one.name),
    },
  };
}

const stopped = (watch: Watch): void => {
  if (watch.signal?.aborted === true) throw trouble('cancelled');
};

/** Looks `changes` over, writes them as one undo step, and leaves the workbook as it was if that fails. */
export async function apply(book: Book, says: string, changes: Changes, watch: Watch = {}): Promise<void> {
  stopped(watch);
  const contents = await book.contents();
  checkNames(changes, contents);
  for (const { table } of changes.resize ?? []) {
    if (!contents.tables.some((one) => one.name === table)) throw trouble('missing', `The table “${table}”`);
  }
  const onNew = (sheet: string): boolean =>
    (changes.newSheets ?? []).some((one) => sameSheet(one.name, sheet));
  const puts = changes.puts ?? [];
  for (const { area } of puts) {
    if (!onNew(area.sheet) && !contents.sheets.some((one) => sameSheet(one.name, area.sheet)))
      throw trouble('missing', `The sheet “${area.sheet}”`);
  }
  const onOld = puts.filter((put) => !onNew(put.area.sheet));
  const blocks = await book.read(
    onOld.map((put) => put.area),
    'contents',
  );
  lookOver(onOld, blocks, watch);
  stopped(watch);

  // Plain values first, then tables and names, so that every formula finds what it speaks of.
  const plain = requests(puts.filter((put) => !hasFormula(put)));
  const worked = requests(puts.filter(hasFormula));
  const { newSheets, resize, movedNames, newTables, newNames, ...looks } = changes;
  const opening: Changes = {
    ...(newSheets && { newSheets }),
    ...(resize && { resize }),
    ...(movedNames && { movedNames }),
  };
  const naming: Changes = { ...(newTables && { newTables }), ...(newNames && { newNames }) };
  const parts: readonly Changes[] = [
    { ...opening, puts: plain[0] ?? [] },
    ...plain.slice(1).map((some): Changes => ({ puts: some })),
    { ...naming, puts: [] },
    ...worked.map((some): Changes => ({ puts: some })),
    { ...looks, puts: [] },
  ];
  const all = puts.reduce((sum, put) => sum + cellsOf(put.area), 0);
  let done = 0;
  await book.inOneStep(says, async (write) => {
    try {
      for (const part of parts) {
        stopped(watch);
        if (Object.values(part).every((list) => !Array.isArray(list) || list.length === 0)) continue;
        await write(part);
        done += (part.puts ?? []).reduce((sum, put) => sum + cellsOf(put.area), 0);
        watch.progress?.(done, all);
      }
    } catch (failure) {
      if (failure instanceof Trouble && (failure.code === 'lost' || failure.code === 'closed')) throw failure;
      try {
        await write(putBack(changes, contents, blocks));
      } catch {
        throw trouble('halfway', onOld.map((put) => areaText(put.area)).join(', ') || says);
      }
      throw failure;
    }
  });
}
