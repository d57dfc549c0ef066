/** How wide words are in the letters of a drawing and of a paper, which are Arial's. */

/** Advances of Arial, and of every font made to its widths, in thousandths of the size. */
const ADVANCES: readonly (readonly [advance: number, characters: string])[] = [
  [222, "ijl'’‘"],
  [278, ' !,./:;I[]\\ft|·'],
  [333, '()-`r“”'],
  [389, '{}*"°'],
  [500, 'Jcksvxyz^'],
  [556, '#$0123456789?L_abdeghnopqu–€£'],
  [611, 'FTZ+<=>~×≈±'],
  [667, '&ABEKPSVXY'],
  [722, 'CDHNRUw'],
  [778, 'GOQ'],
  [833, 'Mm½¼¾'],
  [944, 'W%æ'],
  [1015, '@—…ÆŒ'],
];
const ADVANCE = new Map(
  ADVANCES.flatMap(([advance, characters]) => [...characters].map((one) => [one, advance])),
);

/** Of a letter that is not listed. */
const OTHER = 620;
/** Scripts whose characters fill a square. */
const SQUARE = /[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7af\uff00-\uffef]/;
/** Marks over and under a letter take no room of their own. */
const MARK = /\p{M}/u;

/** A character's width as a share of its size. */
function wide(character: string): number {
  if (MARK.test(character)) return 0;
  return (ADVANCE.get(character) ?? (SQUARE.test(character) ? 1050 : OTHER)) / 1000;
}

/** The width of words as a share of their letters' size. */
export const widthOf = (text: string): number =>
  [...text.normalize('NFD')].reduce((sum, character) => sum + wide(character), 0);
