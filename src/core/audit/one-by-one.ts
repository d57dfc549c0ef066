/** Each row of past orders audited by itself; what only shows between rows is taken along for those who see them all. */
import { finding, type Finding } from '../cell/answer';
import { showDay } from '../cell/day';
import type { CellIn } from '../cell/fields';
import type { Unit } from '../exact/unit';
import type { House } from '../house/house';
import { unitOf, type Rules } from '../house/rules';
import type { FigureKey } from '../window/figures';
import { FIGURE_KEYS, usualHeading, type OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import type { OrderLine, OrderTable } from '../window/reader/order-rows';
import { namedBy } from '../window/sheet-words';
import { seenBetween, type PricesByDay, type Seen } from './between-rows';
import { RowChecked, type Check, type RowGiven } from './check';
import { CHECKS } from './checks';
import { whoseOf, type OrderFinding } from './finding';
import { meant, noteIn } from './meant';
import type { OwnWay } from './own-sums';
import type { Practices } from './practice';
import type { PriceList } from './price-list';
import { isListed } from './price-off-list';
import type { Rereading } from './reread';
import { Totals, type Figures } from './totals';

/** House rules and the first day they stood; undefined for those that always did. */
export interface Period {
  readonly from: number | undefined;
  readonly house: House;
  /** Rules that most orders of its days seem to go by instead (other-rules.ts). */
  readonly instead?: Rules;
  /** What its orders do beside the rules (learn-practices.ts). */
  readonly practices?: Practices;
}

/** The checks of a table's own ways. */
export interface Judging {
  readonly checks: readonly Check[];
  /** Findings by which they doubt a sum. */
  readonly ofSums: readonly string[];
  /** Whether what is found in a row is said once of its table. */
  isSaidOnce(once: ReadonlySet<string> | undefined, one: OrderFinding, cells: readonly CellIn[]): boolean;
  readonly prices: PricesByDay;
  holdsAt(ways: readonly OwnWay[], at: number, cells: readonly CellIn[]): boolean;
}

export interface AuditBy {
  /** Any order; all in one unit. */
  readonly periods: readonly Period[];
  readonly prices?: PriceList | undefined;
  /** What is doubtful about the rules. */
  readonly doubts?: readonly Finding[];
  /** How the table's own figures hang together. */
  readonly ways?: readonly OwnWay[];
  /** How they are judged: cell functions, which see no first orders, go without. */
  readonly judging?: Judging;
  /** Columns that agree with the rules as another figure (reread.ts). */
  readonly rereadings?: readonly Rereading[];
  /** Its totals are up to the next of it, or to the nearest; 0 leaves them exact. */
  readonly totalStep?: number;
  /** What is said once, and not row by row (`repeatKey`). */
  readonly once?: ReadonlySet<string>;
}

/** A row audited by itself: plain data, whichever thread it comes from. */
export interface Audited {
  readonly at: number;
  readonly found: readonly OrderFinding[];
  /** Whether some of its figures are as other rules give them, which is said once of all orders. */
  readonly byOtherRules: boolean;
  /** What it gives to the sums, or a totals row says of them. */
  readonly figures: Figures;
  /** Undefined for a row that is no order. */
  readonly seen: Seen | undefined;
  /** Whether it is a row of other goods, which a total may count. */
  readonly goods?: true;
}

const OF_SUMS: readonly string[] = ['partsDoNotAdd', 'amountDiffers'];
const doubtsASum = (found: readonly OrderFinding[], own: readonly string[] = []): boolean =>
  found.some(({ code }) => OF_SUMS.includes(code) || own.includes(code));

export class OneByOne {
  private readonly names = new Map<OrderKey, string>();
  private readonly periods: readonly Period[];
  private readonly totals: Totals;
  /** Days on which other rules or prices began. */
  private readonly turningDays: readonly number[];
  /** The ordered figures that the sheet has. */
  readonly ordered: readonly FigureKey[];
  readonly unit: Unit;

  constructor(
    private readonly columns: OrderTable,
    private readonly by: AuditBy,
  ) {
    for (const { key, heading } of columns.found) this.names.set(key, heading);
    for (const { key, as } of by.rereadings ?? []) {
      const heading = this.names.get(key);
      if (heading !== undefined) this.names.set(as, heading);
    }
    this.ordered = FIGURE_KEYS.filter(this.has);
    this.periods = [...by.periods].sort((a, b) => (a.from ?? -1) - (b.from ?? -1));
    this.turningDays = [
      ...this.periods.map(({ from }) => from),
      ...[...(by.prices?.values() ?? [])].flat().map(({ from }) => from),
    ].filter((day): day is number => day !== undefined);
    this.unit = unitOf(this.periodOn(undefined).house.rules);
    this.totals = new Totals(columns);
  }

  /** A column as the sheet heads it. */
  readonly name = (key: OrderKey): string => this.names.get(key) ?? usualHeading(key);
  /** A function's words in the sheet's own. */
  private readonly naming = namedBy((key) => this.names.get(key as OrderKey), { gives: () => true });
  readonly has = (key: OrderKey): boolean => this.names.has(key);

  /** Undefined for a row that is neither an order nor a total. */
  audited({ at, is, cells, order: asItStands }: OrderLine): Audited | undefined {
    if (is === 'total' || is === 'other goods') {
      const figures = this.totals.figuresOf(cells);
      const goods = is === 'other goods' && { goods: true as const };
      return { at, found: [], byOtherRules: false, figures, seen: undefined, ...goods };
    }
    if (asItStands === undefined) return undefined;
    const { rereadings = [], judging } = this.by;
    const order = rereadings.reduce((read, one) => one.read(read), asItStands);
    const { period, doubts } = this.rulesFor(order);
    const given: RowGiven = {
      at,
      order,
      rules: period.house.rules,
      instead: period.instead,
      practices: period.practices,
      unit: this.unit,
      cells,
      headings: this.columns.headings,
      untold: this.columns.untold,
      ordered: this.ordered,
      prices: this.by.prices,
      ways: this.by.ways ?? [],
      holdsAt: (place) => judging?.holdsAt(this.by.ways ?? [], place, cells) ?? false,
      once: this.by.once,
      totalStep: this.by.totalStep ?? 0,
      doubts,
      name: this.name,
      has: this.has,
      naming: this.naming,
    };
    const checks = [...CHECKS, ...(judging?.checks ?? [])];
    const row = new RowChecked(given, checks);
    const whose = whoseOf(order);
    const note = noteIn(cells, this.columns.plan.slots);
    const found = checks.flatMap((check) =>
      row
        .foundBy(check)
        .map((one) => ({ ...one, ...whose }))
        .map((one) => (check.mayBeMeant === true ? meant(one, note) : one)),
    );
    const { once } = this.by;
    const left = found.filter((one) => judging?.isSaidOnce(once, one, cells) !== true);
    const named = checks.some((check) => check.ofSizes === true && row.foundBy(check).length > 0);
    return {
      at,
      found: left,
      byOtherRules: row.byOtherRules,
      figures: this.totals.figuresOf(cells),
      seen: seenBetween(order, {
        explained: named,
        listed: isListed(given),
        adds: !doubtsASum(left, judging?.ofSums),
        note,
      }),
    };
  }

  /** Whether any of the rules say what making costs. */
  pricesMaking(): boolean {
    return this.periods.some(({ house }) =>
      Object.values(house.rules.labor).some((charge) => charge !== undefined),
    );
  }

  private periodOn(day: number | undefined): Period {
    const { periods } = this;
    let at = periods.length - 1;
    while (at > 0 && day !== undefined && (periods[at]?.from ?? -1) > day) at--;
    return periods[at] as Period;
  }

  /** The rules that an order is checked against. */
  periodOf({ facts }: Order): Period {
    return this.periodOn(facts.date?.early);
  }

  private rulesFor(order: Order): { period: Period; doubts: readonly Finding[] } {
    const { date } = order.facts;
    const period = this.periodOf(order);
    if (date === undefined || !this.turningDays.some((day) => date.early < day && day <= date.late))
      return { period, doubts: [] };
    const heading = this.name('date');
    return {
      period,
      doubts: [finding('dateDoubtful', heading, heading, showDay(date.early), showDay(date.late))],
    };
  }
}
