import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { linesOf, roomy } from '../../../src/book/sheets/draft';

describe('linesOf', () => {
  it('breaks between words, as a cell does', () => {
    expect(linesOf('room', 8)).toBe(1);
    expect(linesOf('lining yardage (yd, the row)', 28)).toBe(1);
    expect(linesOf('lining yardage (yd, the row)', 27)).toBe(2);
    expect(linesOf('lining yardage (yd, the row)', 8)).toBe(4);
    expect(linesOf('interlining', 4)).toBe(1);
  });
});

describe('roomy', () => {
  it('makes room for every line of a heading beside its filter’s button', () => {
    const headings = ['room', 'lining yardage (yd, the row)', 'rings (one window)'];
    const { layouts } = roomy({
      puts: [{ area: areaAt('Windows', 3, 0, 1, 3), cells: [headings] }],
      newTables: [{ name: 'Windows', area: areaAt('Windows', 3, 0, 5, 3) }],
      layouts: [{ sheet: 'Windows', widths: { 0: 16, 1: 10.5, 2: 10.5 } }],
    });
    // “yardage” and “window)” have 7 letters: with the button 11 characters, so lines of 7.
    expect(layouts?.[0]?.widths).toEqual({ 0: 16, 1: 11, 2: 11 });
    // lining / yardage / (yd, / the / row), each 15 points
    expect(layouts?.[0]?.heights).toEqual({ 3: 75 });
  });
});
