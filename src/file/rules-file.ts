/** House rules and price lists from a file, wherever they stand in it. */
import { Refusal } from '../core/cell/answer';
import type { Period } from '../core/audit/audit';
import { readPrices, type PriceList } from '../core/audit/price-list';
import { DATE } from '../core/cell/day';
import {
  hasFirstDay,
  rulesAmong,
  rulesByDay,
  rulesPlace,
  saysRulesByDay,
  type NamedPeriod,
  type RulesByDay,
  type RulesPlace,
} from '../book/rules-found';
import { isBlank } from '../core/cell/fields';
import { DEFAULT_HOUSE } from '../core/house/house';
import { inOrder } from '../core/audit/periods';
import { INCHES } from '../core/exact/unit';
import { smallTables } from './audit/orders';
import { Problem, USAGE } from './problem';

/** A Refusal about the file's contents is a sentence of the command. */
async function inFile<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (thrown) {
    if (thrown instanceof Refusal) throw new Problem(`“${path}”: ${thrown.finding.sentence}`);
    throw thrown;
  }
}

/** The sheet with most rules, and every other whose rules have a row for their first day. */
async function rulesOfFile(path: string): Promise<RulesByDay> {
  const found = (await smallTables(path)).flatMap(({ name, rows }) => {
    const rules = rulesAmong(rows);
    return rules === undefined ? [] : [{ name, rules }];
  });
  found.sort((one, other) => other.rules.length - one.rules.length);
  const [first, ...others] = found;
  if (first === undefined)
    throw new Problem(
      `“${path}” holds no house rules. They stand in two columns, like “bottom allowance” and 8.`,
    );
  const place = ({ name, rules }: (typeof found)[0]): RulesPlace => rulesPlace(name, rules);
  return rulesByDay(place(first), others.filter(({ rules }) => hasFirstDay(rules)).map(place));
}

function inTime(periods: readonly NamedPeriod[]): NamedPeriod[] {
  try {
    return [...inOrder(periods)];
  } catch (thrown) {
    if (thrown instanceof Refusal) throw new Problem(thrown.finding.sentence, USAGE);
    throw thrown;
  }
}

/** “BOOK.xlsx”, or “2025-01-01=BOOK.xlsx” for rules that stood from that day. */
export async function readPeriods(named: readonly string[]): Promise<{ periods: Period[]; notes: string[] }> {
  const periods: NamedPeriod[] = [];
  const notes: string[] = [];
  for (const text of named) {
    const dated = /^(\d{4}-\d{2}-\d{2})=(.+)$/.exec(text);
    const path = dated?.[2] ?? text;
    const found = await inFile(path, () => rulesOfFile(path));
    notes.push(...found.notes);
    if (dated === null) periods.push(...found.periods);
    else if (found.periods.length === 1)
      periods.push(
        ...found.periods.map((one) => ({
          ...one,
          from: DATE.read(dated[1], { name: '--rules', unit: INCHES })?.early,
        })),
      );
    else
      throw new Problem(
        `“${path}” holds the rules of ${found.periods.length} days already. Give it without a day.`,
        USAGE,
      );
  }
  if (periods.length === 0) return { periods: [{ from: undefined, house: DEFAULT_HOUSE }], notes };
  notes.push(...new Set(periods.flatMap(({ house }) => house.findings.map((one) => one.sentence))));
  const sorted = inTime(periods);
  const says = saysRulesByDay(sorted);
  return { periods: sorted, notes: says === undefined ? notes : [...notes, says] };
}

export async function readPriceFile(path: string | undefined): Promise<PriceList | undefined> {
  if (path === undefined) return undefined;
  const rows = (await smallTables(path)).find((one) => one.rows.some((row) => !row.every(isBlank)))?.rows;
  return inFile(path, () => Promise.resolve(readPrices(rows)));
}
