/**
 * Length: whole nanometres in a plain number.
 *
 * 1/64 in is 396,875 nm and 1 mm is 1,000,000 nm, so inches by 64ths, thousandths of an inch
 * and millimetres are all exact, and the binary residue of a spreadsheet cell
 * (110.00000000000001 in) falls away the moment it is read.
 * Conversions: 1959 international yard and pound agreement (1 in = 25.4 mm exactly).
 */
declare const nanometres: unique symbol;
export type Length = number & { readonly [nanometres]: true };

export const UNITS = {
  mm: 1_000_000,
  cm: 10_000_000,
  m: 1_000_000_000,
  in: 25_400_000,
  ft: 304_800_000,
  yd: 914_400_000,
} as const;
export type LengthUnit = keyof typeof UNITS;

export const NO_LENGTH = 0 as Length;

/** The sum or product left the range in which whole numbers are exact. */
export class TooLarge extends Error {}

/** Vouches that a computed figure is still exact. Throws TooLarge past 9,007 km. */
export function exact(nm: number): Length {
  if (!Number.isSafeInteger(nm)) throw new TooLarge('a length beyond what can be computed exactly');
  return nm as Length;
}

/** A measured figure in a unit, to the nearest nanometre. */
export function fromUnit(figure: number, unit: LengthUnit): Length {
  return exact(Math.round(figure * UNITS[unit]));
}

/** A plain number again, once, on the way out; also of a share that is no whole nanometre. */
export function toUnit(nanometres: number, unit: LengthUnit): number {
  return nanometres / UNITS[unit];
}

export const inches = (figure: number): Length => fromUnit(figure, 'in');

/** A whole number of pieces of one length. */
export function times(length: Length, pieces: number): Length {
  return exact(length * pieces);
}

/** Up to the next whole multiple of `step`; a step of nothing leaves it as it is. */
export function upToStep(length: Length, step: Length): Length {
  if (step <= 0) return length;
  const over = length % step;
  return over === 0 ? length : exact(length - over + step);
}

/** How many whole pieces fit. */
export function wholePieces(length: Length, piece: Length): number {
  return Math.floor((length - (length % piece)) / piece);
}

/** How many pieces it takes, a part counting as a whole one. */
export function piecesToCover(length: Length, piece: Length): number {
  const over = length % piece;
  return (length - over) / piece + (over > 0 ? 1 : 0);
}
