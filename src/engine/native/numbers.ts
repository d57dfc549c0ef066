/** Arithmetic: roundings, powers, angles, whole numbers. */
import { define, defineIn } from './call';
import { power } from './operators';
import { eachValue, matrixIn, numbersIn, rowsIn, stop, stopping } from './ranges';
import {
  bounded,
  DIV0,
  Fault,
  Grid,
  held,
  NA,
  NUM,
  toNumber,
  unproven,
  VALUE,
  type Scalar,
  type Value,
} from './values';
import type { World } from './world';

type Many = (Value | undefined)[];

/** Ten to the power, on the fifteen digits that Excel sees of a number. */
function scaled(number: number, places: number): number {
  const [digits = '0', power = '0'] = number.toExponential(14).split('e');
  return Number(`${digits}e${Number(power) + places}`);
}
const SAFE = Number.MAX_SAFE_INTEGER;
function rounding(number: number, digits: number, work: (size: number) => number): number | Fault {
  const places = Math.trunc(digits);
  if (number === 0) return 0;
  if (places > 300) return number;
  if (places < -308)
    return work(0.5) === 1 && work(0.1) === 1 ? unproven('rounds beyond what a number holds') : 0;
  const size = scaled(Math.abs(number), places);
  if (size > SAFE || !Number.isFinite(size)) return number;
  return held(Math.sign(number) * scaled(work(size), -places));
}
const half = (size: number): number => Math.floor(size + 0.5);
const round = (number: number, digits: number): number | Fault => rounding(number, digits, half);
define('ROUND', 'nn', round);
define('ROUNDUP', 'nn', (number: number, digits: number) => rounding(number, digits, Math.ceil));
define('ROUNDDOWN', 'nn', (number: number, digits: number) => rounding(number, digits, Math.floor));
define('TRUNC', 'n?n', (number: number, digits = 0) => rounding(number, digits, Math.floor));
define('INT', 'n', (number: number) => Math.floor(number));
define('ABS', 'n', (number: number) => Math.abs(number));
define('SIGN', 'n', (number: number) => Math.sign(number));
define('SQRT', 'n', (number: number) => (number < 0 ? NUM : Math.sqrt(number)));
define('SQRTPI', 'm', (number: number) => (number < 0 ? NUM : Math.sqrt(number * Math.PI)));
define('POWER', 'nn', power);
define('EXP', 'n', (number: number) => held(Math.exp(number)));
define('LN', 'n', (number: number) => (number <= 0 ? NUM : Math.log(number)));
define('LOG10', 'n', (number: number) => (number <= 0 ? NUM : Math.log10(number)));
define('LOG', 'n?n', (number: number, base = 10) => {
  if (number <= 0 || base <= 0) return NUM;
  if (base === 1) return DIV0;
  return base === 10
    ? Math.log10(number)
    : base === 2
      ? Math.log2(number)
      : Math.log(number) / Math.log(base);
});
define('PI', '', () => Math.PI);

define('MOD', 'nn', (number: number, by: number) => {
  if (by === 0) return DIV0;
  const times = number / by;
  if (Math.abs(times) > 1e12) return unproven('takes the rest of so large a number');
  const rest = number - by * Math.floor(times);
  const near = Math.abs(rest) < 1e-14 * Math.abs(number) || Math.abs(rest - by) < 1e-14 * Math.abs(number);
  return rest !== 0 && near ? unproven('takes a rest that only rounding leaves') : rest;
});
define('QUOTIENT', 'mm', (number: number, by: number) => (by === 0 ? DIV0 : Math.trunc(number / by)));

/** How many steps a number is, without the rounding of the division. */
const steps = (number: number, step: number): number => Number((number / step).toPrecision(15));
const times = (count: number, step: number): number | Fault => held(Number((count * step).toPrecision(15)));
define('CEILING', 'nn', (number: number, step: number) => {
  if (step === 0 || number === 0) return 0;
  if (number > 0 && step < 0) return NUM;
  return times(Math.ceil(steps(number, step)), step);
});
define('FLOOR', 'nn', (number: number, step: number) => {
  if (number === 0) return 0;
  if (step === 0) return DIV0;
  if (number > 0 && step < 0) return NUM;
  return times(Math.floor(steps(number, step)), step);
});
define('CEILING.PRECISE ISO.CEILING', 'n?n', (number: number, step = 1) =>
  step === 0 ? 0 : times(Math.ceil(steps(number, Math.abs(step))), Math.abs(step)),
);
define('FLOOR.PRECISE', 'n?n', (number: number, step = 1) =>
  step === 0 ? 0 : times(Math.floor(steps(number, Math.abs(step))), Math.abs(step)),
);
define('CEILING.MATH', 'n?nn', (number: number, step = 1, away = 0) => {
  if (step === 0) return 0;
  const count = steps(number, Math.abs(step));
  return times(number < 0 && away !== 0 ? Math.floor(count) : Math.ceil(count), Math.abs(step));
});
define('FLOOR.MATH', 'n?nn', (number: number, step = 1, toward = 0) => {
  if (step === 0) return 0;
  const count = steps(number, Math.abs(step));
  return times(number < 0 && toward !== 0 ? Math.ceil(count) : Math.floor(count), Math.abs(step));
});
define('MROUND', 'mm', (number: number, step: number) => {
  if (step === 0 || number === 0) return 0;
  if (number * step < 0) return NUM;
  const count = number / step;
  if (Math.abs(Math.abs(count % 1) - 0.5) < 1e-9 && !Number.isInteger(step))
    return unproven('rounds a half to a multiple of a fraction');
  return times(Math.round(steps(number, step)), step);
});
const awayTo = (number: number, even: boolean): number => {
  const size = Math.ceil(Math.abs(number));
  const whole = (size % 2 === 0) === even ? size : size + 1;
  return number < 0 ? -whole : whole;
};
define('EVEN', 'n', (number: number) => (number === 0 ? 0 : awayTo(number, true)));
define('ODD', 'n', (number: number) => (number === 0 ? 1 : awayTo(number, false)));

/** Beyond this Excel knows no angle. */
const WIDEST = 2 ** 27;
const angle =
  (work: (number: number) => number) =>
  (number: number): number | Fault =>
    Math.abs(number) >= WIDEST ? NUM : held(work(number));
define('SIN', 'n', angle(Math.sin));
define('COS', 'n', angle(Math.cos));
define('TAN', 'n', angle(Math.tan));
define('COT', 'n', (number: number) => (number === 0 ? DIV0 : angle((one) => 1 / Math.tan(one))(number)));
define(
  'SEC',
  'n',
  angle((number) => 1 / Math.cos(number)),
);
define('CSC', 'n', (number: number) => (number === 0 ? DIV0 : angle((one) => 1 / Math.sin(one))(number)));
const inside =
  (work: (number: number) => number, test: (number: number) => boolean) =>
  (number: number): number | Fault =>
    test(number) ? held(work(number)) : NUM;
define(
  'ASIN',
  'n',
  inside(Math.asin, (number) => Math.abs(number) <= 1),
);
define(
  'ACOS',
  'n',
  inside(Math.acos, (number) => Math.abs(number) <= 1),
);
define('ATAN', 'n', (number: number) => Math.atan(number));
define('ATAN2', 'nn', (x: number, y: number) => (x === 0 && y === 0 ? DIV0 : Math.atan2(y, x)));
define('ACOT', 'n', (number: number) => Math.PI / 2 - Math.atan(number));
define('SINH', 'n', (number: number) => held(Math.sinh(number)));
define('COSH', 'n', (number: number) => held(Math.cosh(number)));
define('TANH', 'n', (number: number) => Math.tanh(number));
define('COTH', 'n', (number: number) => (number === 0 ? DIV0 : 1 / Math.tanh(number)));
define('SECH', 'n', (number: number) => 1 / Math.cosh(number));
define('CSCH', 'n', (number: number) => (number === 0 ? DIV0 : 1 / Math.sinh(number)));
define('ASINH', 'n', (number: number) => Math.asinh(number));
define(
  'ACOSH',
  'n',
  inside(Math.acosh, (number) => number >= 1),
);
define(
  'ATANH',
  'n',
  inside(Math.atanh, (number) => Math.abs(number) < 1),
);
define(
  'ACOTH',
  'n',
  inside(
    (number) => Math.atanh(1 / number),
    (number) => Math.abs(number) > 1,
  ),
);
define('DEGREES', 'n', (number: number) => (number * 180) / Math.PI);
define('RADIANS', 'n', (number: number) => (number * Math.PI) / 180);

const factorial = (whole: number): number => {
  let product = 1;
  for (let one = 2; one <= whole; one++) product *= one;
  return product;
};
define('FACT', 'n', (number: number) => (number < 0 || number >= 171 ? NUM : factorial(Math.trunc(number))));
define('FACTDOUBLE', 'm', (number: number) => {
  const whole = Math.trunc(number);
  if (whole < -1) return NUM;
  let product = 1;
  if (whole > 300) return NUM;
  for (let one = whole; one > 1; one -= 2) product *= one;
  return held(product);
});
export function combinations(whole: number, chosen: number): number {
  const few = Math.min(chosen, whole - chosen);
  let found = 1;
  for (let one = 1; one <= bounded(few); one++) found = (found * (whole - few + one)) / one;
  return found < SAFE ? Math.round(found) : found;
}
define('COMBIN', 'nn', (number: number, chosen: number) => {
  const [n, k] = [Math.trunc(number), Math.trunc(chosen)];
  return n < 0 || k < 0 || n < k ? NUM : held(combinations(n, k));
});
define('COMBINA', 'nn', (number: number, chosen: number) => {
  const [n, k] = [Math.trunc(number), Math.trunc(chosen)];
  if (n < 0 || k < 0 || (n === 0 && k > 0)) return NUM;
  return k === 0 ? 1 : held(combinations(n + k - 1, k));
});
define('PERMUT', 'nn', (number: number, chosen: number) => {
  const [n, k] = [Math.trunc(number), Math.trunc(chosen)];
  if (n <= 0 || k < 0 || n < k) return NUM;
  let product = 1;
  bounded(k);
  if (n > SAFE) return unproven('counts the ways of so many');
  for (let one = n - k + 1; one <= n; one++) product *= one;
  return held(product);
});
define('PERMUTATIONA', 'nn', (number: number, chosen: number) =>
  number < 0 || chosen < 0 ? NUM : held(Math.trunc(number) ** Math.trunc(chosen)),
);

const divisor = (one: number, other: number): number => (other === 0 ? one : divisor(other, one % other));
function wholes(world: World, given: Many): number[] | Fault {
  if (given.includes(null)) return NA;
  const list: number[] = [];
  eachValue(world, given, (value) => {
    if (typeof value === 'string' && !/^(?:\s*\d+\s*)?$/.test(value))
      unproven('takes a text for a whole number');
    const number = typeof value === 'boolean' ? VALUE : toNumber(value);
    list.push(number instanceof Fault ? stop(number) : number);
  });
  return list.some((one) => one < 0 || one > SAFE) ? NUM : list.map(Math.trunc);
}
defineIn(
  'GCD',
  'r*',
  stopping((world: World, ...given: Many) => {
    const list = wholes(world, given);
    return list instanceof Fault ? list : list.reduce(divisor, 0);
  }),
);
defineIn(
  'LCM',
  'r*',
  stopping((world: World, ...given: Many) => {
    const list = wholes(world, given);
    if (list instanceof Fault) return list;
    const found = list.reduce(
      (one, other) => (one === 0 || other === 0 ? 0 : (one / divisor(one, other)) * other),
      1,
    );
    return found > SAFE ? NUM : found;
  }),
);
defineIn(
  'MULTINOMIAL',
  'r*',
  stopping((world: World, ...given: Many) => {
    const list = wholes(world, given);
    if (list instanceof Fault) return list;
    let [total, product] = [0, 1];
    for (const one of list) {
      total += one;
      product *= combinations(total, one);
    }
    return held(product);
  }),
);

defineIn(
  'SERIESSUM',
  'mmmr',
  stopping((world: World, x: number, first: number, step: number, terms: Value) => {
    let [sum, exponent] = [0, first];
    for (const term of numbersIn(world, [terms])) {
      const one = power(x, exponent);
      if (one instanceof Fault) return one;
      sum += term * one;
      exponent += step;
    }
    return held(sum);
  }),
);

const overPairs =
  (work: (x: number, y: number) => number) =>
  (world: World, one: Value, other: Value): Value => {
    const [a, b] = [rowsIn(world, one), rowsIn(world, other)];
    if (a.cells.length !== b.cells.length) return unproven('pairs ranges of two sizes');
    let [sum, count] = [0, 0];
    for (const [at, x] of a.cells.entries()) {
      const y: Scalar = b.cells[at] ?? null;
      if (x instanceof Fault) return x;
      if (y instanceof Fault) return y;
      if (typeof x !== 'number' || typeof y !== 'number') continue;
      sum += work(x, y);
      count += 1;
    }
    return count === 0 ? DIV0 : held(sum);
  };
defineIn(
  'SUMX2MY2',
  'aa',
  overPairs((x, y) => x * x - y * y),
);
defineIn(
  'SUMX2PY2',
  'aa',
  overPairs((x, y) => x * x + y * y),
);
defineIn(
  'SUMXMY2',
  'aa',
  overPairs((x, y) => (x - y) ** 2),
);

const gridFrom = (rows: readonly (readonly number[])[]): Grid =>
  new Grid(rows.length, rows[0]?.length ?? 0, rows.flat());
defineIn(
  'MMULT',
  'aa',
  stopping((world: World, one: Value, other: Value) => {
    const [a, b] = [matrixIn(world, one), matrixIn(world, other)];
    if (a[0]?.length !== b.length) return VALUE;
    return gridFrom(
      a.map((row) => (b[0] ?? []).map((_, at) => row.reduce((sum, x, k) => sum + x * (b[k]?.[at] ?? 0), 0))),
    );
  }),
);
/** The determinant, and the inverse where one is asked for. */
function eliminated(square: readonly (readonly number[])[]): { determinant: number; inverse: number[][] } {
  const size = square.length;
  const left = square.map((row) => [...row]);
  const right = square.map((_, row) => square.map((__, column) => (row === column ? 1 : 0)));
  let determinant = 1;
  for (let at = 0; at < size; at++) {
    let best = at;
    for (let row = at + 1; row < size; row++)
      if (Math.abs(left[row]?.[at] ?? 0) > Math.abs(left[best]?.[at] ?? 0)) best = row;
    for (const rows of [left, right]) [rows[at], rows[best]] = [rows[best] as number[], rows[at] as number[]];
    if (best !== at) determinant = -determinant;
    const pivot = left[at]?.[at] ?? 0;
    determinant *= pivot;
    if (pivot === 0) return { determinant: 0, inverse: [] };
    for (let row = 0; row < size; row++) {
      if (row === at) continue;
      const factor = (left[row]?.[at] ?? 0) / pivot;
      if (factor === 0) continue;
      for (const rows of [left, right])
        rows[row] = (rows[row] as number[]).map((one, column) => one - factor * (rows[at]?.[column] ?? 0));
    }
  }
  return { determinant, inverse: right.map((row, at) => row.map((one) => one / (left[at]?.[at] ?? 1))) };
}
const squareOf = (world: World, value: Value): number[][] | Fault => {
  const rows = matrixIn(world, value);
  return rows.some((row) => row.length !== rows.length) ? VALUE : rows;
};
defineIn(
  'MDETERM',
  'a',
  stopping((world: World, value: Value) => {
    const square = squareOf(world, value);
    return square instanceof Fault ? square : held(eliminated(square).determinant);
  }),
);
defineIn(
  'MINVERSE',
  'a',
  stopping((world: World, value: Value) => {
    const square = squareOf(world, value);
    if (square instanceof Fault) return square;
    const { determinant, inverse } = eliminated(square);
    return Math.abs(determinant) < 1e-14
      ? determinant === 0
        ? NUM
        : unproven('inverts what can hardly be inverted')
      : gridFrom(inverse);
  }),
);
define('MUNIT', 'n', (size: number) => {
  const whole = Math.trunc(size);
  if (whole < 1) return VALUE;
  bounded(whole * whole);
  return new Grid(
    whole,
    whole,
    Array.from({ length: whole * whole }, (_, at) => (at % (whole + 1) === 0 ? 1 : 0)),
  );
});

const ROMAN = [
  [1000, 'M'],
  [900, 'CM'],
  [500, 'D'],
  [400, 'CD'],
  [100, 'C'],
  [90, 'XC'],
  [50, 'L'],
  [40, 'XL'],
  [10, 'X'],
  [9, 'IX'],
  [5, 'V'],
  [4, 'IV'],
  [1, 'I'],
] as const;
define('ROMAN', 'n?e', (number: number, form?: Scalar) => {
  if (form !== undefined && form !== 0 && form !== null && form !== true)
    return unproven('writes short Roman numbers');
  let left = Math.trunc(number);
  if (left < 0 || left > 3999) return VALUE;
  let text = '';
  for (const [size, signs] of ROMAN) while (left >= size) [text, left] = [text + signs, left - size];
  return text;
});
define('ARABIC', 's', (text: string) => {
  const signs = text.trim().toUpperCase();
  const bare = signs.replace(/^-/, '');
  if (!/^[MDCLXVI]*$/.test(bare)) return VALUE;
  const sizes = [...bare].map((sign) => ROMAN.find(([, one]) => one === sign)?.[0] ?? 0);
  const sum = sizes.reduce((total: number, one, at) => total + ((sizes[at + 1] ?? 0) > one ? -one : one), 0);
  return signs.startsWith('-') ? -sum : sum;
});
define('BASE', 'nn?n', (number: number, radix: number, least = 0) => {
  const [whole, base, length] = [Math.trunc(number), Math.trunc(radix), Math.trunc(least)];
  if (whole < 0 || whole >= 2 ** 53 || base < 2 || base > 36 || length < 0 || length > 255) return NUM;
  return whole.toString(base).toUpperCase().padStart(length, '0');
});
define('DECIMAL', 'sn', (text: string, radix: number) => {
  const base = Math.trunc(radix);
  const digits = text.trim().toLowerCase();
  if (base < 2 || base > 36 || digits.length > 255) return NUM;
  const values = [...digits].map((digit) => parseInt(digit, 36));
  return values.some((one) => Number.isNaN(one) || one >= base)
    ? NUM
    : values.reduce((sum, one) => sum * base + one, 0);
});
