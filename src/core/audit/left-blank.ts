/** What a row leaves blank that nearly every other row like it gives: a lining's yardage or price, the making, an amount. */
import { finding } from '../cell/answer';
import type { OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import { told, type OrderFinding, type Whose } from './finding';
import { meant } from './meant';

export type Expected = 'liningYardage' | 'liningAmount' | 'labor' | 'amount';
/** What a row should give: whether it does. */
export type Gives = Readonly<Partial<Record<Expected, boolean>>>;

interface Rule {
  /** Whether the row has it; undefined of a row that need not. */
  readonly given: (order: Order) => boolean | undefined;
  /** Named where no more of the others lack it. */
  readonly mostWithout: number;
  readonly whose: string;
}

/** A lining that takes cloth. */
const isLined = ({ window: { lining } }: Order): boolean => lining !== undefined && lining !== 'unlined';

const isPriced = ({ facts, ordered }: Order): boolean =>
  facts.unitPrice?.gt(0) === true && (ordered.yardage ?? 0) > 0;

const RULES: Readonly<Record<Expected, Rule>> = {
  liningYardage: {
    given: (order) => (isLined(order) ? (order.ordered.liningYardage ?? 0) > 0 : undefined),
    mostWithout: 0.25,
    whose: 'lined window',
  },
  liningAmount: {
    given: (order) => (isLined(order) ? order.facts.liningAmount?.gt(0) === true : undefined),
    mostWithout: 0.1,
    whose: 'lined window',
  },
  labor: {
    given: ({ window, ordered }) => (window.heading === undefined ? undefined : (ordered.labor ?? 0) > 0),
    mostWithout: 0.05,
    whose: 'window',
  },
  amount: {
    given: (order) => (isPriced(order) ? order.facts.amount?.gt(0) === true : undefined),
    mostWithout: 0.05,
    whose: 'row with a price and its yardage',
  },
};
const EXPECTED = Object.keys(RULES) as Expected[];

/** `adds`: nothing was found of the row's sums, which would have said what is missing there. */
export function givesOf(order: Order, adds: boolean): Gives {
  const gives: Partial<Record<Expected, boolean>> = {};
  for (const key of EXPECTED) {
    const given = RULES[key].given(order);
    const saidElsewhere = given === false && key !== 'liningYardage' && !adds;
    if (given === undefined || saidElsewhere || order.unread.some(({ column }) => column.key === key))
      continue;
    gives[key] = given;
  }
  return gives;
}

interface Lacks {
  readonly row: number;
  readonly whose: Whose;
  readonly note: string | undefined;
}

const MOST_HELD = 500;

export class Blanks {
  private readonly given = new Map<Expected, number>();
  private readonly without = new Map<Expected, Lacks[]>();

  constructor(private readonly name: (key: OrderKey) => string) {}

  add(row: number, { gives, whose, note }: { readonly gives: Gives } & Omit<Lacks, 'row'>): void {
    for (const [key, given] of Object.entries(gives) as [Expected, boolean][]) {
      if (given) this.given.set(key, (this.given.get(key) ?? 0) + 1);
      else {
        const those = this.without.get(key);
        if (those === undefined) this.without.set(key, [{ row, whose, note }]);
        else if (those.length < MOST_HELD) those.push({ row, whose, note });
      }
    }
  }

  /** What was forgotten in a row; what it lacks of its lining is one thing. */
  end(): OrderFinding[] {
    const named = new Set<number>();
    return EXPECTED.flatMap((key) => {
      const without = this.without.get(key) ?? [];
      const { mostWithout, whose: like } = RULES[key];
      if (without.length >= MOST_HELD || without.length > (this.given.get(key) ?? 0) * mostWithout) return [];
      const column = this.name(key);
      const about = finding('leftBlank', column, column, like);
      return without
        .filter(({ row }) => !named.has(row))
        .map(({ row, whose, note }) => {
          named.add(row);
          return meant(told(row, about, { sure: 'likely', whose }), note);
        });
    });
  }
}
