/**
 * A paper as data: what a client, a supplier, a cutter or an installer is given, block by block. Who
 * shows it (a sheet, a page of the pane) adds nothing to it.
 */
import { MONTHS, showDay } from '../cell/day';
import type { Drawing } from '../drawing/drawing';
import { digits, type Unit } from '../exact/unit';

/** In the order they are written. */
export const PAPER_KINDS = ['quote', 'order', 'hardware', 'work', 'labels', 'install', 'findings'] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

/** How an entry is shown; a length is words, since a tape reads fractions. */
export type EntryKind = 'words' | 'money' | 'count' | 'yardage' | 'share' | 'day';

/** What stands in one place of a paper. */
export interface Entry {
  readonly as: EntryKind;
  /** A day counts as spreadsheets count. */
  readonly value: string | number;
  /** The cell of the job that holds this very value, as a formula names it: Windows!D5. */
  readonly at?: string | undefined;
  /** In what a yardage counts. */
  readonly unit?: string;
  /** What is said where the figure is 0. */
  readonly zero?: string;
}

export const words = (value: string, at?: string): Entry => ({ as: 'words', value, at });
export const amount = (value: number, at?: string): Entry => ({ as: 'money', value, at });
export const count = (value: number, at?: string): Entry => ({ as: 'count', value, at });
export const day = (value: number, at?: string): Entry => ({ as: 'day', value, at });

/** A word and what stands beside it; a line to write on where nothing does. */
export interface Pair {
  readonly label: string;
  readonly entry: Entry | undefined;
  /** Set apart, as a total is. */
  readonly strong?: true;
}

/** What is said in words beside a label; nothing where there is nothing to say. */
export const pair = (label: string, value: string | undefined): readonly Pair[] =>
  value === undefined ? [] : [{ label, entry: words(value) }];

/** What begins a line begins with a capital. */
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export interface Column {
  readonly heading: string;
  /** How many of the page's columns it covers; together they are `Page.columns`. */
  readonly span: number;
  readonly align?: 'left' | 'right' | 'center';
}

/**
 * line: a cell for each column, undefined where it stays blank. group and detail: one entry over the
 * whole table, as the head of what follows or as what is said of the line above. fill: blanks to write on.
 */
export interface TableRow {
  readonly is: 'line' | 'group' | 'detail' | 'sum' | 'total' | 'fill';
  readonly cells: readonly (Entry | undefined)[];
}

export type Block =
  /** The house's own lines at the left, the paper's name and its facts at the right. */
  | {
      readonly is: 'letterhead';
      readonly house: readonly Entry[];
      readonly title: string;
      readonly facts: readonly Pair[];
    }
  | {
      readonly is: 'pairs';
      readonly title?: string;
      /** How many stand side by side. */
      readonly across: 1 | 2 | 3;
      readonly pairs: readonly Pair[];
      /** Whether what follows stands on the same page. */
      readonly keep?: true;
    }
  | {
      readonly is: 'table';
      /** Where none has a heading there is no row of them. */
      readonly columns: readonly Column[];
      readonly rows: readonly TableRow[];
      /** Whether its headings stand on every further page; of one table a paper. */
      readonly repeated?: true;
      /** Whether its last row and what follows stand on one page. */
      readonly keep?: true;
      /** Whether all its rows do. */
      readonly whole?: true;
    }
  | { readonly is: 'totals'; readonly pairs: readonly Pair[] }
  | {
      readonly is: 'notes';
      readonly title?: string;
      readonly lines: readonly Entry[];
      readonly small?: true;
      /** How many stand side by side; else one. */
      readonly across?: 2;
      /** Whether what follows stands on the same page. */
      readonly keep?: true;
    }
  | { readonly is: 'signatures'; readonly lines: readonly string[] }
  /** To scale, as wide as the page, at most so many points high; what it shows is said in words beside it too. */
  | { readonly is: 'drawing'; readonly drawing: Drawing; readonly high: number }
  /** Labels in rows and columns, every other column a gap; sizes in points. */
  | {
      readonly is: 'labels';
      readonly across: number;
      readonly down: number;
      readonly high: number;
      readonly gapDown: number;
      /** Of each label its lines, the first the tallest. */
      readonly labels: readonly (readonly Entry[])[];
    }
  /** What follows begins a new page. */
  | { readonly is: 'page' };

export type PaperSize = 'letter' | 'a4';

export interface Page {
  readonly size: PaperSize;
  readonly landscape: boolean;
  /** Equal columns the page is divided into. */
  readonly columns: number;
  /** The same columns each as wide as it is, in points, where they are not equal. */
  readonly widths?: readonly number[];
  /** In inches: left, top, right, bottom. */
  readonly margins: readonly [left: number, top: number, right: number, bottom: number];
}

export const PORTRAIT = (size: PaperSize): Page => ({
  size,
  landscape: false,
  columns: 12,
  margins: [0.6, 0.55, 0.6, 0.55],
});

export interface Paper {
  readonly kind: PaperKind;
  /** As its sheet is called where that is free. */
  readonly sheet: string;
  readonly title: string;
  readonly page: Page;
  /** At the left of every page's foot; without one the pages are not numbered. */
  readonly foot: string;
  /** In which a drawing says its figures. */
  readonly unit: Unit;
  readonly blocks: readonly Block[];
}

/** 9 March 2026: a month in words is read alike on both sides of an ocean. */
export function dayInWords(serial: number): string {
  const [year = '', month = '', day = ''] = showDay(Math.floor(serial)).split('-');
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

const grouped = (figure: number): string =>
  figure.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 });

/** An entry as a page shows it, before any sign of a currency. */
export function entryText({ as, value, unit, zero }: Entry): string {
  if (typeof value === 'string') return value;
  if (value === 0 && zero !== undefined) return zero;
  switch (as) {
    case 'money':
      return grouped(value);
    case 'share':
      return `${digits(value * 100)}%`;
    case 'day':
      return dayInWords(value);
    case 'yardage':
      return unit === undefined ? digits(value) : `${digits(value)} ${unit}`;
    case 'words':
    case 'count':
      return digits(value);
  }
}
