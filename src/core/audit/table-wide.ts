/**
 * What is found in most rows of a table is a way of that table, or a column that is not what it seems: it is
 * said once, and not in every row. So is a word that cannot be read and comes again and again.
 */
import { finding, type Finding } from '../cell/answer';
import { isBlank } from '../cell/fields';
import type { OrderLine, OrderTable } from '../window/reader/order-rows';
import { isOfAWord, repeatKey } from './repeated';
import type { OrderFinding } from './finding';
import { holdsAt, ownSums, ownSumsOf } from './own-sums';
import { OneByOne, type AuditBy, type Judging } from './one-by-one';

/** Fewer orders tell nothing of all the others. */
const LEAST_ORDERS = 25;
/** Of so many orders, what is found alike is the table's. */
const MOST = 0.3;
/** So often the same word in the same column is one thing to say. */
const SAME_WORD = 5;

const JUDGING: Judging = { checks: [ownSums], holdsAt };

/** What the audit goes by, and what of its first orders is said once. */
export function saidOnce(table: OrderTable, given: AuditBy, lines: readonly OrderLine[]): AuditBy {
  const by = { ...given, judging: JUDGING };
  const ways = ownSumsOf(table, lines);
  const alone = new OneByOne(table, { ...by, ways });
  const found = new Map<string, OrderFinding[]>();
  let orders = 0;
  for (const line of lines) {
    const row = alone.audited(line);
    if (row?.seen === undefined) continue;
    orders++;
    for (const one of row.found) {
      const key = repeatKey(one);
      if (key === undefined) continue;
      const those = found.get(key);
      if (those === undefined) found.set(key, [one]);
      else those.push(one);
    }
  }
  if (orders < LEAST_ORDERS) return { ...by, ways };
  const once = new Set<string>();
  const doubts: Finding[] = [];
  for (const [key, those] of found) {
    const [first] = those as [OrderFinding];
    const word = isOfAWord(first);
    const outOf = word ? orders : filled(lines, table, first.column);
    if (those.length < (word ? SAME_WORD : Math.max(outOf * MOST, LEAST_ORDERS / 2))) continue;
    once.add(key);
    const { column, row, sentence } = first;
    doubts.push(
      word
        ? finding('wordInRows', column, those.length, outOf, row, sentence)
        : finding('inMostRows', column, column, those.length, outOf, row, sentence),
    );
  }
  return { ...by, ways, once, doubts: [...(by.doubts ?? []), ...doubts] };
}

/** The orders that have something in a column. */
function filled(lines: readonly OrderLine[], { found }: OrderTable, column: string): number {
  const places = found.filter(({ heading }) => heading === column).map(({ at }) => at);
  return lines.filter(({ order, cells }) => order !== undefined && places.some((at) => !isBlank(cells[at])))
    .length;
}
