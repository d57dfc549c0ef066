/** The check of a unit price against the price list of its day. */
import { finding } from '../cell/answer';
import { toUnit } from '../exact/length';
import { isNear } from '../exact/money';
import type { Check, RowGiven } from './check';
import { told, type OrderFinding } from './finding';
import { priceOn, sinceWhen, type Listed } from './price-list';

/** What the list says the fabric costs; undefined where it has no price of it. */
function listedPrice({ order, prices }: RowGiven): Listed | undefined {
  const { fabric } = order.window;
  if (prices === undefined || order.facts.unitPrice === undefined || fabric === undefined) return undefined;
  return priceOn(prices, fabric, order.facts.date?.early);
}
/** Whether a price list judges the row's price. */
export const isListed = (row: RowGiven): boolean => listedPrice(row) !== undefined;

function findPriceOffList(row: RowGiven): OrderFinding[] {
  const { at, order, rules, unit } = row;
  const listed = listedPrice(row);
  const { unitPrice } = order.facts;
  if (listed === undefined || unitPrice === undefined) return [];
  if (isNear(unitPrice, listed.price, rules.moneyTolerance)) return [];
  const heading = row.name('unitPrice');
  const about = finding(
    'priceOffList',
    heading,
    heading,
    unitPrice.toFixed(2),
    `“${order.window.fabric ?? ''}”`,
    listed.price.toFixed(2),
    sinceWhen(listed),
  );
  const apart = unitPrice.minus(listed.price);
  const { yardage } = order.ordered;
  return [
    told(at, about, {
      measure: 'money',
      found: unitPrice.toNumber(),
      expected: listed.price.toNumber(),
      money: yardage === undefined ? undefined : apart.times(toUnit(yardage, unit.large)).toNumber(),
    }),
  ];
}

export const priceOffList: Check = { mayBeMeant: true, find: ({ given }) => findPriceOffList(given) };
