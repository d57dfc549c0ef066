import { describe, expect, it } from 'vitest';
import { boxFullness, grommets, pleats, pocket, rings } from '../../../src/core/heading/heading';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, UNITS } from '../../../src/core/exact/length';
import { HEADINGS, type Heading } from '../../../src/core/cell/treatment';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;
const made = (rod: number, count: number, heading: Heading = 'pinch', fabric = 54) => ({
  rodWidth: inches(rod),
  widths: count,
  heading,
  draw: undefined,
  fabricWidth: inches(fabric),
});
const codes = (of: { findings: readonly { code: string }[] }): readonly string[] =>
  of.findings.map(({ code }) => code);

describe('pleats', () => {
  it('share out what is left of the flat width, in a panel', () => {
    const { value, findings } = pleats(made(105, 6), rulesOf());
    expect([value.pleats, value.spaces]).toEqual([16, 15]);
    expect(value.space / UNITS.in).toBe(3.5);
    expect(value.takeUp / UNITS.in).toBe(5.9375);
    expect(findings).toEqual([]);
  });

  it('outside a band are set out all the same, with a finding each', () => {
    expect(codes(pleats(made(105, 4), rulesOf()))).toContain('takeUpOutside');
    expect(codes(pleats(made(20, 2), rulesOf()))).toContain('spaceOutside');
  });

  it('of a box give each underfold a quarter of what a pleat takes', () => {
    const house = rulesOf(
      ['return', 0],
      ['overlap', 0],
      ['side hem', 0],
      ['seam', 0],
      ['take up', 4],
      ['take up high', 4.5],
      ['take up low', 3.5],
      ['space low', 2],
      ['space high', 2],
    );
    const of = pleats({ ...made(38, 1, 'box', 78), draw: 'stationary' }, house);
    expect(of.value.takeUp / UNITS.in).toBe(4);
    expect(codes(of)).toEqual([]);
    const deep = pleats({ ...made(38, 1, 'box', 118), draw: 'stationary' }, house);
    expect(codes(deep)).toContain('underfoldOutside');
  });

  it('with faces too wide for the rod stay on it', () => {
    const wide = pleats({ ...made(17, 1, 'box', 118), draw: 'stationary' }, rulesOf(['box face', 6]));
    expect(wide.value.pleats).toBe(2);
    expect(wide.value.space / UNITS.in).toBe(5);
    expect(() =>
      pleats({ ...made(12, 1, 'box', 118), draw: 'stationary' }, rulesOf(['box face', 6])),
    ).toThrow(/too narrow/);
  });

  it('need cloth to take up, and a heading that has them', () => {
    expect(() => pleats(made(200, 2), rulesOf())).toThrow(/nothing is left to pleat/);
    expect(() => pleats(made(105, 6, 'grommet'), rulesOf())).toThrow(/no pleats to set out/);
  });

  it('of a wave are an even count of snaps', () => {
    const { value } = pleats(made(105, 4, 'wave'), rulesOf());
    expect(value.pleats).toBe(Math.floor((108 - 1 - 6) / 4.25 / 2) * 2);
    expect(value.takeUp / UNITS.in).toBe(4.25);
  });
});

describe('the fullness of a row of box pleats', () => {
  it('is 2 with underfolds of half a face (Project Gutenberg #63282)', () => {
    expect(boxFullness(inches(2), inches(2), inches(1))).toBe(2);
  });

  it('is 3 only where each underfold equals the whole pleat (Project Gutenberg #70586)', () => {
    expect(boxFullness(inches(2), inches(2), inches(2))).toBe(3);
    expect(boxFullness(inches(2), inches(2), inches(1.5))).toBe(2.5);
  });
});

describe('grommets', () => {
  const of = (flat: number, ...rules: readonly Rule[]) => {
    const { count, spacing, firstCentre } = grommets({ flatWidth: inches(flat) }, rulesOf(...rules)).value;
    return [count, spacing / UNITS.in, firstCentre / UNITS.in];
  };

  it('are even, the first centre half a spacing from the edge', () => {
    expect(of(96)).toEqual([16, 6, 3]);
    expect(of(96.015625)[0]).toBe(18);
    expect(of(4)).toEqual([2, 2, 1]);
  });

  it('or where the house has it', () => {
    const [count, spacing, first] = of(99, ['grommet edge', 1.5]);
    expect([count, first]).toEqual([18, 1.5]);
    expect(spacing).toBeCloseTo(96 / 17, 12);
    expect(() => of(3, ['grommet edge', 1.5])).toThrow(/too narrow/);
  });
});

describe('rings or carriers', () => {
  const of = (heading: Heading): number => rings(made(105, 6, heading), rulesOf()).value;

  it('are the pleats and two ends of each panel, and none where the rod runs through', () => {
    expect(of('pinch')).toBe(2 * (16 + 2));
    expect([of('grommet'), of('rod pocket'), of('tab top')]).toEqual([0, 0, 0]);
  });

  it('are worked out for every heading', () => {
    for (const { word } of HEADINGS.list) expect(Number.isInteger(of(word)), word).toBe(true);
    expect(of('pencil')).toBe(2 * (Math.ceil(59 / 3) + 1));
    expect(of('flat')).toBe(2 * (Math.ceil(59 / 6) + 1));
  });
});

describe('a rod pocket', () => {
  it('is half the round and the ease: 3 1/8 takes 1 7/8 (Project Gutenberg #70586)', () => {
    expect(toUnit(pocket({ rodAround: inches(3.125) }, rulesOf()).value, 'in')).toBe(1.875);
    expect(toUnit(pocket({ rodAround: undefined }, rulesOf(['rod around', 6.375])).value, 'in')).toBe(3.5);
  });
});
