/** Totals rows in a table: each is compared with the rows above it, since the last one or in all. */
import { finding, Refusal } from '../cell/answer';
import { told, type OrderFinding } from './finding';
import { isBlank, type CellIn } from '../cell/fields';
import { MONEY } from '../cell/figure-kinds';
import type { OrderColumn, OrderColumns } from '../window/order';
import { ORDERED_FIGURES, type OrderKey } from '../window/meanings';
import { digits, INCHES } from '../exact/unit';

/** What people add up. Lengths of one window are never added. */
const ADDED: ReadonlySet<OrderKey> = new Set<OrderKey>([
  ...ORDERED_FIGURES.filter(({ addsUp }) => addsUp === true).map(({ key }) => key),
  'quantity',
  'amount',
  'liningAmount',
  'hardware',
  'installation',
  'freight',
  'discount',
  'tax',
  'total',
  'deposit',
]);

/** Sums are kept in whole ten-thousandths, which add exactly. */
const FINE = 10_000;

/** In ten-thousandths by the columns that are added up; NaN where a person could not add it either. */
export type Figures = readonly (number | undefined)[];

interface Running {
  readonly column: OrderColumn;
  sinceLast: number;
  inAll: number;
  /** The same of other goods, poles and cushions, which a total may count or not. */
  goodsSinceLast: number;
  goodsInAll: number;
  /** A cell could not be read: nothing can be said of the sum. */
  unread: boolean;
}

export class Totals {
  private readonly running: readonly Running[];

  constructor({ found }: OrderColumns) {
    this.running = found
      .filter(({ key }) => ADDED.has(key))
      .map((column) => ({
        column,
        sinceLast: 0,
        inAll: 0,
        goodsSinceLast: 0,
        goodsInAll: 0,
        unread: false,
      }));
  }

  /** What a row gives to each sum. */
  figuresOf(cells: readonly CellIn[]): Figures {
    return this.running.map(({ column }) => plain(cells[column.at]));
  }

  /** The figures of a row of other goods. */
  addGoods(figures: Figures): void {
    for (const [place, one] of this.running.entries()) {
      const figure = figures[place];
      if (figure === undefined || Number.isNaN(figure)) continue;
      one.goodsSinceLast += figure;
      one.goodsInAll += figure;
    }
  }

  add(figures: Figures): void {
    for (const [place, one] of this.running.entries()) {
      const figure = figures[place];
      if (figure === undefined) continue;
      if (Number.isNaN(figure)) one.unread = true;
      else {
        one.sinceLast += figure;
        one.inAll += figure;
      }
    }
  }

  /** A totals row against the rows above it. */
  compare(at: number, figures: Figures): OrderFinding[] {
    const found: OrderFinding[] = [];
    for (const [place, one] of this.running.entries()) {
      const { column, sinceLast, inAll, goodsSinceLast, goodsInAll, unread } = one;
      one.sinceLast = one.goodsSinceLast = 0;
      const figure = figures[place];
      if (figure === undefined || Number.isNaN(figure) || unread) continue;
      const sums = [sinceLast, inAll, sinceLast + goodsSinceLast, inAll + goodsInAll];
      const nearest = sums.reduce((best, sum) =>
        Math.abs(sum - figure) < Math.abs(best - figure) ? sum : best,
      );
      if (Math.abs(nearest - figure) <= FINE / 200) continue;
      const [expected, read] = [nearest / FINE, figure / FINE];
      const { heading } = column;
      const about = finding('totalRowDiffers', heading, heading, digits(read), digits(expected));
      found.push(told(at, about, { found: read, expected }));
    }
    return found;
  }
}

function plain(raw: CellIn): number | undefined {
  if (typeof raw === 'number') return Math.round(raw * FINE);
  if (raw === '' || isBlank(raw)) return undefined;
  if (typeof raw === 'string' && /^-?\d+(\.\d+)?$/.test(raw)) return Math.round(Number(raw) * FINE);
  try {
    const amount = MONEY.read(raw, { name: '', unit: INCHES });
    return amount === undefined ? undefined : Math.round(amount.toNumber() * FINE);
  } catch (thrown) {
    if (thrown instanceof Refusal) return NaN;
    throw thrown;
  }
}
