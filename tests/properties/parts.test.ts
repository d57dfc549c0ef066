import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ask, figure, row, rows } from './ask';
import { draw, fabric, fullness, heading, house, rangeOf, rod, sixtyFourths, type HouseWords } from './given';

const NANOMETRE = 1 / 25_400_000;
const panelsOf = (draw: string | undefined): number => (draw === undefined || draw === 'pair' ? 2 : 1);
const stepOf = (rules: HouseWords, draw: string | undefined): number => {
  const rounding = rules['widths rounding'] ?? 'whole per pair';
  if (rounding === 'whole per panel') return panelsOf(draw);
  return rounding === 'half per panel' ? panelsOf(draw) / 2 : 1;
};

describe('SAVEWIDTH', () => {
  it('is what it takes: narrowed by it the rod needs one step less, and a nanometre wider it does not', () => {
    let saved = 0;
    fc.assert(
      fc.property(
        rod,
        heading,
        fabric,
        draw,
        fullness,
        house,
        (rod, heading, fabric, draw, fullness, words) => {
          const rules = rangeOf(words);
          const narrower = figure('SAVEWIDTH', rod, heading, fabric, draw, fullness, rules);
          const widths = figure('WIDTHS', rod, heading, fabric, draw, fullness, undefined, rules);
          if (narrower === undefined || widths === undefined) return;
          saved++;
          const at = (index: number): number | undefined =>
            figure('WIDTHS', index, heading, fabric, draw, fullness, undefined, rules);
          expect(narrower).toBeGreaterThan(0);
          expect(at(rod - narrower)).toBe(widths - stepOf(words, draw));
          expect(at(rod - narrower + NANOMETRE)).toBe(widths);
        },
      ),
      { numRuns: 1500 },
    );
    expect(saved).toBeGreaterThan(700);
  });

  it('says so with #N/A where there is no step less', () => {
    expect(ask('SAVEWIDTH', 6, 'pinch', 54)).toMatchObject({
      error: '#N/A',
      finding: { code: 'fewestWidths' },
    });
  });
});

describe('PLEATS', () => {
  it('add up: spaces and faces to the rod’s share, take-ups and finished width to the flat width', () => {
    let set = 0;
    fc.assert(
      fc.property(
        rod,
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom('pinch', 'goblet', 'cartridge', 'box', 'inverted'),
        fabric,
        draw,
        fc.constantFrom(1, 2, 4, 6),
        (rod, widths, heading, fabric, draw, face) => {
          const rules = rangeOf({ 'box face': face });
          const outcome = row('PLEATS', rod, widths, heading, fabric, draw, rules);
          const finished = figure('FINISHEDWIDTH', rod, heading, draw) ?? NaN;
          const delivered = figure('FULLNESS', rod, widths, heading, fabric, draw);
          if (outcome === undefined || delivered === undefined) return;
          set++;
          const [pleats = NaN, spaces = NaN, space = NaN, takeUp = NaN] = outcome.map(Number);
          const boxed = heading === 'box' || heading === 'inverted';
          expect(spaces).toBe(pleats - 1);
          expect(pleats).toBeGreaterThanOrEqual(2);
          expect(space).toBeGreaterThan(0);
          expect(spaces * space + (boxed ? pleats * face : 0)).toBeCloseTo(rod / panelsOf(draw), 6);
          // Every pleat's take-up is rounded to the nanometre, and the fullness to its last digit.
          expect(Math.abs(pleats * takeUp + finished - delivered * finished)).toBeLessThan(
            5e-6 + pleats * 1e-7 + finished * 1e-8,
          );
        },
      ),
      { numRuns: 1500 },
    );
    expect(set).toBeGreaterThan(500);
  });

  it('of a wave are an even count of snaps that the flat width holds', () => {
    fc.assert(
      fc.property(rod, fc.integer({ min: 2, max: 40 }), fabric, draw, (rod, widths, fabric, draw) => {
        const outcome = row('PLEATS', rod, widths, 'wave', fabric, draw);
        if (outcome === undefined) return;
        const [snaps = NaN, spaces = NaN, space = NaN] = outcome.map(Number);
        expect(snaps % 2).toBe(0);
        expect(spaces * space).toBeCloseTo(rod / panelsOf(draw), 6);
      }),
    );
  });
});

describe('GROMMETS', () => {
  it('are even, no farther apart than the house has it, and add up to the flat width', () => {
    fc.assert(
      fc.property(
        sixtyFourths(6, 900),
        fc.option(sixtyFourths(1, 2), { nil: undefined }),
        fc.constantFrom(4, 6, 7.5),
        (flat, edge, most) => {
          const rules = rangeOf({
            'grommet spacing': most,
            ...(edge === undefined ? {} : { 'grommet edge': edge }),
          });
          const [count = NaN, spacing = NaN, first = NaN] = (row('GROMMETS', flat, rules) ?? []).map(Number);
          expect(count % 2).toBe(0);
          expect(spacing).toBeLessThanOrEqual(most + 1e-9);
          expect(2 * first + (count - 1) * spacing).toBeCloseTo(flat, 6);
          if (edge === undefined) expect(first).toBeCloseTo(spacing / 2, 9);
          else expect(first).toBe(edge);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('RODPIECES', () => {
  /** The fewest pieces, then the least length, by trying every set. */
  function best(rod: number, stock: readonly number[]): { pieces: number; length: number } {
    const longest = Math.max(...stock);
    const pieces = Math.ceil(rod / longest);
    let length = Infinity;
    const tried = (left: number, sum: number, from: number): void => {
      if (left === 0) {
        if (sum >= rod && sum < length) length = sum;
        return;
      }
      for (let at = from; at < stock.length; at++) tried(left - 1, sum + (stock[at] ?? 0), at);
    };
    tried(pieces, 0, 0);
    return { pieces, length };
  }

  it('cover the rod with the fewest pieces, and of those with the least length', () => {
    fc.assert(
      fc.property(
        sixtyFourths(10, 500),
        fc.uniqueArray(fc.integer({ min: 36, max: 240 }), { minLength: 1, maxLength: 4 }),
        (rod, stock) => {
          fc.pre(rod / Math.max(...stock) <= 8);
          const pieces = rows('RODPIECES', rod, [stock]) ?? [];
          const count = pieces.reduce((sum, [, cellOut]) => sum + Number(cellOut), 0);
          const length = pieces.reduce((sum, [cellOut, times]) => sum + Number(cellOut) * Number(times), 0);
          expect({ pieces: count, length }).toEqual(best(rod, stock));
          expect(pieces[0]?.[2]).toBe(count - 1);
        },
      ),
      { numRuns: 800 },
    );
  });
});

describe('BRACKETS', () => {
  it('leave no span longer than the rule, with as few as can be', () => {
    fc.assert(
      fc.property(sixtyFourths(6, 900), fc.constantFrom(undefined, 5, 20, 60), (rod, weight) => {
        const brackets = figure('BRACKETS', rod, weight) ?? NaN;
        const most = weight !== undefined && weight >= 20 ? 36 : 48;
        expect(rod / (brackets - 1)).toBeLessThanOrEqual(most);
        if (brackets > 2) expect(rod / (brackets - 2)).toBeGreaterThan(most);
      }),
    );
  });
});

describe('RINGS', () => {
  it('are the pleats and two ends of every panel', () => {
    fc.assert(
      fc.property(rod, fc.integer({ min: 2, max: 30 }), draw, (rod, widths, draw) => {
        const pleats = row('PLEATS', rod, widths, 'pinch', 54, draw)?.[0];
        if (pleats === undefined) return;
        expect(figure('RINGS', rod, widths, 'pinch', draw, undefined, 54)).toBe(
          panelsOf(draw) * (Number(pleats) + 2),
        );
      }),
    );
  });
});

describe('SALESTAX', () => {
  it('by line is the sum of each line’s own tax', () => {
    const cents = fc.integer({ min: 0, max: 900_000 }).map((figure) => figure / 100);
    fc.assert(
      fc.property(
        fc.array(cents, { minLength: 1, maxLength: 12 }),
        fc.constantFrom(0.0725, 0.08875, 0.06),
        (amounts, rate) => {
          const each = amounts.map((one) => Math.round((figure('SALESTAX', one, rate) ?? NaN) * 100));
          const all =
            figure(
              'SALESTAX',
              amounts.map((one) => [one]),
              rate,
            ) ?? NaN;
          expect(Math.round(all * 100)).toBe(each.reduce((sum, one) => sum + one, 0));
        },
      ),
    );
  });
});
