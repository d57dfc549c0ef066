/** Truths, and what kind of value something is. */
import { define, defineIn } from './call';
import { eachValue } from './ranges';
import { Area, Areas, Fault, Grid, NA, toTruth, unproven, VALUE, type Scalar, type Value } from './values';
import type { World } from './world';

type Many = (Value | undefined)[];

/** Logicals and numbers count; texts in cells do not. */
function truths(world: World, given: Many): boolean[] | Fault {
  const list: boolean[] = [];
  let fault: Fault | undefined;
  eachValue(world, given, (value, typed) => {
    if (value instanceof Fault) fault ??= value;
    else if (typeof value !== 'string') list.push(value !== false && value !== 0);
    else if (typed) {
      const truth = toTruth(value);
      if (truth instanceof Fault) fault ??= truth;
      else list.push(truth);
    }
  });
  return fault ?? (list.length === 0 ? VALUE : list);
}
const over =
  (answer: (list: readonly boolean[]) => boolean) =>
  (world: World, ...given: Many): Value => {
    const list = truths(world, given);
    return list instanceof Fault ? list : answer(list);
  };
defineIn(
  'AND',
  'r*',
  over((list) => list.every(Boolean)),
);
defineIn(
  'OR',
  'r*',
  over((list) => list.some(Boolean)),
);
defineIn(
  'XOR',
  'r*',
  over((list) => list.filter(Boolean).length % 2 === 1),
);
define('NOT', 'b', (truth: boolean) => !truth);
define('TRUE', '', () => true);
define('FALSE', '', () => false);
define('NA', '', () => NA);

const kind = (names: string, test: (value: Scalar) => boolean): void => {
  define(names, 'e', test);
};
kind('ISNUMBER', (value) => typeof value === 'number');
kind('ISTEXT', (value) => typeof value === 'string');
kind('ISNONTEXT', (value) => typeof value !== 'string');
kind('ISLOGICAL', (value) => typeof value === 'boolean');
kind('ISBLANK', (value) => value === null);
kind('ISERROR', (value) => value instanceof Fault);
kind('ISERR', (value) => value instanceof Fault && value.code !== NA.code);
kind('ISNA', (value) => value instanceof Fault && value.code === NA.code);
define('ISEVEN', 'e', (value: Scalar) => parity(value, 0));
define('ISODD', 'e', (value: Scalar) => parity(value, 1));
function parity(value: Scalar, rest: number): Value {
  if (value instanceof Fault) return value;
  if (typeof value === 'boolean') return VALUE;
  if (typeof value === 'string') return unproven('takes a text as a whole number');
  return Math.abs(Math.trunc(value ?? 0)) % 2 === rest;
}
const ERROR_NUMBERS: Readonly<Record<string, number>> = {
  '#NULL!': 1,
  '#DIV/0!': 2,
  '#VALUE!': 3,
  '#REF!': 4,
  '#NAME?': 5,
  '#NUM!': 6,
  '#N/A': 7,
};
define('ERROR.TYPE', 'e', (value: Scalar) =>
  value instanceof Fault ? (ERROR_NUMBERS[value.code] ?? unproven('numbers a newer error')) : NA,
);
defineIn('TYPE', 'r', (world: World, value: Value) => {
  if (
    value instanceof Grid ||
    value instanceof Areas ||
    (value instanceof Area && value.rows * value.columns > 1)
  )
    return 64;
  const one = value instanceof Area ? world.value(value) : value;
  if (one instanceof Fault) return 16;
  return typeof one === 'string' ? 2 : typeof one === 'boolean' ? 4 : 1;
});
defineIn('SHEET', '?r', (world: World, value?: Value) => {
  if (value === undefined) return world.sheet + 1;
  return value instanceof Area ? value.sheet + 1 : unproven('asks for the number of a sheet by its name');
});
defineIn('SHEETS', '?r', (world: World, value?: Value) => {
  if (value === undefined) return world.sheets.names.length;
  return value instanceof Area ? 1 : value instanceof Areas ? value.list.length : unproven('counts sheets');
});
