/** The numbers and cells in what a function is given, as SUM and its kin take them. */
import { Area, Areas, Fault, Grid, toNumber, unproven, VALUE, type Scalar, type Value } from './values';
import { isScalar, type World } from './world';

/** Thrown past the reading of a range; the function answers with it. */
export class Stopped extends Error {
  constructor(readonly fault: Fault) {
    super('stopped');
  }
}

/** A function whose reading may stop at an error. */
export const stopping =
  <G extends readonly unknown[]>(work: (...given: G) => Value) =>
  (...given: G): Value => {
    try {
      return work(...given);
    } catch (thrown) {
      if (thrown instanceof Stopped) return thrown.fault;
      throw thrown;
    }
  };

export const stop = (fault: Fault): never => {
  throw new Stopped(fault);
};

/** Every cell of what is given, blanks left out; `typed` where a value stands in the formula itself. */
export function eachValue(
  world: World,
  given: readonly (Value | undefined)[],
  visit: (value: Exclude<Scalar, null>, typed: boolean) => void,
): void {
  for (const one of given) {
    if (one === undefined) continue;
    if (one instanceof Area) world.each(one, (value) => value !== null && visit(value, false));
    else if (one instanceof Areas)
      for (const area of one.list) world.each(area, (value) => value !== null && visit(value, false));
    else if (one instanceof Grid) {
      for (const value of one.cells) if (value !== null) visit(value, false);
    } else if (isScalar(one)) visit(one ?? 0, true);
    else unproven('is given a LAMBDA');
  }
}

/** The numbers: texts and logicals count only where they stand in the formula itself. */
export function numbersIn(world: World, given: readonly (Value | undefined)[]): number[] {
  const list: number[] = [];
  eachValue(world, given, (value, typed) => {
    if (typeof value === 'number') list.push(value);
    else if (value instanceof Fault) stop(value);
    else if (typed) {
      const number = toNumber(value);
      if (number instanceof Fault) stop(number);
      else list.push(number);
    }
  });
  return list;
}

/** As the functions that end in A take them: a text in a cell counts as 0, a logical as 0 or 1. */
export function numbersA(world: World, given: readonly (Value | undefined)[]): number[] {
  const list: number[] = [];
  eachValue(world, given, (value, typed) => {
    if (typeof value === 'number') list.push(value);
    else if (value instanceof Fault) stop(value);
    else if (typeof value === 'boolean') list.push(value ? 1 : 0);
    else if (!typed) list.push(0);
    else {
      const number = toNumber(value);
      if (number instanceof Fault) stop(number);
      else list.push(number);
    }
  });
  return list;
}

/** As rows, a single value as one. */
export function rowsIn(world: World, value: Value | undefined, cut = false): Grid {
  if (value === undefined) return new Grid(1, 1, [null]);
  if (value instanceof Area) return world.grid(value, cut);
  if (value instanceof Grid) return value;
  if (value instanceof Areas) return stop(VALUE);
  if (isScalar(value)) return new Grid(1, 1, [value]);
  return unproven('is given a LAMBDA');
}

/** A grid that must hold nothing but numbers. */
export function matrixIn(world: World, value: Value | undefined): number[][] {
  const grid = rowsIn(world, value);
  return Array.from({ length: grid.rows }, (_, row) =>
    Array.from({ length: grid.columns }, (__, column) => {
      const one = grid.at(row, column);
      return one instanceof Fault ? stop(one) : typeof one === 'number' ? one : stop(VALUE);
    }),
  );
}

/** Two lists of one length, the pairs where both hold a number. */
export function pairsIn(world: World, one: Value, other: Value, fault: Fault): [number[], number[]] {
  const [a, b] = [rowsIn(world, one), rowsIn(world, other)];
  if (a.cells.length !== b.cells.length) stop(fault);
  const [left, right]: [number[], number[]] = [[], []];
  for (const [at, x] of a.cells.entries()) {
    const y = b.cells[at] ?? null;
    if (x instanceof Fault) stop(x);
    if (y instanceof Fault) stop(y);
    if (typeof x === 'number' && typeof y === 'number') {
      left.push(x);
      right.push(y);
    }
  }
  return [left, right];
}

/** The first cell of what is given: T and N look at no other. */
export function firstOf(world: World, value: Value): Scalar {
  if (value instanceof Area) return world.cell(value.sheet, value.row, value.column);
  const rows = rowsIn(world, value);
  return rows.at(0, 0);
}
