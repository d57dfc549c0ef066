/** A price list by fabric and date, and the price in force on a day. */
import { refuse } from '../cell/answer';
import { DATE, showDay } from '../cell/day';
import { isBlankRow, oneCell, readBack, type CellIn, type Place } from '../cell/fields';
import { MONEY } from '../cell/figure-kinds';
import type { Money } from '../exact/money';
import { bare } from '../cell/treatment';
import { INCHES } from '../exact/unit';

export interface Listed {
  readonly price: Money;
  /** The first day it stood; undefined where it always did. */
  readonly from: number | undefined;
}
export type PriceList = ReadonlyMap<string, readonly Listed[]>;

const PLACE: Place = { name: 'prices', unit: INCHES };

/** Columns fabric, price and, where prices changed, the day each began. A title row is passed over. */
export function readPrices(rows: readonly (readonly CellIn[])[] = []): PriceList | undefined {
  const list = new Map<string, Listed[]>();
  for (const [at, row] of rows.entries()) {
    if (isBlankRow(row)) continue;
    if (row.length < 2)
      return refuse(
        'rangeTooNarrow',
        'prices',
        'prices',
        'two or three columns, fabric, price and from',
        row.length,
      );
    if (at === 0 && typeof row[1] === 'string' && !/\d/.test(row[1])) continue;
    const named = oneCell(row[0], PLACE);
    const price = MONEY.read(row[1], PLACE);
    if (named === undefined || price === undefined)
      return refuse(
        'unreadable',
        'prices',
        `prices row ${at + 1}`,
        `${readBack(named ?? '')} and ${readBack(row[1] ?? '')}`,
        'a fabric and its price',
        'Wool sateen, 48.50, 2026-01-01',
      );
    const from = DATE.read(row[2], PLACE)?.early;
    const fabric = bare(String(named));
    list.set(fabric, [...(list.get(fabric) ?? []), { price, from }]);
  }
  for (const prices of list.values()) prices.sort((a, b) => (a.from ?? 0) - (b.from ?? 0));
  return list.size === 0 ? undefined : list;
}

/** The price in force on a day; on no day, the latest. */
export function priceOn(list: PriceList, fabric: string, day: number | undefined): Listed | undefined {
  const prices = list.get(bare(fabric));
  if (prices === undefined) return undefined;
  return day === undefined
    ? prices[prices.length - 1]
    : prices.filter(({ from }) => (from ?? 0) <= day).pop();
}

export const sinceWhen = ({ from }: Listed): string => (from === undefined ? '' : ` since ${showDay(from)}`);
