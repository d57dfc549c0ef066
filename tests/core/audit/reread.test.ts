import { expect, it } from 'vitest';
import { reread, rereadSeen } from '../../../src/core/audit/reread';
import { exact, inches } from '../../../src/core/exact/length';
import { readHouse } from '../../../src/core/house/house';
import type { Order } from '../../../src/core/window/order';
import { ordersUnder } from '../window/ordered';
import { HEADINGS, orders, RULES } from './practised';

const { rules, unit } = readHouse(RULES);
const kept = (): Order[] => ordersUnder(HEADINGS, orders((widths) => widths * 26), unit); // prettier-ignore
const names = (some: readonly Order[]): string[] => rereadSeen(some, rules).map(({ name }) => name);

it('a table that agrees as it stands is not read anew', () => {
  expect(names(kept())).toEqual([]);
});

it('a height that is the finished drop', () => {
  const measured = kept().map((order): Order => {
    const { finishedDrop, ...window } = order.window;
    const { finishedDrop: _drop, ...ordered } = order.ordered;
    return { ...order, window: { ...window, measured: finishedDrop }, ordered };
  });
  expect(names(measured)).toEqual(['drop']);
  expect(reread(measured[0] as Order, ['drop']).window.finishedDrop).toBe(kept()[0]?.window.finishedDrop);
});

it('a rod that is chosen beside the usual extensions counts alone', () => {
  const beside = kept().map((order, at): Order => {
    const { rodWidth } = order.window;
    const openingWidth = exact(Number(rodWidth) - Number(inches(at % 2 === 0 ? 6 : 8)));
    return { ...order, window: { ...order.window, openingWidth } };
  });
  expect(names(beside)).toEqual(['chosenRod']);
  expect(reread(beside[0] as Order, ['chosenRod']).window.openingWidth).toBeUndefined();
});

it('widths that are one panel’s', () => {
  const halved = kept().map((order): Order => ({
    ...order,
    ordered: { ...order.ordered, widths: (order.ordered.widths ?? 0) / 2 },
  })); // prettier-ignore
  expect(names(halved)).toEqual(['widthsOfAPanel']);
});

it('a slip in some orders is no other reading', () => {
  const some = kept().map((order, at): Order =>
    at % 5 === 0 ? { ...order, ordered: { ...order.ordered, widths: (order.ordered.widths ?? 0) / 2 } } : order,
  ); // prettier-ignore
  expect(names(some)).toEqual([]);
});
