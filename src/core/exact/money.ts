/**
 * Money: decimal.js, never binary. It is rounded only where a rule says so, by a rounding with a name.
 */
import { Decimal } from 'decimal.js';

/** What money can do. Of decimal.js the functions bundle takes along these operations alone. */
export interface Money {
  plus(other: Amount): Money;
  minus(other: Amount): Money;
  times(other: Amount): Money;
  div(other: Amount): Money;
  abs(): Money;
  neg(): Money;
  toDecimalPlaces(places: number, rounding?: Decimal.Rounding): Money;
  cmp(other: Amount): number;
  eq(other: Amount): boolean;
  lt(other: Amount): boolean;
  lte(other: Amount): boolean;
  gt(other: Amount): boolean;
  gte(other: Amount): boolean;
  isZero(): boolean;
  toNumber(): number;
  toFixed(places: number): string;
  toString(): string;
}
type Amount = Money | number | string;

/** A cell's number by its shortest decimal writing: 12.46 is 12.46, not its binary neighbour. */
export const money = (figure: number | string): Money => new Decimal(figure) as Money;

export const NOTHING: Money = money(0);

/** Whether two amounts differ by no more than this. */
export const isNear = (one: Money, other: Money, by: Money): boolean =>
  one.eq(other) || one.minus(other).abs().lte(by);

/**
 * The half-cent rules. Sales-tax law asks for `half up`: the third decimal rounds up when it is
 * greater than four (Streamlined Sales and Use Tax Agreement, section 324).
 */
export const ROUNDINGS = {
  'half up': Decimal.ROUND_HALF_UP,
  'half even': Decimal.ROUND_HALF_EVEN,
  up: Decimal.ROUND_UP,
  down: Decimal.ROUND_DOWN,
} as const;
export type Rounding = keyof typeof ROUNDINGS;

/** To the cent, once. */
export const toCent = (amount: Money, rounding: Rounding = 'half up'): Money =>
  amount.toDecimalPlaces(2, ROUNDINGS[rounding]);

/** The least whole count that is not below this. */
export const upToWhole = (amount: Money): number => amount.toDecimalPlaces(0, Decimal.ROUND_UP).toNumber();
