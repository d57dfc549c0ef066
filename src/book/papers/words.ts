/** How much room words take on a sheet: lines that a cell breaks into, and how high they stand. */
import { widthOf } from '../../core/drawing/letters';

/** Letters on a screen are up to so much wider than on paper, and a row is as high on both. */
const ON_SCREEN = 1.04;
const widthAt = (text: string, size: number): number => widthOf(text) * size * ON_SCREEN;

/** Bold letters are so much wider. */
export const BOLD = 1.1;

/** Lines that words take in so many points, broken between words, a longer word within itself. */
export function linesOf(text: string, points: number, size: number): number {
  const room = Math.max(size, points);
  const space = widthAt(' ', size);
  return text.split('\n').reduce((lines, paragraph) => {
    let [own, used] = [1, 0];
    for (const word of paragraph.split(' ')) {
      const needs = widthAt(word, size);
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
