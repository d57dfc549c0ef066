/** Attic stock: cloth kept for later repairs, each cut long enough for any window of its fabric. */
import { refuse } from './answer';
import { oneCell, readBack, type Kind } from './fields';
import { COUNT, QUANTITY, RATE } from './figure-kinds';
import { money, upToWhole, type Money } from '../exact/money';

export type AtticStock = { readonly share: Money } | { readonly cuts: number };

export const ATTIC_STOCK: Kind<AtticStock> = {
  quantity: 'share',
  noun: 'a share like 5 %, or a number of cuts like 2',
  shape: 'cell',
  read(raw, place) {
    const cell = oneCell(raw, place);
    const counted = typeof cell === 'string' ? cell.replace(/\s*cuts?$/i, '') : cell;
    if (counted === undefined) return undefined;
    const shared = typeof counted === 'string' && counted.includes('%');
    const figure = shared ? RATE.read(counted, place) : money(QUANTITY.read(counted, place) ?? 0);
    if (figure === undefined || figure.eq(0)) return undefined;
    // Below 1 it is a share however it is written; from 1 on whole cuts.
    if (!shared && figure.gte(1)) return { cuts: COUNT.read(counted, place) ?? 0 };
    return figure.gt(1)
      ? refuse('tooGreat', place.name, place.name, readBack(counted), '100 %')
      : { share: figure };
  },
  write: (stock) => ('cuts' in stock ? stock.cuts : `${stock.share.times(100).toString()} %`),
};

/** Whole cuts kept, of so many that the windows take; spares are none of them. */
export function atticCuts(cuts: number, stock: AtticStock | undefined): number {
  if (stock === undefined || cuts === 0) return 0;
  return 'cuts' in stock ? stock.cuts : upToWhole(stock.share.times(cuts));
}
