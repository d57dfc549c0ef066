/** A file gives the width of a column in digits of its usual font: how wide such a digit is. */
import { pixelsOf } from '../../book/column-width';
import { tagsNamed, walk } from './xml';

/** The advance of a digit to the font's size, as the fonts have it; fonts of one line are metric twins. */
const ADVANCES: readonly (readonly [advance: number, ...fonts: string[]])[] = [
  [0.5, 'times new roman', 'liberation serif'],
  [0.507, 'calibri', 'carlito'],
  [0.556, 'arial', 'helvetica', 'liberation sans'],
  [0.6, 'courier new', 'liberation mono'],
  [0.636, 'verdana', 'dejavu sans'],
];
const USUAL_DIGIT = 7;
const PIXELS_A_POINT = 96 / 72;

/** The first font of the styles, which is the workbook's usual one. */
function usualFont(styles: string, part: string): { name: string; size: number } {
  let [name, size, font] = ['', 11, 0];
  walk(styles, part, {
    open(tag) {
      if (tag.name === 'font') font++;
      else if (font === 1 && tag.name === 'name') name = tag.attributes['val'] ?? '';
      else if (font === 1 && tag.name === 'sz') size = Number(tag.attributes['val'] ?? size);
    },
  });
  return { name, size };
}

/** In whole pixels, as Excel rounds it; that of a font we do not know is taken as usual. */
export function digitOf(styles: string, part: string): number {
  if (tagsNamed(styles, part, 'font').length === 0) return USUAL_DIGIT;
  const { name, size } = usualFont(styles, part);
  const advance = ADVANCES.find(([, ...fonts]) => fonts.includes(name.toLowerCase()))?.[0];
  return advance === undefined ? USUAL_DIGIT : Math.max(1, Math.round(advance * size * PIXELS_A_POINT));
}

/** As a file has it, with what stands beside the digits. */
export const widthInFile = (characters: number, digit = USUAL_DIGIT): number =>
  Math.round((pixelsOf(characters) / digit) * 10_000) / 10_000;
