/** How much room words take on a sheet: lines that a cell breaks into, and how high they stand. */

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

/** Letters on a screen are up to so much wider than on paper, and a row is as high on both. */
const ON_SCREEN = 1.04;
const widthOf = (text: string, size: number): number =>
  [...text.normalize('NFD')].reduce((sum, character) => sum + wide(character) * size * ON_SCREEN, 0);

/** Bold letters are so much wider. */
export const BOLD = 1.1;

/** Lines that words take in so many points, broken between words, a longer word within itself. */
export function linesOf(text: string, points: number, size: number): number {
  const room = Math.max(size, points);
  const space = widthOf(' ', size);
  return text.split('\n').reduce((lines, paragraph) => {
    let [own, used] = [1, 0];
    for (const word of paragraph.split(' ')) {
      const needs = widthOf(word, size);
      const before = used === 0 ? 0 : used + space;
      if (before + needs <= room) used = before + needs;
      else {
        const further = Math.ceil(needs / room);
        own += used === 0 ? further - 1 : further;
        used = needs - (further - 1) * room;
      }
    }
    return lines + own;
  }, 0);
}

/** Points that so many lines of one size stand high: Arial's line is 1.15 of it; with a point above and below. */
export const heightOf = (lines: number, size: number): number => Math.ceil(lines * size * 1.16 + 2);
