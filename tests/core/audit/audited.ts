/** A table of past orders audited as a host does it. */
import { Auditor } from '../../../src/core/audit/audit';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { readPrices } from '../../../src/core/audit/price-list';
import type { CellIn } from '../../../src/core/cell/fields';
import { readHouse } from '../../../src/core/house/house';
import { tableUnder } from '../window/ordered';

type Rows = readonly (readonly CellIn[])[];

export function auditAll(
  headers: readonly CellIn[],
  rows: Rows,
  rules: Rows = [],
  prices?: Rows,
): OrderFinding[] {
  const house = readHouse(rules.length === 0 ? null : rules);
  const auditor = new Auditor(tableUnder(headers, rows, house.unit), {
    periods: [{ from: undefined, house }],
    prices: readPrices(prices),
  });
  const found = auditor.header();
  for (const [at, row] of rows.entries()) found.push(...auditor.row(at + 1, row));
  return [...found, ...auditor.end()];
}
