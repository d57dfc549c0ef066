/** A sample of `npm run exact`, with a seed of its own; and the reckoning itself against published figures. */
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/make/compare';
import { chooser, house, windows, type GridWindow, type House } from '../../src/make/grid';
import { NONE, widthsMeant, yardageMeant, type HouseMeant } from '../../src/make/reckoning';

const SAMPLE = { houses: 160, windows: 8, cloths: 3, seed: 1959 };

function sampled(): { houses: readonly House[]; windows: readonly GridWindow[] } {
  const choose = chooser(SAMPLE.seed);
  const houses = Array.from({ length: SAMPLE.houses }, () => house(choose));
  return { houses, windows: houses.flatMap((one) => windows(one.meant, choose)) };
}

const pairsOf = <A, B>(
  list: readonly House[],
  one: (of: HouseMeant) => A,
  other: (of: HouseMeant) => B,
): number => new Set(list.map(({ meant }) => JSON.stringify([one(meant), other(meant)]))).size;

describe('a sample of the grid', () => {
  it('holds tens of thousands of answers, and the core differs from the fractions in none', () => {
    const { counts, differences, differing } = compare(SAMPLE);
    expect(counts.yardage).toBeGreaterThan(15_000);
    expect(Object.values(counts).reduce((sum, one) => sum + one)).toBeGreaterThan(40_000);
    expect(differences).toEqual([]);
    expect(differing).toBe(0);
  });

  it('pairs every rounding with every basis, unit, repeat rule and way of rounding the yardage', () => {
    const { houses } = sampled();
    expect(
      pairsOf(
        houses,
        (of) => of.rounding,
        (of) => of.basis,
      ),
    ).toBe(8);
    expect(
      pairsOf(
        houses,
        (of) => of.rounding,
        (of) => of.unit,
      ),
    ).toBe(8);
    expect(
      pairsOf(
        houses,
        (of) => of.rounding,
        (of) => of.share,
      ),
    ).toBe(8);
    expect(
      pairsOf(
        houses,
        (of) => of.repeatRule,
        (of) => of.roundedBy,
      ),
    ).toBe(8);
    expect(
      pairsOf(
        houses,
        (of) => of.repeatRule,
        (of) => of.unit,
      ),
    ).toBe(8);
    expect(
      pairsOf(
        houses,
        (of) => of.rounding,
        (of) => of.repeatRule,
      ),
    ).toBe(16);
  });

  it('holds cells with a binary residue, written measures, and rods a nanometre beside the step', () => {
    const { windows: all } = sampled();
    const cells = all.map(({ rod }) => rod);
    expect(cells).toContain(110.00000000000001);
    expect(cells.some((cell) => typeof cell === 'string')).toBe(true);
    const grains = all.map(({ meant }) => meant.rod.mul(25_400_000).valueOf());
    expect(grains.filter((one) => Number.isInteger(one) && grains.includes(one + 1)).length).toBeGreaterThan(
      100,
    );
  });
});

const BARE: HouseMeant = {
  unit: 'in',
  basis: 'finished width',
  rounding: 'whole per panel',
  oneWayReturns: 'both ends',
  return: NONE,
  overlap: NONE,
  sideHem: NONE,
  seam: NONE,
  selvage: NONE,
  top: NONE,
  bottom: NONE,
  shrinkage: NONE,
  repeatRule: 'every cut up',
  liningCut: 'own allowances',
  liningShorter: NONE,
  liningTop: NONE,
  liningBottom: NONE,
  liningLess: NONE,
  marginLeading: NONE,
  marginOuter: NONE,
  step: NONE,
  roundedBy: 'order',
  share: 'no',
};
const of = (figure: number | string): Fraction => new Fraction(figure);

describe('the reckoning in fractions', () => {
  it('gives the published widths: 64 in at 3 times is 4 of 48 (Project Gutenberg #63282)', () => {
    const window = {
      draw: 'pair',
      rod: of(64),
      fullness: of(3),
      fabric: of(48),
      horizontalRepeat: undefined,
    } as const;
    expect(widthsMeant(window, BARE).widths.toString()).toBe('4');
  });

  it('gives the published 5 and 6 widths of the two bases (UFGS 12 22 00)', () => {
    const window = {
      draw: 'pair',
      rod: of(104),
      fullness: of('2.5'),
      fabric: of(54),
      horizontalRepeat: undefined,
    } as const;
    const house = { ...BARE, return: of('3.5'), overlap: of('1.5'), rounding: 'whole per pair' } as const;
    expect(widthsMeant(window, { ...house, basis: 'rod width' }).widths.toString()).toBe('5');
    expect(widthsMeant(window, house).widths.toString()).toBe('6');
  });

  it.each([
    ['every cut up', '32/3'],
    ['one repeat each', '34/3'],
    ['first cut exact', '31/3'],
  ] as const)(
    'gives the yards of 4 lengths of 84 in, %s: %s (Project Gutenberg #63282)',
    (repeatRule, yards) => {
      const cloth = { drop: of(84), verticalRepeat: of(24), match: undefined, quantity: 1 };
      expect(yardageMeant(of(4), cloth, { ...BARE, repeatRule }).toFraction()).toBe(yards);
    },
  );

  it('knows where floats fail: 180 × 2.7 ÷ 54 is 9, and 180 × 2.2 ÷ 36 is 11', () => {
    const window = { draw: 'stationary', rod: of(180), horizontalRepeat: undefined } as const;
    expect(Math.ceil((180 * 2.7) / 54)).toBe(10);
    expect(widthsMeant({ ...window, fullness: of('2.7'), fabric: of(54) }, BARE).widths.toString()).toBe('9');
    expect(Math.ceil((180 * 2.2) / 36)).toBe(12);
    expect(widthsMeant({ ...window, fullness: of('2.2'), fabric: of(36) }, BARE).widths.toString()).toBe(
      '11',
    );
  });
});
