/** What past orders are audited by, found in the workbook: house rules and prices, each from its own day on. */
import { DEFAULT_HOUSE } from '../../core/house/house';
import { INCHES, type Unit } from '../../core/exact/unit';
import { sameSheet, type Area } from '../address';
import { pricesIn, type PricesFound } from './price-lists';
import type { Book, Contents } from '../book';
import { readRules, rulesNames, type RulesSeen } from '../rule-lines';
import {
  hasFirstDay,
  rulesAmong,
  rulesByDay,
  rulesPlace,
  type NamedPeriod,
  type RulesPlace,
} from '../rules-found';

export interface Basis {
  /** The rules range of this workbook, where there is one. */
  readonly rules: RulesSeen | undefined;
  readonly unit: Unit;
  /** The oldest first; our defaults where the workbook has none. */
  readonly periods: readonly NamedPeriod[];
  readonly prices: PricesFound | undefined;
  /** What was left out, and what to do about it. */
  readonly notes: readonly string[];
}

/** Larger sheets are schedules and orders: no list of rules or prices is looked for there. */
const MOST_ROWS = 3_000;
const MOST_COLUMNS = 60;
const MOST_SHEETS = 40;

const lists = ({ sheets }: Contents, but: string): Area[] =>
  sheets
    .flatMap(({ used }) => used ?? [])
    .filter(
      ({ sheet, rows, columns }) => !sameSheet(sheet, but) && rows <= MOST_ROWS && columns <= MOST_COLUMNS,
    )
    .slice(0, MOST_SHEETS);

/** Reads what the orders of this sheet are audited by. */
export async function readBasis(book: Book, orders: string): Promise<Basis> {
  const contents = await book.contents();
  const [name] = await rulesNames(book);
  const rules = name === undefined ? undefined : await readRules(book, name);
  const blocks = await book.read(lists(contents, orders), 'contents');
  const jobs = contents.names.filter((one) => /^house_rules(_\d+)?$/i.test(one.name));
  const others = blocks.flatMap((block): RulesPlace[] => {
    const { sheet } = block.area;
    if (jobs.some(({ area }) => area !== undefined && sameSheet(area.sheet, sheet))) return [];
    const found = rulesAmong(block.values) ?? [];
    return hasFirstDay(found) ? [rulesPlace(sheet, found)] : [];
  });
  const { periods, notes } = inForce(rules, others);
  const unit = periods.at(-1)?.house.unit ?? INCHES;
  const { prices, notes: aboutPrices } = pricesIn(blocks);
  return { rules, unit, periods, prices, notes: [...notes, ...aboutPrices] };
}

/** Without a range of ours, the rules sheets of the workbook are all there is. */
function inForce(rules: RulesSeen | undefined, others: readonly RulesPlace[]) {
  if (rules !== undefined) return rulesByDay(rulesPlace(rules.area.sheet, rules.rows), others);
  const [first, ...more] = others;
  return first === undefined
    ? { periods: [{ name: 'our default rules', from: undefined, house: DEFAULT_HOUSE }], notes: [] }
    : rulesByDay(first, more);
}
