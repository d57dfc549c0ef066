/**
 * What is found in most rows of a table is a way of that table, or a column that is not what it seems: it is
 * said once, and not in every row. So is a word that cannot be read and comes again and again.
 */
import { finding, type Finding } from '../cell/answer';
import { isBlank } from '../cell/fields';
import { digits } from '../exact/unit';
import type { OrderLine, OrderTable } from '../window/reader/order-rows';
import { pricesByDay } from './price-days';
import { isOfAWord, isSaidOnce, repeatKey, sameDifferences, type SameDifference } from './repeated';
import type { OrderFinding } from './finding';
import { holdsAt, ownSums, ownSumsOf } from './own-sums';
import { OneByOne, type AuditBy, type Judging } from './one-by-one';

/** Fewer orders tell nothing of all the others. */
const LEAST_ORDERS = 25;
/** Of so many orders, what is found alike is the table's. */
const MOST = 0.3;
/** So often the same word in the same column is one thing to say. */
const SAME_WORD = 5;
/** So often the same difference is a charge or a reduction that no column names; a slip is made once. */
const SAME_DIFFERENCE = 5;

const JUDGING: Judging = {
  checks: [ownSums],
  ofSums: ['notItsOwnSum'],
  holdsAt,
  isSaidOnce,
  prices: pricesByDay,
};

type Same = SameDifference & { readonly found: OrderFinding[] };

/** What is found in the first orders, by what it says. */
interface Found {
  readonly alike: ReadonlyMap<string, readonly OrderFinding[]>;
  readonly differences: ReadonlyMap<string, Same>;
  readonly orders: number;
}

function foundIn(lines: readonly OrderLine[], alone: OneByOne): Found {
  const alike = new Map<string, OrderFinding[]>();
  const differences = new Map<string, Same>();
  let orders = 0;
  for (const line of lines) {
    const row = alone.audited(line);
    if (row?.seen === undefined) continue;
    orders++;
    for (const one of row.found) {
      for (const same of sameDifferences(one, line.cells)) {
        const those = differences.get(same.key);
        if (those === undefined) differences.set(same.key, { ...same, found: [one] });
        else those.found.push(one);
      }
      const key = repeatKey(one);
      if (key === undefined) continue;
      const those = alike.get(key);
      if (those === undefined) alike.set(key, [one]);
      else those.push(one);
    }
  }
  return { alike, differences, orders };
}

const TOTAL_STEPS = [10, 5, 1];
const STEPPED = 0.95;
/** What the totals of a table go up to, or to the nearest of, while the amounts beside them do not. */
function totalStepOf(lines: readonly OrderLine[]): number {
  const facts = lines.flatMap(({ order }) => (order === undefined ? [] : [order]));
  const stepped = (amounts: readonly number[], step: number): boolean =>
    amounts.filter((one) => Math.abs(one / step - Math.round(one / step)) < 1e-9).length >=
    amounts.length * STEPPED;
  const totals = facts.flatMap(({ facts: { total, net } }) => (total ?? net)?.toNumber() ?? []);
  const parts = facts.flatMap(({ facts: { amount, liningAmount }, ordered: { labor } }) =>
    [amount?.toNumber(), liningAmount?.toNumber(), labor].flatMap((one) => one ?? []),
  );
  if (totals.length < LEAST_ORDERS) return 0;
  return TOTAL_STEPS.find((step) => stepped(totals, step) && !stepped(parts, step)) ?? 0;
}

/** What the audit goes by, and what of its first orders is said once. */
export function saidOnce(table: OrderTable, given: AuditBy, lines: readonly OrderLine[]): AuditBy {
  const by = { ...given, judging: JUDGING, totalStep: totalStepOf(lines) };
  const ways = ownSumsOf(table, lines);
  const { alike, differences, orders } = foundIn(lines, new OneByOne(table, { ...by, ways }));
  if (orders < LEAST_ORDERS) return { ...by, ways };
  const once = new Set<string>();
  const doubts: Finding[] = [];
  for (const [key, those] of alike) {
    const [first] = those as [OrderFinding];
    const outOf = isOfAWord(first) ? orders : filled(lines, table, first.column);
    if (those.length < (isOfAWord(first) ? SAME_WORD : Math.max(outOf * MOST, LEAST_ORDERS / 2))) continue;
    once.add(key);
    doubts.push(sayAlike(those, outOf));
  }
  const said = new Set<OrderFinding>();
  for (const same of [...differences.values()].sort((one, other) => other.found.length - one.found.length)) {
    const left = same.found.filter((one) => !said.has(one) && !once.has(repeatKey(one) ?? ''));
    if (left.length < SAME_DIFFERENCE) continue;
    once.add(same.key);
    for (const one of left) said.add(one);
    doubts.push(sayDifference({ ...same, found: left }, orders));
  }
  return { ...by, ways, once, doubts: [...(by.doubts ?? []), ...doubts] };
}

function sayAlike(those: readonly OrderFinding[], outOf: number): Finding {
  const [first] = those as [OrderFinding];
  const { column, row, sentence } = first;
  return isOfAWord(first)
    ? finding('wordInRows', column, those.length, outOf, row, sentence)
    : finding('inMostRows', column, column, those.length, outOf, row, sentence);
}

function sayDifference({ by, share, found }: Same, orders: number): Finding {
  const [{ column, row }] = found as [OrderFinding];
  const much = share ? `${digits(Math.abs(by) * 100)} %` : Math.abs(by).toFixed(2);
  return finding(
    'sameDifference',
    column,
    column,
    found.length,
    orders,
    row,
    `${much} ${by > 0 ? 'more' : 'less'}`,
  );
}

/** The orders that have something in a column. */
function filled(lines: readonly OrderLine[], { found }: OrderTable, column: string): number {
  const places = found.filter(({ heading }) => heading === column).map(({ at }) => at);
  return lines.filter(({ order, cells }) => order !== undefined && places.some((at) => !isBlank(cells[at])))
    .length;
}
