import { describe, expect, it } from 'vitest';
import { scrolledTo } from '../../src/trial/scroll';

/** Three low lines, a high one of headings, then lines of 24. */
const sizeOf = (at: number): number => (at === 3 ? 138 : 24);
/** What the grid scrolls away for a line, as it measures. */
const away = (line: number, frozen: number): number =>
  Array.from({ length: line - frozen }, (_, at) => sizeOf(at)).reduce((all, one) => all + one, 0);

describe('the line to scroll to', () => {
  it('is the line itself where nothing is frozen', () => {
    for (const line of [0, 2, 9]) expect(scrolledTo(line, 0, sizeOf)).toBe(line);
  });

  it('never hides the line below frozen headings, however high they are', () => {
    for (let line = 4; line < 60; line++) {
      const scrolled = away(scrolledTo(line, 4, sizeOf), 4);
      const above = (line - 4) * 24;
      expect(scrolled).toBeLessThanOrEqual(above);
      expect(above - scrolled).toBeLessThan(138);
    }
  });

  it('is the first that scrolls for a line that is frozen itself', () => {
    expect(scrolledTo(2, 4, sizeOf)).toBe(4);
  });

  it('ends at hidden lines too', () => {
    expect(scrolledTo(5, 2, () => 0)).toBe(7);
  });
});
