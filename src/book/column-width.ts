/**
 * Widths of columns in characters of the usual font, a digit seven pixels wide and five pixels beside, 96 to
 * the inch: so do Calibri 11 and Arial 10 measure.
 */
const DIGIT = 7;
const BESIDE = 5;
const POINTS_A_PIXEL = 0.75;

export const pixelsOf = (characters: number): number => characters * DIGIT + BESIDE;
export const pointsOf = (characters: number): number => pixelsOf(characters) * POINTS_A_PIXEL;

/** Rounded down, so that columns which fill a page never come to more. */
export const charactersOf = (points: number): number =>
  Math.floor(((points / POINTS_A_PIXEL - BESIDE) / DIGIT) * 1000) / 1000;
