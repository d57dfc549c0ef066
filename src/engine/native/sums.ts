/** Sums, counts and means, with and without criteria; SUBTOTAL and AGGREGATE. */
import { defineIn } from './call';
import { meeting, sameSize } from './criteria';
import { eachValue, firstOf, numbersA, numbersIn, rowsIn, stop, stopping } from './ranges';
import * as measures from './measures';
import { Area, Fault, Grid, held, toNumber, unproven, VALUE, type Scalar, type Value } from './values';
import type { World } from './world';

type Many = (Value | undefined)[];

defineIn(
  'SUM',
  'r*',
  stopping((world: World, ...given: Many) => measures.sum(numbersIn(world, given))),
);
defineIn(
  'SUMSQ',
  'r*',
  stopping((world: World, ...given: Many) => measures.sum(numbersIn(world, given).map((one) => one * one))),
);
defineIn(
  'PRODUCT',
  'r*',
  stopping((world: World, ...given: Many) => {
    const list = numbersIn(world, given);
    return list.length === 0 ? 0 : held(list.reduce((product, one) => product * one, 1));
  }),
);
defineIn(
  'AVERAGE',
  'r*',
  stopping((world: World, ...given: Many) => measures.mean(numbersIn(world, given))),
);
defineIn(
  'AVERAGEA',
  'r*',
  stopping((world: World, ...given: Many) => measures.mean(numbersA(world, given))),
);
const least = (list: readonly number[]): number =>
  list.reduce((one, other) => Math.min(one, other), list.length === 0 ? 0 : Infinity);
const most = (list: readonly number[]): number =>
  list.reduce((one, other) => Math.max(one, other), list.length === 0 ? 0 : -Infinity);
defineIn(
  'MIN',
  'r*',
  stopping((world: World, ...given: Many) => least(numbersIn(world, given))),
);
defineIn(
  'MAX',
  'r*',
  stopping((world: World, ...given: Many) => most(numbersIn(world, given))),
);
defineIn(
  'MINA',
  'r*',
  stopping((world: World, ...given: Many) => least(numbersA(world, given))),
);
defineIn(
  'MAXA',
  'r*',
  stopping((world: World, ...given: Many) => most(numbersA(world, given))),
);

defineIn('COUNT', 'r*', (world: World, ...given: Many) => {
  let count = 0;
  eachValue(world, given, (value, typed) => {
    if (
      typeof value === 'number' ||
      (typed && !(value instanceof Fault) && !(toNumber(value) instanceof Fault))
    )
      count += 1;
  });
  return count;
});
defineIn('COUNTA', 'r*', (world: World, ...given: Many) => {
  let count = 0;
  eachValue(world, given, () => (count += 1));
  return count;
});
defineIn('COUNTBLANK', 'r', (world: World, range: Value) => {
  if (!(range instanceof Area)) return VALUE;
  let filled = 0;
  world.each(range, (value) => {
    if (value !== '') filled += 1;
  });
  return range.rows * range.columns - filled;
});

/** A criterion may be a list: then there is an answer for each. */
defineIn('COUNTIF', 're', (world: World, range: Value, criterion: Scalar) => {
  if (range instanceof Fault) return range;
  if (!(range instanceof Area)) return unproven('counts in what is no range');
  const fits = meeting(world, [[range, criterion]]);
  const blankFits = fits(range.rows, range.columns);
  let [count, filled] = [0, 0];
  world.each(range, (_, row, column) => {
    filled += 1;
    if (fits(row - range.row, column - range.column)) count += 1;
  });
  return count + (blankFits ? range.rows * range.columns - filled : 0);
});

function sumWhere(world: World, values: Value, pairs: readonly (readonly [Value, Scalar])[]): number[] {
  const [first] = pairs;
  if (!(values instanceof Area) || !(first?.[0] instanceof Area)) return unproven('sums what is no range');
  const fits = meeting(world, pairs);
  const list: number[] = [];
  world.each(values, (value, row, column) => {
    if (typeof value !== 'number' && !(value instanceof Fault)) return;
    if (!fits(row - values.row, column - values.column)) return;
    if (value instanceof Fault) stop(value);
    else list.push(value);
  });
  return list;
}

/** SUMIF sums from the first cell of its third input on, as far as the first input goes. */
function spanned(range: Value, values: Value | undefined): Value {
  if (!(range instanceof Area)) return unproven('sums what is no range');
  if (values === undefined) return range;
  if (!(values instanceof Area)) return unproven('sums what is no range');
  return new Area(values.sheet, values.row, values.column, range.rows, range.columns);
}
defineIn(
  'SUMIF',
  're?r',
  stopping((world: World, range: Value, criterion: Scalar, values?: Value) =>
    measures.sum(sumWhere(world, spanned(range, values), [[range, criterion]])),
  ),
);
defineIn(
  'AVERAGEIF',
  're?r',
  stopping((world: World, range: Value, criterion: Scalar, values?: Value) =>
    measures.mean(sumWhere(world, spanned(range, values), [[range, criterion]])),
  ),
);

function pairsOf(given: readonly unknown[], like?: Value): (readonly [Value, Scalar])[] {
  const pairs: (readonly [Value, Scalar])[] = [];
  for (let at = 0; at + 1 < given.length; at += 2) pairs.push([given[at] as Value, given[at + 1] as Scalar]);
  const first = like ?? pairs[0]?.[0];
  if (given.length % 2 === 1 || first === undefined) unproven('lacks a criterion');
  for (const [range] of pairs) sameSize(first as Value, range);
  return pairs;
}
defineIn(
  'COUNTIFS',
  're*2',
  stopping((world: World, ...given: Many) => {
    const pairs = pairsOf(given);
    const range = pairs[0]?.[0] as Area;
    const fits = meeting(world, pairs);
    const part = world.filled(range);
    let [rows, columns] = [part.rows, part.columns];
    for (const [one] of pairs) {
      const other = world.filled(one as Area);
      [rows, columns] = [Math.max(rows, other.rows), Math.max(columns, other.columns)];
    }
    let count = 0;
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) if (fits(row, column)) count += 1;
    if (fits(range.rows, range.columns)) count += range.rows * range.columns - rows * columns;
    return count;
  }),
);
const withPairs =
  (answer: (list: readonly number[]) => number | Fault) =>
  (world: World, values: Value, ...given: Many): Value =>
    answer(sumWhere(world, values, pairsOf(given, values)));
defineIn('SUMIFS', 'rre*2', stopping(withPairs((list) => measures.sum(list))));
defineIn('AVERAGEIFS', 'rre*2', stopping(withPairs((list) => measures.mean(list))));
defineIn('MAXIFS', 'rre*2', stopping(withPairs(most)));
defineIn('MINIFS', 'rre*2', stopping(withPairs(least)));

defineIn(
  'SUMPRODUCT',
  'a*',
  stopping((world: World, ...given: Many) => {
    const grids = given.map((one) => {
      const grid = rowsIn(world, one, given.length === 1);
      if (grid.cells.length === 1 && typeof grid.at(0, 0) !== 'number')
        return unproven('multiplies by one cell that holds no number');
      return grid;
    });
    const [first] = grids as [Grid];
    let sum = 0;
    if (grids.some((grid) => grid.rows !== first.rows || grid.columns !== first.columns)) return VALUE;
    for (let at = 0; at < first.cells.length; at++) {
      let product = 1;
      for (const grid of grids) {
        const value = grid.cells[at] ?? null;
        if (value instanceof Fault) return value;
        product *= typeof value === 'number' ? value : 0;
      }
      sum += product;
    }
    return held(sum);
  }),
);

const KINDS: readonly ((world: World, list: readonly number[]) => number | Fault)[] = [
  (_, list) => measures.mean(list),
  (_, list) => list.length,
  (_, list) => list.length,
  (_, list) => most(list),
  (_, list) => least(list),
  (_, list) => (list.length === 0 ? 0 : held(list.reduce((product, one) => product * one, 1))),
  (_, list) => measures.deviation(list, 1),
  (_, list) => measures.deviation(list, 0),
  (_, list) => measures.sum(list),
  (_, list) => measures.variance(list, 1),
  (_, list) => measures.variance(list, 0),
];
const COUNTA_KIND = 3;

/** Rows that a filter hides never count; rows hidden by hand count only for 1 to 11; other subtotals never. */
defineIn(
  'SUBTOTAL',
  'nr*',
  stopping((world: World, number: number, ...given: Many) => {
    const kind = Math.trunc(number);
    const own = kind > 100 ? kind - 100 : kind;
    const work = KINDS[own - 1];
    if (work === undefined || (kind > 11 && kind < 101)) return VALUE;
    return work(
      world,
      visible(world, given, { hidden: kind > 100, faults: false, subtotals: true, all: own === COUNTA_KIND }),
    );
  }),
);

interface Passed {
  /** Whether rows hidden by hand are passed over, and errors, and other subtotals. */
  readonly hidden: boolean;
  readonly faults: boolean;
  readonly subtotals: boolean;
  /** Every filled cell counts, not numbers alone. */
  readonly all: boolean;
}

function visible(world: World, given: Many, passed: Passed): number[] {
  const list: number[] = [];
  for (const one of given) {
    if (!(one instanceof Area)) return unproven('takes a subtotal of what is no range');
    const subtotals = new Set<string>();
    world.each(one, (value, row, column) => {
      const hidden = world.sheets.hidden(one.sheet, row);
      if (hidden === 'filtered' || (hidden === 'hidden' && passed.hidden)) return;
      if (passed.subtotals) {
        const text = world.sheets.formula(one.sheet, row, column);
        if (text !== undefined && /\b(?:SUBTOTAL|AGGREGATE)\s*\(/i.test(text)) {
          subtotals.add(`${row}!${column}`);
          return;
        }
      }
      if (passed.all) list.push(0);
      else if (typeof value === 'number') list.push(value);
      else if (value instanceof Fault && !passed.faults) stop(value);
    });
  }
  return list;
}

const SIMPLE_KINDS = 11;
/** From here on a kind also takes which place, or which part. */
const FIRST_WITH_PLACE = 14;
defineIn(
  'AGGREGATE',
  'nnr*',
  stopping((world: World, number: number, option: number, ...given: Many) => {
    const kind = Math.trunc(number);
    const choice = Math.trunc(option);
    if (kind < 1 || kind > 19 || choice < 0 || choice > 7) return VALUE;
    const passed = {
      hidden: choice % 2 === 1,
      faults: [2, 3, 6, 7].includes(choice),
      subtotals: choice < 4,
      all: kind === COUNTA_KIND,
    };
    if (kind <= SIMPLE_KINDS) {
      const list = visible(world, given, passed);
      return KINDS[kind - 1]?.(world, list) ?? VALUE;
    }
    if (kind >= FIRST_WITH_PLACE && given.length < 2) return VALUE;
    const last = given.length === 2 && kind >= FIRST_WITH_PLACE ? given[1] : undefined;
    const list = visible(world, last === undefined ? given : [given[0]], { ...passed, all: false });
    const place = last === undefined ? 0 : toNumber(world.value(last) as Scalar);
    return place instanceof Fault ? place : placed(kind, list, place);
  }),
);
/** AGGREGATE of what puts its numbers in order. */
function placed(kind: number, list: number[], place: number): Value {
  switch (kind) {
    case 12:
      return measures.median(list);
    case 13:
      return measures.mode(list);
    case 14:
      return measures.largest(list, place);
    case 15:
      return measures.smallest(list, place);
    case 16:
      return measures.percentile(list, place);
    default:
      return unproven('takes this kind of AGGREGATE');
  }
}

defineIn('N', 'r', (world: World, given: Value) => {
  const value = firstOf(world, given);
  return value instanceof Fault || typeof value === 'number' ? value : Number(value === true);
});
