/** What a plan's columns would show in the first rows, worked out before a cell is touched. */
import { functionNamed } from '../../functions/index';
import type { CellIn } from '../core/fields';
import { toUnit } from '../core/length';
import type { Unit } from '../core/unit';
import { readFigure } from '../core/written';
import type { CellValue } from './book';
import { filled } from './header';
import type { Plan, PlanGiven } from './plan';
import type { Source } from './row-formula';

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

/** What the new columns would show in the first rows; `rules` is the rules range as read, or null. */
export function preview(of: Plan, given: PlanGiven, rules: CellIn, rows = 5): readonly PreviewRow[] {
  const { read, unit } = given;
  const list = of.runs.flatMap(([from, count]) =>
    Array.from({ length: Math.min(count, rows) }, (_, i) => from + i),
  );
  return list.slice(0, rows).map((row): PreviewRow => {
    const values = new Map<string, CellValue>();
    for (const column of read.columns) {
      if (column.key === undefined) continue;
      const raw =
        read.block.values[row - read.block.area.row]?.[column.column - read.block.area.column] ?? null;
      const length = given.wanted.find((one) => one.key === column.key)?.field.kind.noun === 'a length';
      values.set(column.key, length ? converted(raw, column.unit, unit) : raw);
    }
    const cells = of.columns.map((column): PreviewCell => {
      const cell =
        column.same === undefined
          ? worked(given, column.key, values, rules)
          : { value: column.same, findings: [] };
      values.set(column.key, cell.value);
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

function worked(
  given: PlanGiven,
  key: string,
  values: ReadonlyMap<string, CellValue>,
  rules: CellIn,
): { value: CellValue; findings: readonly string[] } {
  const output = given.outputs.find((one) => one.key === key);
  const of = output && functionNamed(output.calls);
  if (output === undefined || of === undefined) return { value: null, findings: [] };
  const input = (name: string): CellIn => {
    if (name === 'rules') return rules;
    const key = output.takes[name] ?? '';
    if (key !== 'measured') return values.get(key) ?? null;
    return [['measured', 'measuredCentre', 'measuredRight'].map((one) => values.get(one) ?? null)];
  };
  const first = of.parameters.find((one) => !one.optional);
  if (first !== undefined && !filled(values.get(output.takes[first.name] ?? '')))
    return { value: '', findings: [] };
  const { none, times } = output;
  if (none !== undefined && values.has(none.column)) {
    const word = String(values.get(none.column) ?? '')
      .trim()
      .toLowerCase();
    if (word === '' || none.words.includes(word)) return { value: 0, findings: [] };
  }
  const outcome = of.call(of.parameters.map((one) => input(one.name)));
  if ('error' in outcome) return { value: outcome.error, findings: [outcome.finding.sentence] };
  const one = Array.isArray(outcome.cells) ? null : (outcome.cells as CellValue);
  const count = times === undefined ? 1 : values.get(times);
  const cell = typeof one === 'number' && typeof count === 'number' ? one * count : one;
  return { value: cell, findings: outcome.findings.map((one) => one.sentence) };
}
