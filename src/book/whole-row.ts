/**
 * One figure asked of the whole row: SCHEDULE or CHECK, given the row's columns as they are
 * understood here: under our usual headings, with their units and what one figure is for. So a cell
 * reads what the pane reads, and no figure hangs on a chain of others.
 */
import type { Unit } from '../core/exact/unit';
import { WINDOW_COLUMNS } from '../core/window/columns';
import { FIGURE_KEYS, usualHeading, type OrderKey } from '../core/window/meanings';
import { NAMES_ONLY } from '../core/window/reader/given';
import { readHeading } from '../core/window/reader/heading';
import { isYardageKey } from '../core/window/reader/meanings';
import { countsWindows, QUANTITY, type Handed, type OutputColumn, type Source } from './row-formula';

/** What can be worked out again from what was measured is handed over only where that is not there. */
const BASES: Readonly<Record<string, string>> = { rodWidth: 'openingWidth', finishedDrop: 'measured' };

const LONGEST = 60;

/**
 * Our heading of all that a column's cells hold, with its unit where that is not the house's, and the
 * user's own behind it where that says nothing else.
 */
function headingFor(
  keys: readonly string[],
  { heading, per, unit: own, halves }: Source,
  unit: Unit,
): string {
  const names = keys.map((key) => usualHeading(key as OrderKey));
  // What a treatment's text or a room's cell holds beside is read in the cell itself.
  const name = halves === true ? names.join(' x ') : (names[0] ?? '');
  const forOne = per === undefined ? '' : ` per ${per}`;
  const ours = `${name}${forOne}${own === undefined ? '' : ` (${own})`}`;
  const written = heading
    .replace(/[()[\]{}|]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, LONGEST);
  if (written === '' || written.toLowerCase() === name || halves === true) return ours;
  const both = `${ours} (${written})`;
  const [alone, joined] = [readHeading(ours), readHeading(both)];
  const usual = isYardageKey(keys[0] as OrderKey) ? unit.large : unit.small;
  return (joined.unit ?? usual) === (own ?? usual) && alone.per === joined.per && alone.money === joined.money
    ? both
    : ours;
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
  const done = new Set<number>();
  return keys.flatMap((key): Handed[] => {
    const source = sources.get(key);
    if (source === undefined || key === leftOut) return [];
    const all = source.keys ?? [key];
    if (NAMES_ONLY.has(key) && (all.length === 1 || leftOut !== undefined)) return [];
    const again = BASES[key];
    if (source.level > 0 && (again === undefined || sources.has(again))) return [];
    if (source.constant === undefined) {
      if (done.has(source.column)) return [];
      done.add(source.column);
    }
    const own = { key, heading: headingFor(all, source, unit), source };
    const parts = source.parts;
    return parts === undefined
      ? [own]
      : [own, { key: `${key} fraction`, heading: 'fraction', source: { ...source, column: parts } }];
  });
}
