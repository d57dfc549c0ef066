import { expect, it } from 'vitest';
import { fitOf } from '../../../src/core/audit/fit';
import { readHouse } from '../../../src/core/house/house';
import type { Order } from '../../../src/core/window/order';
import { ordersUnder } from '../window/ordered';
import { HEADINGS, orders, RULES } from './practised';

it('counts the figures of an order that agree with the rules, and those that do not', () => {
  const { rules, unit } = readHouse(RULES);
  const [first] = ordersUnder(HEADINGS, orders((widths) => widths * 26), unit) as [Order]; // prettier-ignore
  expect(fitOf(first, rules)).toEqual({ right: 3, wrong: 0 });
  const slipped = { ...first, ordered: { ...first.ordered, labor: 1 } };
  expect(fitOf(slipped, rules)).toEqual({ right: 2, wrong: 1 });
  const turned = { ...slipped, window: { ...first.window, railroaded: 'railroaded' as const } };
  expect(fitOf(turned, rules)).toEqual({ right: 0, wrong: 0 });
});
