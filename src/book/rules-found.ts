/** House rules wherever they stand among cells, and which of several sets stood when. */
import { Refusal } from '../core/cell/answer';
import type { Period } from '../core/audit/audit';
import { showDay } from '../core/cell/day';
import { readHouse, type House } from '../core/house/house';
import { inOrder, periodsOf } from '../core/audit/periods';
import { ruleLine } from '../core/house/rules';
import type { CellIn } from '../core/cell/fields';

type Rows = readonly (readonly CellIn[])[];

const isRule = (cell: CellIn): boolean => typeof cell === 'string' && ruleLine(cell) !== undefined;

/** The two columns in which most rules stand, name and value. */
export function rulesAmong(rows: Rows): Rows | undefined {
  let best: Rows | undefined;
  let most = 0;
  const columns = rows.reduce((widest, row) => Math.max(widest, row.length), 0);
  for (let at = 0; at < columns; at++) {
    const count = rows.filter((row) => isRule(row[at])).length;
    if (count <= most) continue;
    most = count;
    const first = rows.findIndex((row) => isRule(row[at]));
    const last = rows.findLastIndex((row) => isRule(row[at]));
    best = rows.slice(first, last + 1).map((row) => [row[at] ?? null, row[at + 1] ?? null]);
  }
  return best;
}

/** Only rules that have a row for their first day, blank or not, are a set beside those in force. */
export const hasFirstDay = (rules: Rows): boolean =>
  rules.some(([name]) => typeof name === 'string' && ruleLine(name)?.key === 'inForceFrom');

/** House rules as one place holds them: a sheet, a file. */
export interface RulesPlace {
  readonly name: string;
  readonly house: House;
}

export function rulesPlace(name: string, rows: Rows): RulesPlace {
  try {
    return { name, house: readHouse(rows) };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    const { finding, error } = thrown;
    throw new Refusal({ ...finding, sentence: `“${name}”: ${finding.sentence}` }, error);
  }
}

export interface NamedPeriod extends Period {
  readonly name: string;
}
export interface RulesByDay {
  /** The oldest first. */
  readonly periods: readonly NamedPeriod[];
  /** What was left out, and what to do about it. */
  readonly notes: readonly string[];
}

const setsOf = ({ name, house }: RulesPlace): NamedPeriod[] =>
  periodsOf(house).map((one) => ({ ...one, name }));
const listed = (places: readonly RulesPlace[]): string =>
  places.map(({ name }) => `“${name}”`).join(places.length === 2 ? ' and ' : ', ');

/**
 * The rules that stand now, and those of other places that stood before or will: each set with its
 * first day, and one without a day for all that was before the others.
 */
export function rulesByDay(now: RulesPlace, others: readonly RulesPlace[]): RulesByDay {
  const own = setsOf(now);
  const dated = others.filter(({ house }) => house.rules.inForceFrom !== undefined);
  const [one, ...more] = others.filter((place) => !dated.includes(place));
  if (own.some(({ from }) => from === undefined)) {
    if (dated.length === 0 || own.length > 1) return { periods: own, notes: [] };
    const note = `“${now.name}” have no first day, so ${listed(dated)} are left aside. Write the day into their rule “in force from”, and older orders are audited by the older rules.`;
    return { periods: own, notes: [note] };
  }
  const periods = [
    ...own,
    ...dated.flatMap(setsOf),
    ...(one !== undefined && more.length === 0 ? setsOf(one) : []),
  ];
  const notes =
    one !== undefined && more.length > 0
      ? [
          `${listed([one, ...more])} hold house rules without a first day, so none of them is used. Write the day into the rule “in force from” of the right one.`,
        ]
      : [];
  return { periods: inOrder(periods), notes };
}

/** Which orders are audited by which rules, in a sentence; undefined where one set stands for all. */
export function saysRulesByDay(periods: readonly NamedPeriod[]): string | undefined {
  const [first, ...later] = periods;
  const last = later.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const called = ({ name, from }: NamedPeriod): string => {
    if (periods.filter((one) => one.name === name).length === 1) return `“${name}”`;
    return from === undefined
      ? `the rules of “${name}” without a day`
      : `the rules of “${name}” from ${showDay(from)}`;
  };
  const day = (at: number): string => showDay(later[at]?.from ?? 0);
  const between = later
    .slice(0, -1)
    .map((one, at) => `, those before ${day(at + 1)} against ${called(one)}`)
    .join('');
  const before = `Orders before ${day(0)} are checked against ${called(first)}${between}, later ones and those without a date against ${called(last)}.`;
  return first.from === undefined
    ? before
    : `${before} No older rules stand here, so ${called(first)} also serve for orders before their own first day, ${showDay(first.from)}.`;
}
