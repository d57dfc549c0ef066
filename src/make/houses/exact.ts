/** Exact figures as fractions, and the few roundings that a workroom uses. */
import Fraction from 'fraction.js';

/** A decimal as it is written (2.5, 0.0725), never a binary approximation of it. */
export const exact = (figure: number | string): Fraction => new Fraction(String(figure));

export const ZERO = exact(0);
export const ONE = exact(1);
export const HALF = exact('0.5');

/** Up to the next whole number of steps. */
export const upTo = (figure: Fraction, step: Fraction): Fraction => figure.div(step).ceil().mul(step);

/** To the cent, half a cent up. */
export const cents = (money: Fraction): Fraction => money.mul(100).add(HALF).floor().div(100);

export const sum = (figures: readonly Fraction[]): Fraction =>
  figures.reduce((total, figure) => total.add(figure), ZERO);

export const apart = (one: Fraction, other: Fraction): Fraction => one.sub(other).abs();

/** A cell's number: to so many decimals, halves away from zero. */
export const plain = (figure: Fraction, decimals = 4): number => {
  const scale = 10 ** decimals;
  const whole = figure.abs().mul(scale).add(HALF).floor();
  return (Number(figure.compare(ZERO) < 0 ? -1 : 1) * Number(whole.valueOf())) / scale;
};

/** 84 1/2, as a tape reads; a decimal where the figure lies between the sixteenths. */
export function tape(figure: Fraction): string {
  if (figure.mul(16).mod(1).compare(ZERO) !== 0) return String(plain(figure, 3));
  const whole = figure.floor();
  const part = figure.sub(whole);
  if (part.equals(0)) return whole.toFraction();
  return whole.equals(0) ? part.toFraction() : `${whole.toFraction()} ${part.toFraction()}`;
}

/** 7' 6 1/2": feet and inches of a figure in inches. */
export function feetAndInches(figure: Fraction): string {
  const feet = figure.div(12).floor();
  const inches = figure.sub(feet.mul(12));
  return inches.equals(0) ? `${feet.toFraction()}'` : `${feet.toFraction()}' ${tape(inches)}"`;
}
