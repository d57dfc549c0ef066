import { describe, expect, it } from 'vitest';
import { habitsOf, habitual, holds, withHabits, type Habit } from '../../../src/core/audit/habits';
import { DEFAULT_HOUSE, readHouse } from '../../../src/core/house/house';
import { inches } from '../../../src/core/exact/length';

const order = { window: { finishedDrop: inches(112), lining: 'lined' as const }, ordered: { widths: 6 } };
const above = (from: number, more: number): Habit => ({
  key: 'labor',
  by: 'each',
  more,
  when: [{ size: 'finishedDrop', from: inches(from), above: true }],
});

describe('what a house does in some of its orders', () => {
  it('holds on one side of a size, or where a word is said', () => {
    expect(holds([{ size: 'finishedDrop', from: inches(108), above: true }], order)).toBe(true);
    expect(holds([{ size: 'finishedDrop', from: inches(108), above: false }], order)).toBe(false);
    expect(holds([{ size: 'date', from: 45_000, above: true }], order)).toBe(false);
    expect(holds([{ word: 'lining', are: ['lined', 'interlined'] }], order)).toBe(true);
    expect(holds([], order)).toBe(true);
  });

  it('of the steps of one size the furthest reached counts alone', () => {
    const steps = [above(96, 3), above(108, 5), above(120, 8)];
    expect(habitsOf(steps, order)).toEqual([above(108, 5)]);
  });

  it('more on each width is in its rates, and more on each cut in its bottom', () => {
    const { rules } = readHouse([['labor pinch', 24]]);
    const more = withHabits(rules, [
      above(108, 5),
      { key: 'cutLength', by: 'cut', more: inches(2), when: [] },
    ]);
    expect(more.labor.pinch?.toNumber()).toBe(29);
    expect(more.labor.wave).toBeUndefined();
    expect(more.bottomAllowance - DEFAULT_HOUSE.rules.bottomAllowance).toBe(inches(2));
  });

  it('more on the line, on each window or as a share is in its practice', () => {
    const by = (one: Habit['by'], more: number): Habit => ({ key: 'labor', by: one, more, when: [] });
    expect(habitual(undefined, 'labor', [by('line', 12), by('window', 5)], 3)).toMatchObject({
      factor: 1,
      plus: 27,
    });
    expect(habitual(undefined, 'labor', [by('share', 0.15)], 3)?.factor).toBeCloseTo(1.15);
    expect(habitual(undefined, 'yardage', [by('line', 12)], 1)).toBeUndefined();
  });
});
