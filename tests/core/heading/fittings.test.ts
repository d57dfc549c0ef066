import { describe, expect, it } from 'vitest';
import {
  costOf,
  fittings,
  pricedFittings,
  rodPricedTwice,
  type Fittings,
} from '../../../src/core/heading/fittings';
import { readHouse } from '../../../src/core/house/house';
import { inches, UNITS } from '../../../src/core/exact/length';
import { HEADINGS, type Draw, type Heading } from '../../../src/core/cell/treatment';
import type { WindowHangsOn } from '../../../src/core/cell/ways';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;

interface More {
  readonly draw?: Draw;
  readonly hangOn?: WindowHangsOn;
  readonly rules?: readonly Rule[];
}
const fitted = (heading: Heading, { draw = 'pair', hangOn, rules = [] }: More = {}): Fittings =>
  fittings(
    {
      heading,
      draw,
      hangOn,
      rod: inches(120),
      pieces: () => 2,
      brackets: () => 4,
      rings: () => 34,
      grommets: () => 16,
    },
    rulesOf(...rules),
  );
const kinds = (fittings: Fittings): readonly string[] =>
  (['rings', 'grommets', 'finials', 'endStops', 'wands'] as const).filter((key) => fittings[key] > 0);

describe('the hardware of a heading', () => {
  it('has rings and finials on a rod, carriers and end stops on a track', () => {
    const onTrack: More = { rules: [['hang on', 'track']] };
    for (const heading of ['pinch', 'goblet', 'cartridge', 'box', 'inverted', 'pencil', 'flat'] as const) {
      expect(kinds(fitted(heading)), heading).toEqual(['rings', 'finials']);
      expect(kinds(fitted(heading, onTrack)), heading).toEqual(['rings', 'endStops']);
    }
    expect([fitted('pinch').finials, fitted('pinch', onTrack).endStops]).toEqual([2, 2]);
  });

  it('has grommets in each panel and no rings; nothing of it for a wave or a rod pocket', () => {
    expect(kinds(fitted('grommet'))).toEqual(['grommets', 'finials']);
    expect([fitted('grommet').grommets, fitted('grommet', { draw: 'one-way left' }).grommets]).toEqual([
      32, 16,
    ]);
    expect(kinds(fitted('tab top'))).toEqual(['finials']);
    expect([kinds(fitted('wave')), kinds(fitted('rod pocket'))]).toEqual([[], []]);
  });

  it('always has what bears it, unless none is ordered', () => {
    for (const { word } of HEADINGS.list) {
      const { rod, pieces, brackets } = fitted(word);
      expect([rod / UNITS.in, pieces, brackets], word).toEqual([120, 2, 4]);
      const without = fitted(word, { hangOn: 'none' });
      expect([without.rod, without.pieces, without.brackets, without.finials], word).toEqual([0, 0, 0, 0]);
    }
    // Grommets are made into the cloth.
    expect(kinds(fitted('grommet', { hangOn: 'none' }))).toEqual(['grommets']);
  });

  it('has a wand a panel where the house draws so, and something is drawn', () => {
    const rules: readonly Rule[] = [['wands', 'yes']];
    expect([
      fitted('pinch', { rules }).wands,
      fitted('pinch', { rules, draw: 'one-way left' }).wands,
    ]).toEqual([2, 1]);
    for (const draw of ['stationary', 'stationary cover', 'one stationary panel'] as const)
      expect(fitted('pinch', { rules, draw }).wands, draw).toBe(0);
    expect([fitted('rod pocket', { rules }).wands, fitted('tab top', { rules }).wands]).toEqual([0, 0]);
    expect(fitted('pinch').wands).toBe(0);
  });
});

describe('the price of hardware', () => {
  const priced = (heading: Heading, ...rules: readonly Rule[]) =>
    pricedFittings(fitted(heading), rulesOf(...rules)).map(
      ({ what, quantity, unit, each }) => `${what} ${quantity} ${unit} at ${each.toFixed(2)}`,
    );

  it('takes a rod by the foot, by the metre or by the piece', () => {
    expect(priced('pinch', ['price per rod foot', 4])).toEqual(['rods 10 ft at 4.00']);
    expect(priced('pinch', ['price per rod metre', 15])).toEqual(['rods 3.048 m at 15.00']);
    expect(priced('pinch', ['price per rod piece', 38])).toEqual(['rods 2 pieces at 38.00']);
    expect(priced('pinch', ['unit', 'centimetres'], ['price per rod foot', 15])).toEqual([
      'rods 3.048 m at 15.00',
    ]);
  });

  it('takes the piece where a rod has two prices, which is told', () => {
    const two: readonly Rule[] = [
      ['price per rod foot', 4],
      ['price per rod piece', 38],
    ];
    expect(priced('pinch', ...two)).toEqual(['rods 2 pieces at 38.00']);
    expect([rodPricedTwice(rulesOf(...two)), rodPricedTwice(rulesOf(['price per rod foot', 4]))]).toEqual([
      true,
      false,
    ]);
  });

  it('takes the piece before the metre, and the metre before the foot', () => {
    const metre: Rule = ['price per rod metre', 15];
    expect(priced('pinch', metre, ['price per rod piece', 38])).toEqual(['rods 2 pieces at 38.00']);
    expect(priced('pinch', metre, ['price per rod foot', 4])).toEqual(['rods 3.048 m at 15.00']);
  });

  it('counts only what the heading has', () => {
    const all: readonly Rule[] = [
      ['price per ring', 1],
      ['price per grommet', 0.75],
      ['price per bracket', 10],
      ['price per finial', 12],
      ['price per end stop', 2],
    ];
    expect(priced('grommet', ...all)).toEqual([
      'grommets 32 pieces at 0.75',
      'brackets 4 pieces at 10.00',
      'finials 2 pieces at 12.00',
    ]);
    expect(priced('wave', ...all)).toEqual(['brackets 4 pieces at 10.00']);
    // 32 × 0.75 + 4 × 10 + 2 × 12.
    expect(costOf(pricedFittings(fitted('grommet'), rulesOf(...all))).toFixed(2)).toBe('88.00');
  });
});

describe('the bends of a bay', () => {
  it('are counted on rod and track, and priced where they have a price', () => {
    const rules = rulesOf(['price per bend', 45], ['hang on', 'track']);
    const bayRod = { draw: undefined, rod: inches(152), bends: 2, pieces: () => 3, brackets: () => 5 };
    const counts = { rings: () => 34, grommets: () => 0 };
    const bay = fittings({ ...bayRod, ...counts, heading: 'pinch', hangOn: undefined }, rules);
    expect(bay.bends).toBe(2);
    expect(pricedFittings(bay, rules)).toMatchObject([{ what: 'bends', quantity: 2, unit: 'pieces' }]);
    expect(costOf(pricedFittings(bay, rules)).toNumber()).toBe(90);
    // Whoever has the rod has its bends.
    expect(fittings({ ...bayRod, ...counts, heading: 'pinch', hangOn: 'none' }, rules).bends).toBe(0);
  });
});
