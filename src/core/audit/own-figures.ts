/** The figures of a table by their columns, whatever these are called: what its own ways are told from. */
import type { CellIn } from '../cell/fields';
import { UNITS } from '../exact/length';
import { WINDOW_COLUMNS } from '../window/columns';
import { cellOf, lengthOf, moneyOf } from '../window/reader/cells';
import type { OrderTable } from '../window/reader/order-rows';

/** Fewer orders that fill a column tell nothing of the others. */
export const LEAST_ORDERS = 12;
/** Of the orders that fill a column, a way holds in so many. */
export const HOLDS = 0.85;
const MOST_COLUMNS = 40;
/** A part that few orders have is a part of their sums all the same. */
const LEAST_FILLED = 3;

/** A figure, a fraction, or feet and inches as inches; NaN where it is none. */
export function figureIn(raw: CellIn): number {
  const cell = cellOf(raw);
  const figure = moneyOf(cell);
  if (figure !== undefined) return figure;
  const length = typeof cell === 'string' && /['"’”′″]/.test(cell) ? lengthOf(cell, 'in') : undefined;
  return length === undefined ? NaN : length / UNITS.in;
}
/** The figure that is judged; 0 says nothing, as an empty cell is 0 on some hosts. */
export const judgedIn = (figure: number): number => (figure === 0 ? NaN : figure);

/** A column of figures down the first orders. */
export interface Figures {
  readonly at: number;
  readonly down: readonly number[];
  readonly isMoney: boolean;
  /** Whether it may as well be a length or a yardage. */
  readonly isPlain: boolean;
  /** Measured or chosen, so that it follows from no other. */
  readonly isGiven: boolean;
  /** So far off it is still the same figure. */
  readonly within: number;
  readonly different: number;
}

function stepOf(figures: readonly number[]): number {
  if (figures.every(Number.isInteger)) return 1;
  return figures.every((one) => Number.isInteger(Math.round(one * 1e6) / 1e5)) ? 0.1 : 0.01;
}

/** A cent off is a matter of rounding, which other checks know. */
const within = (figures: readonly number[], isMoney: boolean): number =>
  isMoney ? Math.max(stepOf(figures) / 2, 0.01) + 0.0051 : 1e-6;

export function figuresDown(table: OrderTable, rows: readonly (readonly CellIn[])[]): Figures[] {
  const money = new Set(table.untold);
  const known = new Set<number>();
  const given = new Set<number>();
  for (const { at, key, kind } of table.found) {
    known.add(at);
    if (key in WINDOW_COLUMNS) given.add(at);
    if (kind.quantity === 'money') money.add(at);
  }
  return table.headings.slice(0, MOST_COLUMNS).flatMap((_heading, at): Figures[] => {
    const down = rows.map((cells) => figureIn(cells[at]));
    const filled = down.filter((one) => !Number.isNaN(one));
    if (filled.length < LEAST_FILLED) return [];
    // A column that nobody knows is money where cents stand in it.
    const isMoney = money.has(at) || (!known.has(at) && filled.some((one) => stepOf([one]) < 1));
    return [
      {
        at,
        down,
        isMoney,
        isPlain: !money.has(at),
        isGiven: given.has(at),
        within: within(filled, isMoney),
        different: new Set(filled).size,
      },
    ];
  });
}
