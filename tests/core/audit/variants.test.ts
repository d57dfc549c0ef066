import { expect, it } from 'vitest';
import { variantsSeen } from '../../../src/core/audit/variants';
import { readHouse } from '../../../src/core/house/house';
import { ordersUnder } from '../window/ordered';
import { HEADINGS, orders, RULES } from './practised';

/** The same orders, under rules that round their widths otherwise. */
const seen = (rounding: string, slips = 0) => {
  const { rules, unit } = readHouse([['widths rounding', rounding], ...RULES.filter(([name]) => name !== 'widths rounding')]); // prettier-ignore
  const rows = orders((widths) => widths * 26).map((cells, at) =>
    at < slips ? cells.map((cell, column) => (column === 6 ? Number(cell) + 1 : cell)) : cells,
  ); // prettier-ignore
  return variantsSeen(ordersUnder(HEADINGS, rows, unit), rules);
};

it('orders that go by the rules have no other', () => {
  expect(seen('whole per pair').seen).toEqual([]);
  expect(seen('whole per pair', 6).seen).toEqual([]);
});

it('a rounding that nearly all orders take where the two part', () => {
  const { seen: found, rules } = seen('whole per panel');
  expect(found).toMatchObject([{ standing: 'whole per panel' }]);
  // Pairs alone cannot tell these two apart.
  expect(['whole per pair', 'half per panel']).toContain(found[0]?.value);
  expect(found[0]?.better).toBeGreaterThan(5);
  expect(rules.widthsRounding).toBe(found[0]?.value);
});

it('a making charge that nearly all orders bear by the panel, where the rules have it by the width', () => {
  const { rules, unit } = readHouse(RULES);
  // All are pairs: two panels of 26.00.
  const rows = orders(() => 52);
  const { seen: found, rules: other } = variantsSeen(ordersUnder(HEADINGS, rows, unit), rules);
  expect(found).toMatchObject([{ standing: 'width', value: 'panel' }]);
  expect(other.laborBy).toBe('panel');
});
