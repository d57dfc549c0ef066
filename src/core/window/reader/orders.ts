/** A table of past orders whose headings are given apart from its rows, or found among them. */
import type { CellIn } from '../../cell/fields';
import type { Unit } from '../../exact/unit';
import { cellOf } from './cells';
import { understandGiven } from './given';
import type { Merged } from './header';
import type { HouseWords } from './house-words';
import { orderTable, type OrderTable } from './order-rows';
import type { Corrections, Trouble } from './understand';
import { understandSheet } from './whole-sheet';

export interface OrdersFound {
  readonly table: OrderTable;
  /** The first row below the headings, counted from 0. */
  readonly below: number;
  readonly headerRows: number;
}

export interface OrdersLook {
  readonly unit: Unit;
  readonly merged?: readonly Merged[];
  readonly said?: Corrections;
  readonly words?: HouseWords;
  /** How many rows at the top are the headings; else they are looked for. */
  readonly headerRows?: number;
}

/** The columns of past orders, by all that the rows shown tell. */
export function findOrders(rows: readonly (readonly CellIn[])[], look: OrdersLook): OrdersFound | Trouble {
  const { unit, merged = [], said, words, headerRows } = look;
  const found = understandSheet(
    { rows: rows.map((row) => row.map(cellOf)), merged },
    {
      unit,
      ...(said === undefined ? {} : { said }),
      ...(words === undefined ? {} : { words }),
      ...(headerRows === undefined ? {} : { header: Array.from({ length: headerRows }, (_, at) => at) }),
    },
  );
  if ('none' in found) return found;
  const { rows: at } = found.header;
  return { table: orderTable(found, unit), below: (at.at(-1) ?? 0) + 1, headerRows: at.length };
}

/** The columns of past orders under headings that are given apart. Throws where no column is known. */
export function ordersUnder(
  headers: readonly (readonly CellIn[])[],
  rows: readonly (readonly CellIn[])[],
  unit: Unit,
): OrderTable {
  const found = understandGiven(headers, rows, unit);
  if ('none' in found) throw new Error(found.none);
  return orderTable(found, unit);
}
