import { describe, expect, it } from 'vitest';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';
import { ratio } from '../../../src/core/exact/ratio';
import type { Draw } from '../../../src/core/cell/treatment';
import {
  billedTurned,
  billedWidths,
  fullness,
  panels,
  saveWidth,
  widths,
} from '../../../src/core/cloth/widths';

type Rule = readonly [string, string | number];
const BARE: readonly Rule[] = [
  ['return', 0],
  ['overlap', 0],
  ['side hem', 0],
  ['seam', 0],
];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;

interface Asked {
  readonly rod: number;
  readonly fabric?: number;
  readonly times?: number;
  readonly draw?: Draw | undefined;
  readonly across?: number;
}
const given = ({ rod, fabric = 54, times = 2.5, draw, across }: Asked) => ({
  rodWidth: inches(rod),
  heading: 'pinch' as const,
  draw,
  fabricWidth: inches(fabric),
  fullness: ratio(times),
  horizontalRepeat: across === undefined ? undefined : inches(across),
});
const count = (asked: Asked, ...rules: readonly Rule[]): number =>
  widths(given(asked), rulesOf(...rules)).value;

describe('widths', () => {
  it('are not one more for a float: 180 × 2.7 ÷ 54 is 9, 180 × 2.2 ÷ 36 is 11', () => {
    expect(count({ rod: 180, times: 2.7, draw: 'one-way left' }, ...BARE)).toBe(9);
    expect(count({ rod: 180, times: 2.2, fabric: 36, draw: 'one-way left' }, ...BARE)).toBe(11);
    expect(count({ rod: 180.00000000000003, times: 2.7, draw: 'one-way left' }, ...BARE)).toBe(9);
  });

  it.each([
    ['whole per panel', 6],
    ['half per panel', 5],
    ['whole per pair', 5],
    ['nearest', 5],
  ] as const)('of 250 in of flat in a pair are, %s: %d', (rounding, wanted) => {
    expect(count({ rod: 100 }, ...BARE, ['widths rounding', rounding])).toBe(wanted);
  });

  it.each([
    ['whole per panel', 5],
    ['half per panel', 4.5],
    ['whole per pair', 5],
    ['nearest', 4],
  ] as const)('of 240 in of flat in one panel are, %s: %d', (rounding, wanted) => {
    expect(count({ rod: 96, draw: 'stationary cover' }, ...BARE, ['widths rounding', rounding])).toBe(wanted);
  });

  it('to the nearest take a half up', () => {
    const nearest: readonly Rule[] = [...BARE, ['widths rounding', 'nearest']];
    expect(count({ rod: 189, times: 1, draw: 'stationary cover' }, ...nearest)).toBe(4);
    expect(count({ rod: 188.984375, times: 1, draw: 'stationary cover' }, ...nearest)).toBe(3);
  });

  it('or leave just half a width off, where the house says so', () => {
    const down: readonly Rule[] = [...BARE, ['widths rounding', 'nearest half down']];
    expect(count({ rod: 189, times: 1, draw: 'stationary cover' }, ...down)).toBe(3);
    expect(count({ rod: 189.015625, times: 1, draw: 'stationary cover' }, ...down)).toBe(4);
  });

  it('to the nearest, each panel by itself: 2.4 are 2 a panel, 2.5 are 3', () => {
    const each: readonly Rule[] = [...BARE, ['widths rounding', 'nearest per panel']];
    expect(count({ rod: 2 * 2.4 * 54, times: 1, draw: 'pair' }, ...each)).toBe(4);
    expect(count({ rod: 2 * 2.5 * 54, times: 1, draw: 'pair' }, ...each)).toBe(6);
    expect(count({ rod: 20, times: 1, draw: 'pair' }, ...each)).toBe(2);
  });

  it('to the nearest count seams too: 12 of 48 lose 11 in of them', () => {
    const nearest: readonly Rule[] = [
      ['return', 0],
      ['side hem', 0],
      ['seam', 1],
      ['widths rounding', 'nearest'],
    ];
    // 12 widths give 576 − 11 = 565; 589 is just half a width above.
    expect(count({ rod: 588.984375, times: 1, fabric: 48, draw: 'stationary cover' }, ...nearest)).toBe(12);
    expect(count({ rod: 589, times: 1, fabric: 48, draw: 'stationary cover' }, ...nearest)).toBe(13);
  });

  it('go up for their own seams: 2 of 54 lose an inch', () => {
    const seams: readonly Rule[] = [
      ['return', 0],
      ['side hem', 0],
      ['seam', 1],
    ];
    expect(count({ rod: 107, times: 1, draw: 'stationary cover' }, ...seams)).toBe(2);
    expect(count({ rod: 107.015625, times: 1, draw: 'stationary cover' }, ...seams)).toBe(3);
  });

  it('lose both selvages where the house takes them off', () => {
    expect(count({ rod: 106.015625, times: 1, draw: 'stationary cover' }, ...BARE)).toBe(2);
    expect(count({ rod: 106.015625, times: 1, draw: 'stationary cover' }, ...BARE, ['selvage', 0.5])).toBe(3);
    expect(count({ rod: 106, times: 1, draw: 'stationary cover' }, ...BARE, ['selvage', 0.5])).toBe(2);
  });

  it('match a pattern by whole repeats; the seam lies in what that wastes', () => {
    const plain: readonly Rule[] = [
      ['return', 0],
      ['side hem', 0],
      ['seam', 1],
    ];
    // 54 holds three repeats of 17: 51 a width, and 3 in of waste for the seam.
    expect(count({ rod: 102, times: 1, draw: 'stationary cover', across: 17 }, ...plain)).toBe(2);
    expect(count({ rod: 102.015625, times: 1, draw: 'stationary cover', across: 17 }, ...plain)).toBe(3);
    // 27 leaves no waste: each seam costs its inch.
    expect(count({ rod: 107.015625, times: 1, draw: 'stationary cover', across: 27 }, ...plain)).toBe(3);
  });

  it('of a repeat wider than the cloth are taken as plain, with a finding', () => {
    const worked = widths(
      given({ rod: 108, times: 1, draw: 'stationary cover', across: 60 }),
      rulesOf(...BARE),
    );
    expect(worked.value).toBe(2);
    expect(worked.findings.map(({ code }) => code)).toEqual(['repeatWiderThanCloth']);
  });

  it('by the two bases of UFGS 12 22 00 are 5 and 6', () => {
    const house: readonly Rule[] = [
      ['overlap', 1.5],
      ['side hem', 0],
      ['seam', 0],
      ['widths rounding', 'whole per pair'],
    ];
    expect(count({ rod: 104 }, ...house, ['fullness basis', 'rod width'])).toBe(5);
    expect(count({ rod: 104 }, ...house)).toBe(6);
  });

  it('of cloth that selvages and seams use up are refused', () => {
    expect(() => count({ rod: 100, fabric: 2 })).toThrow(/fabric_width reads 2 in/);
  });
});

describe('panels', () => {
  const panelsOf = (rod: number, each: number | undefined, draw?: Draw): number =>
    panels({ ...given({ rod, times: 2, draw }), widthsEach: each }, rulesOf()).value;

  it('are as many as cover the flat width, each with its own hems, even for a pair', () => {
    expect(panelsOf(100, undefined)).toBe(6);
    expect(panelsOf(100, 2)).toBe(4);
    expect(panelsOf(100, 1.5)).toBe(4);
    expect(panelsOf(100, undefined, 'stationary cover')).toBe(5);
  });

  it('of half a width need cloth beyond their hems', () => {
    expect(() => panels({ ...given({ rod: 100, fabric: 12 }), widthsEach: 0.5 }, rulesOf())).toThrow(
      /fabric_width reads 12 in/,
    );
  });
});

describe('the delivered fullness', () => {
  const fullnessOf = (rod: number, count: number, ...rules: readonly Rule[]) =>
    fullness({ ...given({ rod }), widths: count }, rulesOf(...rules));

  it('is flat ÷ finished, hems and seams off', () => {
    expect(fullnessOf(108, 6, ...BARE).value).toBe(3);
    expect(fullnessOf(104, 6).value).toBeCloseTo((324 - 4 - 12) / 111, 12);
  });

  it('on the rod’s basis leaves returns and overlaps flat, and its working says so', () => {
    const one = fullnessOf(
      104,
      5,
      ['fullness basis', 'rod width'],
      ['overlap on rings', 1.5],
      ['side hem', 0],
      ['seam', 0],
    );
    expect(one.value).toBe(2.5);
    const last = one.steps.at(-1);
    expect(last?.how).toBe('({} − {} returns and overlaps) ÷ {} rod');
  });

  it('tells of widths that do not cover, and refuses those that hems use up', () => {
    expect(fullnessOf(200, 2).findings.map(({ code }) => code)).toEqual(['doesNotCover']);
    expect(() => fullness({ ...given({ rod: 100, fabric: 12 }), widths: 1 }, rulesOf())).toThrow(
      /widths reads 1/,
    );
    // On the rod alone a half width of 12 in less two hems leaves nothing for the rod, never a fullness below 0.
    expect(() =>
      fullness(
        { ...given({ rod: 100, fabric: 12 }), widths: 2.5 },
        rulesOf(['fullness basis', 'rod width'], ['return', 8]),
      ),
    ).toThrow('widths reads 2.5, which hems, seams, returns and overlaps use up.');
  });
});

describe('saving a width', () => {
  const narrower = (asked: Asked, ...rules: readonly Rule[]): number =>
    toUnit(saveWidth(given(asked), rulesOf(...rules)).value, 'in');

  it('is the way to the next step below', () => {
    expect(narrower({ rod: 110, draw: 'stationary cover' }, ...BARE)).toBe(2);
    expect(narrower({ rod: 180, times: 2.7, draw: 'stationary cover' }, ...BARE)).toBe(20);
    // 275 of a pair is 6 widths; 5, two panels of 2½, serve 108.
    expect(narrower({ rod: 110 }, ...BARE)).toBe(2);
    expect(narrower({ rod: 110 }, ...BARE, ['widths rounding', 'whole per panel'])).toBeCloseTo(23.6, 7);
  });

  it('to the nearest passes the half by a nanometre', () => {
    const nearest: readonly Rule[] = [...BARE, ['widths rounding', 'nearest']];
    const by = saveWidth(given({ rod: 190, times: 1, draw: 'stationary cover' }), rulesOf(...nearest)).value;
    expect(by).toBe((inches(1) + 1) as Length);
  });

  it('has no answer at the fewest widths there are', () => {
    expect(() => saveWidth(given({ rod: 6 }), rulesOf())).toThrow(/the fewest widths/);
  });
});

describe('the widths of wide goods, charged', () => {
  const by54 = rulesOf(['billable width', 54]);
  it('are by flat cloth where the house says so: two widths of 118 are five of 54, as published', () => {
    expect(billedWidths(2, inches(118), by54)).toBe(5);
    expect(billedWidths(2, inches(118), rulesOf())).toBe(2);
    // 5 × 108 is exactly 10.
    expect(billedWidths(5, inches(108), by54)).toBe(10);
  });

  it('are those of the bolt where it is no wide one', () => {
    for (const fabric of [48, 54, 60, 72])
      expect(billedWidths(3, inches(fabric), by54), String(fabric)).toBe(3);
    expect(billedWidths(3, inches(81), by54)).toBe(5);
  });

  it('are of turned cloth what it is along the bolt', () => {
    expect(billedTurned(inches(270), by54)).toBe(5);
    expect(billedTurned(inches(271), by54)).toBe(6);
    expect(billedTurned(inches(270), rulesOf())).toBeUndefined();
  });
});
