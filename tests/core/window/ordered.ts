/** Rows of a table under headings of ours, read as every host reads them. */
import type { CellIn } from '../../../src/core/cell/fields';
import type { Unit } from '../../../src/core/exact/unit';
import type { Window } from '../../../src/core/window/columns';
import type { Order } from '../../../src/core/window/order';
import { headingsByKey, windowOfRow } from '../../../src/core/window/reader/as-window';
import { cellOf } from '../../../src/core/window/reader/cells';
import { understandGiven } from '../../../src/core/window/reader/given';
import { OrderRows, type OrderTable } from '../../../src/core/window/reader/order-rows';
import { ordersUnder as under } from '../../../src/core/window/reader/orders';
import { RowReader } from '../../../src/core/window/reader/rows';
import type { Understanding } from '../../../src/core/window/reader/understand';

type Cells = readonly (readonly CellIn[])[];

function understood(headings: readonly CellIn[], rows: Cells, unit: Unit): Understanding {
  const found = understandGiven([headings], rows, unit);
  if ('none' in found) throw new Error(found.none);
  return found;
}

export const tableUnder = (headings: readonly CellIn[], rows: Cells, unit: Unit): OrderTable =>
  under([headings], rows, unit);

export function ordersUnder(headings: readonly CellIn[], rows: Cells, unit: Unit): Order[] {
  const reader = new OrderRows(tableUnder(headings, rows, unit));
  const lines = [...rows.flatMap((row, at) => reader.push(at + 1, row)), ...reader.end()];
  return lines.flatMap(({ order }) => order ?? []);
}

/** The window of one row, and how its columns are headed. */
export function windowUnder(
  headings: readonly CellIn[],
  row: readonly CellIn[],
  unit: Unit,
): { window: Window; names: ReturnType<typeof headingsByKey> } {
  const { plan, columns } = understood(headings, [], unit);
  const reader = new RowReader(plan);
  const [read] = [...reader.push(0, row.map(cellOf)), ...reader.end()];
  if (read?.is !== 'window') throw new Error(`read as ${read?.is ?? 'nothing'}, not as a window`);
  return { window: windowOfRow(read, row.map(cellOf), columns, unit), names: headingsByKey(columns) };
}
