/** Written measures against GNU units, an independent converter; where it is absent a line says so. */
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { outcomeOf } from './check';

const UNITS = ['in', 'ft', 'yd', 'mm', 'cm', 'm'] as const;
const FIGURES = [1, 7, 84.5, 90.25, 112.765625, 0.015625, 228.6, 2.29, 1000.001];

/** Many conversions in one run: a line in, a line out. */
function converted(lines: readonly (readonly [string, string])[]): readonly number[] | undefined {
  const asked = lines.map(([from, to]) => `${from}\n${to}\n`).join('');
  const { status, stdout } = spawnSync('units', ['-t', '-q', '-o', '%.17g'], {
    input: asked,
    encoding: 'utf8',
    timeout: 30_000,
  });
  if (status !== 0) return undefined;
  return stdout.trim().split('\n').map(Number);
}

const present = converted([['1 in', 'mm']]) !== undefined;
if (!present) console.log('GNU units is not installed: its conversions are not compared.');

/** The figure as the tool writes it: exact decimals, no fraction. */
const pairs = FIGURES.flatMap((figure) =>
  UNITS.flatMap((from) => UNITS.map((to) => [figure, from, to] as const)),
).filter(
  ([figure, from]) => figure * { in: 1, ft: 12, yd: 36, mm: 1 / 25.4, cm: 1 / 2.54, m: 39.4 }[from] < 1968,
);

describe.skipIf(!present)('GNU units', () => {
  it(`agrees on ${pairs.length} written lengths, to the nanometre`, () => {
    const theirs = converted(pairs.map(([figure, from, to]) => [`${figure} ${from}`, to])) ?? [];
    expect(theirs).toHaveLength(pairs.length);
    for (const [at, [figure, from, to]] of pairs.entries()) {
      const outcome = outcomeOf(`HEM.MEASURED("${figure} ${from}","${to}")`);
      const ours = 'error' in outcome ? NaN : Number(outcome.cells);
      const nanometre = { in: 25.4e6, ft: 304.8e6, yd: 914.4e6, mm: 1e6, cm: 1e7, m: 1e9 }[to];
      expect(Math.abs(ours - (theirs[at] ?? NaN)) * nanometre, `${figure} ${from} in ${to}`).toBeLessThan(
        0.51,
      );
    }
  });

  it('agrees that 21 oz/yd² is 712.02 g/m², and that 1 oz/yd² is 33.90575', () => {
    const [heavy = NaN, one = NaN] =
      converted([
        ['21 oz/yd^2', 'g/m^2'],
        ['1 oz/yd^2', 'g/m^2'],
      ]) ?? [];
    expect(heavy.toFixed(2)).toBe('712.02');
    expect(one.toFixed(5)).toBe('33.90575');
  });

  it('weighs a cloth in pounds as its kilograms are, by its own conversion of the areal weight', () => {
    const [areal = NaN, kilograms = NaN] =
      converted([
        ['12.5 oz/yd^2', 'g/m^2'],
        ['1 lb', 'kg'],
      ]) ?? [];
    const rules = '"top allowance pinch",0;"bottom allowance",0';
    const pounds = outcomeOf(`HEM.CLOTHWEIGHT(100,96,"pinch",54,12.5,"pair",2.5,{${rules}})`);
    const metric = outcomeOf(
      `HEM.CLOTHWEIGHT(254,243.84,"pinch",137.16,${areal},"pair",2.5,{${rules};"unit","centimetres"})`,
    );
    expect('cells' in pounds && Number(pounds.cells) * kilograms).toBeCloseTo(
      'cells' in metric ? Number(metric.cells) : NaN,
      8,
    );
  });
});
