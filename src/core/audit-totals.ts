/** Totals rows in a table: each is compared with the rows above it, since the last one or in all. */
import { finding, Refusal } from './answer';
import { told, type OrderFinding } from './audit-finding';
import { isBlank, type CellIn } from './fields';
import { NOTHING, type Money } from './money';
import type { OrderColumn, OrderColumns, OrderKey } from './order';
import { AMOUNT } from './order-money';
import { INCHES } from './unit';

/** What people add up. Lengths of one window are never added. */
const ADDED: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'quantity',
  'yardage',
  'liningYardage',
  'amount',
  'liningAmount',
  'labor',
  'hardware',
  'installation',
  'freight',
  'discount',
  'tax',
  'total',
  'deposit',
]);

interface Running {
  readonly column: OrderColumn;
  sinceLast: Money;
  inAll: Money;
  /** A cell that could not be added: nothing can be said of the sum. */
  unread: boolean;
}

export class Totals {
  private readonly running: readonly Running[];

  constructor({ found }: OrderColumns) {
    this.running = found
      .filter(({ key }) => ADDED.has(key))
      .map((column) => ({ column, sinceLast: NOTHING, inAll: NOTHING, unread: false }));
  }

  add(cells: readonly CellIn[]): void {
    for (const one of this.running) {
      const figure = plain(cells[one.column.at]);
      if (figure === 'unread') one.unread = true;
      else if (figure !== undefined) {
        one.sinceLast = one.sinceLast.plus(figure);
        one.inAll = one.inAll.plus(figure);
      }
    }
  }

  compare(at: number, cells: readonly CellIn[]): OrderFinding[] {
    const found: OrderFinding[] = [];
    for (const one of this.running) {
      const { column, sinceLast, inAll, unread } = one;
      const figure = plain(cells[column.at]);
      if (figure !== undefined && figure !== 'unread' && !unread) {
        const agrees = [sinceLast, inAll].some((sum) => sum.minus(figure).abs().lte(0.005));
        if (!agrees) {
          const expected = inAll.minus(figure).abs().lt(sinceLast.minus(figure).abs()) ? inAll : sinceLast;
          const { heading } = column;
          const about = finding('totalRowDiffers', heading, heading, figure.toString(), expected.toString());
          found.push(told(at, about, { found: figure.toNumber(), expected: expected.toNumber() }));
        }
      }
      one.sinceLast = NOTHING;
    }
    return found;
  }
}

/** A figure as it stands: what a person would add with a pencil. */
function plain(raw: CellIn): Money | 'unread' | undefined {
  if (raw === '' || isBlank(raw)) return undefined;
  try {
    return AMOUNT.read(raw, { name: '', unit: INCHES });
  } catch (thrown) {
    if (thrown instanceof Refusal) return 'unread';
    throw thrown;
  }
}
