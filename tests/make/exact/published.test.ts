/** The reckoning in fractions against figures published outside the project. */
import { describe, expect, it } from 'vitest';
import { breakPrice, salesTax } from '../../../src/make/exact/money';
import { bareCut, cuttings, longestCut, shrunk } from '../../../src/make/exact/cloth';
import { NONE, centimetres, exact, inches, type Exact } from '../../../src/make/exact/figures';
import { pocketOf } from '../../../src/make/exact/heading';
import { STANDARD, type House } from '../../../src/make/exact/house';
import { layerWidths, marginsOf } from '../../../src/make/exact/lining';
import { boltOf, fewestWidths, seamed, widthsOf } from '../../../src/make/exact/panel';
import { pleatsOf } from '../../../src/make/exact/pleats';
import { cutsOfRoll } from '../../../src/make/exact/rolls';

const asInches = (length: Exact): number => length.div(inches(1)).valueOf();
const yards = (length: Exact): string => length.div(inches(36)).toFraction();
const BARE: House = {
  ...STANDARD,
  lengths: { ...STANDARD.lengths, return: NONE, overlap: NONE, 'side hem': NONE, seam: NONE },
};
const ruled = (words: Partial<House['words']>, house: House = STANDARD): House => ({
  ...house,
  words: { ...house.words, ...words },
});
const pair = (rod: number, fullness: string, fabric: number) =>
  ({
    rod: inches(rod),
    heading: 'pinch',
    draw: 'pair',
    fullness: exact(fullness),
    fabric: inches(fabric),
    horizontalRepeat: undefined,
  }) as const;

describe('the reckoning in fractions', () => {
  it('gives 4 widths of 48 for 64 in at 3 times (How to Make Draperies, Project Gutenberg #63282)', () => {
    expect(widthsOf(pair(64, '3', 48), BARE).valueOf()).toBe(4);
  });

  it('takes 3.25 widths as 3 where the nearest rules (the same booklet)', () => {
    expect(widthsOf(pair(52, '3', 48), ruled({ 'widths rounding': 'nearest' }, BARE)).valueOf()).toBe(3);
  });

  it('gives 5 and 6 widths on the two bases (UFGS 12 22 00, cloth only)', () => {
    const lengths = { ...BARE.lengths, return: inches('3.5'), overlap: inches('1.5') };
    const house = ruled({ 'hang on': 'track' }, { ...BARE, lengths });
    const rod = ruled({ 'fullness basis': 'rod width' }, house);
    expect(widthsOf(pair(104, '2.5', 54), rod).valueOf()).toBe(5);
    expect(widthsOf(pair(104, '2.5', 54), house).valueOf()).toBe(6);
  });

  it('shares 5 widths in a pair: 72 in threefold, 54 in goods (a school drapery lesson, K-12)', () => {
    const house = { ...BARE, lengths: { ...BARE.lengths, 'side hem': inches('1.5'), seam: inches(1) } };
    expect(widthsOf(pair(72, '3', 54), house).valueOf()).toBe(5);
  });

  it('gives 3 widths of 122 cm for 200 cm × 1.5 + 20 (a UK shop’s guide)', () => {
    const wanted = centimetres(200).mul('1.5').add(centimetres(20)).div(2);
    const bolt = boltOf(centimetres(122), undefined, BARE);
    expect(fewestWidths(wanted, 'pair', bolt, BARE).valueOf()).toBe(3);
  });

  it.each([
    ['every cut up', '32/3'],
    ['one repeat each', '34/3'],
    ['first cut exact', '31/3'],
  ] as const)('gives the yards of 4 lengths of 84 in, repeat 24, %s: %s (the booklet)', (rule, meant) => {
    expect(yards(cuttings(exact(4), inches(84), inches(24), ruled({ 'repeat rule': rule })))).toBe(meant);
  });

  it('gives 648 cm with one repeat in every length: (135 + 27) × 4 (a UK shop’s guide)', () => {
    const house = ruled({ 'repeat rule': 'one repeat with every length' });
    const cloth = cuttings(exact(4), centimetres(135), centimetres(27), house);
    expect(cloth.div(centimetres(1)).valueOf()).toBe(648);
  });

  it('cuts 100 in and 16 up to 125 of repeat 25 (Workroom Threads, August 2011)', () => {
    const bare = bareCut(inches(100), 'pinch', STANDARD);
    expect(asInches(longestCut(bare, inches(25), STANDARD))).toBe(125);
  });

  it('cuts 114 in up to 117 of repeat 4½, and 6⅝ yd for two and one repeat more (a sewing blog)', () => {
    const cloth = cuttings(exact(2), inches(114), inches('4.5'), STANDARD).add(inches('4.5'));
    expect(asInches(longestCut(inches(114), inches('4.5'), STANDARD))).toBe(117);
    expect(yards(cloth)).toBe('53/8');
  });

  it('adds 2.97 in to 96 in that shrinks 3 % (ASTM D3691’s most)', () => {
    expect(asInches(shrunk(inches(96), exact('0.03')))).toBeCloseTo(98.969072, 6);
  });

  it('lines 6 in narrower than the face as seamed, and never with fewer of the same bolt (#63282)', () => {
    expect(asInches(marginsOf(STANDARD))).toBe(6);
    const panel = { ...pair(78, '2.5', 54), draw: 'one-way left' } as const;
    expect(widthsOf(panel, STANDARD).valueOf()).toBe(5);
    expect(layerWidths(panel, inches(54), 'lining', STANDARD).valueOf()).toBe(5);
    expect(asInches(seamed(exact(5), boltOf(inches(54), undefined, STANDARD)))).toBe(266);
  });

  it('gives 5, 7, 10, 12, 15 pleats to 1, 1½, 2, 2½, 3 widths (a pinch-pleat brochure: 5 to 54 in)', () => {
    const widths = ['1', '1.5', '2', '2.5', '3'];
    // Rods whose spaces are just 4 in at the published count, so that no count has to move.
    const rods = [16, 24, 36, 44, 56];
    const house = { ...STANDARD, lengths: { ...STANDARD.lengths, return: NONE } };
    const counts = widths.map((each, at) => {
      const panel = { ...pair(rods[at]!, '2.5', 54), widths: exact(each) };
      return pleatsOf({ ...panel, draw: 'one-way left' }, house).count;
    });
    expect(counts).toEqual([5, 7, 10, 12, 15]);
  });

  it('sets out 15 pleats on rod 94, six widths of 54, a pair on rings and on a track', () => {
    const panel = { ...pair(94, '2.5', 54), widths: exact(6) };
    const onRings = pleatsOf(panel, STANDARD);
    expect([onRings.count, asInches(onRings.takeUp)]).toEqual([15, 6.9]);
    expect(asInches(onRings.space)).toBeCloseTo(3.357, 3);
    expect(asInches(pleatsOf(panel, ruled({ 'hang on': 'track' })).takeUp)).toBe(6.7);
  });

  it('finds no count within the bands for 5.9 % of 5,064 windows on a track', () => {
    let beside = 0;
    let all = 0;
    for (const rounding of ['whole per pair', 'whole per panel', 'half per panel', 'nearest'] as const)
      for (const draw of ['pair', 'one-way left'] as const)
        for (const fullness of ['2', '2.5', '3'])
          for (let rod = 30; rod <= 240; rod += 1) {
            const house = ruled({ 'hang on': 'track', 'widths rounding': rounding });
            const window = { ...pair(rod, fullness, 54), draw };
            const widths = widthsOf(window, house);
            if (pleatsOf({ ...window, widths }, house).bands !== 'usual') beside += 1;
            all += 1;
          }
    expect(all).toBe(5064);
    expect(beside / all).toBeCloseTo(0.059, 3);
  });

  it('knows where floats fail: 180 × 2.7 ÷ 54 is 9, and 180 × 2.2 ÷ 36 is 11', () => {
    const oneWay = { draw: 'one-way left' } as const;
    expect(Math.ceil((180 * 2.7) / 54)).toBe(10);
    expect(widthsOf({ ...pair(180, '2.7', 54), ...oneWay }, BARE).valueOf()).toBe(9);
    expect(Math.ceil((180 * 2.2) / 36)).toBe(12);
    expect(widthsOf({ ...pair(180, '2.2', 36), ...oneWay }, BARE).valueOf()).toBe(11);
  });

  it('stitches a pocket 3¾ in round for a pole of 3⅛ (Cutting and Draping, Project Gutenberg #70586)', () => {
    expect(asInches(pocketOf(inches('3.125'), STANDARD).mul(2))).toBe(3.75);
  });

  it('cuts 14, not 13, from 52¼ yd, 112 in up to 135: the last needs only its own length', () => {
    const roll = inches('52.25').mul(36);
    const cut = { bare: inches(112), repeated: inches(135), start: NONE };
    expect(cutsOfRoll(roll, cut).valueOf()).toBe(14);
  });

  it('taxes 3 × 12.46 at 7.25 % 2.70 by line and 2.71 by invoice (on SSUTA section 324)', () => {
    const amounts = [exact('12.46'), exact('12.46'), exact('12.46')];
    expect(salesTax(amounts, exact('0.0725'), 'line', 'half up').valueOf()).toBe(2.7);
    expect(salesTax(amounts, exact('0.0725'), 'invoice', 'half up').valueOf()).toBe(2.71);
  });

  it('prices 50 yd at the break from 50', () => {
    const breaks = [
      { from: NONE, price: exact('28.5') },
      { from: exact(50), price: exact(26) },
    ];
    expect(breakPrice(exact(50), breaks)?.valueOf()).toBe(26);
    expect(breakPrice(exact('49.999'), breaks)?.valueOf()).toBe(28.5);
  });
});
