/**
 * Past orders against the house rules: every row is worked out again from what was measured, each
 * ordered figure is compared, and the slip behind a difference is looked for. Rows are taken one by
 * one, so that a table of any size is audited in the same memory.
 */
import { finding, type Finding } from '../cell/answer';
import { showDay } from '../cell/day';
import type { CellIn } from '../cell/fields';
import { parameter } from '../findings/parameters';
import type { House } from '../house/house';
import { unitOf, type Rules } from '../house/rules';
import type { Unit } from '../exact/unit';
import type { FigureKey } from '../window/figures';
import { FIGURE_KEYS, orderedFigure, usualHeading, type OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import { OrderRows, type OrderLine, type OrderTable } from '../window/reader/order-rows';
import { namedBy } from '../window/sheet-words';
import { Jobs } from './between-rows';
import { RowChecked, type RowGiven } from './check';
import { CHECKS } from './checks';
import { told, type OrderFinding } from './finding';
import type { PriceList } from './price-list';
import { isListed } from './price-off-list';
import { Totals } from './totals';

/** House rules and the first day they stood; undefined for those that always did. */
export interface Period {
  readonly from: number | undefined;
  readonly house: House;
}

export interface AuditBy {
  /** Any order; all in one unit. */
  readonly periods: readonly Period[];
  readonly prices?: PriceList | undefined;
}

/** Facts and amounts that are judged without any figure to compare. */
const JUDGED: readonly OrderKey[] = [
  'publicJob',
  'drawnBy',
  'railroaded',
  'clearGlass',
  'certificate',
  'total',
  'amount',
  'unitPrice',
  'room',
];

export class Auditor {
  private readonly rows: OrderRows;
  private readonly jobs: Jobs;
  private readonly totals: Totals;
  private readonly names = new Map<OrderKey, string>();
  /** The ordered figures that the sheet has. */
  private readonly ordered: readonly FigureKey[];
  private readonly periods: readonly Period[];
  private readonly unit: Unit;
  /** Days on which other rules or prices began. */
  private readonly turningDays: readonly number[];
  /** Order rows audited so far. */
  orders = 0;

  constructor(
    readonly columns: OrderTable,
    private readonly by: AuditBy,
  ) {
    this.rows = new OrderRows(columns);
    for (const { key, heading } of columns.found) this.names.set(key, heading);
    this.ordered = FIGURE_KEYS.filter(this.has);
    this.periods = [...by.periods].sort((a, b) => (a.from ?? -1) - (b.from ?? -1));
    this.turningDays = [
      ...this.periods.map(({ from }) => from),
      ...[...(by.prices?.values() ?? [])].flat().map(({ from }) => from),
    ].filter((day): day is number => day !== undefined);
    this.unit = unitOf(this.rulesOn(undefined));
    this.jobs = new Jobs(this.unit, this.name);
    this.totals = new Totals(columns);
  }

  private readonly name = (key: OrderKey): string => this.names.get(key) ?? usualHeading(key);
  /** A function's words in the sheet's own. */
  private readonly naming = namedBy((key) => this.names.get(key as OrderKey), { gives: () => true });
  private readonly has = (key: OrderKey): boolean => this.names.has(key);

  private rulesOn(day: number | undefined): Rules {
    const { periods } = this;
    let at = periods.length - 1;
    while (at > 0 && day !== undefined && (periods[at]?.from ?? -1) > day) at--;
    return (periods[at] as Period).house.rules;
  }

  /** What the header row lacks or says twice. */
  header(): OrderFinding[] {
    const found: Finding[] = [...this.columns.findings];
    const toCompare = this.ordered.filter((key) =>
      key === 'rodWidth' ? this.has('openingWidth') : key === 'finishedDrop' ? this.has('measured') : true,
    );
    if (toCompare.length === 0 && !JUDGED.some(this.has))
      found.push(finding('nothingToCompare', parameter('headers')));
    const lacking = new Map<string, FigureKey[]>();
    for (const figure of toCompare) {
      for (const either of orderedFigure(figure).needs) {
        if (either.some(this.has)) continue;
        const missing = either.map(usualHeading).join(' or ');
        lacking.set(missing, [...(lacking.get(missing) ?? []), figure]);
      }
    }
    for (const [missing, figures] of lacking)
      found.push(finding('columnMissing', missing, missing, figures.map(this.name).join(', ')));
    return found.map((one) => told(0, one));
  }

  /** One row below the header, counted as the caller counts. */
  row(at: number, cells: readonly CellIn[]): OrderFinding[] {
    return this.rows.push(at, cells).flatMap((line) => this.line(line));
  }

  private line({ at, is, cells, order }: OrderLine): OrderFinding[] {
    if (is === 'total') return this.totals.compare(at, cells);
    if (order === undefined) return [];
    this.orders++;
    this.totals.add(cells);
    const { rules, doubts } = this.rulesFor(order);
    const given: RowGiven = {
      at,
      order,
      rules,
      unit: this.unit,
      cells,
      headings: this.columns.headings,
      ordered: this.ordered,
      prices: this.by.prices,
      doubts,
      name: this.name,
      has: this.has,
      naming: this.naming,
    };
    const row = new RowChecked(given, CHECKS);
    const found = CHECKS.flatMap((check) => row.foundBy(check));
    const named = CHECKS.some((check) => check.ofSizes === true && row.foundBy(check).length > 0);
    found.push(...this.jobs.take(at, order, named, isListed(given)));
    return found;
  }

  /** What only shows once every row was seen. */
  end(): OrderFinding[] {
    const last = this.rows.end().flatMap((line) => this.line(line));
    return [...last, ...this.jobs.end(), ...this.written().map((one) => told(0, one))];
  }

  private rulesFor({ facts }: Order): { rules: Rules; doubts: readonly Finding[] } {
    const { date } = facts;
    if (date === undefined) return { rules: this.rulesOn(undefined), doubts: [] };
    const rules = this.rulesOn(date.early);
    if (!this.turningDays.some((day) => date.early < day && day <= date.late)) return { rules, doubts: [] };
    const heading = this.name('date');
    return {
      rules,
      doubts: [finding('dateDoubtful', heading, heading, showDay(date.early), showDay(date.late))],
    };
  }

  /** How units, currencies and dates were written down the columns. */
  private written(): Finding[] {
    const found: Finding[] = [];
    for (const [{ heading, unit, kind }, marks] of this.rows.written.marks) {
      const texts = [...marks.values()];
      if (kind.quantity === 'date') {
        found.push(finding('datesAsText', heading, heading, texts[0] ?? ''));
      } else if (kind.quantity === 'money') {
        found.push(
          texts.length > 1
            ? finding('mixedCurrencies', heading, heading, texts.join(', '))
            : finding('currencySigns', heading, heading, texts[0] ?? ''),
        );
      } else {
        const own = unit.name === 'inches' ? 'imperial' : 'metric';
        const other = marks.get(own === 'imperial' ? 'metric' : 'imperial');
        const one = marks.get('bare') ?? marks.get(own);
        if (other !== undefined && one !== undefined)
          found.push(finding('mixedUnits', heading, heading, one, other, unit.small));
      }
    }
    return found;
  }
}
