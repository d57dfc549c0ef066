/** An order's figures as cells and in sentences, in the house's unit. */
import type { CellOut, Quantity } from '../cell/fields';
import { toUnit, type Length } from '../exact/length';
import type { FigureKey } from '../window/figures';
import { orderedFigure } from '../window/meanings';
import { digits, showLength, showYardage, type Unit } from '../exact/unit';

const rounded = (figure: number): number => Number(figure.toPrecision(12));

export function figureCell(key: FigureKey, figure: number, unit: Unit): CellOut {
  switch (orderedFigure(key).kind.quantity) {
    case 'length':
      return rounded(toUnit(figure, unit.small));
    case 'yardage':
      return rounded(toUnit(figure, unit.large));
    case 'fullness':
    case 'share':
    case 'weight':
      return Number(figure.toFixed(3));
    default:
      return rounded(figure);
  }
}

/** What a finding has in its cells beside its sentence. */
export interface FigureCells {
  readonly measure: Quantity;
  readonly found: CellOut;
  readonly expected: CellOut;
}

export const figureCells = (key: FigureKey, found: number, expected: number, unit: Unit): FigureCells => ({
  measure: orderedFigure(key).kind.quantity,
  found: figureCell(key, found, unit),
  expected: figureCell(key, expected, unit),
});

export function showOf(key: FigureKey, figure: number, unit: Unit): string {
  switch (orderedFigure(key).kind.quantity) {
    case 'length':
      return showNear(figure, unit);
    case 'yardage':
      return showYardage(Math.round(figure) as Length, unit);
    case 'fullness':
    case 'share':
    case 'weight':
    case 'money':
      return figure.toFixed(2);
    default:
      return digits(figure);
  }
}

/** A worked-out length may end in nanometres: shown to a sixty-fourth, or to the millimetre's tenth. */
export function showNear(figure: number, unit: Unit): string {
  const step = unit.small === 'in' ? 396_875 : 100_000;
  return showLength((Math.round(figure / step) * step) as Length, unit);
}

/** “1/8 in more”, “2 less” */
export const showDifference = (key: FigureKey, found: number, expected: number, unit: Unit): string =>
  `${showOf(key, Math.abs(found - expected), unit)} ${found > expected ? 'more' : 'less'}`;

export const inOrders = (count: number): string => `${String(count)} order${count === 1 ? '' : 's'}`;
