/** A row as read, as the core works it: a window’s own columns, with what of them could not be read. */
import { finding, Refusal, type Finding } from '../../cell/answer';
import { letters } from '../../cell/letters';
import type { Field } from '../../cell/fields';
import { ratio } from '../../exact/ratio';
import type { Unit } from '../../exact/unit';
import { bayIn } from '../../cell/opening';
import { WINDOW_COLUMNS, type ColumnKey, type Window } from '../columns';
import { isDay, type Cell, type Row } from './cells';
import { headingOf } from './meanings';
import type { OrderKey } from '../meanings';
import type { RowRead, Values } from './slots';
import type { ColumnRead } from './understand';

const isColumn = (key: string): key is ColumnKey => key in WINDOW_COLUMNS;

/** What the reader leaves as it is written, read as its column reads it; left out where it cannot be read. */
function asColumn(key: ColumnKey, written: string, unit: Unit): unknown {
  try {
    return (WINDOW_COLUMNS[key].field as Field<unknown>).kind.read(written, { name: key, unit });
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

/** The window of a row: ratios and lengths as the core has them. */
export function windowOf(values: Values, unit: Unit): Window {
  const window: Partial<Record<ColumnKey, unknown>> = {};
  for (const [key, value] of Object.entries(values)) {
    if (!isColumn(key) || value === undefined) continue;
    if (key === 'fullness') window[key] = ratio(Number(value));
    // A repeat of nothing is a plain cloth’s.
    else if ((key === 'verticalRepeat' || key === 'horizontalRepeat') && value === 0) continue;
    else if ((key === 'projection' || key === 'mount') && typeof value === 'string')
      window[key] = asColumn(key, value, unit);
    else window[key] = value;
  }
  return window as Window;
}

/** The user’s heading of each meaning. */
export const headingsByKey = (columns: readonly ColumnRead[]): Partial<Record<OrderKey, string>> =>
  Object.fromEntries(
    columns.flatMap(({ means, heading, addsTo }) =>
      addsTo === undefined ? means.map((key) => [key, heading]) : [],
    ),
  );

const inUnit = (unit: Unit, { unit: own }: ColumnRead): Unit =>
  own === undefined || own === unit.small || own === unit.large ? unit : { ...unit, small: own };

/** Counts that a kind holds to its own bounds: no window of a row, half widths only. */
export const BOUNDED: ReadonlySet<OrderKey> = new Set<ColumnKey>(['quantity', 'widthsEach', 'arealWeight']);

/**
 * The window of a row that was read as one. Throws a Refusal, in the words of the sheet’s heading,
 * where one of its own cells cannot be read.
 */
export function windowOfRow(read: RowRead, cells: Row, columns: readonly ColumnRead[], unit: Unit): Window {
  const [bad] = read.unread.filter(({ key }) => isColumn(key));
  if (bad !== undefined) throw new Refusal(refusalOf(bad, { at: read.row, cells }, columns, unit));
  for (const key of BOUNDED) {
    const value = read.values[key];
    if (value === undefined) continue;
    const name = columns.find(({ means }) => means.includes(key))?.heading ?? headingOf(key);
    (WINDOW_COLUMNS[key as ColumnKey].field as Field<unknown>).kind.read(value, { name, unit });
  }
  const window = windowOf(read.values, unit);
  const opening = columns.find(({ means, halves }) => !halves && means.includes('openingWidth'));
  const cell = opening === undefined ? null : (cells[opening.at] ?? null);
  if (opening === undefined || typeof cell !== 'string') return window;
  const parts = bayIn(cell, { name: opening.heading, unit: inUnit(unit, opening) });
  return parts === undefined ? window : { ...window, openingParts: parts };
}

/** Why a cell cannot be read, in the words of its kind. */
export function refusalOf(
  { at, key, text }: RowRead['unread'][number],
  row: { readonly at: number; readonly cells: Row },
  columns: readonly ColumnRead[],
  unit: Unit,
): Finding {
  const column = columns.find((one) => one.at === at);
  const heading = column?.heading ?? headingOf(key);
  const cell: Cell = row.cells[at] ?? null;
  if (column !== undefined && isColumn(key) && !isDay(cell)) {
    try {
      (WINDOW_COLUMNS[key].field as Field<unknown>).kind.read(cell, {
        name: heading,
        unit: inUnit(unit, column),
      });
    } catch (thrown) {
      if (thrown instanceof Refusal) return thrown.finding;
      throw thrown;
    }
  }
  return finding('cellsUnread', heading, letters(at), headingOf(key), 1, `${letters(at)}${row.at + 1}`, text);
}
