/** What a declaration of a figure says; everything that lists, asks, shows or compares figures reads it. */
import { Refusal, type Figure } from '../cell/answer';
import type { Kind, Quantity } from '../cell/fields';
import type { ColumnKey } from './columns';
import type { WindowWork } from './job';

/** As figures are listed for a person to choose from. */
export type FigureGroup = 'Measure' | 'Cloth' | 'Heading' | 'Hardware' | 'Money' | 'Checking';
export const FIGURE_GROUPS: readonly FigureGroup[] = [
  'Measure',
  'Cloth',
  'Heading',
  'Hardware',
  'Money',
  'Checking',
];

/** A figure a window row can be asked for. */
export interface WindowFigure {
  readonly key: string;
  readonly group: FigureGroup;
  /** As its column is headed, and as SCHEDULE is asked for it. */
  readonly heading: string;
  /** Other plain words and abbreviations for the same thing. */
  readonly also: readonly string[];
  readonly says: string;
  /** How a column that holds it is read; its quantity says its unit and how it is shown. */
  readonly kind: Kind<number> | Kind<string>;
  /** The number format of a column of ours; General where none is said. */
  readonly format?: string;
  /** Whether it is among those a table usually wants first. */
  readonly usual?: true;
  /** The cell function a formula asks it with, without the namespace. */
  readonly from: string;
  /** The function that tells it from the whole row, where no function of one cell does. */
  readonly onlyFrom?: 'SCHEDULE' | 'CHECK';
  /** Whether its function answers for one window and the figure is of all the windows of the row. */
  readonly timesQuantity?: true;
  /** Where this column is blank or has this word, there is nothing of it. */
  readonly none?: { readonly column: ColumnKey; readonly word: string };
  /** What has to stand in a row for it to be worked out: one column of each. */
  readonly needs: readonly (readonly ColumnKey[])[];
  /** The columns it is reckoned from; without them said, it may be any. */
  readonly reckonedFrom?: readonly ColumnKey[];
  /** Whether orders state it, so that the audit compares what was ordered with its working. */
  readonly ordered?: true;
  /** Whether people add it up down a column. */
  readonly addsUp?: true;
  /** How far an ordered one may differ, as a share of it, where its quantity's tolerance is too strict. */
  readonly mayDifferBy?: number;
  /** It is of one panel or one window; an order may also state it of all panels or all windows. */
  readonly alsoStatedFor?: readonly ('all panels' | 'all windows')[];
  /** Whether a sound window may have none, though its function then says #N/A. */
  readonly mayLack?: true;
  /** Undefined where the window has none. */
  work(window: WindowWork): Figure | undefined;
  /** The same number without its steps, for comparing thousands. */
  quickly?(window: WindowWork): number;
}

/** As a row of a table is given it: undefined where the window has none. */
export function workedOut(figure: WindowFigure, window: WindowWork): Figure | undefined {
  try {
    return figure.work(window);
  } catch (thrown) {
    if (figure.mayLack === true && thrown instanceof Refusal && thrown.error === '#N/A') return undefined;
    throw thrown;
  }
}

/** As a plain number: nanometres, a count, a share or an amount; undefined where there is none. */
export function workedOutNumber(figure: WindowFigure, window: WindowWork): number | undefined {
  if (figure.quickly !== undefined) return figure.quickly(window);
  const worked = figure.work(window);
  if (worked === undefined || worked.as === 'text') return undefined;
  return worked.as === 'money' ? worked.value.toNumber() : worked.value;
}

export const quantityOf = ({ kind }: WindowFigure): Quantity => kind.quantity;
