/**
 * The catalogue for any JavaScript engine: one file without imports, for those who keep orders in a database
 * or a warehouse. It knows no Excel, no page, no Node.
 */
import { OneByOne } from '../src/core/audit/one-by-one';
import { readPrices } from '../src/core/audit/price-list';
import { periodsOf } from '../src/core/audit/periods';
import type { CellIn, CellOut } from '../src/core/cell/fields';
import { readHouse } from '../src/core/house/house';
import { ordersUnder } from '../src/core/window/reader/orders';
import { OrderRows } from '../src/core/window/reader/order-rows';
import { CATALOGUE } from './index';
import type { CellFunction } from './declare';

type Row = readonly CellIn[];

export type Called =
  | { readonly value: CellOut | readonly (readonly CellOut[])[] }
  | { readonly error: string; readonly sentence: string };

const FUNCTIONS = new Map<string, CellFunction>(CATALOGUE.map((one) => [one.name, one]));

/** The names that `call` knows. */
export const names: readonly string[] = [...FUNCTIONS.keys()];

/** One function of the catalogue, with its inputs in their order; null for what is left out. */
export function call(name: string, inputs: readonly CellIn[]): Called {
  const known = FUNCTIONS.get(name);
  if (known === undefined) return { error: '#NAME?', sentence: `There is no function “${name}”.` };
  const outcome = known.call(inputs);
  if ('error' in outcome) return { error: outcome.error, sentence: outcome.finding.sentence };
  return { value: outcome.cells };
}

/**
 * What is wrong with an order row, for rows of one table: its headings are understood once, with some of its
 * rows to tell what they mean. Gives the sentences, and nothing where all is well.
 */
export function checker(
  headings: Row,
  some: readonly Row[],
  rules?: readonly Row[],
  prices?: readonly Row[],
): (row: Row) => string {
  const house = readHouse(rules);
  const table = ordersUnder([headings], some, house.unit);
  const alone = new OneByOne(table, { periods: periodsOf(house), prices: readPrices(prices) });
  return (row) => {
    // Each row by itself: a database keeps no order, so nothing is carried down.
    const reader = new OrderRows(table);
    const lines = [...reader.push(1, row), ...reader.end()];
    const found = lines.flatMap((line) => alone.audited(line)?.found ?? []);
    return found.map(({ sentence }) => sentence).join(' ');
  };
}
