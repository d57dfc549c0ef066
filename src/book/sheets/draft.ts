/** A sheet being laid out as data: titles, pairs of a word and its value, tables with one formula a column. */
import type { Unit } from '../../core/exact/unit';
import { areaAt, cellText, type Area } from '../address';
import type { CellPut, Changes, Role, Validation } from '../book';

type Listed = {
  [
    K in Exclude<keyof Changes, 'remember' | 'resize' | 'clear' | 'newCharts' | 'remove' | 'forget'>
  ]-?: NonNullable<Changes[K]>;
};
/** Part of a template: what is written, and how it looks. */
export type Draft = Partial<Listed>;

/** What every sheet of one job shares. */
export interface Job {
  readonly unit: Unit;
  readonly paper: 'letter' | 'a4';
  /** Rows made ready for windows. */
  readonly windows: number;
  /** The job's own name for a sheet: “Windows”, in a second job “Windows 2”. */
  sheet(base: string): string;
  /** The same for a table or a named range: “Window_rooms”, “Window_rooms_2”. */
  name(base: string): string;
}

export type Choice = Pick<Validation, 'words' | 'from' | 'number' | 'says' | 'otherwise'>;

/** The cell of another column in the same row. */
export type CellOfRow = (key: string) => string;

export interface ColumnDraft {
  readonly key: string;
  readonly heading: string;
  readonly role: Role;
  /** In characters. */
  readonly wide?: number;
  readonly format?: string;
  /** The first row's formula. */
  readonly formula?: (cell: CellOfRow) => string;
  readonly cells?: readonly CellPut[];
  readonly choice?: Choice;
  /** A named range over the column's cells. */
  readonly name?: string;
  readonly note?: string;
}

export interface TableDraft {
  readonly sheet: string;
  readonly name: string;
  /** The header's row and first column. */
  readonly row: number;
  readonly column?: number;
  readonly rows: number;
  readonly columns: readonly ColumnDraft[];
}

export function together(...drafts: readonly Draft[]): Draft {
  const all: Record<string, unknown[]> = {};
  for (const draft of drafts)
    for (const [key, list] of Object.entries(draft)) (all[key] ??= []).push(...(list as unknown[]));
  return all as Draft;
}

export function titled(sheet: string, title: string, note: string): Draft {
  return {
    newSheets: [{ name: sheet }],
    puts: [{ area: areaAt(sheet, 0, 0, 2, 1), cells: [[title], [note]] }],
    dress: [
      { area: areaAt(sheet, 0, 0), role: 'title' },
      { area: areaAt(sheet, 1, 0), role: 'note' },
    ],
  };
}

export function tableDraft(job: Job, table: TableDraft): Draft {
  const from = table.column ?? 0;
  const first = table.row + 1;
  const places = new Map(table.columns.map(({ key }, at) => [key, from + at]));
  const cell = (key: string): string => {
    const column = places.get(key);
    if (column === undefined) throw new Error(`${table.name} has no column “${key}”`);
    return cellText(first, column);
  };
  const body = (at: number) => areaAt(table.sheet, first, from + at, table.rows, 1);
  const drafts = table.columns.map((column, at): Draft => ({
    puts: [
      ...(column.formula === undefined ? [] : [{ area: body(at), formula: column.formula(cell) }]),
      ...(column.cells === undefined ? [] : [{ area: body(at), cells: column.cells.map((one) => [one]) }]),
    ],
    dress: [
      { area: body(at), role: column.role, ...(column.format !== undefined && { format: column.format }) },
    ],
    ...(column.choice !== undefined && { validations: [{ area: body(at), ...column.choice }] }),
    ...(column.name !== undefined && { newNames: [{ name: job.name(column.name), area: body(at) }] }),
    ...(column.note !== undefined && {
      notes: [{ area: areaAt(table.sheet, table.row, from + at), text: column.note }],
    }),
  }));
  const header = areaAt(table.sheet, table.row, from, 1, table.columns.length);
  return together(
    {
      puts: [{ area: header, cells: [table.columns.map((column) => column.heading)] }],
      newTables: [{ name: job.name(table.name), area: { ...header, rows: table.rows + 1 } }],
      dress: [{ area: header, role: 'heading' }],
    },
    ...drafts,
  );
}

export interface Pair {
  readonly label: string;
  readonly role: Role;
  readonly value?: CellPut;
  readonly formula?: string;
  readonly name?: string;
  readonly format?: string;
  readonly choice?: Choice;
  readonly says?: string;
}

/** Words in column A, their values in B, an explanation in C. */
export function pairs(job: Job, sheet: string, row: number, list: readonly Pair[]): Draft {
  return together(
    ...list.map((one, at): Draft => {
      const place = areaAt(sheet, row + at, 1);
      return {
        puts: [
          { area: areaAt(sheet, row + at, 0), cells: [[one.label]] },
          ...(one.formula !== undefined ? [{ area: place, formula: one.formula }] : []),
          ...(one.value !== undefined ? [{ area: place, cells: [[one.value]] }] : []),
          ...(one.says !== undefined ? [{ area: areaAt(sheet, row + at, 2), cells: [[one.says]] }] : []),
        ],
        dress: [
          { area: place, role: one.role, ...(one.format !== undefined && { format: one.format }) },
          ...(one.says !== undefined ? [{ area: areaAt(sheet, row + at, 2), role: 'note' as const }] : []),
        ],
        ...(one.choice !== undefined && { validations: [{ area: place, ...one.choice }] }),
        ...(one.name !== undefined && { newNames: [{ name: job.name(one.name), area: place }] }),
      };
    }),
  );
}

const MOST_FROZEN = 17;

export function laidOut(
  job: Job,
  sheet: string,
  given: {
    header: number;
    frozenColumns?: number;
    widths: readonly number[];
    landscape?: boolean;
    /** Several where one page would be too small to read. */
    pagesWide?: number;
    /** So many of the first columns stand on each page. */
    repeatedColumns?: number;
  },
): Draft {
  return {
    layouts: [
      {
        sheet,
        // A header far down would freeze the whole screen.
        ...(given.header < MOST_FROZEN && { frozenRows: given.header + 1 }),
        ...(given.frozenColumns !== undefined && { frozenColumns: given.frozenColumns }),
        widths: Object.fromEntries(given.widths.map((wide, at) => [at, wide])),
        print: {
          landscape: given.landscape ?? false,
          paper: job.paper,
          repeatRows: [given.header, given.header],
          ...(given.pagesWide !== undefined && { pagesWide: given.pagesWide }),
          ...(given.repeatedColumns !== undefined && {
            repeatColumns: [0, given.repeatedColumns - 1] as const,
          }),
        },
      },
    ],
  };
}

/** A filter's button stands beside the heading. */
const BUTTON = 4;
/** A line of text of the usual size, in points. */
export const LINE = 15;
/** Characters in a column whose width nobody set. */
export const USUAL = 8;

/** Lines a text takes in a column of so many characters, broken between words. */
export function linesOf(text: string, characters: number): number {
  let [lines, room] = [1, characters];
  for (const word of text.split(/\s+/)) {
    const needed = word.length + (room === characters ? 0 : 1);
    if (needed <= room || room === characters) room -= needed;
    else [lines, room] = [lines + 1, characters - word.length];
  }
  return lines;
}

/** Columns wide enough that no heading of a table is broken within a word, and rows high enough for all its lines. */
export function roomy(draft: Draft): Draft {
  const least = new Map<string, Record<number, number>>();
  const headed: { readonly area: Area; readonly headings: readonly string[] }[] = [];
  for (const { area } of draft.newTables ?? []) {
    const put = draft.puts?.find(
      (one) => one.area.sheet === area.sheet && one.area.row === area.row && one.area.column === area.column,
    );
    const wides = least.get(area.sheet) ?? {};
    const headings = (put?.cells?.[0] ?? []).map(String);
    headed.push({ area, headings });
    for (const [at, heading] of headings.entries()) {
      const longest = Math.max(...heading.split(' ').map(({ length }) => length));
      wides[area.column + at] = Math.max(wides[area.column + at] ?? 0, longest + BUTTON);
    }
    least.set(area.sheet, wides);
  }
  const layouts = draft.layouts?.map((layout) => {
    const wides = least.get(layout.sheet) ?? {};
    const widths = Object.entries(layout.widths ?? {}).map(
      ([at, wide]) => [at, Math.max(wide, wides[Number(at)] ?? 0)] as const,
    );
    const wideAt = new Map(widths.map(([at, wide]) => [Number(at), wide]));
    const heights = headed
      .filter(({ area }) => area.sheet === layout.sheet)
      .map(({ area, headings }) => {
        const lines = headings.map((one, at) =>
          linesOf(one, (wideAt.get(area.column + at) ?? USUAL) - BUTTON),
        );
        return [area.row, Math.max(1, ...lines) * LINE] as const;
      });
    return { ...layout, widths: Object.fromEntries(widths), heights: Object.fromEntries(heights) };
  });
  return layouts === undefined ? draft : { ...draft, layouts };
}

export const MONEY_FORMAT = '#,##0.00';
export const SHARE_FORMAT = '0.0##%';
/** Nothing is shown for 0, as a repeat that is none. */
export const NO_ZERO = 'General;-General;';

export const oneOf = (
  words: readonly string[],
  says: string,
  otherwise: 'stop' | 'warn' = 'warn',
): Choice => ({
  words,
  says,
  otherwise,
});
export const fromName = (name: string, says: string): Choice => ({ from: name, says, otherwise: 'warn' });
export const atLeast = (
  least: number,
  says: string,
  { otherwise = 'stop', ...more }: { most?: number; whole?: boolean; otherwise?: 'stop' | 'warn' } = {},
): Choice => ({
  number: { least, ...more },
  says,
  otherwise,
});
/** What a cloth costs; the client’s own costs none. */
export const clothPrice = ({ unit: { large } }: Job): Choice =>
  atLeast(0, `A price a ${large}, or none where nothing is charged.`, { otherwise: 'warn' });
/** Such a price as a formula counts it. */
export const priceCell = (cell: string): string => `IF(${cell}="none",0,${cell})`;
export const YES_OR_NO = ['yes', 'no'] as const;
