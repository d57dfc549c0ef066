import { describe, expect, it } from 'vitest';
import { clothSeen } from '../../../src/core/audit/own-cloth';
import type { CellIn } from '../../../src/core/cell/fields';
import { readHouse } from '../../../src/core/house/house';
import { ordersUnder } from '../window/ordered';

const HEADINGS = ['rod width', 'finished drop', 'heading', 'draw', 'fabric width', 'repeat', 'match', 'widths', 'cut length', 'yardage']; // prettier-ignore
const RULES = [['widths rounding', 'half per panel'], ['yardage step', 0.25], ['top allowance', 8], ['bottom allowance', 8]]; // prettier-ignore
const upTo = (inch: number): number => Math.ceil(inch / 9) / 4;

/** Widths counted by hand would only blur it: what is asked is the yardage of those that were ordered. */
function seen(match: string, widths: (at: number) => number, cloth: (widths: number, cut: number) => number) {
  const { rules, unit } = readHouse(RULES);
  const rows = Array.from({ length: 16 }, (_, at): CellIn[] => {
    const [drop, count] = [80 + ((at * 7) % 30), widths(at)];
    const cut = match === '' ? drop + 16 : Math.ceil((drop + 16) / 20) * 20;
    const repeat = match === '' ? [null, null] : [20, match];
    return [40 + at, drop, 'pinch', 'one-way left', 54, ...repeat, count, cut, upTo(cloth(count, cut))];
  });
  return clothSeen(ordersUnder(HEADINGS, rows, unit), rules);
}

describe('how a house buys its cloth', () => {
  it('a half width as a half, where its orders do', () => {
    const { habits, says } = seen(
      '',
      (at) => (at % 2 === 0 ? 2.5 : 3),
      (widths, cut) => widths * cut,
    );
    expect(habits).toEqual({ byHalves: true });
    expect(says).toEqual([{ way: 'a half width as a half', fit: 8, outOf: 8 }]);
  });

  it('a half width whole is what the rules say', () => {
    const whole = seen(
      '',
      (at) => (at % 2 === 0 ? 2.5 : 3),
      (widths, cut) => Math.ceil(widths) * cut,
    );
    expect(whole).toEqual({ habits: {}, says: [] });
  });

  it('a half-drop with one repeat more for the line', () => {
    const { habits } = seen(
      'half-drop',
      (at) => 3 + (at % 5),
      (widths, cut) => widths * cut + 20,
    );
    expect(habits.halfDrops).toEqual(['a repeat more']);
  });

  it('half-drops that follow nothing tell nothing', () => {
    const { habits } = seen(
      'half-drop',
      (at) => 3 + (at % 5),
      (widths, cut) => widths * cut * 1.31 + 7,
    );
    expect(habits).toEqual({});
  });
});
