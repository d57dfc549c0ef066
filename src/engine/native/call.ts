/** How a worksheet function is declared, and how values reach it one by one or as ranges. */
import {
  Area,
  Areas,
  Fault,
  Grid,
  NA,
  toNumber,
  toText,
  toTruth,
  VALUE,
  type Scalar,
  type Value,
} from './values';
import type { World } from './world';

/**
 * One letter a parameter, the last repeated where `repeats` says so:
 * n a number, m a number that no logical may stand for, s a text, b a truth, v any value, e any value or an error: each one value, and an answer
 * for every cell where a range or an array stands there; r a range or value as it is; a the same, always
 * computed as an array.
 */
export interface Native {
  readonly takes: string;
  readonly least: number;
  readonly most: number;
  /** So many of the last parameters are repeated. */
  readonly repeats: number;
  readonly run: In;
}

type One = (...given: never[]) => Value;
type In = (world: World, ...given: never[]) => Value;

const table = new Map<string, Native>();
export const natives: ReadonlyMap<string, Native> = table;

/** “ns?” takes a number and, if given, a text; “v*” any count; “ns*2” repeats the last two. */
export function define(names: string, takes: string, run: One): void {
  defineIn(names, takes, (_, ...given) => run(...given));
}

/** The same for a function that looks around in the workbook, which it is given first. */
export function defineIn(names: string, takes: string, run: In): void {
  const [, needed = '', optional = '', repeated] = /^([a-z]*)(?:\?([a-z]*))?(\*\d?)?$/.exec(takes) ?? [];
  const repeats = repeated === undefined ? 0 : Number(repeated.slice(1) || 1);
  const native: Native = {
    takes: needed + optional,
    least: needed.length,
    most: repeats > 0 ? 255 : needed.length + optional.length,
    repeats,
    run,
  };
  for (const name of names.split(' ')) table.set(name, native);
}

export function letterAt({ takes, repeats }: Native, at: number): string {
  if (at < takes.length) return takes[at] ?? 'v';
  return takes[takes.length - repeats + ((at - takes.length) % Math.max(repeats, 1))] ?? 'v';
}

const SINGLE = /[nmsbve]/;
export const isSingle = (letter: string): boolean => SINGLE.test(letter);

/** What a parameter of this letter gets of one value; a fault goes past the function. */
function fitted(letter: string, value: Scalar): Scalar {
  switch (letter) {
    case 'n':
      return toNumber(value);
    case 'm':
      return typeof value === 'boolean' ? VALUE : toNumber(value);
    case 's':
      return toText(value);
    case 'b':
      return toTruth(value);
    default:
      return value;
  }
}

/** Calls a function once, or once for every cell of the ranges that stand where single values belong. */
export function callNative(native: Native, given: readonly (Value | undefined)[], world: World): Value {
  let [rows, columns] = [0, 0];
  for (const [at, value] of given.entries()) {
    if (!(value instanceof Grid) || !isSingle(letterAt(native, at))) continue;
    [rows, columns] = [Math.max(rows, value.rows), Math.max(columns, value.columns)];
  }
  if (rows === 0) return once(native, given, world);
  const cells: Scalar[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const answer = once(
        native,
        given.map((value, at) =>
          value instanceof Grid && isSingle(letterAt(native, at)) ? spread(value, row, column) : value,
        ),
        world,
      );
      cells.push(oneOf(answer, world));
    }
  return new Grid(rows, columns, cells);
}

/** A row, a column or one value goes as far as the others; what is beyond a larger one is #N/A. */
export function spread(value: Scalar | Grid, row: number, column: number): Scalar {
  if (!(value instanceof Grid)) return value;
  const [r, c] = [value.rows === 1 ? 0 : row, value.columns === 1 ? 0 : column];
  return r < value.rows && c < value.columns ? value.at(r, c) : NA;
}

function oneOf(answer: Value, world: World): Scalar {
  const value = world.value(answer);
  return value instanceof Grid ? value.at(0, 0) : value;
}

function once(native: Native, given: readonly (Value | undefined)[], world: World): Value {
  const fit: (Value | undefined)[] = [];
  for (const [at, value] of given.entries()) {
    const letter = letterAt(native, at);
    if (!isSingle(letter) || value === undefined) {
      fit.push(value);
      continue;
    }
    const one =
      value instanceof Area || value instanceof Areas || value instanceof Grid ? oneOf(value, world) : value;
    if (letter === 'e') {
      fit.push(one);
      continue;
    }
    const fitting = fitted(letter, one as Scalar);
    if (fitting instanceof Fault) return fitting;
    fit.push(fitting);
  }
  return native.run(world, ...(fit as never[]));
}

/** Answers for every pair of cells. */
export function paired(
  left: Scalar | Grid,
  right: Scalar | Grid,
  work: (one: Scalar, other: Scalar) => Scalar,
): Scalar | Grid {
  if (!(left instanceof Grid) && !(right instanceof Grid)) return work(left, right);
  const rows = Math.max(left instanceof Grid ? left.rows : 1, right instanceof Grid ? right.rows : 1);
  const columns = Math.max(
    left instanceof Grid ? left.columns : 1,
    right instanceof Grid ? right.columns : 1,
  );
  const cells: Scalar[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      cells.push(work(spread(left, row, column), spread(right, row, column)));
  return new Grid(rows, columns, cells);
}

export function mapped(value: Scalar | Grid, work: (one: Scalar) => Scalar): Scalar | Grid {
  return value instanceof Grid ? new Grid(value.rows, value.columns, value.cells.map(work)) : work(value);
}
