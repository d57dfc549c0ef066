/** A change that was left half done: what of it is there, what has been changed since, and how it is taken back. */
import { areaAt, placeText, sameSheet, within, type Area } from './address';
import type { Block, Book, CellPut, Changes, Contents } from './book';
import { sameFormula, shifted } from './formula';
import {
  blank,
  heldBy,
  JOURNAL,
  printOf,
  sameCell,
  type Journal,
  type Touched,
  type Written,
} from './journal';
import { inParts } from './requests';
import { Trouble, trouble } from './trouble';

export interface Unfinished {
  /** What it is called: “Fill 5 columns”. */
  readonly says: string;
  /** Where it wrote. */
  readonly places: string;
  /** What was changed since and stays as it is; empty where all can be put back. */
  readonly stays: string;
  /** What puts back all the rest. */
  readonly back: Changes;
  /** Another pane began it only now and may be writing still: it is not to be put back yet. */
  readonly underWay: boolean;
}

/** A change that another pane began longer ago than this, in milliseconds, is written no more. */
export const STILL_WRITING = 5 * 60_000;

const isJournal = (raw: unknown): raw is Journal => {
  const one = raw as Partial<Journal> | null | undefined;
  return (
    typeof one?.says === 'string' &&
    [one.touched, one.sheets, one.names, one.tables, one.movedNames].every((list) => Array.isArray(list))
  );
};

type State = 'before' | 'written' | 'since';

/** How each cell stands: as before, as it was written, or changed since. */
function statesOf(
  { area, formula, cells }: Written & { readonly cells?: Touched['put']['cells'] },
  held: readonly (readonly CellPut[])[] | undefined,
  now: readonly (readonly CellPut[])[],
): State[][] {
  // The host may spell a formula in its own way; then it spells all of one column alike.
  const spelt = now
    .flatMap((row, i) => row.map((one, j) => ({ one, i, j })))
    .find(({ one, i, j }) => {
      const here = typeof one === 'object' && one !== null ? one.formula : undefined;
      return formula !== undefined && here !== undefined && sameFormula(here, shifted(formula, i, j));
    });
  const first = typeof spelt?.one === 'object' && spelt.one !== null ? spelt.one.formula : undefined;
  const wanted = (i: number, j: number): CellPut => {
    if (formula === undefined) return (cells?.length === 1 ? cells[0] : cells?.[i])?.[j];
    return {
      formula:
        first === undefined
          ? shifted(formula, i, j)
          : shifted(first, i - (spelt?.i ?? 0), j - (spelt?.j ?? 0)),
    };
  };
  return Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.columns }, (__, j): State => {
      const one = now[i]?.[j];
      if (sameCell(one, held?.[i]?.[j])) return 'before';
      return sameCell(one, wanted(i, j)) ? 'written' : 'since';
    }),
  );
}

/** What a spreadsheet program itself calls a column that has no heading: “Column9”, “Spalte9”. */
const UNNAMED = /^\p{L}+ ?\d+$/u;

/**
 * As `statesOf`, but a heading that the program gave a new column of the grown table is taken back with ours:
 * it is there whenever the table has grown and its headings are not yet written.
 */
function statesOfTouched(
  { put, held }: Touched,
  now: readonly (readonly CellPut[])[],
  tables: Journal['tables'],
): State[][] {
  const { sheet, row, column } = put.area;
  const inNewHeading = (i: number, j: number): boolean => {
    const cell = areaAt(sheet, row + i, column + j);
    return tables.some(({ from, to }) => sheetAndRow(cell, to) && within(cell, to) && !within(cell, from));
  };
  return statesOf(put, held, now).map((line, i) =>
    line.map((state, j): State => {
      const one = now[i]?.[j];
      const given =
        state === 'since' && typeof one === 'string' && UNNAMED.test(one) && blank(held?.[i]?.[j]);
      return given && inNewHeading(i, j) ? 'written' : state;
    }),
  );
}

const sheetAndRow = (one: Area, other: Area): boolean =>
  sameSheet(one.sheet, other.sheet) && one.row === other.row;

interface Seen {
  readonly contents: Contents;
  readonly journal: Journal;
  /** The touched cells whose sheet is still there, as they stand now. */
  readonly touched: readonly { readonly place: Touched; readonly states: readonly (readonly State[])[] }[];
  /** New sheets that are there, each with whether it stands as it was written. */
  readonly sheets: readonly { readonly name: string; readonly whole: boolean }[];
}

async function look(book: Book, journal: Journal): Promise<Seen> {
  const contents = await book.contents();
  const sheet = (name: string) => contents.sheets.find((one) => sameSheet(one.name, name));
  const old = journal.touched.filter(({ put }) => sheet(put.area.sheet) !== undefined);
  const added = journal.sheets.filter(({ name }) => sheet(name) !== undefined);
  const filled = added.flatMap(({ name }) => sheet(name)?.used ?? []);
  const blocks = await book.read([...old.map(({ put }) => put.area), ...filled], 'cells');
  return {
    contents,
    journal,
    touched: old.map((place, at) => ({
      place,
      states: statesOfTouched(place, heldBy(blocks[at] as Block), journal.tables),
    })),
    sheets: added.map(({ name, written }) => {
      const block = blocks.slice(old.length).find(({ area }) => sameSheet(area.sheet, name));
      return { name, whole: block === undefined || asWritten(block, written) };
    }),
  };
}

/** Nothing stands on a new sheet but what was written, or a part of it. */
function asWritten(block: Block, written: readonly Written[]): boolean {
  const now = heldBy(block);
  const known = now.map((row) => row.map(blank));
  for (const one of written) {
    const cells = Array.from({ length: one.area.rows }, (_, i) =>
      Array.from({ length: one.area.columns }, (__, j) => {
        const [row, column] = [one.area.row + i - block.area.row, one.area.column + j - block.area.column];
        const line = known[row];
        if (line !== undefined && column in line) line[column] = true;
        return now[row]?.[column];
      }),
    );
    const none = cells.every((row) => row.every(blank));
    if (none) continue;
    if (one.print === undefined) {
      if (statesOf(one, undefined, cells).some((row) => row.includes('since'))) return false;
    } else if (printOf(cells) !== one.print) return false;
  }
  return known.every((row) => row.every(Boolean));
}

const sameArea = (one: Area, other: Area): boolean => within(one, other) && within(other, one);

/** “K7”, “K7 and 12 more cells of “Windows””. */
function cellsInWords(cells: readonly Area[]): string[] {
  const sheets = [...new Set(cells.map(({ sheet }) => sheet))];
  return sheets.map((sheet) => {
    const here = cells.filter((one) => one.sheet === sheet);
    const more = here.length - 1;
    return `${here[0] === undefined ? '' : placeText(here[0])}${more === 0 ? '' : ` and ${more} more ${more === 1 ? 'cell' : 'cells'}`} of “${sheet}”`;
  });
}

const listed = (names: readonly string[]): string => names.map((one) => `“${one}”`).join(', ');

/** Where it wrote, as few words as will do. */
function placesOf({ touched, sheets }: Seen): string {
  const bounds = new Map<string, Area>();
  for (const { place } of touched) {
    const { area } = place.put;
    const old = bounds.get(area.sheet) ?? area;
    const row = Math.min(old.row, area.row);
    const column = Math.min(old.column, area.column);
    const down = Math.max(old.row + old.rows, area.row + area.rows) - row;
    const across = Math.max(old.column + old.columns, area.column + area.columns) - column;
    bounds.set(area.sheet, areaAt(area.sheet, row, column, down, across));
  }
  return [
    ...[...bounds.values()].map((area) => `${placeText(area)} of “${area.sheet}”`),
    ...(sheets.length === 0
      ? []
      : [`the new ${sheets.length === 1 ? 'sheet' : 'sheets'} ${listed(sheets.map(({ name }) => name))}`]),
  ].join(', ');
}

/** What of it is taken back: never a cell, a sheet or a table that was changed since. */
function sorted(seen: Seen): { back: Changes; stays: string; there: boolean } {
  const { contents, journal, touched, sheets } = seen;
  const since: Area[] = [];
  const clear: NonNullable<Changes['clear']>[number][] = [];
  const puts: NonNullable<Changes['puts']>[number][] = [];
  for (const { place, states } of touched) {
    const { area } = place.put;
    const flat = states.flat();
    if (!flat.includes('since')) {
      if (!flat.includes('written')) continue;
      if (place.held === undefined) clear.push({ area, looksToo: place.bare === true });
      else puts.push({ area, cells: place.held });
      continue;
    }
    states.forEach((row, i) => {
      row.forEach((state, j) => {
        if (state === 'since') since.push(areaAt(area.sheet, area.row + i, area.column + j));
      });
    });
    if (flat.includes('written'))
      puts.push({
        area,
        cells: states.map((row, i) =>
          row.map((state, j) => (state === 'written' ? (place.held?.[i]?.[j] ?? null) : undefined)),
        ),
      });
  }
  const keptSheets = sheets.filter(({ whole }) => !whole).map(({ name }) => name);
  const standing = (name: string, to: Area, list: Contents['names'] | Contents['tables']): boolean =>
    list.some((one) => one.name === name && one.area !== undefined && sameArea(one.area, to));
  const tables = journal.tables.filter(({ name, to }) => standing(name, to, contents.tables));
  const otherwise = journal.tables.filter(
    ({ name, from, to }) => !standing(name, to, contents.tables) && !standing(name, from, contents.tables),
  );
  const movedNames = journal.movedNames.filter(({ name, to }) => standing(name, to, contents.names));
  const names = contents.names
    .filter(({ name }) => journal.names.includes(name))
    .filter(({ area }) => !keptSheets.some((kept) => area !== undefined && sameSheet(area.sheet, kept)))
    .map(({ name }) => name);
  const removed = sheets.filter(({ whole }) => whole).map(({ name }) => name);
  return {
    back: {
      movedNames: movedNames.map(({ name, from }) => ({ name, area: from })),
      resize: tables.map(({ name, from }) => ({ table: name, area: from })),
      clear,
      puts,
      remove: { sheets: removed, names },
    },
    stays: [
      ...cellsInWords(since),
      ...(keptSheets.length > 0
        ? [`the ${keptSheets.length === 1 ? 'sheet' : 'sheets'} ${listed(keptSheets)}`]
        : []),
      ...(otherwise.length > 0 ? [`the size of ${listed(otherwise.map(({ name }) => name))}`] : []),
    ].join(', '),
    there:
      since.length +
        clear.length +
        puts.length +
        sheets.length +
        names.length +
        tables.length +
        movedNames.length >
      0,
  };
}

const underWay = ({ owner, since }: Journal, book: Book, now: number): boolean =>
  owner !== book.owner && now - Date.parse(since) < STILL_WRITING;

/** The change that was left half done, if one was; what was undone by hand meanwhile is forgotten. */
export async function unfinished(book: Book, now = Date.now()): Promise<Unfinished | undefined> {
  const raw = await book.recall(JOURNAL);
  if (raw === undefined || raw === null) return undefined;
  if (isJournal(raw)) {
    const writing = underWay(raw, book, now);
    const seen = await look(book, raw);
    const { there, back, stays } = sorted(seen);
    if (there || writing) return { says: raw.says, places: placesOf(seen), stays, back, underWay: writing };
  }
  await keepAsItIs(book);
  return undefined;
}

/** What became of a change that broke off, and what takes back what stands of it. */
export interface Outcome {
  readonly stands: 'nothing' | 'part' | 'all';
  readonly back: Changes;
}

/** Whether the workbook holds this very journal. */
export async function isKept(book: Book, { owner, since }: Journal): Promise<boolean> {
  const raw = (await book.recall(JOURNAL)) as Partial<Journal> | null | undefined;
  return raw?.owner === owner && raw.since === since;
}

/** Looks at the workbook; `kept` says whether the change was written down in it, as the first thing and until its last. */
export async function outcomeOf(book: Book, journal: Journal, kept: boolean): Promise<Outcome> {
  const left = kept && (await isKept(book, journal));
  const { there, back } = sorted(await look(book, journal));
  // A journal of nothing is forgotten when a pane next finds it, where that is refused now.
  if (!there && left) await keepAsItIs(book).catch(() => undefined);
  return { stands: !there ? 'nothing' : kept && !left ? 'all' : 'part', back };
}

/** Leaves the workbook as it stands, and asks no more. */
export const keepAsItIs = (book: Book): Promise<void> => book.remember(JOURNAL, undefined);

/**
 * Puts back what it wrote. Looked at again first: where more was changed since the user was told, nothing is
 * written and what there is to say now is given back.
 */
export async function putItBack(book: Book, told: Unfinished): Promise<Unfinished | undefined> {
  const now = await unfinished(book);
  if (now === undefined) return undefined;
  if (now.stays !== told.stays || now.underWay) return now;
  let begun = false;
  try {
    await book.inOneStep(`Put back “${now.says}”`, async (write) => {
      for (const part of inParts({ ...now.back, forget: JOURNAL }, book.fills)) {
        await write(part);
        begun = true;
      }
    });
  } catch (failure) {
    if (!(failure instanceof Trouble)) throw failure;
    const seen = await unfinished(book).catch(() => 'not known' as const);
    if (seen === undefined) return undefined;
    if (seen === 'not known') throw trouble('lostMidway', now.says, failure.why);
    throw begun ? trouble('halfBack', now.says, failure.why) : failure;
  }
  return undefined;
}
