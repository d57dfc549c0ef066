/** What COUNTIF and its kin look for: “>5”, “<>”, “lin*”, or a plain value. */
import { Area, Fault, near15, numberIn, sameText, unproven, VALUE, type Scalar, type Value } from './values';
import { rowsIn, stop } from './ranges';
import type { World } from './world';

export type Test = (value: Scalar) => boolean;

const SIGNS = /^(<=|>=|<>|=|<|>)?([\s\S]*)$/;

export function testOf(criterion: Scalar): Test {
  if (criterion === null) return numberTest('=', 0);
  if (typeof criterion === 'number') return numberTest('=', criterion);
  if (typeof criterion === 'boolean') return (value) => value === criterion;
  if (criterion instanceof Fault) return (value) => value instanceof Fault && value.code === criterion.code;
  const [, sign = '', rest = ''] = SIGNS.exec(criterion) ?? [];
  if (rest === '') return emptyTest(sign);
  const upper = rest.toUpperCase();
  if (upper === 'TRUE' || upper === 'FALSE') {
    if (sign !== '' && sign !== '=' && sign !== '<>') unproven('orders logicals in a criterion');
    return (value) => (value === (upper === 'TRUE')) !== (sign === '<>');
  }
  if (/^#[A-Z/0-9]+[!?]?$/.test(upper))
    return (value) => (value instanceof Fault && value.code === upper) !== (sign === '<>');
  const number = numberIn(rest);
  if (number !== undefined) return numberTest(sign || '=', number);
  return textTest(sign || '=', rest);
}

/** “=” is a blank cell, “<>” one that is not; "" is a blank cell or an empty text. */
function emptyTest(sign: string): Test {
  switch (sign) {
    case '':
      return (value) => value === null || value === '';
    case '=':
      return (value) => value === null;
    case '<>':
      return (value) => value !== null;
    default:
      return () => false;
  }
}

function numberTest(sign: string, wanted: number): Test {
  const number = (value: Scalar): number | undefined => {
    if (typeof value === 'number') return value;
    // Text that looks like a number is that number for COUNTIF's equality.
    return typeof value === 'string' && sign === '=' ? numeral(value) : undefined;
  };
  const test =
    (check: (one: number) => boolean): Test =>
    (value) => {
      const one = number(value);
      return one !== undefined && check(one);
    };
  switch (sign) {
    case '<>':
      return (value) => {
        const one = number(value);
        return one === undefined || !near15(one, wanted);
      };
    case '<':
      return test((one) => one < wanted && !doubtful(one, wanted));
    case '>':
      return test((one) => one > wanted && !doubtful(one, wanted));
    case '<=':
      return test((one) => one <= wanted || doubtful(one, wanted));
    case '>=':
      return test((one) => one >= wanted || doubtful(one, wanted));
    default:
      return test((one) => one === wanted || doubtful(one, wanted));
  }
}
function doubtful(one: number, wanted: number): boolean {
  if (one !== wanted && near15(one, wanted))
    unproven('compares numbers that differ beyond the fifteenth digit');
  return one === wanted;
}
const numeral = (text: string): number | undefined => (/^\s*$/.test(text) ? undefined : numberIn(text));

const ESCAPED = /[.+^${}()|[\]\\]/g;
/** ? is any sign, * any signs, ~ makes the next one itself. */
export function wildcards(pattern: string): RegExp | undefined {
  if (!/[?*~]/.test(pattern)) return undefined;
  let text = '';
  for (let at = 0; at < pattern.length; at++) {
    const sign = pattern[at] ?? '';
    const next = pattern[at + 1];
    if (sign === '~') {
      text += (next ?? '').replace(ESCAPED, '\\$&').replace(/[?*]/, '\\$&');
      at += 1;
    } else text += sign === '?' ? '[\\s\\S]' : sign === '*' ? '[\\s\\S]*' : sign.replace(ESCAPED, '\\$&');
  }
  return new RegExp(`^${text}$`, 'iu');
}

function textTest(sign: string, wanted: string): Test {
  if (sign === '=' || sign === '<>') {
    const pattern = wildcards(wanted);
    const same = (value: Scalar): boolean =>
      typeof value === 'string' && (pattern === undefined ? sameText(value, wanted) : pattern.test(value));
    return sign === '=' ? same : (value) => !same(value);
  }
  return () => unproven('orders texts in a criterion');
}

/** Which cells of areas of one size meet all their criteria. Rows beyond what is filled are blank. */
export function meeting(
  world: World,
  pairs: readonly (readonly [Value, Scalar])[],
): (row: number, column: number) => boolean {
  const checks = pairs.map(([range, criterion]) => {
    const grid = rowsIn(world, range, true);
    const test = testOf(criterion);
    return (row: number, column: number): boolean =>
      test(row < grid.rows && column < grid.columns ? grid.at(row, column) : null);
  });
  return (row, column) => checks.every((check) => check(row, column));
}

export function sameSize(one: Value, other: Value): void {
  if (!(one instanceof Area) || !(other instanceof Area)) unproven('takes a criterion on what is no range');
  if ((one as Area).rows !== (other as Area).rows || (one as Area).columns !== (other as Area).columns)
    stop(VALUE);
}
