/**
 * How a table's own figures hang together, whatever its columns are called: an amount is yards × price, a total
 * the sum of these columns, a tax so much of those. It is told from the first orders, and an order in which it
 * does not hold is doubted.
 */
import { finding } from '../cell/answer';
import type { CellIn } from '../cell/fields';
import { digits } from '../exact/unit';
import type { OrderLine, OrderTable } from '../window/reader/order-rows';
import type { Check, RowChecked } from './check';
import { told } from './finding';
import { figureIn, figuresDown, HOLDS, judgedIn, LEAST_ORDERS, type Figures } from './own-figures';
import { rateGives, rateInWords, ratesOf, wordsDown, type OwnRate } from './own-rates';
import { isSaidOnce } from './repeated';

/** One column out of others of its row, by their places. */
export interface OwnSum {
  readonly target: number;
  /** Multiplied with each other; none where the columns are added. */
  readonly factors: readonly number[];
  readonly added: readonly number[];
  readonly taken: readonly number[];
  /** So much of the sum: a tax, a discount, a deposit. */
  readonly share: number;
  /** So far off it is still the same figure. */
  readonly within: number;
  readonly held: number;
  readonly outOf: number;
}

/** So many of the first orders are looked at. */
const MOST_ORDERS = 200;
/** A column with fewer different figures agrees with another by chance. */
const LEAST_DIFFERENT = 6;
/** So many columns of money are thought of in a sum: each doubles the sums to try. */
const MOST_ADDED = 11;

/** In how many orders a way holds; undefined once it fails in too many. */
function counted(
  target: Figures,
  expected: (row: number) => number,
): Pick<OwnSum, 'held' | 'outOf'> | undefined {
  let [held, failed] = [0, 0];
  const may = target.down.length * (1 - HOLDS);
  for (let row = 0; row < target.down.length; row++) {
    const figure = judgedIn(target.down[row] as number);
    if (Number.isNaN(figure)) continue;
    const should = expected(row);
    if (Number.isNaN(should)) continue;
    if (Math.abs(figure - should) <= target.within) held++;
    else if (++failed > may) return undefined;
  }
  const outOf = held + failed;
  return outOf >= LEAST_ORDERS && held >= outOf * HOLDS ? { held, outOf } : undefined;
}

const NONE: readonly number[] = [];

function* products(target: Figures, columns: readonly Figures[]): Generator<OwnSum | undefined> {
  const { at, within } = target;
  const others = columns.filter((one) => one !== target);
  const way = (some: readonly Figures[]): OwnSum | undefined => {
    const held = counted(target, (row) => some.reduce((all, one) => all * (one.down[row] as number), 1));
    const factors = some.map((one) => one.at);
    return held && { target: at, factors, added: NONE, taken: NONE, share: 1, within, ...held };
  };
  for (const [place, one] of others.entries()) {
    yield way([one]);
    for (const [further, two] of others.entries()) {
      if (further <= place) continue;
      yield way([one, two]);
      if (!target.isMoney) continue;
      for (const three of others.slice(further + 1)) yield way([one, two, three]);
    }
  }
}

/** A blank part adds nothing. */
const adds = ({ down }: Figures, row: number): number => {
  const figure = down[row] as number;
  return Number.isNaN(figure) ? 0 : figure;
};

const summed = (some: readonly Figures[], row: number): number =>
  some.reduce((sum, one) => sum + adds(one, row), 0);

/** The orders that a sum is first tried in: where most parts stand, so that each shows. */
function fullest(target: Figures, parts: readonly Figures[]): number[] {
  const standing = (row: number): number => parts.filter((one) => adds(one, row) !== 0).length;
  return target.down
    .flatMap((figure, row) => (figure === 0 || Number.isNaN(figure) ? [] : [row]))
    .sort((one, other) => standing(other) - standing(one))
    .slice(0, 4);
}

function* subsets(parts: readonly Figures[]): Generator<readonly Figures[]> {
  for (let chosen = 1; chosen < 2 ** parts.length; chosen++)
    yield parts.filter((_one, place) => (chosen >> place) & 1);
}

/** The total of some columns, one of them perhaps taken off; or one share of such a sum in every order. */
function* sumsOf(target: Figures, columns: readonly Figures[]): Generator<OwnSum | undefined> {
  if (!target.isMoney) return;
  const money = columns.filter((one) => one.isMoney && one !== target);
  const before = money.filter((one) => one.at < target.at).slice(-MOST_ADDED);
  const parts = before.length > 0 ? before : money.slice(0, MOST_ADDED);
  const rows = fullest(target, parts);
  const tolerance = target.within;
  const [first = 0, ...further] = rows;
  const figure = target.down[first] as number;
  for (const some of subsets(parts)) {
    const sums = rows.map((row) => summed(some, row));
    if (some.length > 1) {
      const tried = rows.filter(
        (row, at) => Math.abs((target.down[row] as number) - (sums[at] ?? 0)) <= tolerance,
      );
      if (tried.length * 2 >= rows.length) yield sumWay(target, some, [], 1);
      for (const off of some) {
        const less = rows.filter(
          (row, at) =>
            Math.abs((target.down[row] as number) - (sums[at] ?? 0) + 2 * adds(off, row)) <= tolerance,
        );
        if (less.length * 2 >= rows.length)
          yield sumWay(
            target,
            some.filter((one) => one !== off),
            [off],
            1,
          );
      }
    }
    const [sum = 0] = sums;
    const share = Math.round((figure / sum) * 1e4) / 1e4;
    if (!(share > 0 && share < 1)) continue;
    const same = further.filter(
      (row, at) => Math.abs((target.down[row] as number) - share * (sums[at + 1] ?? 0)) <= tolerance,
    );
    if (same.length * 2 >= further.length) yield sumWay(target, some, [], share);
  }
}

function sumWay(
  target: Figures,
  added: readonly Figures[],
  taken: readonly Figures[],
  share: number,
): OwnSum | undefined {
  const held = counted(target, (row) => share * (summed(added, row) - summed(taken, row)));
  const places = (some: readonly Figures[]): number[] => some.map(({ at }) => at);
  return (
    held && {
      target: target.at,
      factors: NONE,
      added: places(added),
      taken: places(taken),
      share,
      within: target.within,
      ...held,
    }
  );
}

/** How a column follows from others of its row. */
export type OwnWay = OwnSum | OwnRate;

const columnsOf = ({ factors, added, taken }: OwnSum): readonly number[] => [...factors, ...added, ...taken];

/** The way that holds in most orders, of as few columns as may be. */
function best(ways: Iterable<OwnSum | undefined>): OwnSum | undefined {
  let found: OwnSum | undefined;
  for (const way of ways) {
    if (way === undefined) continue;
    const more = way.held - (found?.held ?? 0);
    if (found === undefined || more > 0 || (more === 0 && columnsOf(way).length < columnsOf(found).length))
      found = way;
  }
  return found;
}

/** How the figures of these orders hang together. */
export function ownSumsOf(table: OrderTable, lines: readonly OrderLine[]): readonly OwnWay[] {
  const rows = lines
    .flatMap(({ order, cells }) => (order === undefined ? [] : [cells]))
    .slice(0, MOST_ORDERS);
  if (rows.length < LEAST_ORDERS) return [];
  const columns = figuresDown(table, rows);
  const words = wordsDown(table, rows);
  const found = columns.map((target): OwnWay | undefined => {
    const way =
      target.different < LEAST_DIFFERENT
        ? undefined
        : best([...products(target, columns), ...sumsOf(target, columns)]);
    // A column that repeats another is no sum.
    const sum = way !== undefined && way.share === 1 && columnsOf(way).length < 2 ? undefined : way;
    return sum ?? ratesOf(target, columns, words);
  });
  return found.filter((way) => way !== undefined);
}

/** What a way gives in an order; undefined where a factor is not there. */
function expectedBy(way: OwnWay, cells: readonly CellIn[]): number | undefined {
  if ('rates' in way) return rateGives(way, cells);
  const { factors, added, taken, share } = way;
  const part = (sum: number, at: number): number => {
    const figure = figureIn(cells[at]);
    return sum + (Number.isNaN(figure) ? 0 : figure);
  };
  const value =
    factors.length > 0
      ? factors.reduce((all, at) => all * figureIn(cells[at]), 1)
      : share * (added.reduce(part, 0) - taken.reduce(part, 0));
  return Number.isNaN(value) ? undefined : value;
}

/** By how much an order's figure differs from its table's own way; undefined where it does not, or says nothing. */
function differing(way: OwnWay, cells: readonly CellIn[]): { found: number; expected: number } | undefined {
  const found = judgedIn(figureIn(cells[way.target]));
  const expected = expectedBy(way, cells);
  if (Number.isNaN(found) || expected === undefined) return undefined;
  return Math.abs(found - expected) <= way.within ? undefined : { found, expected };
}

/** Whether a column's own way is known and holds in this order. */
export const holdsAt = (ways: readonly OwnWay[], at: number, cells: readonly CellIn[]): boolean =>
  ways.some((way) => way.target === at && differing(way, cells) === undefined);

function inWords(way: OwnWay, headings: readonly string[], cells: readonly CellIn[]): string {
  if ('rates' in way) return rateInWords(way, headings, cells);
  const { factors, added, taken, share } = way;
  const names = (places: readonly number[]): string[] => places.map((at) => headings[at] ?? '');
  if (factors.length > 0) return names(factors).join(' × ');
  const sum = [names(added).join(' + '), ...names(taken)].join(' − ');
  return share === 1 ? sum : `${digits(share * 100)} % of ${sum}`;
}

/** A figure that is not what the same column is in nearly all orders; where nothing else was found of its columns. */
export const ownSums: Check = {
  mayBeMeant: true,
  find(row: RowChecked) {
    const { given, checks, foundBy } = row;
    const { at, cells, headings, ways, once, name } = given;
    for (const way of ways) {
      const off = differing(way, cells);
      if (off === undefined) continue;
      const from = 'rates' in way ? way.factors : columnsOf(way);
      const names = new Set([way.target, ...from].map((place) => headings[place] ?? ''));
      const named = checks.some(
        (check) =>
          check !== ownSums &&
          foundBy(check).some((one) => names.has(one.column) && !isSaidOnce(once, one, cells)),
      );
      if (named) return [];
      const column = headings[way.target] ?? '';
      // What was worked out from the row, like the yardage of turned cloth, is no exception to be doubted.
      if (row.agreeing.some((key) => name(key) === column)) continue;
      const expected = Math.round(off.expected * 100) / 100;
      return [
        told(
          at,
          finding(
            'notItsOwnSum',
            column,
            column,
            digits(off.found),
            way.held,
            way.outOf,
            inWords(way, headings, cells),
            digits(expected),
          ),
          { found: off.found, expected, sure: 'likely' },
        ),
      ];
    }
    return [];
  },
};
