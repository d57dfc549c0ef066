/** The generator's own arithmetic against published figures, the source named beside each. */
import { describe, expect, it } from 'vitest';
import { bareCutOf, cutOf, flatOf, lengthOf, widthsOf, yardageOf } from '../../../src/make/houses/cloth';
import { exact, plain } from '../../../src/make/houses/exact';
import type { House } from '../../../src/make/houses/house';
import type { Line } from '../../../src/make/houses/line';
import { liningCutOf } from '../../../src/make/houses/lining';
import { PLAIN } from './plain-house';

const house = (rules: Partial<House>): House => ({ ...PLAIN, ...rules });
const panel = (line: Line): Line => ({
  heading: 'pinch',
  draw: 'one-way left',
  'rod width': exact(64),
  ...line,
});

describe('How to Make Draperies (1960), Project Gutenberg eBook #63282', () => {
  it('takes 4 widths of 48 in for a window of 64 in, three times as full', () => {
    const line = panel({ 'fabric width': exact(48), fullness: exact(3) });
    expect(widthsOf(line, PLAIN).toFraction()).toBe('4');
  });

  const four = panel({ 'finished drop': exact(84) });
  const patterned: Line = { ...four, 'vertical repeat': exact(24) };
  const yards = (line: Line, rules: House): string =>
    lengthOf(line, rules, exact(4)).div(36).toFraction(true);

  it('buys 9⅓ yd for 4 lengths of 84 in', () => {
    expect(yards(four, PLAIN)).toBe('9 1/3');
  });

  it('buys 10⅔ yd where every length goes up to the repeat of 24 in', () => {
    expect(yards(patterned, PLAIN)).toBe('10 2/3');
  });

  it('buys 11⅓ yd by its printed rule of one motif for each additional length', () => {
    expect(yards(patterned, house({ repeatRule: 'one repeat each' }))).toBe('11 1/3');
  });

  it('buys 10⅓ yd where the first length is exact and the others go up', () => {
    expect(yards(patterned, house({ repeatRule: 'first cut exact' }))).toBe('10 1/3');
  });

  it('cuts 98½ in from 90, and 5½ yd for two lengths, 6 where yards are whole', () => {
    const rules = house({ top: { pinch: 5 }, bottom: 3.5 });
    const line = panel({ 'finished drop': exact(90) });
    expect(bareCutOf(line, rules).toString()).toBe('98.5');
    for (const [yardStep, bought] of [
      [0.125, '5.5'],
      [0.25, '5.5'],
      [0.5, '5.5'],
      [1, '6'],
    ] as const)
      expect(yardageOf(line, { ...rules, yardStep }, exact(2)).toString()).toBe(bought);
  });

  it('cuts the lining 10 in shorter than the face: 88½ in', () => {
    const rules = house({
      top: { pinch: 5 },
      bottom: 3.5,
      lining: { ...PLAIN.lining, cut: 'less than face', less: 10 },
    });
    expect(liningCutOf(panel({ 'finished drop': exact(90) }), rules).toString()).toBe('88.5');
  });
});

it('cuts 125 in from 100 and 16 at a repeat of 25 (Workroom Threads, newsletter, August 2011)', () => {
  const line = panel({ 'finished drop': exact(100), 'vertical repeat': exact(25) });
  expect(cutOf(line, house({ top: { pinch: 8 }, bottom: 8 })).toString()).toBe('125');
});

it('takes 84 × 2.5 + 7 + 8 = 225 in, 5 widths of 54, 12.22 yd at a cut of 88 (ehow.co.uk 6326063)', () => {
  const rules = house({ basis: 'rod width', return: 3.5, sideHem: 4 });
  const line = panel({ 'rod width': exact(84), 'finished drop': exact(88), fullness: exact('2.5') });
  expect(flatOf(line, rules).add(8).toString()).toBe('225');
  expect(widthsOf(line, rules).toString()).toBe('5');
  expect(plain(lengthOf(line, rules, exact(5)).div(36), 2)).toBe(12.22);
  expect(lengthOf(line, rules, exact(5)).toString()).toBe('440');
});

it('takes 3 widths of 122 cm, 1½ each, and 648 cm with a repeat to every length (a UK shop’s curtain guide)', () => {
  const rules = house({
    unit: 'centimetres',
    basis: 'rod width',
    rounding: 'whole per pair',
    sideHem: 5,
    repeatRule: 'one repeat with every length',
  });
  const line: Line = {
    heading: 'pinch',
    draw: 'pair',
    'rod width': exact(200),
    fullness: exact('1.5'),
    'fabric width': exact(122),
    'finished drop': exact(135),
    'vertical repeat': exact(27),
  };
  expect(widthsOf(line, rules).toString()).toBe('3');
  expect(lengthOf(line, rules, exact(4)).toString()).toBe('648');
});

it('cuts 117 in of a 4½ in repeat from 114; two and a repeat are 6.625 yd (a sewing blog, fayefortune)', () => {
  const repeat = exact('4.5');
  const line = panel({ 'finished drop': exact(114), 'vertical repeat': repeat });
  expect(cutOf(line, PLAIN).div(repeat).toString()).toBe('26');
  expect(lengthOf(line, PLAIN, exact(2)).add(repeat).div(36).toString()).toBe('6.625');
});

it('takes 6 widths of 54 on either basis, hems and seams in (on the rule of UFGS 12 22 00 (2010), own figures)', () => {
  const line: Line = { heading: 'pinch', draw: 'pair', 'rod width': exact(104), fullness: exact('2.5') };
  const rules = house({ return: 3.5, overlap: 1.5, hangOn: 'track', rounding: 'whole per pair' });
  expect(flatOf(line, rules).mul(2).toString()).toBe('285');
  expect(
    flatOf(line, { ...rules, basis: 'rod width' })
      .mul(2)
      .toString(),
  ).toBe('270');
  expect(widthsOf(line, { ...rules, basis: 'rod width' }).toString()).toBe('5');
  for (const basis of ['finished width', 'rod width'] as const)
    expect(widthsOf(line, { ...rules, basis, sideHem: 3, seam: 1 }).toString()).toBe('6');
});
