/** The checks of an order row, in the order their findings are told. A new check is one more line here. */
import { cords, flame } from './cautions';
import type { Check } from './check';
import { compareFigures } from './compare-figures';
import { oddGrommets, stackOverGlass, tooNarrowToTurn } from './hardware';
import { priceOffList } from './price-off-list';
import { outOfRange } from './range';
import { doubtfulDate, rowTooLong, unreadCells } from './reading';
import { liningOfASheer } from './sheers';
import { sums } from './sums';

export const CHECKS: readonly Check[] = [
  rowTooLong,
  unreadCells,
  doubtfulDate,
  compareFigures,
  liningOfASheer,
  oddGrommets,
  tooNarrowToTurn,
  outOfRange,
  stackOverGlass,
  flame,
  cords,
  sums,
  priceOffList,
];
