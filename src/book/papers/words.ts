/** How much room words take on a sheet: lines that a cell breaks into, and how high they stand. */

/** A character's width as a share of its size; what a usual sans serif has, a little wide to be safe. */
function wide(character: string): number {
  if (/[iljtfrI.,;:'|!()[\] ’‘·-]/.test(character)) return 0.31;
  if (/[mwMW@%—]/.test(character)) return 0.88;
  if (/[A-Z0-9&$€£]/.test(character)) return 0.62;
  // Scripts whose characters fill a square.
  return /[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7af\uff00-\uffef]/.test(character) ? 1.05 : 0.54;
}

const widthOf = (text: string, size: number): number =>
  [...text].reduce((sum, character) => sum + wide(character) * size, 0);

/** Bold letters are so much wider. */
export const BOLD = 1.1;

/** Lines that words take in so many points, broken between words, a longer word within itself. */
export function linesOf(text: string, points: number, size: number): number {
  const room = Math.max(size, points);
  return text.split('\n').reduce((lines, paragraph) => {
    let [own, used] = [1, 0];
    for (const word of paragraph.split(' ')) {
      const needs = widthOf(word, size);
      const before = used === 0 ? 0 : used + wide(' ') * size;
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

/** Points that so many lines of one size stand high. */
export const heightOf = (lines: number, size: number): number => Math.ceil(lines * size * 1.28 + 3);
