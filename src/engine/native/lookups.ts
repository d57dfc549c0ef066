/** Finding a value in a list or a table. Texts are compared without regard to capitals. */
import { defineIn } from './call';
import { wildcards } from './criteria';
import { matrixIn, rowsIn, stopping } from './ranges';
import {
  Area,
  Areas,
  compared,
  Fault,
  Grid,
  NA,
  REF,
  sameText,
  unproven,
  VALUE,
  type Scalar,
  type Value,
} from './values';
import { isScalar, type World } from './world';

/** A list read one by one, so that a whole column costs no more than what is filled. */
interface List {
  readonly length: number;
  at(place: number): Scalar;
}

function listOf(world: World, value: Value): List | undefined {
  if (value instanceof Areas) return undefined;
  if (value instanceof Area) {
    if (value.rows > 1 && value.columns > 1) return undefined;
    const part = world.filled(value);
    const down = value.columns === 1;
    const filled = value.columns === 1 ? part.rows : part.columns;
    return {
      length: Math.min(down ? value.rows : value.columns, filled),
      at: (place) =>
        down
          ? world.cell(value.sheet, value.row + place, value.column)
          : world.cell(value.sheet, value.row, value.column + place),
    };
  }
  if (value instanceof Grid) {
    if (value.rows > 1 && value.columns > 1) return undefined;
    return { length: value.cells.length, at: (place) => value.cells[place] ?? null };
  }
  return isScalar(value) ? { length: 1, at: () => value } : undefined;
}

const kindOf = (value: Scalar): string =>
  value instanceof Fault ? 'fault' : value === null ? 'blank' : typeof value;

/** Whether a cell is what is looked for: of one kind, and the same. */
function same(wanted: Scalar, cell: Scalar): boolean {
  if (kindOf(wanted) !== kindOf(cell)) return false;
  if (typeof wanted === 'number') {
    if (wanted !== cell && typeof cell === 'number' && compared(wanted, cell) === 0)
      unproven('looks up a number that differs beyond the fifteenth digit');
    return wanted === cell;
  }
  if (typeof wanted === 'string') return sameText(wanted, cell as string);
  return wanted === cell;
}

function exactly(list: List, wanted: Scalar, wild: boolean): number {
  const pattern = wild && typeof wanted === 'string' ? wildcards(wanted) : undefined;
  for (let at = 0; at < list.length; at++) {
    const cell = list.at(at);
    if (pattern === undefined ? same(wanted, cell) : typeof cell === 'string' && pattern.test(cell))
      return at;
  }
  return -1;
}

/**
 * The last that is no larger, found by halving as Excel does: cells of another kind are passed over.
 * Only where the list is truly in order is its answer sure.
 */
function within(list: List, wanted: Scalar): number {
  let [before, found]: [Scalar, number] = [null, -1];
  for (let at = 0; at < list.length; at++) {
    const cell = list.at(at);
    if (kindOf(cell) !== kindOf(wanted)) continue;
    if (before !== null && compared(before, cell) > 0) unproven('looks in a list that is not in order');
    before = cell;
    if (compared(cell, wanted) <= 0) found = at;
  }
  return found;
}
/** The last that is no smaller, in a list that falls. */
function withinFalling(list: List, wanted: Scalar): number {
  let [before, found]: [Scalar, number] = [null, -1];
  for (let at = 0; at < list.length; at++) {
    const cell = list.at(at);
    if (kindOf(cell) !== kindOf(wanted)) continue;
    if (before !== null && compared(before, cell) < 0) unproven('looks in a list that is not in order');
    before = cell;
    if (compared(cell, wanted) > 0) found = at;
    else if (compared(cell, wanted) === 0 && found === -1) return at;
    else if (compared(cell, wanted) === 0) return at;
  }
  return found;
}

/** An empty cell looked for is 0. */
const lookedFor = (value: Scalar): Scalar => value ?? 0;

defineIn('MATCH', 'er?n', (world: World, given: Scalar, place: Value, type = 1) => {
  if (given instanceof Fault) return given;
  if (place instanceof Fault) return place;
  const list = listOf(world, place);
  if (list === undefined) return NA;
  const wanted = lookedFor(given);
  if (given === null) return NA;
  if (typeof wanted === 'string' && wanted.length > 255) return VALUE;
  const at =
    type === 0 ? exactly(list, wanted, true) : type > 0 ? within(list, wanted) : withinFalling(list, wanted);
  return at === -1 ? NA : at + 1;
});

/** The row of a table, or its column where it is asked across. */
const inTable =
  (across: boolean) =>
  (world: World, given: Scalar, tableGiven: Value, number: number, near = true): Value => {
    if (given instanceof Fault) return given;
    const table = isScalar(tableGiven) ? (tableGiven instanceof Fault ? tableGiven : NA) : tableGiven;
    if (table instanceof Fault) return table;
    if (!(table instanceof Area) && !(table instanceof Grid)) return unproven('looks in several areas');
    const which = Math.trunc(number);
    if (which < 1) return VALUE;
    if (which > (across ? table.rows : table.columns)) return REF;
    const wanted = lookedFor(given);
    if (given === null) return unproven('looks up an empty cell');
    const keys = listOf(world, lineOf(table, 0, across)) as List;
    const at = near ? within(keys, wanted) : exactly(keys, wanted, true);
    if (at === -1) return NA;
    const line = listOf(world, lineOf(table, which - 1, across)) as List;
    return at < line.length ? (line.at(at) ?? 0) : 0;
  };
function lineOf(table: Area | Grid, at: number, across: boolean): Value {
  if (table instanceof Area)
    return across
      ? new Area(table.sheet, table.row + at, table.column, 1, table.columns)
      : new Area(table.sheet, table.row, table.column + at, table.rows, 1);
  const cells = Array.from({ length: across ? table.columns : table.rows }, (_, one) =>
    across ? table.at(at, one) : table.at(one, at),
  );
  return across ? new Grid(1, cells.length, cells) : new Grid(cells.length, 1, cells);
}
defineIn('VLOOKUP', 'ern?b', inTable(false));
defineIn('HLOOKUP', 'ern?b', inTable(true));

defineIn('LOOKUP', 'ea?a', (world: World, given: Scalar, keysGiven: Value, answers?: Value) => {
  if (given instanceof Fault) return given;
  if (keysGiven instanceof Fault) return keysGiven;
  if (given === null) return unproven('looks up an empty cell');
  let [keys, values]: [Value, Value] = [keysGiven, answers ?? keysGiven];
  if (
    answers === undefined &&
    (keys instanceof Area || keys instanceof Grid) &&
    keys.rows > 1 &&
    keys.columns > 1
  ) {
    const across = keys.columns > keys.rows;
    values = lineOf(keys, across ? keys.rows - 1 : keys.columns - 1, across);
    keys = lineOf(keys, 0, across);
  }
  const [list, found] = [listOf(world, keys), listOf(world, values)];
  if (list === undefined || found === undefined)
    return unproven('looks in a range of several rows and columns');
  const at = lastWithin(list, given);
  return at === -1 ? NA : (found.at(at) ?? 0);
});
/** LOOKUP(2,1/(…),…) finds the last number among errors: a value beyond all of them needs no order. */
function lastWithin(list: List, wanted: Scalar): number {
  let [last, beyond] = [-1, true];
  for (let at = 0; at < list.length; at++) {
    const cell = list.at(at);
    if (kindOf(cell) !== kindOf(wanted)) continue;
    last = at;
    if (compared(cell, wanted) > 0) beyond = false;
  }
  return beyond ? last : within(list, wanted);
}

/** Where XLOOKUP and XMATCH find: from the first or the last; exactly, or the next smaller or larger. */
function placeIn(list: List, given: Scalar, mode: number, search: number): number {
  if (search !== 1 && search !== -1) return unproven('searches by halves');
  const wanted = given;
  const order = Array.from({ length: list.length }, (_, at) => (search === 1 ? at : list.length - 1 - at));
  const pattern = mode === 2 && typeof wanted === 'string' ? wildcards(wanted) : undefined;
  for (const at of order) {
    const cell = list.at(at);
    if (
      pattern === undefined
        ? same(wanted, cell) || (wanted === '' && cell === null)
        : typeof cell === 'string' && pattern.test(cell)
    )
      return at;
  }
  if (mode !== -1 && mode !== 1) return -1;
  let best = -1;
  for (const at of order) {
    const cell = list.at(at);
    if (kindOf(cell) !== kindOf(wanted) || cell === null) continue;
    if (compared(cell, wanted) * mode <= 0) continue;
    if (best === -1 || compared(cell, list.at(best)) * mode < 0) best = at;
  }
  return best;
}
defineIn('XMATCH', 'er?nn', (world: World, given: Scalar, place: Value, mode = 0, search = 1) => {
  if (given instanceof Fault) return given;
  const list = listOf(world, place);
  if (list === undefined) return VALUE;
  if (![0, -1, 1, 2].includes(mode)) return VALUE;
  const at = placeIn(list, given, mode, search);
  return at === -1 ? NA : at + 1;
});
defineIn(
  'XLOOKUP',
  'err?rnn',
  (world: World, given: Scalar, place: Value, answers: Value, missing?: Value, mode = 0, search = 1) => {
    if (given instanceof Fault) return given;
    if (place instanceof Fault) return place;
    if (answers instanceof Fault) return answers;
    const list = listOf(world, place);
    if (list === undefined || ![0, -1, 1, 2].includes(mode)) return VALUE;
    const long = (value: Value): readonly [number, number] =>
      value instanceof Area || value instanceof Grid ? [value.rows, value.columns] : [1, 1];
    const [rows, columns] = long(place);
    const [answerRows, answerColumns] = long(answers);
    const down =
      columns === 1 && answerRows === rows && (rows > 1 || answerColumns === 1 || answerRows === 1);
    if (!down && answerColumns !== columns) return VALUE;
    const at = placeIn(list, given, mode, search);
    if (at === -1) return missing ?? NA;
    if (answers instanceof Area)
      return down
        ? new Area(answers.sheet, answers.row + at, answers.column, 1, answers.columns)
        : new Area(answers.sheet, answers.row, answers.column + at, answers.rows, 1);
    if (answers instanceof Grid) {
      const line = lineOf(answers, at, down);
      return line instanceof Grid && line.cells.length === 1 ? line.at(0, 0) : line;
    }
    return answers;
  },
);

defineIn('TRANSPOSE', 'a', (world: World, value: Value) => {
  const grid = rowsIn(world, value);
  return new Grid(
    grid.columns,
    grid.rows,
    Array.from(
      { length: grid.rows * grid.columns },
      (_, at) => grid.at(at % grid.rows, Math.floor(at / grid.rows)) ?? 0,
    ),
  );
});
defineIn(
  'FREQUENCY',
  'aa',
  stopping((world: World, data: Value, bins: Value) => {
    const limits = matrixIn(world, bins).flat();
    const ordered = [...limits].sort((one, other) => one - other);
    if (ordered.some((one, at) => one !== limits[at]))
      return unproven('counts in classes that are not in order');
    const counts = new Array<number>(limits.length + 1).fill(0);
    for (const value of rowsIn(world, data).cells) {
      if (typeof value !== 'number') continue;
      const at = ordered.findIndex((limit) => value <= limit);
      counts[at === -1 ? limits.length : at] = (counts[at === -1 ? limits.length : at] ?? 0) + 1;
    }
    return new Grid(counts.length, 1, counts);
  }),
);
