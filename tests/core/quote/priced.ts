/** Windows and cloth prices out of plain cells, for the tests of prices. */
import { CLOTH_BREAKS, type ClothPrice } from '../../../src/core/floor/cloth-price';
import { windowUnder } from '../window/ordered';
import { readHouse, type House } from '../../../src/core/house/house';
import { WindowWork } from '../../../src/core/window/job';
import { fromUnit } from '../../../src/core/exact/length';
import { money } from '../../../src/core/exact/money';
import type { Unit } from '../../../src/core/exact/unit';

export interface PriceGiven {
  readonly price?: string;
  readonly minimum?: number;
  /** Its length, and its price by the yard or metre. */
  readonly wholeRoll?: readonly [number, number];
}

export function priceOf({ price, minimum, wholeRoll }: PriceGiven, unit: Unit): ClothPrice {
  return {
    breaks: CLOTH_BREAKS.read(price ?? '', { name: 'price', unit }) ?? [],
    minimum: minimum === undefined ? undefined : fromUnit(minimum, unit.large),
    wholeRoll: wholeRoll && { length: fromUnit(wholeRoll[0], unit.large), price: money(wholeRoll[1]) },
  };
}

/** The first row heads the others. */
export function worksOf(
  rows: readonly (readonly unknown[])[],
  rules: readonly (readonly unknown[])[],
): { readonly works: readonly WindowWork[]; readonly house: House } {
  const [headers = [], ...windows] = rows;
  const house = readHouse(rules);
  return {
    house,
    works: windows.map((row) => new WindowWork(windowUnder(headers, row, house.unit).window, house.rules)),
  };
}
