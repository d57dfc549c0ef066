import { describe, expect, it } from 'vitest';
import { cutLengths, rollDrawing, rollTitle } from '../../../src/core/drawing/roll';
import { exact, inches, UNITS } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import type { PlannedRoll } from '../../../src/core/rolls/plan';

const ROLL: PlannedRoll = {
  number: 2,
  lot: 'K4',
  length: exact(20 * UNITS.yd),
  remnant: inches(36),
  stretches: [
    {
      roll: 1,
      from: inches(24),
      length: inches(696),
      toStart: inches(24),
      remnant: inches(36),
      cuts: [
        { length: inches(120), count: 3, line: 0, room: 'Lounge' },
        { length: inches(100), count: 3, line: 1, label: 'spare' },
      ],
    },
  ],
};
const drawn = () =>
  rollDrawing(ROLL, {
    flaws: [{ from: inches(690), length: inches(2) }],
    lengths: cutLengths([ROLL], INCHES),
    unit: INCHES,
  });

describe('a roll’s drawing', () => {
  it('lays every cut behind the one before it, after what is given up', () => {
    const cuts = drawn().boxes.filter(({ part }) => part === 'cut');
    expect(cuts.map(({ x }) => x)).toEqual([24, 144, 264, 384, 484, 584].map(inches));
    expect(drawn().boxes.find(({ part }) => part === 'start')).toMatchObject({ x: 0, width: inches(24) });
    expect(drawn().boxes.at(-1)).toMatchObject({ part: 'flaw', x: inches(690) });
  });

  it('tells cuts of one length from those of another, the longest first', () => {
    expect(cutLengths([ROLL], INCHES)).toEqual(['120 in', '100 in']);
    expect(
      drawn()
        .boxes.filter(({ part }) => part === 'cut')
        .map(({ alike }) => alike),
    ).toEqual([0, 0, 0, 1, 1, 1]);
  });

  it('says what it is and whose cuts they are', () => {
    expect(rollTitle(ROLL, INCHES)).toBe('Roll 2, lot K4: 20 yd, 1 yd left');
    expect(drawn().title).toBe('Roll 2, lot K4: 20 yd, 1 yd left. 6 cuts');
    expect(drawn().boxes[2]).toMatchObject({ words: 'Lounge', says: 'Lounge: 120 in' });
  });
});
