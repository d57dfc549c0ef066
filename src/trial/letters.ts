/** Widths of columns, told in characters: as elsewhere, one is a digit of the usual font, here the grid's own. */

const FONT = '11pt Arial';
const BESIDE = 8;
let digit: number | undefined;

/** Pixels a digit takes: another font may stand in for the grid's on this machine. */
function digitWidth(): number {
  if (digit !== undefined) return digit;
  const pen = document.createElement('canvas').getContext('2d');
  if (pen !== null) pen.font = FONT;
  digit = Math.max(7, pen?.measureText('0').width ?? 0);
  return digit;
}

export const pixelsFor = (characters: number): number => Math.round(characters * digitWidth() + BESIDE);
export const charactersIn = (pixels: number): number => (pixels - BESIDE) / digitWidth();

export const PIXELS_A_POINT = 96 / 72;
