/**
 * A workbook as the pane, the template and the fill need it: few calls, each for many cells.
 * Excel, the trial workbook and a file each fulfil it; so does MemoryBook for tests.
 * Everything that fails on purpose throws a Trouble (trouble.ts), whose message is a sentence.
 */
import type { LaidOut } from '../core/drawing/laid-out';
import type { Area } from './address';

/** What a cell shows: null where blank; an error as its text, “#N/A”. */
export type CellValue = number | string | boolean | null;

export const filled = (value: CellValue | undefined): boolean =>
  value !== null && value !== undefined && !(typeof value === 'string' && value.trim() === '');

/** What a stretch of cells is for. The host maps each to a look: fill, font, border, lock. */
export type Role = 'title' | 'heading' | 'input' | 'working' | 'output' | 'check' | 'note' | PaperRole;
/** The same on paper: black on white, told apart by weight and lines. */
export type PaperRole =
  | 'letterhead'
  | 'paper title'
  | 'section'
  | 'room'
  | 'label'
  | 'words'
  | 'small'
  | 'column'
  | 'line'
  | 'sum'
  | 'total'
  | 'blank'
  | 'signature';

export interface SheetSeen {
  readonly name: string;
  readonly hidden: boolean;
  readonly protected: boolean;
  /** The cells that hold anything; undefined where the sheet is empty. */
  readonly used: Area | undefined;
}

export interface TableSeen {
  readonly name: string;
  /** With its header row and its totals row. */
  readonly area: Area;
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
  /** The headings, as structured references name them. */
  readonly columns: readonly string[];
}

export interface NameSeen {
  readonly name: string;
  /** Where it points; undefined where it is a value or a formula. */
  readonly area: Area | undefined;
}

export interface Contents {
  /** In tab order. */
  readonly sheets: readonly SheetSeen[];
  readonly tables: readonly TableSeen[];
  readonly names: readonly NameSeen[];
}

/** `contents` leaves the formats out, `cells` also which of them are merged. */
export type Detail = 'whole' | 'contents' | 'cells';

/** What was read of one area, row by row. */
export interface Block {
  readonly area: Area;
  readonly values: readonly (readonly CellValue[])[];
  /** “=…” in English with commas, whatever the person's locale; null where the cell holds no formula. */
  readonly formulas: readonly (readonly (string | null)[])[];
  /** Number formats in English (“0.00”); empty where only the contents were asked for. */
  readonly formats: readonly (readonly string[])[];
  /** Every merged stretch that touches the area. */
  readonly merged: readonly Area[];
  /** Sheet rows of the area that are hidden or filtered away, ascending. */
  readonly hiddenRows: readonly number[];
  /** The table the area lies in or touches. */
  readonly table: TableSeen | undefined;
  /** Whether the sheet is protected in a way that refuses writing here. */
  readonly protected: boolean;
  /** Nothing stands here and nothing is dressed: whatever is put here can be taken away without a trace. */
  readonly bare?: boolean;
}

/** One cell to be written: a plain value, a formula, null to empty it, undefined to leave it alone. */
export type CellPut = CellValue | { readonly formula: string } | undefined;

/** Cells to write. Text stays text: “1/2” never becomes a date, “=x” never a formula. */
export interface Put {
  readonly area: Area;
  /** Row by row; or one of the two below. */
  readonly cells?: readonly (readonly CellPut[])[];
  /** The first cell's formula; in the others its relative references move along, as when filled down. */
  readonly formula?: string;
}

/** Cells to empty; with their looks only where they had none before. */
export interface Clearing {
  readonly area: Area;
  readonly looksToo: boolean;
}

/** How cells look. */
export interface Dress {
  readonly area: Area;
  readonly role?: Role;
  /** A number format in English. */
  readonly format?: string;
  /** Where its contents stand; by their kind where it is left out. */
  readonly align?: 'left' | 'right' | 'center';
}

export interface NewSheet {
  readonly name: string;
}

/** A header row with rows below it, made into a table. */
export interface NewTable {
  readonly name: string;
  readonly area: Area;
}

/** A table made to cover another area (columns joined, or taken back); the header cells are written by a Put. */
export interface TableResize {
  readonly table: string;
  readonly area: Area;
}

export interface NewName {
  readonly name: string;
  readonly area: Area;
  readonly says?: string;
}

/** Data validation of an area. Exactly one of words, from, number. */
export interface Validation {
  readonly area: Area;
  /** Choices as words. */
  readonly words?: readonly string[];
  /** Choices standing in cells: a formula without “=”, an address or a name. */
  readonly from?: string;
  readonly number?: { readonly least: number; readonly most?: number; readonly whole?: boolean };
  /** What to enter; shown beside the cell and when something else is entered. */
  readonly says: string;
  /** stop refuses another entry; warn lets it through after a question. */
  readonly otherwise: 'stop' | 'warn';
}

export interface Layout {
  readonly sheet: string;
  /** Rows and columns that stay in sight. */
  readonly frozenRows?: number;
  readonly frozenColumns?: number;
  /** By column number, in characters. */
  readonly widths?: Readonly<Record<number, number>>;
  readonly print?: {
    readonly landscape: boolean;
    readonly paper: 'letter' | 'a4';
    /** First and last sheet row repeated on every page. */
    readonly repeatRows?: readonly [number, number];
    /** The same of columns, on a sheet that is several pages wide. */
    readonly repeatColumns?: readonly [number, number];
    /** One where it is left out. */
    readonly pagesWide?: number;
    /** What of the sheet is printed; all of it where it is left out. */
    readonly area?: Area;
    /** Rows that begin a new page. */
    readonly breaks?: readonly number[];
    /** Left, top, right and bottom, in inches. */
    readonly margins?: readonly [left: number, top: number, right: number, bottom: number];
    /** What stands at the left of every page's foot; at its right the page's number and how many there are. */
    readonly foot?: string;
  };
  /** By row number, in points. */
  readonly heights?: Readonly<Record<number, number>>;
  /** Cells made into one, on a new sheet only. */
  readonly merged?: readonly Area[];
  /** Without the grid's own lines, as paper is. */
  readonly plain?: true;
}

/** A short remark shown when the cell is pointed at. */
export interface Note {
  readonly area: Area;
  readonly text: string;
}

export interface NewChart {
  readonly name: string;
  readonly title: string;
  readonly kind: 'bar' | 'column' | 'line';
  /** First column (or row) the labels, first row the series' names. */
  readonly block: Area;
  /** The cells it covers. */
  readonly at: Area;
}

/** A drawing on a new sheet, its left upper corner at a cell; a host that cannot draw leaves it out. */
export interface NewDrawing {
  readonly name: string;
  readonly at: Area;
  readonly drawing: LaidOut;
  /** Of its letters, in points. */
  readonly letters: number;
}

/** Everything one write may do, done in the order of these members. */
export interface Changes {
  /** Kept in the workbook as `remember` does, before a cell is touched. */
  readonly remember?: { readonly key: string; readonly value: unknown };
  readonly newSheets?: readonly NewSheet[];
  readonly resize?: readonly TableResize[];
  /** Named ranges made to cover other cells; what speaks of them follows. */
  readonly movedNames?: readonly NewName[];
  readonly clear?: readonly Clearing[];
  readonly puts?: readonly Put[];
  readonly newTables?: readonly NewTable[];
  readonly newNames?: readonly NewName[];
  readonly dress?: readonly Dress[];
  readonly validations?: readonly Validation[];
  readonly layouts?: readonly Layout[];
  readonly notes?: readonly Note[];
  readonly newCharts?: readonly NewChart[];
  readonly newDrawings?: readonly NewDrawing[];
  /** What is not there is passed over. */
  readonly remove?: {
    readonly sheets?: readonly string[];
    readonly names?: readonly string[];
  };
  /** A key that is remembered, forgotten when all the rest is done. */
  readonly forget?: string;
}

/** A finding shown at its cell: a remark and a colour by weight. */
export interface Mark {
  readonly area: Area;
  readonly weight: 'stop' | 'check' | 'note';
  readonly sentence: string;
}

/** What a host may be too old or too plain for. */
export type Ability =
  'tables' | 'validation' | 'comments' | 'charts' | 'drawings' | 'print' | 'undo' | 'settings';

export type Stop = () => void;

export interface Book {
  /** The workbook's name, as the person sees it. */
  readonly title: string;
  /** What this host cannot do, each with a sentence; such parts of a write are left out, never an error. */
  readonly lacks: ReadonlyMap<Ability, string>;
  /** Cells that one formula may fill in one request: many where the formula is sent once for them all. */
  readonly fills: number;
  /** Whether one undo takes back all that `inOneStep` wrote, however many requests it took. */
  readonly joinsRequests: boolean;
  /** Who writes here, told from colleagues in the same workbook; the same when the pane is opened again. */
  readonly owner: string;

  /** Sheets, tables and names, in one round trip. */
  contents(): Promise<Contents>;
  /** The cells selected now (the first of several areas). */
  selection(): Promise<Area>;
  /** Calls back on every change of the selection until stopped. */
  onSelection(listener: (area: Area) => void): Promise<Stop>;
  /** Calls back with cells whose contents were changed, by whomever, until stopped; what formulas work out is no change. */
  onChange(listener: (area: Area) => void): Promise<Stop>;
  /** Shows the cells: sheet, scroll, selection. */
  goTo(area: Area): Promise<void>;

  /** Reads many areas at once. Asks the host in parts where they are large. */
  read(areas: readonly Area[], detail?: Detail): Promise<readonly Block[]>;
  /**
   * Does `work` as one undo step called `says`. Each `write` is one request, and has reached the workbook
   * when its promise resolves. No rollback here: apply.ts keeps order, progress, cancel and restoring for every host.
   */
  inOneStep(says: string, work: (write: (changes: Changes) => Promise<void>) => Promise<void>): Promise<void>;
  /** Resolves when no cell is being edited any more, or when `signal` stops the wait. */
  whenLeft(signal?: AbortSignal): Promise<void>;
  /** Calculates everything anew, HEM cells included. */
  recalculate(): Promise<void>;

  /** Shows findings at their cells; a cell already marked gets the new mark. One undo step. */
  mark(marks: readonly Mark[]): Promise<void>;
  /** How many cells of a sheet bear a mark of ours. */
  marked(sheet: string): Promise<number>;
  /** Takes every mark of ours away (of one sheet, or all) and gives the cells their own colour back. */
  unmark(sheet?: string): Promise<void>;

  /** What was remembered in the workbook under this key (plain JSON), or undefined. */
  recall(key: string): Promise<unknown>;
  /** Keeps plain JSON in the workbook, saved with it; undefined forgets the key. */
  remember(key: string, value: unknown): Promise<void>;
}

/** What looking takes. */
export type BookRead = Pick<Book, 'contents' | 'read'>;
