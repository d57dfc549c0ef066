/** An order's figures as cells and in sentences, in the house's unit. */
import type { CellOut } from '../cell/fields';
import { toUnit, type Length } from '../exact/length';
import { measureOf, type FigureKey } from '../window/order';
import { digits, showLength, showYardage, type Unit } from '../exact/unit';

const rounded = (figure: number): number => Number(figure.toPrecision(12));

export function figureCell(key: FigureKey, of: number, unit: Unit): CellOut {
  switch (measureOf(key)) {
    case 'length':
      return rounded(toUnit(of, unit.small));
    case 'yardage':
      return rounded(toUnit(of, unit.large));
    case 'share':
      return Number(of.toFixed(3));
    case 'count':
    case 'money':
      return rounded(of);
  }
}

export function showOf(key: FigureKey, of: number, unit: Unit): string {
  switch (measureOf(key)) {
    case 'length':
      return showNear(of, unit);
    case 'yardage':
      return showYardage(Math.round(of) as Length, unit);
    case 'share':
      return of.toFixed(2);
    case 'count':
      return digits(of);
    case 'money':
      return of.toFixed(2);
  }
}

/** A worked-out length may end in nanometres: shown to a sixty-fourth, or to the millimetre's tenth. */
export function showNear(of: number, unit: Unit): string {
  const step = unit.small === 'in' ? 396_875 : 100_000;
  return showLength((Math.round(of / step) * step) as Length, unit);
}

/** “1/8 in more”, “2 less” */
export const showDifference = (key: FigureKey, found: number, expected: number, unit: Unit): string =>
  `${showOf(key, Math.abs(found - expected), unit)} ${found > expected ? 'more' : 'less'}`;
