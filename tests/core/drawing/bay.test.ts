import { describe, expect, it } from 'vitest';
import { bayPlan } from '../../../src/core/drawing/bay';
import { laidOut, type PaintedLine, type PaintedWords } from '../../../src/core/drawing/laid-out';
import { widthOf } from '../../../src/core/drawing/letters';
import { inches, toUnit } from '../../../src/core/exact/length';
import { INCHES, showLength } from '../../../src/core/exact/unit';

const plan = (parts: readonly number[], bends: readonly (number | undefined)[]) =>
  bayPlan({ parts: parts.map(inches), bends, show: (length) => showLength(length, INCHES) });
const corner = (bends: readonly number[] | undefined): readonly number[] =>
  (bends ?? []).map((nm) => Math.round(toUnit(nm, 'in') * 100) / 100);

/** Whether a line crosses the room that words take. */
function crosses({ words, x, y }: PaintedWords, { from, to }: PaintedLine, letters: number): boolean {
  const [wide, high] = [(widthOf(words) / 2) * letters, 0.7 * letters];
  return Array.from({ length: 201 }, (_, step) => step / 200).some((share) => {
    const [atX, atY] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    return Math.abs(atX - x) < wide && atY < y && atY > y - high;
  });
}

describe('the plan of a bay', () => {
  it.each([
    [
      [24, 60, 24],
      [135, undefined],
    ],
    [[48.5, 36], [90]],
    [[48.5, 36], [undefined]],
    [
      [20, 30, 40, 30, 20],
      [150, 150, 150, 150],
    ],
    [
      [60, 60, 60],
      [90, 90],
    ],
    [
      [30, 30, 30],
      [225, 135],
    ],
  ])('%j with bends of %j has no word on a line, and all on the paper', (parts, bends) => {
    const letters = 8;
    const { words, lines, wide, high } = laidOut(
      plan(parts, bends),
      { wide: 520, high: 110, letters },
      INCHES,
    );
    for (const one of words) {
      expect([one.words, lines.filter((line) => crosses(one, line, letters))]).toEqual([one.words, []]);
      expect(one.x).toBeGreaterThan(0);
      expect(one.x).toBeLessThan(wide);
      expect(one.y).toBeGreaterThan(letters * 0.7);
      expect(one.y).toBeLessThanOrEqual(high);
    }
  });

  it('says in words what it shows, once, an open angle as one to measure', () => {
    const { says } = laidOut(plan([48, 36], [undefined]), { wide: 520, high: 110, letters: 8 }, INCHES);
    expect(says).toBe('Plan to scale, from above, the room below: 48 in, 36 in; bends to be measured.');
  });

  it('is level over its middle part: sides of 24 in at 135° reach 24 ÷ √2 into the bay', () => {
    const { lines } = plan([24, 60, 24], [135, 135]);
    expect(corner(lines[0]?.to)).toEqual([16.97, 16.97]);
    expect(corner(lines[1]?.to)).toEqual([76.97, 16.97]);
    expect(corner(lines[2]?.to)).toEqual([93.94, 0]);
  });

  it('says every length and every bend', () => {
    const { title, labels } = plan([48, 36], [90]);
    expect(labels.map(({ words }) => words)).toEqual(['48 in', '36 in', '90°', 'room']);
    expect(title).toContain('48 in, 36 in; bends 90°');
  });

  it('draws one straight part without a bend', () => {
    const { lines, labels } = plan([60], []);
    expect(corner(lines[0]?.to)).toEqual([60, 0]);
    expect(labels.map(({ words }) => words)).toEqual(['60 in', 'room']);
  });
});
