import { describe, expect, it } from 'vitest';
import { habitsSeen } from '../../../src/core/audit/learn-habits';
import { inches } from '../../../src/core/exact/length';
import { readHouse } from '../../../src/core/house/house';
import { ordersUnder } from '../window/ordered';
import { HEADINGS, orders, RULES } from './practised';

const seen = (rows: ReturnType<typeof orders>) => {
  const { rules, unit } = readHouse(RULES);
  return habitsSeen(ordersUnder(HEADINGS, rows, unit), rules, {}).map(({ habit }) => habit);
};
const drop = (at: number): number => 80 + ((at * 11) % 40);

describe('what tells some orders from the others', () => {
  it('nothing of a house that goes by its rules, or of one slip', () => {
    expect(seen(orders((widths) => widths * 26))).toEqual([]);
    expect(seen(orders((widths, at) => widths * (at === 7 ? 30 : 26)))).toEqual([]);
  });

  it('so much more a width above a drop', () => {
    const rows = orders((widths, at) => widths * (drop(at) > 108 ? 30 : 26), drop);
    expect(seen(rows)).toEqual([
      { key: 'labor', by: 'each', more: 4, when: [{ size: 'finishedDrop', from: inches(109), above: true }] },
    ]);
  });

  it('it is told though one order of them has a slip', () => {
    const rows = orders((widths, at) => widths * (drop(at) > 108 && at !== 12 ? 30 : 26), drop);
    expect(seen(rows)).toHaveLength(1);
  });

  it('several alike that nothing tells from the others are none', () => {
    const some = new Set([3, 8, 15, 22, 29, 36]);
    expect(seen(orders((widths, at) => widths * (some.has(at) ? 30 : 26)))).toEqual([]);
  });

  it('a longer hem on the cuts of the long ones', () => {
    const rows = orders((widths) => widths * 26, drop).map((cells, at) =>
      cells.map((cell, place) => (place === 7 && drop(at) >= 100 ? Number(cell) + 4 : cell)),
    );
    expect(seen(rows)).toEqual([
      {
        key: 'cutLength',
        by: 'cut',
        more: inches(4),
        when: [{ size: 'finishedDrop', from: expect.any(Number), above: true }],
      },
    ]);
  });

  it('what one word says of the orders from a size on', () => {
    const isGrommet = (at: number): boolean => at % 3 === 0;
    const rows = orders((widths, at) => widths * (isGrommet(at) && drop(at) > 95 ? 31 : 26), drop).map(
      (cells, at) => cells.map((cell, place) => (place === 4 && isGrommet(at) ? 'box' : cell)),
    );
    const { rules, unit } = readHouse([
      ...RULES,
      ['labor box', 26],
      ['fullness box', 2.5],
      ['top allowance box', 8],
    ]);
    const [first, ...more] = habitsSeen(ordersUnder(HEADINGS, rows, unit), rules, {});
    expect(more).toEqual([]);
    expect(first?.habit).toMatchObject({ key: 'labor', by: 'each', more: 5 });
    expect(first?.habit.when).toMatchObject([
      { word: 'heading', are: ['box'] },
      { size: 'finishedDrop', above: true },
    ]);
  });

  it('too few orders tell nothing', () => {
    expect(seen(orders((widths, at) => widths * (drop(at) > 108 ? 30 : 26), drop).slice(0, 24))).toEqual([]);
  });
});
