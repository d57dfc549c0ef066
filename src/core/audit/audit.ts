/**
 * Past orders against the house rules: every row is worked out again from what was measured, each
 * ordered figure is compared, and the slip behind a difference is looked for. Rows are taken one by
 * one, so that a table of any size is audited in the same memory.
 */
import type { Unit } from '../exact/unit';
import { finding, type Finding } from '../cell/answer';
import type { CellIn } from '../cell/fields';
import { parameter } from '../findings/parameters';
import type { FigureKey } from '../window/figures';
import { orderedFigure, usualHeading, type OrderKey } from '../window/meanings';
import type { OrderColumn } from '../window/order';
import { OrderRows, type OrderTable } from '../window/reader/order-rows';
import { Jobs } from './between-rows';
import { told, type OrderFinding } from './finding';
import { OneByOne, type AuditBy, type Audited } from './one-by-one';
import { inOrders } from './show';
import { Totals } from './totals';

export type { AuditBy, Period } from './one-by-one';

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

/** How a column was written further down, by its place among the columns found. */
export type Marks = readonly (readonly [number, ReadonlyMap<string, string>])[];

export const marksOf = ({ table, written }: OrderRows): Marks =>
  [...written.marks].map(([column, marks]) => [table.found.indexOf(column), marks]);

const ofOtherRules = (orders: number): Finding => finding('ofOtherRules', 'house rules', inOrders(orders));

export class Auditor {
  private readonly rows: OrderRows;
  private readonly alone: OneByOne;
  private readonly jobs: Jobs;
  private readonly totals: Totals;
  private byOtherRules = 0;
  /** Order rows audited so far. */
  orders = 0;

  constructor(
    readonly columns: OrderTable,
    private readonly by: AuditBy,
  ) {
    this.rows = new OrderRows(columns);
    this.alone = new OneByOne(columns, by);
    this.jobs = new Jobs(this.alone.unit, this.alone.name, by.judging?.prices);
    this.totals = new Totals(columns);
  }

  /** The house's: in it stand the figures of every finding. */
  get unit(): Unit {
    return this.alone.unit;
  }

  /** What the header row lacks or says twice. */
  header(): OrderFinding[] {
    const { has, name, ordered } = this.alone;
    const found: Finding[] = [...this.columns.findings];
    const toCompare = ordered.filter((key) =>
      key === 'rodWidth' ? has('openingWidth') : key === 'finishedDrop' ? has('measured') : true,
    );
    if (toCompare.length === 0 && !JUDGED.some(has))
      found.push(finding('nothingToCompare', parameter('headers')));
    const lacking = new Map<string, FigureKey[]>();
    for (const figure of toCompare) {
      for (const either of orderedFigure(figure).needs) {
        if (either.some(has)) continue;
        const missing = either.map(usualHeading).join(' or ');
        lacking.set(missing, [...(lacking.get(missing) ?? []), figure]);
      }
    }
    for (const [missing, figures] of lacking)
      found.push(finding('columnMissing', missing, missing, figures.map(name).join(', ')));
    if (has('labor') && !this.alone.pricesMaking())
      found.push(finding('laborUnchecked', name('labor'), name('labor')));
    return [...found, ...(this.by.doubts ?? [])].map((one) => told(0, one));
  }

  /** One row below the header, counted as the caller counts. */
  row(at: number, cells: readonly CellIn[]): OrderFinding[] {
    return this.rows.push(at, cells).flatMap((line) => this.take(this.alone.audited(line)));
  }

  /** A row that was audited by itself, here or elsewhere, in its turn. */
  take(row: Audited | undefined): OrderFinding[] {
    if (row === undefined) return [];
    const { at, figures, found, seen } = row;
    if (row.goods === true) {
      this.totals.addGoods(figures);
      return [];
    }
    if (seen === undefined) return this.totals.compare(at, figures);
    this.orders++;
    if (row.byOtherRules && found.length === 0) this.byOtherRules++;
    this.totals.add(figures);
    return [...found, ...this.jobs.take(at, seen)];
  }

  /** How the columns of rows that were audited elsewhere are written. */
  takeMarks(marks: Marks): void {
    for (const [place, one] of marks)
      this.rows.written.noteLater(this.columns.found[place] as OrderColumn, one);
  }

  /** What only shows once every row was seen. */
  end(): OrderFinding[] {
    const last = this.rows.end().flatMap((line) => this.take(this.alone.audited(line)));
    const more = this.byOtherRules === 0 ? [] : [ofOtherRules(this.byOtherRules)];
    return [...last, ...this.jobs.end(), ...[...this.written(), ...more].map((one) => told(0, one))];
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
