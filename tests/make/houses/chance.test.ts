import { expect, it } from 'vitest';
import { chanceFrom } from '../../../src/make/houses/chance';

const draws = (seed: number, count: number): number[] => {
  const { next } = chanceFrom(seed);
  return Array.from({ length: count }, next);
};

it('draws the same from the same seed, and otherwise from the next', () => {
  expect(draws(7, 20)).toEqual(draws(7, 20));
  const [one, other] = [draws(7, 200), draws(8, 200)];
  expect(one.filter((drawn, at) => Math.abs(drawn - (other[at] ?? 0)) < 0.01).length).toBeLessThan(20);
});

it.each([0, 1, 2, 90, 12345])('spreads evenly, and pairs of draws too, from seed %i', (seed) => {
  const drawn = draws(seed, 20_000);
  const counts = Array.from({ length: 100 }, () => 0);
  for (let at = 0; at + 1 < drawn.length; at += 2)
    counts[Math.floor((drawn[at] ?? 0) * 10) * 10 + Math.floor((drawn[at + 1] ?? 0) * 10)]!++;
  // 10,000 pairs in 100 cells: the sum of squares over 100 lies under 160 but once in ten thousand.
  expect(counts.reduce((sum, count) => sum + (count - 100) ** 2 / 100, 0)).toBeLessThan(160);
});

it('stays within what is asked', () => {
  const chance = chanceFrom(3);
  const drawn = Array.from({ length: 500 }, () => Number(chance.between(10, 11, 0.25).valueOf()));
  expect([...new Set(drawn)].sort((one, other) => one - other)).toEqual([10, 10.25, 10.5, 10.75, 11]);
  expect(() => chance.pick([])).toThrow('nothing to pick from');
});
