/** One order row as the audit's checks are given it. */
import { RowChecked, type Check } from '../../../src/core/audit/check';
import { CHECKS } from '../../../src/core/audit/checks';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { readPrices } from '../../../src/core/audit/price-list';
import type { CellIn } from '../../../src/core/cell/fields';
import { readHouse } from '../../../src/core/house/house';
import { FIGURE_KEYS, usualHeading, type OrderKey } from '../../../src/core/window/meanings';
import { ordersUnder, tableUnder } from '../window/ordered';
import { namedBy } from '../../../src/core/window/sheet-words';

type Cells = readonly (readonly CellIn[])[];

export function checked(
  row: Readonly<Record<string, CellIn>>,
  rules: Cells = [],
  prices?: Cells,
  /** Rows that stand beside it, from which its columns are read too. */
  among: Cells = [],
): RowChecked {
  const house = readHouse(rules.length === 0 ? null : rules);
  const cells = Object.values(row);
  const columns = tableUnder(Object.keys(row), [cells, ...among], house.unit);
  const [order] = ordersUnder(Object.keys(row), [cells, ...among], house.unit);
  if (order === undefined) throw new Error('the row is no order');
  const headings = new Map(columns.found.map(({ key, heading }) => [key, heading]));
  const name = (key: OrderKey): string => headings.get(key) ?? usualHeading(key);
  const has = (key: OrderKey): boolean => headings.has(key);
  return new RowChecked(
    {
      at: 1,
      order,
      instead: undefined,
      practices: undefined,
      rules: house.rules,
      unit: house.unit,
      cells,
      headings: columns.headings,
      untold: columns.untold,
      ordered: FIGURE_KEYS.filter(has),
      prices: readPrices(prices),
      ways: [],
      holdsAt: () => false,
      once: undefined,
      totalStep: 0,
      doubts: [],
      name,
      has,
      naming: namedBy((key) => headings.get(key as OrderKey), { gives: () => true }),
    },
    CHECKS,
  );
}

/** The codes and columns of what one check finds. */
export const findsBy = (check: Check, ...given: Parameters<typeof checked>): string[] =>
  checked(...given)
    .foundBy(check)
    .map((one: OrderFinding) => `${one.code} at ${one.column}`);
