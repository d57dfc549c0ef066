import { describe, expect, it } from 'vitest';
import { ownClothBy, waysOfHalfDrop } from '../../../src/core/audit/cloth-ways';
import type { ClothOrdered } from '../../../src/core/audit/cut-orders';
import { inches } from '../../../src/core/exact/length';
import { readHouse } from '../../../src/core/house/house';

const { rules } = readHouse([
  ['yardage step', 0.25],
  ['top allowance', 8],
  ['bottom allowance', 8],
]);
/** Four cuts of 100 in, each five whole repeats of 20 in long. */
const order = (match: 'half-drop' | 'straight', widths = 4): ClothOrdered => ({
  window: { verticalRepeat: inches(20), match, draw: 'pair' },
  widths,
  dropped: { finishedDrop: inches(82), heading: 'pinch' },
  cutLength: inches(100),
});
const taken = (inch: number): ReadonlySet<string> | undefined =>
  waysOfHalfDrop(order('half-drop'), rules, (yardage) => yardage === inches(Math.ceil(inch / 9) * 9));

describe('how a half-drop may be bought', () => {
  it.each([
    ['as cut', 400],
    ['half a repeat more', 410],
    ['a repeat more', 420],
    ['half a repeat a cut', 440],
    ['a repeat every other cut', 440],
  ])('%s', (way, inch) => {
    expect([...(taken(inch) ?? [])]).toContain(way);
  });

  it('is told by none of its ways where it is none of them', () => {
    expect(taken(700)?.size).toBe(0);
  });

  it('is no question of another match', () => {
    expect(waysOfHalfDrop(order('straight'), rules, () => true)).toBeUndefined();
  });
});

describe('cloth by a house’s own way', () => {
  it('is a half width as a half, of cloth that is no half-drop', () => {
    const halves = ownClothBy({ byHalves: true });
    expect([...halves.clothsOf(order('straight', 2.5), 2, rules)]).toEqual([inches(500)]);
    expect(halves.isAlone(order('straight'), rules)).toBe(false);
  });

  it('is a half-drop’s known way and no other', () => {
    const known = ownClothBy({ halfDrops: ['a repeat more'] });
    expect([...known.clothsOf(order('half-drop'), 1, rules)]).toContain(inches(420));
    expect([...known.clothsOf(order('half-drop'), 1, rules)]).not.toContain(inches(400));
    expect(known.isAlone(order('half-drop'), rules)).toBe(true);
    expect(known.isAlone(order('straight'), rules)).toBe(false);
  });
});
