import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/core/cell/answer';
import { DEFAULT_HOUSE, DEFAULT_RULES, readHouse } from '../../../src/core/house/house';
import { inches } from '../../../src/core/exact/length';

const codes = (range: readonly (readonly unknown[])[]): readonly string[] =>
  readHouse(range).findings.map(({ code }) => code);

describe('a rules range', () => {
  it('stands at the defaults where the range is blank', () => {
    for (const blank of [undefined, null, '', [['', '']], [[null, null]]])
      expect(readHouse(blank).rules).toEqual(DEFAULT_HOUSE.rules);
  });

  it('overrides by name, in any case, with a heading or further columns beside', () => {
    const house = readHouse([
      ['Rule', 'Value', 'why'],
      ['SIDE HEM', '2 1/2', 'ours'],
      ['side-hem', '', 'blank is not set'],
      ['fullness pinch', 3, ''],
      ['', '', 'a gap'],
    ]);
    expect(house.findings).toEqual([]);
    expect(house.rules.sideHem).toBe(inches(2.5));
    expect(house.rules.fullness.pinch).toBe(30_000);
    expect(house.rules.fullness.box).toBe(DEFAULT_RULES.fullness.box);
    expect([...house.set].sort()).toEqual(['fullness pinch', 'side hem']);
  });

  it('does not leak into the next one', () => {
    readHouse([
      ['fullness pinch', 3],
      ['side hem', 1],
    ]);
    expect(readHouse([['seam', 0]]).rules.fullness.pinch).toBe(25_000);
    expect(DEFAULT_RULES.fullness.pinch).toBe(25_000);
  });

  it('is read afresh when a cell of the same range changes', () => {
    const range = [['side hem', 1]];
    expect(readHouse(range).rules.sideHem).toBe(inches(1));
    range[0] = ['side hem', 2];
    expect(readHouse(range).rules.sideHem).toBe(inches(2));
  });

  it('of one column is refused: an input stands one place too far on', () => {
    for (const given of [3, [[3]], [['side hem'], ['seam']]])
      expect(() => readHouse(given)).toThrow(
        'rules takes two columns, rule and value, and the range given has 1 column. Widen the range.',
      );
    expect(readHouse([[0]]).rules).toEqual(DEFAULT_HOUSE.rules);
  });

  it('takes labour for labor', () => {
    expect(readHouse([['labour pinch', '$45']]).rules.labor.pinch?.toString()).toBe('45');
  });

  it('tells of a name that is none, with the nearest', () => {
    const house = readHouse([['side hems allowance', 2]]);
    expect(house.findings[0]?.code).toBe('unknownRule');
    expect(house.findings[0]?.sentence).toContain('“side hems allowance”');
  });

  it('tells of a rule set twice to different values; the lower one is used', () => {
    expect(
      codes([
        ['seam', 1],
        ['seam', 1],
      ]),
    ).toEqual([]);
    expect(
      codes([
        ['seam', 1],
        ['seam', 0],
      ]),
    ).toEqual(['repeatedRule']);
    expect(
      readHouse([
        ['seam', 1],
        ['seam', 0],
      ]).rules.seam,
    ).toBe(0);
  });

  it('takes its lengths in the unit of the range, wherever that line stands', () => {
    const house = readHouse([
      ['side hem', 10],
      ['unit', 'cm'],
    ]);
    expect(house.rules.sideHem).toBe(100_000_000);
    expect(house.rules.yardageStep).toBe(100_000_000);
    expect(house.unit.name).toBe('centimetres');
  });

  it('refuses a value that is none, by the rule’s name', () => {
    expect(() => readHouse([['seam', 'thin']])).toThrow(Refusal);
    expect(() => readHouse([['seam', 'thin']])).toThrow(/house rule “seam” reads “thin”/);
    expect(() => readHouse([['widths rounding', 'sideways']])).toThrow(/Use one of: whole per panel/);
  });
});
