import { describe, expect, it } from 'vitest';
import { pleats } from '../../../src/core/heading/pleats';
import { readHouse } from '../../../src/core/house/house';
import { inches, UNITS } from '../../../src/core/exact/length';
import type { Draw, Heading } from '../../../src/core/cell/treatment';
import { writeStep } from '../../../src/core/cell/steps';
import { INCHES } from '../../../src/core/exact/unit';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;
const made = (rod: number, count: number, draw: Draw = 'pair', fabric = 54, heading: Heading = 'pinch') => ({
  rodWidth: inches(rod),
  widths: count,
  heading,
  draw,
  fabricWidth: inches(fabric),
});
const codes = (worked: { findings: readonly { code: string }[] }): readonly string[] =>
  worked.findings.map(({ code }) => code);
const inInches = (share: number): number => Number((share / UNITS.in).toFixed(6));

/** Pairs on rings, one-way panels in a recess: only the rod's share is spaced out. */
const RINGS: Rule = ['overlap', 0];
const RECESS: Rule = ['return', 0];

describe('pleats by the width', () => {
  it('are 5 in each: a rod of 94 under six widths has 15 a panel', () => {
    const onRings = pleats(made(94, 6), rulesOf(RINGS));
    const { value } = onRings;
    expect([value.pleats, value.spaces]).toEqual([15, 14]);
    expect([inInches(value.space), inInches(value.takeUp)]).toEqual([3.357143, 6.9]);
    expect(codes(onRings)).toEqual([]);
    const onTrack = pleats(made(94, 6), rulesOf(['hang on', 'track'], ['overlap', 3])).value;
    expect([onTrack.pleats, inInches(onTrack.takeUp)]).toEqual([15, 6.7]);
  });

  it('lie on every seam: the space is one, the take-up varies by the width', () => {
    const { byWidth } = pleats(made(94, 6), rulesOf(RINGS)).value;
    expect(byWidth.map((one) => one.pleats)).toEqual([5, 5, 5]);
    // 50½ flat − 4 spaces; 53 − 5 spaces; 50½ − 5 spaces − the return of 3½; each ÷ 5.
    expect(byWidth.map((one) => inInches(one.takeUp))).toEqual([7.414286, 7.242857, 6.042857]);
  });

  it('take the smaller number in a half width, which stands at the return', () => {
    const counts = (rod: number, widths: number) => {
      const { value } = pleats(made(rod, widths), rulesOf(RINGS));
      return [value.pleats, ...value.byWidth.map((one) => `${one.pleats} in ${one.width}`)];
    };
    expect(counts(44, 3)).toEqual([7, '5 in 1', '2 in 0.5']);
    expect(counts(74, 5)).toEqual([12, '5 in 1', '5 in 1', '2 in 0.5']);
  });

  it('go by 54 in of flat cloth in any other bolt, and 137 cm is the same bolt', () => {
    // 118 − 6 hems is 112, and 112 × 5 ÷ 54 is 10.4.
    expect(pleats(made(78, 2, 'pair', 118), rulesOf(RINGS)).value.pleats).toBe(10);
    const metric = rulesOf(['unit', 'centimetres'], ['pleats a width', 4], ['overlap', 0]);
    const uk = pleats({ ...made(60, 6), fabricWidth: 1_370_000_000 as never }, metric);
    expect(uk.value.pleats).toBe(12);
  });

  it('move by as little as brings them into the bands, and the steps say so', () => {
    // 15 would stand 72 ÷ 14 = 5.14 apart; 16 stand 4.8.
    const { value, steps, findings } = pleats(made(72, 3, 'one-way left'), rulesOf(RECESS));
    expect([value.pleats, inInches(value.space)]).toEqual([16, 4.8]);
    expect(value.byWidth.map((one) => one.pleats)).toEqual([5, 6, 5]);
    expect(steps.map((one) => writeStep(one, INCHES))[1]).toContain(
      'by the rule 15, moved for the space and the take-up, so no longer whole by the width',
    );
    expect(findings).toEqual([]);
  });
});

describe('pleats by space or take-up', () => {
  const pleatsOf = (rod: number, by: string): number =>
    pleats(made(rod, 3, 'one-way left'), rulesOf(RECESS, ['pleats by', by])).value.pleats;

  it('go to the nearest, not down', () => {
    // Spaces of 4 in: 63 ÷ 4 is 15.75, 62 ÷ 4 is 15½, 61 ÷ 4 is 15.25.
    expect([pleatsOf(63, 'space'), pleatsOf(62, 'space'), pleatsOf(61, 'space')]).toEqual([17, 17, 16]);
    // 5 in each: 154 − 60 is 94, ÷ 5 is 18.8; 154 − 62 is 92, ÷ 5 is 18.4.
    expect([pleatsOf(60, 'take-up'), pleatsOf(62, 'take-up')]).toEqual([19, 18]);
  });
});

describe('pleats that keep no usual band', () => {
  it('take the wider ones, with a note', () => {
    // 14 would take up 8.14 each, 15 stand 2.86 apart.
    const worked = pleats(made(40, 3, 'one-way left'), rulesOf(RECESS));
    expect([worked.value.pleats, inInches(worked.value.space), inInches(worked.value.takeUp)]).toEqual([
      15, 2.857143, 7.6,
    ]);
    expect(codes(worked)).toEqual(['pleatsOutsideUsual']);
    expect(worked.findings[0]?.weight).toBe('note');
  });

  it('nor wider ones are about the delivered fullness, and name the widths beside', () => {
    const worked = pleats(
      made(31, 4, 'pair', 48),
      rulesOf(['hang on', 'track'], ['overlap', 3], ['widths rounding', 'whole per pair']),
    );
    expect(codes(worked)).toEqual(['noPleatsSuit']);
    // 2 × (96 − 1 − 6) ÷ (31 + 7 + 6); three widths 2 × (72 − 1 − 6), five 2 × (120 − 2 − 6).
    expect(worked.findings[0]?.sentence).toContain('4 widths deliver a fullness of 4.05');
    expect(worked.findings[0]?.sentence).toContain('3 would deliver 2.95 and 5 would deliver 5.09');
  });
});

describe('the edge to the first pleat', () => {
  it('is the overlap, or the house’s: 2 in beside an overlap of 1 (Project Gutenberg #63282)', () => {
    const plain = pleats(made(94, 6), rulesOf(['hang on', 'track'], ['overlap', 1])).value;
    expect(inInches(plain.space)).toBe(3.357143);
    const own = rulesOf(['hang on', 'track'], ['overlap', 1], ['edge to first pleat', 2]);
    const set = pleats(made(94, 6), own).value;
    // 47 + 3½ + 1 finished, less 2 and the return of 3½: 46 in 14 spaces.
    expect(inInches(set.space)).toBe(3.285714);
    expect(inInches(set.takeUp)).toBe(inInches(plain.takeUp));
  });
});

describe('box pleats', () => {
  const box = (rod: number, fabric: number) => made(rod, 1, 'one-way left', fabric, 'box');

  it('give each underfold a quarter of what a pleat takes', () => {
    const house = rulesOf(
      RECESS,
      ['side hem', 0],
      ['seam', 0],
      ['take up high', 4.5],
      ['take up low', 3.5],
      ['space low', 2],
      ['space high', 2],
    );
    const worked = pleats(box(38, 78), house);
    expect(worked.value.takeUp / UNITS.in).toBe(4);
    expect(codes(worked)).toEqual([]);
    expect(codes(pleats(box(38, 118), house))).toContain('underfoldOutside');
  });

  it('with faces too wide for the rod stay on it', () => {
    const wide = pleats(box(17, 118), rulesOf(['box face', 6]));
    expect(wide.value.pleats).toBe(2);
    expect(wide.value.space / UNITS.in).toBe(5);
    expect(() => pleats(box(12, 118), rulesOf(['box face', 6]))).toThrow(/too narrow/);
  });
});

describe('pleats', () => {
  it('need cloth to take up, and a heading that has them', () => {
    expect(() => pleats(made(200, 2), rulesOf())).toThrow(/nothing is left to pleat/);
    expect(() => pleats(made(105, 6, 'pair', 54, 'grommet'), rulesOf())).toThrow(/no pleats to set out/);
  });

  it('of a wave are its snaps', () => {
    const { value } = pleats(made(105, 4, 'pair', 54, 'wave'), rulesOf());
    expect(value.pleats).toBe(Math.floor((108 - 1 - 6) / 4.25 / 2) * 2);
    expect(value.takeUp / UNITS.in).toBe(4.25);
  });
});
