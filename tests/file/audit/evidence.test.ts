import { expect, it } from 'vitest';
import { Evidence } from '../../../src/file/audit/evidence';

it('is the top of a long file and rows spread evenly over the rest, each read only where it is kept', () => {
  const evidence = new Evidence<number>();
  let read = 0;
  for (let row = 0; row < 100_000; row++)
    evidence.see(() => {
      read++;
      return row;
    });
  const { rows } = evidence;
  expect(rows.slice(0, 400)).toEqual(Array.from({ length: 400 }, (_, at) => at));
  const spread = rows.slice(400);
  expect(spread.length).toBeGreaterThan(700);
  expect(new Set(spread.slice(1).map((row, at) => row - (spread[at] ?? 0))).size).toBe(1);
  expect(spread.at(-1)).toBeGreaterThan(99_000);
  expect(read).toBeLessThan(10_000);
});
