/** Numbers in other bases, their bits, and the steps between them. */
import { define } from './call';
import { Fault, NUM, type Scalar, VALUE } from './values';

type Answer = Scalar;
interface Base {
  readonly name: string;
  readonly radix: number;
  /** Ten digits hold this many numbers; the upper half of them are below zero. */
  readonly size: number;
}
const BASES: readonly Base[] = [
  { name: 'BIN', radix: 2, size: 2 ** 10 },
  { name: 'OCT', radix: 8, size: 2 ** 30 },
  { name: 'HEX', radix: 16, size: 2 ** 40 },
];
const MOST_DIGITS = 10;

function read(text: string, { radix, size }: Base): number | Fault {
  const digits = text.toLowerCase();
  if (digits === '') return 0;
  if (digits.length > MOST_DIGITS || [...digits].some((one) => !(parseInt(one, 36) < radix))) return NUM;
  const number = parseInt(digits, radix);
  return number >= size / 2 ? number - size : number;
}
function written(number: number, { radix, size }: Base, given: number | undefined): Answer {
  if (number < -size / 2 || number >= size / 2) return NUM;
  const text = (number < 0 ? number + size : number).toString(radix).toUpperCase();
  if (number < 0 || given === undefined) return text;
  const places = Math.trunc(given);
  return places < 1 || places > MOST_DIGITS || text.length > places ? NUM : text.padStart(places, '0');
}
const plainText = (value: Scalar): string | Fault => {
  if (value instanceof Fault) return value;
  if (typeof value === 'boolean') return VALUE;
  return value === null ? '' : String(value);
};
for (const base of BASES) {
  define(`DEC2${base.name}`, 'm?m', (number: number, places?: number) =>
    written(Math.trunc(number), base, places),
  );
  define(`${base.name}2DEC`, 'v', (value: Scalar) => {
    const text = plainText(value);
    return text instanceof Fault ? text : read(text, base);
  });
  for (const other of BASES)
    if (other !== base)
      define(`${base.name}2${other.name}`, 'v?m', (value: Scalar, places?: number) => {
        const text = plainText(value);
        const number = text instanceof Fault ? text : read(text, base);
        return number instanceof Fault ? number : written(number, other, places);
      });
}

const MOST = 2 ** 48;
const bits =
  (work: (one: bigint, other: bigint) => bigint) =>
  (one: number, other: number): Answer => {
    if (![one, other].every((number) => Number.isInteger(number) && number >= 0 && number < MOST)) return NUM;
    return Number(work(BigInt(one), BigInt(other)));
  };
define(
  'BITAND',
  'nn',
  bits((one, other) => one & other),
);
define(
  'BITOR',
  'nn',
  bits((one, other) => one | other),
);
define(
  'BITXOR',
  'nn',
  bits((one, other) => one ^ other),
);
function shifted(number: number, by: number): Answer {
  const places = Math.trunc(by);
  if (!Number.isInteger(number) || number < 0 || number >= MOST || Math.abs(places) > 53) return NUM;
  const found = places >= 0 ? number * 2 ** places : Math.floor(number / 2 ** -places);
  return found >= MOST ? NUM : found;
}
define('BITLSHIFT', 'nn', (number: number, by: number) => shifted(number, by));
define('BITRSHIFT', 'nn', (number: number, by: number) => shifted(number, -Math.trunc(by)));
define('DELTA', 'm?m', (one: number, other = 0) => Number(one === other));
define('GESTEP', 'm?m', (number: number, step = 0) => Number(number >= step));
