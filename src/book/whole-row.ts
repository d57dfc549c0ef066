/**
 * One figure asked of the whole row: SCHEDULE or CHECK, given the row's columns as they are
 * understood here, under headings those functions read. So a column whose meaning the user told is
 * taken as the user said, and no figure hangs on a chain of others.
 */
import { columnOf, WINDOW_COLUMNS, type ColumnKey } from '../core/window/columns';
import { FIGURE_KEYS, usualHeading, type OrderKey } from '../core/window/meanings';
import { orderColumns } from '../core/window/order';
import type { Unit } from '../core/exact/unit';
import { readHeading } from './headings';
import { countsWindows, QUANTITY, type Handed, type OutputColumn, type Source } from './row-formula';

/** They say which window it is, not how it is made. */
const NAMES_ONLY: ReadonlySet<string> = new Set(['room', 'fabric']);
/** What can be worked out again from what was measured is handed over only where that is not there. */
const BASES: Readonly<Record<string, string>> = { rodWidth: 'openingWidth', finishedDrop: 'measured' };
const LONGEST = 60;

/** The user's heading where it reads as what it is; else ours, with the user's in brackets, which are passed over. */
function headingFor(key: string, source: Source, reads: (heading: string) => string | undefined): string {
  const own = source.heading
    .replace(/[()[\]{}]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, LONGEST);
  // Its figures are handed over in the house's unit.
  const bare = (
    source.unit === undefined ? source.heading : source.heading.replace(/[([{][^)\]}]*[)\]}]/g, ' ')
  )
    .replace(/\s+/g, ' ')
    .trim();
  if (bare !== '' && bare.length <= LONGEST && reads(bare) === key) return bare;
  const ours =
    key in WINDOW_COLUMNS ? WINDOW_COLUMNS[key as ColumnKey].heading : usualHeading(key as OrderKey);
  // A heading that is nothing but a unit would be taken for the unit of ours.
  return readHeading(own).words.length === 0 ? ours : `${ours} (${own})`;
}

/** The columns of the row that SCHEDULE or CHECK is given, in the order of our own sheets. */
export function handed(
  output: OutputColumn,
  sources: ReadonlyMap<string, Source>,
  unit: Unit,
): readonly Handed[] {
  const { whole } = output;
  const measured = Object.keys(WINDOW_COLUMNS);
  // A figure of one window stands whatever the quantity.
  const leftOut = whole === 'SCHEDULE' && !countsWindows(output) ? QUANTITY : undefined;
  const keys = whole === 'CHECK' ? [...new Set([...measured, ...FIGURE_KEYS])] : measured;
  const reads = (heading: string): string | undefined =>
    whole === 'CHECK' ? orderColumns([heading], unit).found[0]?.key : columnOf(heading);
  const list = keys.flatMap((key): Handed[] => {
    const source = sources.get(key);
    if (source === undefined || NAMES_ONLY.has(key) || key === leftOut) return [];
    const again = BASES[key];
    if (source.level > 0 && (again === undefined || sources.has(again))) return [];
    return [{ key, heading: headingFor(key, source, reads), source }];
  });
  if (whole === 'SCHEDULE') return list;
  // Two of the user's headings may each read well and yet be told apart otherwise side by side.
  const found = orderColumns(
    list.map((one) => one.heading),
    unit,
  ).found.map((one) => one.key);
  return list.every((one, at) => found[at] === one.key)
    ? list
    : list.map((one) => ({ ...one, heading: headingFor(one.key, one.source, () => undefined) }));
}
