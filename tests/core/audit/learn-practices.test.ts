import { describe, expect, it } from 'vitest';
import { practicesOf, practicesSeen } from '../../../src/core/audit/learn-practices';
import { readHouse } from '../../../src/core/house/house';
import { ordersUnder } from '../window/ordered';
import { HEADINGS, orders, RULES } from './practised';

const seen = (rows: ReturnType<typeof orders>) => {
  const { rules, unit } = readHouse(RULES);
  return practicesSeen(ordersUnder(HEADINGS, rows, unit), rules);
};

describe('what a house does beside its rules', () => {
  it('nothing is told of a house that goes by its rules', () => {
    expect(seen(orders((widths) => widths * 26))).toEqual([]);
  });

  it('its making marked up, to the whole amount', () => {
    const [labor, ...more] = seen(orders((widths) => Math.round(widths * 26 * 1.4)));
    expect(more).toEqual([]);
    expect(labor).toMatchObject({ key: 'labor', fit: 40, outOf: 40 });
    expect(labor?.practice).toMatchObject({ factor: 1.4, step: 1, up: false, least: 0 });
  });

  it('a least charge, where most that come below it have it', () => {
    const rows = orders((widths) => Math.max(80, widths * 26));
    expect(practicesOf(seen(rows))).toEqual({ labor: { factor: 1, step: 0, up: true, least: 80 } });
    const below = orders((widths, at) => (at % 2 === 0 ? Math.max(80, widths * 26) : widths * 26));
    expect(practicesOf(seen(below)).labor?.least ?? 0).toBe(0);
  });

  it('nothing is told of charges that follow nothing', () => {
    expect(seen(orders((widths, at) => widths * 26 + ((at * 37) % 53)))).toEqual([]);
  });

  it('cuts up to a step', () => {
    const rows = orders((widths) => widths * 26, (at) => 84 + at / 4).map((cells) =>
      cells.map((cell, at) => (at === 7 ? Math.ceil(Number(cell) / 2) * 2 : cell)),
    ); // prettier-ignore
    expect(seen(rows)[0]).toMatchObject({ key: 'cutLength', fit: 40 });
  });

  it('too few orders tell nothing', () => {
    expect(seen(orders((widths) => widths * 52).slice(0, 11))).toEqual([]);
  });
});
