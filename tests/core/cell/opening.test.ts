import { describe, expect, it } from 'vitest';
import { OPENING, OPENING_WIDTH } from '../../../src/core/cell/opening';
import { Refusal } from '../../../src/core/cell/answer';
import { toUnit } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';

const place = { name: 'opening_width', unit: INCHES };
/** Its parts in inches, or why it is refused. */
function parts(raw: unknown): readonly number[] | string | undefined {
  try {
    return OPENING.read(raw, place)?.parts.map((part) => toUnit(part, 'in'));
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding.sentence;
    throw thrown;
  }
}

describe('an opening', () => {
  it('is a width, or the straight parts of a bay in a range or in one text', () => {
    expect(parts(72)).toEqual([72]);
    expect(parts([['84 1/2']])).toEqual([84.5]);
    expect(parts('30 + 60 + 30')).toEqual([30, 60, 30]);
    expect(parts([["2' 6\"+5'+ 30"]])).toEqual([30, 60, 30]);
    expect(parts([[30, 60, '30 in']])).toEqual([30, 60, 30]);
    expect(parts([[48], [36]])).toEqual([48, 36]);
  });

  it('of one part in a range is a plain opening, and blank cells are passed over', () => {
    expect(parts([[60, null, '']])).toEqual([60]);
    expect(OPENING.read([[60, null, '']], place)).toMatchObject({ inParts: true });
    expect(OPENING.read(60, place)).toMatchObject({ inParts: false });
  });

  it.each([[0], ['0'], [null], [''], [[[0]]], [[[null, '']]], [[[0, 0]]]])('of %j is blank', (raw) => {
    expect(parts(raw)).toBeUndefined();
  });

  it.each([['30 + 0 + 30'], [[[30, 0, 30]]], [[[30, 60, 0]]], ['0 + 30']])(
    'with a part of 0 is refused: %j',
    (raw) => {
      expect(parts(raw)).toBe(
        'opening_width holds a part of 0. Write the straight parts that are there, like 30 + 60 + 30; a formula hands blank cells over as IF(B7:D7="","",B7:D7).',
      );
    },
  );

  it('of twelve parts, of half a sum or of less than nothing is refused', () => {
    expect(parts(Array(12).fill('20').join(' + '))).toBe(
      'opening_width holds 12 parts, more than the most taken here, 8. Write one bay, from its left end to its right.',
    );
    expect(parts('30 +')).toBe(
      'opening_width reads “30 +”, which is not a length. Write it like 84 1/2, 7\' 6" or 214 cm.',
    );
    expect(parts('30 + wide')).toContain('reads “wide”, which is not a length');
    expect(parts([[30, -60]])).toContain('reads -60. It must be above 0');
  });

  it('is their sum for whom its bends do not matter', () => {
    expect(OPENING_WIDTH.read('30 + 60 + 30', place)).toBe(OPENING_WIDTH.read(120, place));
    expect(OPENING_WIDTH.read(0, place)).toBeUndefined();
  });
});
