/** House rules and price lists from a file, wherever they stand in it. */
import { Refusal } from '../core/answer';
import type { Period } from '../core/audit';
import { readPrices, type PriceList } from '../core/audit-prices';
import { DATE } from '../core/day';
import { isBlank, type CellIn } from '../core/fields';
import { DEFAULT_HOUSE, readHouse } from '../core/house';
import { ruleLine } from '../core/rules';
import { INCHES } from '../core/unit';
import { smallTables } from './orders';
import { Problem, USAGE } from './problem';

type Rows = readonly (readonly CellIn[])[];

const isRule = (cell: CellIn): boolean => typeof cell === 'string' && ruleLine(cell) !== undefined;

/** The two columns in which most rules stand: name, value. */
function rulesIn(tables: readonly Rows[]): Rows | undefined {
  let best: Rows | undefined;
  let most = 0;
  for (const rows of tables) {
    const columns = rows.reduce((widest, row) => Math.max(widest, row.length), 0);
    for (let at = 0; at < columns; at++) {
      const named = rows.filter((row) => isRule(row[at]));
      if (named.length <= most) continue;
      most = named.length;
      const first = rows.findIndex((row) => isRule(row[at]));
      const last = rows.length - [...rows].reverse().findIndex((row) => isRule(row[at]));
      best = rows.slice(first, last).map((row) => [row[at] ?? null, row[at + 1] ?? null]);
    }
  }
  return best;
}

/** A Refusal about the file's contents is a sentence of the command. */
async function inFile<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (thrown) {
    if (thrown instanceof Refusal) throw new Problem(`“${path}”: ${thrown.finding.sentence}`);
    throw thrown;
  }
}

/** “BOOK.xlsx”, or “2025-01-01=BOOK.xlsx” for rules that stood from that day. */
export async function readPeriods(named: readonly string[]): Promise<{ periods: Period[]; notes: string[] }> {
  const periods: Period[] = [];
  const notes: string[] = [];
  for (const text of named) {
    const dated = /^(\d{4}-\d{2}-\d{2})=(.+)$/.exec(text);
    const path = dated?.[2] ?? text;
    const from = dated === null ? undefined : DATE.read(dated[1], { name: '--rules', unit: INCHES })?.early;
    const rows = rulesIn(await smallTables(path));
    if (rows === undefined)
      throw new Problem(
        `“${path}” holds no house rules. They stand in two columns, like “bottom allowance” and 8.`,
      );
    const house = await inFile(path, () => Promise.resolve(readHouse(rows)));
    notes.push(...house.findings.map((one) => one.sentence));
    periods.push({ from, house });
  }
  if (periods.length === 0) periods.push({ from: undefined, house: DEFAULT_HOUSE });
  const units = new Set(periods.map(({ house }) => house.unit.name));
  if (units.size > 1)
    throw new Problem(
      'The house rules given are in different units. Audit inches and centimetres apart.',
      USAGE,
    );
  return { periods, notes };
}

export async function readPriceFile(path: string | undefined): Promise<PriceList | undefined> {
  if (path === undefined) return undefined;
  const rows = (await smallTables(path)).find((table) => table.some((row) => !row.every(isBlank)));
  return inFile(path, () => Promise.resolve(readPrices(rows)));
}
