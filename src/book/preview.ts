/** What a plan's columns would show in the first rows, worked out before a cell is touched. */
import type { Outcome } from '../../functions/declare';
import { functionNamed } from '../../functions/index';
import { HEADINGS } from '../core/cell/treatment';
import { errorOf, type CellIn } from '../core/cell/fields';
import { toUnit } from '../core/exact/length';
import { renamed } from '../core/cell/answer';
import { namedBy, type Naming } from '../core/window/sheet-words';
import type { Unit } from '../core/exact/unit';
import { readFigure } from '../core/exact/written';
import { filled, type CellValue } from './book';
import type { Plan, PlanGiven, PlannedColumn } from './plan';
import { countsWindows, QUANTITY, type OutputColumn, type Source } from './row-formula';

export interface PreviewCell {
  readonly key: string;
  readonly value: CellValue;
  /** Sentences: why there is no value, or what to look at. */
  readonly findings: readonly string[];
}
export interface PreviewRow {
  readonly row: number;
  readonly cells: readonly PreviewCell[];
}

type Values = ReadonlyMap<string, CellValue>;

/** What the new columns would show in the first rows; `rules` is the rules range as read, or null. */
export function preview(plan: Plan, given: PlanGiven, rules: CellIn, rows = 5): readonly PreviewRow[] {
  const { read, unit } = given;
  const headings = new Map(
    read.columns.flatMap(({ key, heading }) => (key === undefined ? [] : [[key, heading] as const])),
  );
  for (const { key, heading } of plan.columns) headings.set(key, heading);
  const list = plan.runs.flatMap(([from, count]) =>
    Array.from({ length: Math.min(count, rows) }, (_, i) => from + i),
  );
  return list.slice(0, rows).map((row): PreviewRow => {
    const values = new Map<string, CellValue>();
    const shown = new Map<number, CellValue>();
    const raw = (column: number): CellValue =>
      read.block.values[row - read.block.area.row]?.[column - read.block.area.column] ?? null;
    for (const { column, keys, unit: own } of read.columns)
      for (const key of keys) values.set(key, converted(raw(column), own, unit));
    const { measuredTo, stated } = read.table.understanding.plan;
    for (const [key, said] of Object.entries({ ...stated, measuredTo }))
      if (said !== undefined && !values.has(key)) values.set(key, said);
    const cellOf = ({ column, constant }: Source): CellValue => constant ?? shown.get(column) ?? raw(column);
    const heading = HEADINGS.find(String(values.get('heading') ?? ''));
    const naming = namedBy((key) => headings.get(key), {
      heading,
      gives: (key) => filled(values.get(key)),
    });
    const cells = plan.columns.map((column): PreviewCell => {
      const output = given.outputs.find((one) => one.key === column.key);
      const cell =
        column.same !== undefined || output === undefined
          ? { value: column.same ?? null, findings: [] }
          : column.by === 'row'
            ? ofWholeRow(output, column, { values, cellOf }, rules)
            : byColumns(output, values, rules, naming);
      values.set(column.key, cell.value);
      shown.set(column.column, cell.value);
      return { key: column.key, ...cell };
    });
    return { row, cells };
  });
}

function converted(raw: CellValue, from: Source['unit'], unit: Unit): CellValue {
  if (from === undefined || from === unit.small || raw === null) return raw;
  if (typeof raw !== 'number') return filled(raw) ? `${String(raw)} ${from}` : raw;
  const length = readFigure(raw, from);
  return length === undefined ? raw : toUnit(length, unit.small);
}

type Seen = Pick<PreviewCell, 'value' | 'findings'>;
const NOTHING: Seen = { value: '', findings: [] };
const NO_WINDOW: Seen = { value: 0, findings: [] };
const isNoWindow = (output: OutputColumn, values: Values): boolean =>
  countsWindows(output) && String(values.get(QUANTITY) ?? '') === '0';

const firstCell = (outcome: Extract<Outcome, { cells: unknown }>): CellValue => {
  const { cells } = outcome;
  return (Array.isArray(cells) ? (cells as CellValue[][])[0]?.[0] : (cells as CellValue)) ?? null;
};

/** As the cell's own function answers, each parameter from its column. */
function byColumns(output: OutputColumn, values: Values, rules: CellIn, naming: Naming): Seen {
  const cellFunction = functionNamed(output.calls);
  if (cellFunction === undefined) return NOTHING;
  const input = (name: string): CellIn => {
    if (name === 'rules') return rules;
    const key = output.takes[name] ?? '';
    if (key !== 'measured') return values.get(key) ?? null;
    return [['measured', 'measuredCentre', 'measuredRight'].map((one) => values.get(one) ?? null)];
  };
  const first = cellFunction.parameters.find((one) => !one.optional);
  if (first !== undefined && !filled(values.get(output.takes[first.name] ?? ''))) return NOTHING;
  const { none, times } = output;
  if (none !== undefined && values.has(none.column)) {
    const word = String(values.get(none.column) ?? '')
      .trim()
      .toLowerCase();
    if (word === '' || none.words.includes(word)) return { value: 0, findings: [] };
  }
  if (isNoWindow(output, values)) return NO_WINDOW;
  const inputs = cellFunction.parameters.map((one) => input(one.name));
  const outcome = cellFunction.call(inputs);
  if ('error' in outcome) {
    // What is wrong with a figure worked out beside this one is said there.
    const again = outcome.finding.code === 'errorCell' && inputs.some((one) => errorOf(one) !== undefined);
    return {
      value: outcome.error,
      findings: again ? [] : [renamed(outcome.finding, naming).sentence],
    };
  }
  const one = firstCell(outcome);
  const count = times === undefined ? 1 : values.get(times);
  return {
    value: typeof one === 'number' && typeof count === 'number' ? one * count : one,
    findings: outcome.findings.map((found) => renamed(found, naming).sentence),
  };
}

/** As SCHEDULE or CHECK answers, from the same columns under the same headings as in the cell. */
function ofWholeRow(
  output: OutputColumn,
  column: PlannedColumn,
  { values, cellOf }: { readonly values: Values; readonly cellOf: (source: Source) => CellValue },
  rules: CellIn,
): Seen {
  const cellFunction = functionNamed(output.whole);
  const first = column.handed[0];
  if (cellFunction === undefined || first === undefined || !filled(cellOf(first.source))) return NOTHING;
  if (output.whole === 'SCHEDULE' && isNoWindow(output, values)) return NO_WINDOW;
  const headings = [column.handed.map((one) => one.heading)];
  const row = [column.handed.map((one) => cellOf(one.source))];
  const outcome = cellFunction.call(
    output.whole === 'CHECK' ? [headings, row, rules] : [headings, row, output.heading, rules],
  );
  if ('error' in outcome) return { value: outcome.error, findings: [outcome.finding.sentence] };
  const value = firstCell(outcome);
  const said = outcome.findings.map((one) => one.sentence);
  return { value, findings: output.whole === 'CHECK' && filled(value) ? [String(value)] : said };
}
