/** Exact rationals and the few ways of rounding that the trade names. Lengths are whole or broken nanometres. */
import Fraction from 'fraction.js';

export type Exact = Fraction;

export const exact = (figure: number | string | bigint): Exact => new Fraction(figure);

export const NONE = exact(0);
export const ONE = exact(1);
export const TWO = exact(2);
export const HALF = exact('1/2');
export const INCH = exact(25_400_000);
export const CENTIMETRE = exact(10_000_000);
export const YARD = INCH.mul(36);
export const METRE = CENTIMETRE.mul(100);

export const inches = (figure: number | string): Exact => exact(figure).mul(INCH);
export const centimetres = (figure: number | string): Exact => exact(figure).mul(CENTIMETRE);

export const atMost = (one: Exact, other: Exact): boolean => one.compare(other) <= 0;
export const below = (one: Exact, other: Exact): boolean => one.compare(other) < 0;
export const greater = (one: Exact, other: Exact): Exact => (below(one, other) ? other : one);
export const lesser = (one: Exact, other: Exact): Exact => (below(other, one) ? other : one);

/** Up to the next whole number of steps. */
export const upToStep = (figure: Exact, step: Exact): Exact => figure.div(step).ceil().mul(step);
/** Up to an odd number of halves of the step. */
export const upToOddHalf = (figure: Exact, step: Exact): Exact =>
  greater(figure.div(step).sub(HALF).ceil(), NONE).add(HALF).mul(step);
/** To the nearest whole; a half goes up. */
export const nearest = (figure: Exact): Exact => figure.add(HALF).floor();
/** To the nearest whole; a half goes down. */
export const nearestDown = (figure: Exact): Exact => figure.sub(HALF).ceil();

export const sumOf = (figures: readonly Exact[]): Exact =>
  figures.reduce((sum, figure) => sum.add(figure), NONE);
