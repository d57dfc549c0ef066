/** Expects of a formula what a check asks; a check that asks nothing fails. */
import { expect } from 'vitest';
import { filledIn, seen, type Check, type GivenWords, type Seen } from './check';

const rounded = (cells: Seen['cells'], decimals: number): readonly (number | string)[] =>
  [cells ?? 'nothing']
    .flat(2)
    .map((cell) => (typeof cell === 'number' ? Number(cell.toFixed(decimals)) : String(cell)));

export function expectMet(check: Check, given: GivenWords): void {
  const formula = filledIn(check.formula, given);
  const { cells, error, codes, steps, sentence } = seen(formula);
  const asked = [check.gives, check.from, check.to, check.row, check.step, check.finding, check.error];
  expect(
    asked.some((one) => one !== undefined),
    'the check asks something',
  ).toBe(true);
  expect(error, sentence).toBe(check.error);
  if (check.gives !== undefined) {
    const { decimals } = check;
    if (decimals === undefined) expect(cells).toEqual(check.gives);
    else expect(rounded(cells, decimals)).toEqual(rounded(check.gives, decimals));
  }
  if (check.from !== undefined) expect(cells).toBeGreaterThanOrEqual(check.from);
  if (check.to !== undefined) expect(cells).toBeLessThanOrEqual(check.to);
  if (check.row !== undefined) expect(cells).toContainEqual(check.row);
  if (check.step !== undefined) expect(steps).toContain(check.step);
  if (check.finding === null) expect(codes).toEqual([]);
  else if (check.finding !== undefined) expect(codes).toContain(check.finding);
}
