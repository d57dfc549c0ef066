/** What makes one invented workroom: its rules, what it sells, and how it keeps its sheet. */
import type { Heading, House } from './house';
import type { Figure, Line, Word } from './line';
import type { Prices } from './reckon';

export type Cell = string | number | null | { readonly date: string };

export interface Cloth {
  readonly name: string;
  readonly width: number;
  readonly repeat?: number;
  readonly across?: number;
  readonly match?: 'half-drop';
  /** Hung turned, its width up the drop. */
  readonly turned?: boolean;
  readonly price?: number;
}

export interface Order {
  readonly no: string;
  readonly customer: string;
  /** Year-month-day. */
  readonly date: string;
  readonly lines: readonly Line[];
}

/** Where a line stands in its order, for what is said once or by ditto marks. */
export interface Place {
  readonly order: Order;
  readonly first: boolean;
  readonly above: Line | undefined;
}

export interface Column {
  readonly heads: readonly (string | null)[];
  /** The words of the trade that the column holds; null for none of them. */
  readonly means: Word | readonly Word[] | null;
  readonly unit?: 'in' | 'cm' | 'mm' | 'ft' | 'yd' | 'm';
  readonly per?: 'panel' | 'window' | 'width' | 'pair';
  readonly cell: (line: Line, place: Place) => Cell;
}

/** What is sold beside the windows: text, and figures by word. */
export interface Goods {
  readonly text: string;
  readonly figures: Partial<Record<Figure, number>>;
}

export interface Layout {
  readonly title: readonly (readonly Cell[])[];
  readonly columns: readonly Column[];
  /** A row above an order's lines. */
  readonly before?: (order: Order) => readonly Cell[];
  /** The words that an order's total row adds up, and the text that leads it. */
  readonly after?: { readonly text: string; readonly at: number; readonly adds: readonly Figure[] };
  readonly blankAfterOrder?: boolean;
  /** Other goods and the column their text stands in. */
  readonly goods?: { readonly at: number; readonly sold: readonly Goods[] };
  /** The headings again after so many rows. */
  readonly headerEvery?: number;
  readonly foot: readonly (readonly Cell[])[];
}

export interface Range {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

export interface Style {
  readonly name: string;
  readonly house: House;
  readonly prices: Prices;
  readonly cloths: readonly Cloth[];
  /** A heading named twice is twice as frequent; so for draws, linings and quantities. */
  readonly headings: readonly Heading[];
  readonly draws: readonly string[];
  readonly linings: readonly string[];
  readonly quantities: readonly number[];
  readonly liningPrice?: number;
  /** Making rates as the sheet writes them. */
  readonly rates?: Partial<Record<Heading, number>>;
  readonly hardware?: readonly number[];
  /** Openings with extensions where the sheet has them, else rods. */
  readonly openings?: Range;
  readonly rods?: Range;
  readonly drops: Range;
  /** Whether the height is measured to a point, and the drop follows from it. */
  readonly measured: boolean;
  readonly fullnesses?: readonly number[];
  readonly customers: readonly string[];
  readonly rooms: readonly string[];
  readonly orderNo: (at: number) => string;
  readonly linesInOrder: readonly [least: number, most: number];
  /** Reasons written beside an extra width that the client wished. */
  readonly reasons?: readonly string[];
  readonly layout: Layout;
}

/** Every word that some column of the sheet shows. */
export const wordsShown = ({ layout }: Style): ReadonlySet<Word> =>
  new Set(
    layout.columns.flatMap(({ means }) =>
      means === null ? [] : typeof means === 'string' ? [means] : means,
    ),
  );
