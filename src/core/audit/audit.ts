/**
 * Past orders against the house rules: every row is worked out again from what was measured, each
 * ordered figure is compared, and the slip behind a difference is looked for. Rows are taken one by
 * one, so that a table of any size is audited in the same memory.
 */
import { parameter } from '../findings/parameters';
import { finding, Refusal, renamed, type Finding } from '../cell/answer';
import { cords, flame, oddGrommets, stackOverGlass, sums, tooNarrowToTurn, type Facing } from './facts';
import { canBeWorkedOut, Compared, restsOn, type Comparison, type Wrong } from './compared';
import { told, type OrderFinding } from './finding';
import { Jobs } from './between-rows';
import { priceOn, sinceWhen, type PriceList } from './price-list';
import { outOfRange } from './range';
import { Totals } from './totals';
import { figureCell, showDifference, showOf } from './show';
import { explain, yardageOf, type Explained } from './slips';
import type { ColumnKey } from '../window/columns';
import { showDay } from '../cell/day';
import { isBlank, readBack, type CellIn } from '../cell/fields';
import { TooLarge, toUnit } from '../exact/length';
import { isNear } from '../exact/money';
import type { FigureKey } from '../window/figures';
import { FIGURE_KEYS, orderedFigure, usualHeading, type OrderKey } from '../window/meanings';
import { OrderReader, rowKind, type Order, type OrderColumns } from '../window/order';
import { unitOf, type Rules } from '../house/rules';
import type { House } from '../house/house';
import { namedBy } from '../window/sheet-words';
import type { Unit } from '../exact/unit';

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

/** What the core finds in a window that is worth saying of an order. */
const OWN: ReadonlySet<string> = new Set([
  'extensionOutsideBand',
  'floorUneven',
  'repeatWiderThanCloth',
  'waveRatio',
]);

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
  private readonly reader: OrderReader;
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
    readonly columns: OrderColumns,
    private readonly by: AuditBy,
  ) {
    this.reader = new OrderReader(columns);
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
    for (const [missing, of] of lacking)
      found.push(finding('columnMissing', missing, missing, of.map(this.name).join(', ')));
    return found.map((one) => told(0, one));
  }

  /** One row below the header, counted as the caller counts. */
  row(at: number, cells: readonly CellIn[]): OrderFinding[] {
    const kind = rowKind(cells, this.columns);
    if (kind === 'total') return this.totals.compare(at, cells);
    if (kind !== 'order') return [];
    this.orders++;
    this.totals.add(cells);
    const order = this.reader.read(cells);
    const { rules, doubts } = this.rulesFor(order);
    const facing: Facing = { at, order, rules, name: this.name, has: this.has };
    const found: OrderFinding[] = order.unread.length > 0 ? this.beyond(at, cells) : [];
    for (const { refusal } of order.unread) found.push(told(at, refusal));
    for (const one of doubts) found.push(told(at, one));
    const odd = oddGrommets(facing);
    const narrow = tooNarrowToTurn(facing);
    const { findings, yardage } = this.figures(facing, odd.length > 0, narrow.length > 0);
    const explained = findings.length > 0;
    found.push(...findings, ...odd, ...narrow);
    if (!explained && order.unread.length === 0) found.push(...outOfRange(facing));
    const named = found.length > 0;
    found.push(...this.safely(at, () => stackOverGlass(facing)), ...flame(facing), ...cords(facing));
    const price = this.price(facing);
    found.push(...sums(facing, yardage), ...(price ?? []));
    found.push(...this.jobs.take(at, order, named, price !== undefined));
    return found;
  }

  /** A comma too many moves every figure behind it. */
  private beyond(at: number, cells: readonly CellIn[]): OrderFinding[] {
    const { headings } = this.columns;
    const headed = headings.reduce((last, heading, place) => (heading === '' ? last : place + 1), 0);
    const extra = cells.slice(headed).find((cell) => !isBlank(cell));
    if (extra === undefined) return [];
    const last = headings[headed - 1] ?? '';
    return [told(at, finding('rowTooLong', last, cells.length, headed, readBack(extra)))];
  }

  /** What only shows once every row was seen. */
  end(): OrderFinding[] {
    return [...this.jobs.end(), ...this.written().map((one) => told(0, one))];
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

  /** A row's own bad input is said; anything it could not be reckoned with is passed over. */
  private safely(at: number, work: () => OrderFinding[]): OrderFinding[] {
    try {
      return work();
    } catch (thrown) {
      if (thrown instanceof TooLarge) return [];
      if (thrown instanceof Refusal) return thrown.error === '#N/A' ? [] : [told(at, thrown.finding)];
      throw thrown;
    }
  }

  private figures(
    { at, order, rules }: Facing,
    oddGrommet: boolean,
    tooNarrow: boolean,
  ): { findings: OrderFinding[]; yardage: number | undefined } {
    const turned = order.facts.railroaded === 'yes';
    const unread = order.unread.map(({ column }) => column.key as ColumnKey);
    const figures = this.ordered.filter(
      (key) =>
        !(
          (key === 'marks' && oddGrommet) ||
          (turned && (key === 'cutLength' || key === 'widths' || key === 'deliveredFullness')) ||
          (tooNarrow && (key === 'yardage' || key === 'railroadedYardage')) ||
          unread.some((column) => restsOn(key, column))
        ),
    );
    const { window, ordered } = order;
    const compared = new Compared(window, ordered, rules, turned);
    const first = compared.compare(figures);
    const findings = first.refusals
      .filter(({ refusal }) => refusal.error === '#VALUE!')
      .slice(0, 1)
      .map(({ key, refusal }) => {
        const all = first.refusals.map((one) => this.name(one.key)).join(', ');
        return told(at, finding('notWorkedOut', this.name(key), all, refusal.finding.sentence));
      });
    if (first.wrong.length === 0) findings.push(...this.own(at, compared));
    const row = { window, ordered, turned, name: this.name };
    const slip = first.wrong.length === 0 ? undefined : explain(row, rules, first);
    const yardage = slip === undefined ? yardageOf(compared) : slip.yardage;
    findings.push(...this.said(at, order, compared, first, slip, yardage));
    return { findings, yardage };
  }

  private said(
    at: number,
    order: Order,
    compared: Compared,
    { wrong }: Comparison,
    slip: Explained | undefined,
    yardage: number | undefined,
  ): OrderFinding[] {
    const found: OrderFinding[] = [];
    const money = this.moneyOf(order, yardage, compared.rules);
    if (slip !== undefined) found.push(told(at, slip.finding, { ...slip, money }));
    const left = slip === undefined ? wrong : slip.left;
    for (const [place, one] of left.entries())
      found.push(this.differs(at, one, compared, slip === undefined && place === 0 ? money : undefined));
    return found;
  }

  private differs(
    at: number,
    { key, found, expected }: Wrong,
    compared: Compared,
    money: number | undefined,
  ): OrderFinding {
    const heading = this.name(key);
    const { unit } = this;
    const band = key === 'rodWidth' ? compared.rodBand() : undefined;
    const about =
      band === undefined
        ? finding(
            'figureDiffers',
            heading,
            heading,
            showOf(key, found, unit),
            showOf(key, expected, unit),
            showDifference(key, found, expected, unit),
          )
        : finding(
            'rodOutsideBand',
            heading,
            heading,
            showOf(key, found, unit),
            showOf(key, band.low, unit),
            showOf(key, band.high, unit),
          );
    return told(at, about, {
      found: figureCell(key, found, unit),
      expected: figureCell(key, expected, unit),
      money,
    });
  }

  /** What the yardage ordered costs more or less than the yardage worked out. */
  private moneyOf({ ordered, facts }: Order, yardage: number | undefined, rules: Rules): number | undefined {
    if (yardage === undefined || ordered.yardage === undefined || facts.unitPrice === undefined)
      return undefined;
    const apart = ordered.yardage - yardage;
    if (Math.abs(apart) <= rules.yardageTolerance) return undefined;
    return facts.unitPrice.times(toUnit(apart, this.unit.large)).toNumber();
  }

  /** What the core itself finds worth a look in what was measured. */
  private own(at: number, { window, work }: Compared): OrderFinding[] {
    const wave = window.heading === 'wave' && window.fullness !== undefined;
    const extended = window.leftExtension !== undefined || window.rightExtension !== undefined;
    const uneven = window.measuredCentre !== undefined || window.measuredRight !== undefined;
    const wide = window.horizontalRepeat !== undefined;
    if (!wave && !extended && !uneven && !wide) return [];
    return this.safely(at, () => {
      if (window.openingWidth !== undefined) work.rodWidth();
      if (window.measured !== undefined && window.heading !== undefined) work.finishedDrop();
      if (wave && canBeWorkedOut('yardage', window)) work.yardage();
      const cloth = wide && canBeWorkedOut('yardage', window) ? work.cloth().work.usable.findings : [];
      const found: OrderFinding[] = [];
      for (const one of work.findings().concat(cloth))
        if (OWN.has(one.code)) found.push(told(at, renamed(one, this.naming)));
      return found;
    });
  }

  /** Undefined where no list says what the fabric costs. */
  private price({ at, order, rules }: Facing): OrderFinding[] | undefined {
    const { unitPrice, date } = order.facts;
    const { fabric } = order.window;
    if (this.by.prices === undefined || unitPrice === undefined || fabric === undefined) return undefined;
    const listed = priceOn(this.by.prices, fabric, date?.early);
    if (listed === undefined) return undefined;
    if (isNear(unitPrice, listed.price, rules.moneyTolerance)) return [];
    const heading = this.name('unitPrice');
    const about = finding(
      'priceOffList',
      heading,
      heading,
      unitPrice.toFixed(2),
      `“${fabric}”`,
      listed.price.toFixed(2),
      sinceWhen(listed),
    );
    const apart = unitPrice.minus(listed.price);
    const { yardage } = order.ordered;
    return [
      told(at, about, {
        found: unitPrice.toNumber(),
        expected: listed.price.toNumber(),
        money: yardage === undefined ? undefined : apart.times(toUnit(yardage, this.unit.large)).toNumber(),
      }),
    ];
  }

  /** How units, currencies and dates were written down the columns. */
  private written(): Finding[] {
    const found: Finding[] = [];
    for (const [{ heading, unit, kind }, marks] of this.reader.written) {
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
