/**
 * The one way a change reaches a workbook: looked over first, written in few parts with progress,
 * one undo step, and put back as it was when it is stopped or fails midway.
 */
import { areaAt, areaText, common, placeText, sameSheet, type Area } from './address';
import type { Block, Book, Changes, Contents, Put } from './book';
import { heldBy, JOURNAL, journalOf, MOST_KEPT, sameCell, type Journal } from './journal';
import { inParts } from './requests';
import { Trouble, trouble } from './trouble';
import { isKept, outcomeOf, type Outcome } from './unfinished';

export interface Watch {
  readonly signal?: AbortSignal;
  /** Cells written so far, and in all. */
  readonly progress?: (done: number, total: number) => void;
  /** Told when the workbook waits for a cell to be left, and when that is over. */
  readonly waiting?: (is: boolean) => void;
  /** Told at the end of each change: whether one undo takes all of it back. */
  readonly written?: (oneUndo: boolean) => void;
  /** Areas whose filled cells may be overwritten. */
  readonly mayOverwrite?: readonly Area[];
  /** Filled too where rows are hidden or filtered away. */
  readonly hiddenRowsToo?: boolean;
}

const cellsOf = (area: Area): number => area.rows * area.columns;

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

/** Looks of cells that had some before cannot be taken back: they come last, by themselves. */
function looksApart({ dress = [], ...changes }: Changes, bare: readonly Area[], onNew: OnNew): boolean {
  const { validations = [], notes = [], layouts = [], newCharts = [] } = changes;
  return (
    dress.some(({ area }) => !onNew(area.sheet) && shared(area, bare) < cellsOf(area)) ||
    [...validations, ...notes].some(({ area }) => !onNew(area.sheet)) ||
    layouts.some(({ sheet }) => !onNew(sheet)) ||
    newCharts.some(({ at }) => !onNew(at.sheet))
  );
}
/** Cells of an area that lie in others, which do not overlap. */
const shared = (area: Area, others: readonly Area[]): number =>
  others.reduce((sum, one) => {
    const both = common(one, area);
    return sum + (both === undefined ? 0 : cellsOf(both));
  }, 0);
type OnNew = (sheet: string) => boolean;

const stopped = (watch: Watch): void => {
  if (watch.signal?.aborted === true) throw trouble('cancelled');
};

/** A change that was looked over. */
interface Prepared {
  readonly says: string;
  readonly parts: readonly Changes[];
  readonly journal: Journal;
  /** Whether the journal is kept in the workbook while the change is written. */
  readonly kept: boolean;
  /** Looks come last, by themselves, and cannot be taken back. */
  readonly apart: boolean;
  /** How the old cells stood that it puts something into. */
  readonly held: ReadonlyMap<Put, Block>;
}

/** Looks `changes` over: throws the first thing that stands in the way. */
async function prepared(book: Book, says: string, changes: Changes, watch: Watch): Promise<Prepared> {
  const contents = await book.contents();
  checkNames(changes, contents);
  for (const { table } of changes.resize ?? []) {
    if (!contents.tables.some((one) => one.name === table)) throw trouble('missing', `The table “${table}”`);
  }
  const onNew: OnNew = (sheet) => (changes.newSheets ?? []).some((one) => sameSheet(one.name, sheet));
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
  const bare = blocks.filter((block) => block.bare === true).map((block) => block.area);
  const apart = looksApart(changes, bare, onNew);
  const parts = inParts(changes, book.fills, apart);
  const held = new Map(onOld.map((put, at) => [put, blocks[at] as Block]));
  const journal = journalOf({ says, owner: book.owner }, parts, changes, contents, held);
  return { says, parts, journal, kept: await isToBeKept(book, journal, parts.length > 1), apart, held };
}

/** Looks `changes` over, writes them as one undo step, and leaves the workbook as it was if that fails. */
export async function apply(book: Book, says: string, changes: Changes, watch: Watch = {}): Promise<void> {
  stopped(watch);
  const ready = await prepared(book, says, changes, watch);
  const { parts, journal, kept, apart } = ready;
  const all = (changes.puts ?? []).reduce((sum, put) => sum + cellsOf(put.area), 0);
  let done = 0;
  await book.inOneStep(says, async (write) => {
    try {
      for (const [at, part] of parts.entries()) {
        stopped(watch);
        const whole = {
          ...(kept && at === 0 && { remember: { key: JOURNAL, value: journal } }),
          ...part,
          ...(kept && at === parts.length - 1 && { forget: JOURNAL }),
        };
        await writeWhenLeft(book, write, whole, { ready, at, watch });
        done += (part.puts ?? []).reduce((sum, put) => sum + cellsOf(put.area), 0);
        watch.progress?.(done, all);
      }
      if (!apart) stopped(watch);
    } catch (failure) {
      const stands = await whatStands(book, write, ready, failure);
      if (stands !== undefined) throw stands;
    }
  });
  watch.written?.(book.joinsRequests || parts.length === 1);
}

type Write = (changes: Changes) => Promise<void>;

/**
 * Excel writes nothing while a cell is being edited. Before the first request that is an answer; in the middle
 * it is waited for, and then what is still to be written is looked over again, for it may have been changed.
 */
async function writeWhenLeft(
  book: Book,
  write: Write,
  part: Changes,
  { ready, at, watch }: { readonly ready: Prepared; readonly at: number; readonly watch: Watch },
): Promise<void> {
  for (;;) {
    try {
      await write(part);
      return;
    } catch (failure) {
      if (at === 0 || !(failure instanceof Trouble) || failure.code !== 'editing') throw failure;
    }
    watch.waiting?.(true);
    await book.whenLeft(watch.signal);
    watch.waiting?.(false);
    stopped(watch);
    await stillAsItWas(book, ready, at);
  }
}

async function stillAsItWas(book: Book, { kept, journal, parts, held }: Prepared, at: number): Promise<void> {
  if (kept && !(await isKept(book, journal))) throw trouble('takenBack');
  const open = parts.slice(at).flatMap(({ puts = [] }) => puts);
  const waiting = [...held].filter(([put]) => open.some(({ area }) => common(area, put.area) !== undefined));
  const now = await book.read(
    waiting.map(([put]) => put.area),
    'cells',
  );
  for (const [which, [put, block]] of waiting.entries()) {
    const [before, after] = [heldBy(block), heldBy(now[which] as Block)];
    for (const [i, row] of after.entries()) {
      for (const [j, one] of row.entries()) {
        const cell = areaAt(put.area.sheet, put.area.row + i, put.area.column + j);
        const unwritten = open.some(({ area }) => common(area, cell) !== undefined);
        if (unwritten && !sameCell(before[i]?.[j], one))
          throw trouble('changedMeanwhile', `${placeText(cell)} of “${cell.sheet}”`);
      }
    }
  }
}

/** A change that broke off: what broke it, and whether the connection went with it. */
class Broken {
  readonly code: Trouble['code'] | undefined;
  /** In words for the middle of a sentence. */
  readonly why: string;
  constructor(readonly failure: unknown) {
    this.code = failure instanceof Trouble ? failure.code : undefined;
    this.why = failure instanceof Trouble ? failure.why : `The pane stumbled: ${String(failure)}`;
  }
  get gone(): boolean {
    return this.code === 'lost' || this.code === 'closed';
  }
  /** Nothing refused it, though all of it stands: it is to be taken back, or it is not for us to judge. */
  get unwanted(): boolean {
    return this.code === undefined || this.code === 'cancelled';
  }
}

/**
 * After a fault nothing is believed: the workbook is looked at. What stands in part is put back, unless the
 * connection is gone. Gives what is to be thrown; nothing where all of the change stands.
 */
async function whatStands(book: Book, write: Write, ready: Prepared, failure: unknown): Promise<unknown> {
  const { says, journal, kept } = ready;
  const broken = new Broken(failure);
  const outcome = await outcomeOf(book, journal, kept).catch(() => undefined);
  if (outcome === undefined) return trouble('lostMidway', says, broken.why);
  if (outcome.stands === 'nothing') return broken.gone ? trouble('lostAsItWas') : failure;
  if (outcome.stands === 'all' && broken.code === 'takenBack') return halfLeft(ready, broken);
  if (outcome.stands === 'all' && !broken.unwanted) return undefined;
  if (outcome.stands === 'part' && broken.gone && kept) return trouble('halfDone', says, broken.why);
  const after = await putBack(book, write, ready, outcome);
  if (after === undefined) return trouble('lostMidway', says, broken.why);
  if (after.stands !== 'nothing') return halfLeft(ready, broken);
  return failure instanceof Trouble ? failure.putBack() : failure;
}

/** Takes back what stands; gives what stands then, undefined where that cannot be seen. */
async function putBack(
  book: Book,
  write: Write,
  { journal, kept }: Prepared,
  { stands, back }: Outcome,
): Promise<Pick<Outcome, 'stands'> | undefined> {
  const remember = kept && stands === 'all' && { remember: { key: JOURNAL, value: journal } };
  try {
    const all: Changes = { ...back, ...remember, ...(kept && { forget: JOURNAL }) };
    for (const part of inParts(all, book.fills)) await write(part);
    return { stands: 'nothing' };
  } catch {
    return outcomeOf(book, journal, kept).catch(() => undefined);
  }
}

const halfLeft = (ready: Prepared, { why, code }: Broken): Trouble =>
  ready.kept && code !== 'takenBack'
    ? trouble('halfDone', ready.says, why)
    : trouble('halfLeft', placesIn(ready), why);

const placesIn = ({ says, held }: Prepared): string =>
  [...held.keys()].map((put) => areaText(put.area)).join(', ') || says;

/**
 * A change is kept in the workbook until it is done. One of several requests is refused where another is kept
 * there, or where it is too large; one of a single request then goes without.
 */
async function isToBeKept(book: Book, journal: Journal, long: boolean): Promise<boolean> {
  const free = ((await book.recall(JOURNAL)) ?? undefined) === undefined;
  if (!free && long) throw trouble('unfinished');
  if (JSON.stringify(journal).length <= MOST_KEPT) return free;
  if (!long) return false;
  const [largest] = [...journal.touched].sort((a, b) => cellsOf(b.put.area) - cellsOf(a.put.area));
  throw trouble('tooMuchToKeep', largest === undefined ? journal.says : placeText(largest.put.area));
}

/** Goes there once all is written: where that fails, what was written stands all the same. */
export async function show(book: Book, area: Area): Promise<void> {
  try {
    await book.goTo(area);
  } catch (failure) {
    if (!(failure instanceof Trouble)) throw failure;
  }
}

/** Writes new sheets in one step and shows the first of them; gives its first cell. */
export async function applySheets(book: Book, says: string, changes: Changes, watch: Watch): Promise<Area> {
  await apply(book, says, changes, watch);
  const first = areaAt(changes.newSheets?.[0]?.name ?? '', 0, 0);
  await show(book, first);
  return first;
}
