/** A rules range as it is read: the rules in force, and what was odd about it. */
import { finding, refuse, type Finding } from '../cell/answer';
import { filledRows, isBlank, oneCell, readBack, rowsOf, type CellIn } from '../cell/fields';
import { nearestRule, RULE_LINES, ruleLine, RULES, type RuleLine, type Rules } from './rules';
import { bare } from '../cell/treatment';
import { CENTIMETRES, INCHES, type Unit } from '../exact/unit';

/** A rules range once read, with what was odd about it. */
export interface House {
  readonly rules: Rules;
  readonly unit: Unit;
  readonly findings: readonly Finding[];
  /** The names set by the workbook. */
  readonly set: ReadonlySet<string>;
  /** Rules that stood before these, where the range holds them too. */
  readonly earlier: readonly House[];
}

/** A copy: an object filled key by key is twice as slow to look up in as one made whole. */
const lookedUpOften = (rules: Record<string, unknown>): Rules => ({ ...rules }) as Rules;

function standing(unit: Unit): Rules {
  const rules: Record<string, unknown> = {};
  for (const line of RULE_LINES) {
    const standard = line.standard(unit);
    if (line.heading === undefined) rules[line.key] = standard;
    else rules[line.key] = { ...(rules[line.key] as object | undefined), [line.heading]: standard };
  }
  rules['unit'] = unit.name;
  return lookedUpOften(rules);
}

const NO_FINDINGS: readonly Finding[] = [];
const NONE_SET: ReadonlySet<string> = new Set();
export const DEFAULT_HOUSE: House = {
  rules: standing(INCHES),
  unit: INCHES,
  findings: NO_FINDINGS,
  set: NONE_SET,
  earlier: [],
};
export const DEFAULT_RULES: Rules = DEFAULT_HOUSE.rules;

const TITLES = new Set(['rule', 'houserule', 'name', 'rules']);

type Rows = readonly (readonly CellIn[])[];

const nameOf = (row: Rows[number]): CellIn => oneCell(row[0], { name: 'rules', unit: INCHES });
const isRule = (row: Rows[number]): boolean => ruleLine(String(nameOf(row) ?? '')) !== undefined;
const begins = (row: Rows[number]): boolean => ruleLine(String(nameOf(row) ?? ''))?.key === 'inForceFrom';

/** A range may hold several sets of rules; each further one begins with its row “in force from”. */
function setsOf(rows: Rows): Rows[] {
  const sets: (readonly CellIn[])[][] = [[]];
  for (const row of rows) {
    if (begins(row) && sets.at(-1)?.some(isRule) === true) sets.push([]);
    sets.at(-1)?.push(row);
  }
  return sets;
}

/** The newest rules stand; what stood before is kept for whoever asks of a day. */
function readAfresh(rows: Rows): House {
  const sets = setsOf(rows).map(readSet);
  const newest = sets.reduce((one, other) =>
    (other.rules.inForceFrom ?? -1) > (one.rules.inForceFrom ?? -1) ? other : one,
  );
  if (sets.length === 1) return newest;
  return {
    ...newest,
    findings: sets.flatMap(({ findings }) => findings),
    earlier: sets.filter((one) => one !== newest),
  };
}

function readSet(rows: Rows): House {
  const found: Finding[] = [];
  const lines = rows.flatMap((row): { line: RuleLine; raw: CellIn }[] => {
    const name = nameOf(row);
    // An empty cell is 0 on some platforms.
    if (name === undefined || name === 0 || TITLES.has(bare(String(name)))) return [];
    const line = ruleLine(String(name));
    if (line !== undefined) return [{ line, raw: row[1] }];
    found.push(finding('unknownRule', 'rules', readBack(name), nearestRule(String(name))));
    return [];
  });
  // A single figure here is most often an input one place too far on.
  if (lines.length + found.length > 0 && rows.every((row) => row.length < 2))
    return refuse('rangeTooNarrow', 'rules', 'rules', 'two columns, rule and value', 1);
  const unitRow = lines.filter(({ line, raw }) => line.key === 'unit' && !isBlank(raw)).at(-1);
  const unitName =
    unitRow === undefined
      ? undefined
      : RULES.unit.kind.read(unitRow.raw, { name: 'house rule “unit”', unit: INCHES });
  const unit = unitName === 'centimetres' ? CENTIMETRES : INCHES;
  const rules = standing(unit) as unknown as Record<string, unknown>;
  const set = new Map<string, unknown>();
  for (const { line, raw } of lines) {
    const value = isBlank(raw) ? undefined : line.kind.read(raw, { name: `house rule “${line.name}”`, unit });
    if (value === undefined) continue;
    if (set.has(line.name) && String(set.get(line.name)) !== String(value))
      found.push(finding('repeatedRule', 'rules', line.name));
    set.set(line.name, value);
    if (line.heading === undefined) rules[line.key] = value;
    else (rules[line.key] as Record<string, unknown>)[line.heading] = value;
  }
  return { rules: lookedUpOften(rules), unit, findings: found, set: new Set(set.keys()), earlier: [] };
}

interface Known {
  readonly rows: Rows;
  readonly house: House;
}
/** The ranges read last, the latest first: a workbook has a few sets of rules. */
let known: readonly Known[] = [];
const MOST_KNOWN = 6;

const sameRows = (one: readonly (readonly CellIn[])[], other: readonly (readonly CellIn[])[]): boolean =>
  one.length === other.length &&
  one.every((row, i) => row.length === other[i]?.length && row.every((cell, j) => cell === other[i]?.[j]));

/**
 * Reads a rules range: columns rule, value. Thousands of cells point at one range, so what was read is kept;
 * a range is known again by its contents, never by its array, and blank rows at its end are passed over.
 */
export function readHouse(raw: CellIn): House {
  if (isBlank(raw)) return DEFAULT_HOUSE;
  const rows = filledRows(rowsOf(raw), { name: 'rules', unit: INCHES });
  const at = known.findIndex((one) => sameRows(rows, one.rows));
  const found = known[at];
  if (found !== undefined) {
    if (at > 0) known = [found, ...known.filter((one) => one !== found)];
    return found.house;
  }
  const house = rows.length === 0 ? DEFAULT_HOUSE : readAfresh(rows);
  known = [{ rows: rows.map((row) => [...row]), house }, ...known].slice(0, MOST_KNOWN);
  return house;
}
