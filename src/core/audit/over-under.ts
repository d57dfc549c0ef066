/** Money of findings, what is over and what is under apart: one does not make up for the other. */
import type { CellOut } from '../cell/fields';

export interface OverUnder {
  /** Ordered or charged above what was worked out. */
  readonly over: number;
  /** And below it. */
  readonly under: number;
}

const cents = (amount: number): number => Number(amount.toFixed(2));

export const addMoney = ({ over, under }: OverUnder, money: CellOut): OverUnder =>
  typeof money !== 'number'
    ? { over, under }
    : { over: cents(over + Math.max(money, 0)), under: cents(under + Math.max(-money, 0)) };

/** “60.00 over, 12.50 under”; blank where there is no money in it. */
export const moneyText = ({ over, under }: OverUnder): string =>
  [
    [over, 'over'],
    [under, 'under'],
  ]
    .filter(([amount]) => amount !== 0)
    .map(([amount, word]) => `${Number(amount).toFixed(2)} ${word}`)
    .join(', ');
