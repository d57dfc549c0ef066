/**
 * Ratio: whole ten-thousandths (fullness 2.5 is 25,000; a rate of 7.25 % is 725).
 * A length times a ratio is a Taken length: ten-thousandths of a nanometre, still exact.
 */
import { exact, TooLarge, type Length } from './length';

declare const tenThousandths: unique symbol;
export type Ratio = number & { readonly [tenThousandths]: true };

export const ONE = 10_000 as Ratio;

/** A figure as a ratio, to the nearest ten-thousandth. */
export const ratio = (figure: number): Ratio => Math.round(figure * ONE) as Ratio;

export const toFigure = (ratio: Ratio): number => ratio / ONE;

/** A length in ten-thousandths of a nanometre: the exact product of a length and a ratio. */
declare const scaledMark: unique symbol;
export type Scaled = number & { readonly [scaledMark]: true };

export function scaled(nm: number): Scaled {
  if (!Number.isSafeInteger(nm)) throw new TooLarge('a length beyond what can be computed exactly');
  return nm as Scaled;
}

export const byRatio = (length: Length, by: Ratio): Scaled => scaled(length * by);
export const unscaled = (length: Length): Scaled => scaled(length * ONE);

/** Up to the whole nanometre: cloth is never cut short by a rounding. */
export function upToNanometre(scaled: Scaled): Length {
  const over = scaled % ONE;
  return exact((scaled - over) / ONE + (over > 0 ? 1 : 0));
}

/**
 * length ÷ (1 − share): what must be cut so that `length` is left after shrinking. To the whole nanometre below,
 * so that many cuts together never pass what they exactly come to, and a yardage that is exactly a step
 * stays on it; what a cut is short by cannot be measured.
 */
export function beforeLosing(length: Length, share: Ratio): Length {
  const kept = ONE - share;
  const product = scaled(length * ONE);
  return exact((product - (product % kept)) / kept);
}
