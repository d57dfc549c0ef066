/**
 * How each figure is worked out so that HEM functions stand at most two levels deep: Excel needs
 * about half a second for a level, whatever its size. A figure that would hang on a longer chain is
 * asked of the whole row instead.
 */
import { functionNamed } from '../../functions/index';
import { cellText, columnOf } from './address';
import type { Block } from './book';
import type { OutputColumn } from './row-formula';

export const MOST_LEVELS = 2;

/** What only a whole row can say of a treatment: a figure that its function is not told of is asked of the row. */
const ONLY_BY_ROW = ['hangOn', 'return', 'overlap', 'widthsEach', 'mount', 'projection', 'windowLayer'];
/** What it hangs on tells of the drop as well, and so does what it is. */
const BEFORE_THE_DROP = ['hangOn', 'windowLayer'];

export interface Way {
  /** columns: the function is given a column for each parameter; row: the whole row is asked. */
  readonly by: 'columns' | 'row';
  readonly level: number;
}

/** The columns that bear on a figure and that only the whole row tells it of. */
const onlyByRow = (key: string): readonly string[] =>
  key === 'rodWidth' ? [] : key === 'finishedDrop' ? BEFORE_THE_DROP : ONLY_BY_ROW;

/** The way to every output; undefined where a column it needs is not there. `has` is the table's columns with their levels. */
export function waysTo(
  outputs: readonly OutputColumn[],
  has: ReadonlyMap<string, number>,
  /** What only a reader of the whole row understands. */
  rowOnly: ReadonlySet<string> = new Set(),
): (key: string) => Way | undefined {
  const known = new Map<string, Way | undefined>();
  const rowLevel = 1 + Math.min(1, Math.max(0, ...has.values()));
  const way = (key: string): Way | undefined => {
    if (known.has(key)) return known.get(key);
    known.set(key, undefined);
    const output = outputs.find((one) => one.key === key);
    const found = output === undefined ? undefined : wayOf(output);
    known.set(key, found);
    return found;
  };
  const wayOf = (output: OutputColumn): Way | undefined => {
    if (output.whole === 'CHECK') return { by: 'row', level: rowLevel };
    let deepest = 0;
    const needs = (key: string): boolean => rowOnly.has(key);
    const told = Object.values(output.takes);
    let cell = output.cell && onlyByRow(output.key).every((key) => !has.has(key) || told.includes(key));
    if (told.some(needs)) cell = false;
    for (const { name, optional } of functionNamed(output.calls)?.parameters ?? []) {
      const key = output.takes[name];
      if (key === undefined) continue;
      const own = has.get(key);
      const level = own ?? way(key)?.level;
      // What may be left out but can be worked out (brackets by their weight) is not left out.
      if (optional && own === undefined && level !== undefined) cell = false;
      else if (level !== undefined) deepest = Math.max(deepest, level);
      else if (!optional) return undefined;
    }
    return cell && deepest < MOST_LEVELS
      ? { by: 'columns', level: deepest + 1 }
      : { by: 'row', level: rowLevel };
  };
  return way;
}

const OURS = /\b(?:HEM\.|_XLDUDF_HEM_)/i;
const CELL = /(?<![A-Za-z0-9_!.'])\$?([A-Z]{1,3})\$?([1-9]\d{0,6})(?![A-Za-z0-9_(!.])/g;

/** How many levels of HEM functions stand under a cell that is there already, within its row. */
export function levelOf(block: Block, row: number, column: number, seen = new Set<string>()): number {
  const at = cellText(row, column);
  const formula = block.formulas[row - block.area.row]?.[column - block.area.column] ?? null;
  if (formula === null || seen.has(at)) return 0;
  const path = new Set(seen).add(at);
  let under = 0;
  for (const [, letters = '', number] of formula.replace(/"[^"]*"/g, '').matchAll(CELL)) {
    if (Number(number) - 1 === row) under = Math.max(under, levelOf(block, row, columnOf(letters), path));
  }
  return under + (OURS.test(formula) ? 1 : 0);
}
