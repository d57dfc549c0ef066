/** Money in exact fractions of the unit, rounded once where a rule says so. */
import { ONE, below, exact, nearest, nearestDown, sumOf, type Exact } from './figures';

export const CENT_ROUNDINGS = ['half up', 'half even', 'up', 'down'] as const;
export type CentRounding = (typeof CENT_ROUNDINGS)[number];

/** Of an amount that is not below 0. */
export function toCents(amount: Exact, rounding: CentRounding): Exact {
  const cents = amount.mul(100);
  switch (rounding) {
    case 'half up':
      return nearest(cents).div(100);
    case 'up':
      return cents.ceil().div(100);
    case 'down':
      return cents.floor().div(100);
    case 'half even': {
      const up = nearest(cents);
      const down = nearestDown(cents);
      return (up.mod(2).equals(0) ? up : down).div(100);
    }
  }
}

export type Basis = 'markup on cost' | 'margin on selling price';

export const sellPrice = (cost: Exact, rate: Exact, basis: Basis, rounding: CentRounding): Exact =>
  toCents(basis === 'markup on cost' ? cost.mul(ONE.add(rate)) : cost.div(ONE.sub(rate)), rounding);

export const salesTax = (
  amounts: readonly Exact[],
  rate: Exact,
  basis: 'line' | 'invoice',
  rounding: CentRounding,
): Exact =>
  basis === 'invoice'
    ? toCents(sumOf(amounts).mul(rate), rounding)
    : sumOf(amounts.map((amount) => toCents(amount.mul(rate), rounding)));

export interface Break {
  readonly from: Exact;
  readonly price: Exact;
}

/** The price of the highest break that the quantity reaches; undefined below the first. */
export function breakPrice(quantity: Exact, breaks: readonly Break[]): Exact | undefined {
  const reached = breaks.filter(({ from }) => !below(quantity, from));
  const best = reached.reduce<Break | undefined>(
    (one, other) => (one === undefined || below(one.from, other.from) ? other : one),
    undefined,
  );
  return best?.price;
}

export interface Making {
  readonly widths: Exact;
  readonly perWidth: Exact;
  /** What the lining adds to each width. */
  readonly added: Exact;
  /** A share of the charge where the drop is above the house's height; 0 otherwise. */
  readonly surcharge: Exact;
}

export const making = ({ widths, perWidth, added, surcharge }: Making, rounding: CentRounding): Exact =>
  toCents(widths.mul(perWidth.add(added)).mul(ONE.add(surcharge)), rounding);

export const cents = (amount: number): Exact => exact(amount).div(100);
