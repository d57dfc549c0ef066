/** Rows of past orders through the one reader: each order with its window, ordered figures and facts. */
import { finding, Refusal, type Finding } from '../../cell/answer';
import { DATE } from '../../cell/day';
import { isBlank, type CellIn, type Kind } from '../../cell/fields';
import { money } from '../../exact/money';
import { INCHES, type Unit } from '../../exact/unit';
import { panelsOf, type Draw } from '../../cell/treatment';
import type { Facts } from '../facts';
import type { FigureKey } from '../figures';
import { FIGURE_KEYS, MEANINGS, type Meaning, type OrderKey } from '../meanings';
import { Written, type Order, type OrderColumn, type OrderColumns } from '../order';
import { letters } from '../../cell/letters';
import { Above } from './above';
import { aboutAlike, headedAlike } from './alike';
import { BOUNDED, windowOf } from './as-window';
import { cellOf, type Cell } from './cells';
import { headingOf } from './meanings';
import { RowReader } from './rows';
import type { Plan, RowKind, RowRead, Values } from './slots';
import type { Understanding } from './understand';

/** A table of orders as it was understood. */
export interface OrderTable extends OrderColumns {
  readonly plan: Plan;
  /** Columns of money, by their place, of which nobody knows what it is for. */
  readonly untold: readonly number[];
}

const MEANT = new Map<OrderKey, Meaning>(MEANINGS.map((meaning) => [meaning.key, meaning]));

const inUnit = (unit: Unit, own: string | undefined): Unit =>
  own === undefined || own === unit.small || own === unit.large
    ? unit
    : { ...unit, small: own as Unit['small'], large: own as Unit['large'] };

/** What is said of a table of orders before any row: columns taken, asked, and in another unit. */
function aboutColumns({ columns }: Understanding, unit: Unit): Finding[] {
  const alike = headedAlike(columns);
  const each = columns.flatMap(({ at, heading, means, sure, unit: own, couldBe, says }): Finding[] => {
    const [key] = means;
    const name = heading === '' ? letters(at) : heading;
    const first =
      says === undefined || means.length > 0 || alike.has(heading.toLowerCase())
        ? undefined
        : columns.find((one) => one.means.includes(says));
    if (first !== undefined && says !== undefined)
      return [finding('secondColumn', name, name, headingOf(says), first.heading)];
    if (key === undefined)
      return sure === 'asked' && !alike.has(heading.toLowerCase())
        ? [
            finding(
              'columnAsked',
              name,
              letters(at),
              heading,
              couldBe.map((one) => MEANT.get(one as OrderKey)?.heading ?? one).join(' or '),
            ),
          ]
        : [];
    if (sure === 'likely')
      return [finding('columnTaken', name, letters(at), heading, means.map(headingOf).join(' and '))];
    return own !== undefined && own !== unit.small && own !== unit.large
      ? [finding('columnInOtherUnit', name, name, own, unit.name)]
      : [];
  });
  return [...aboutAlike(columns), ...each];
}

/** So many columns of money of which nobody knows what they are for are thought of in a sum. */
const MOST_UNTOLD = 6;

/** The columns of a table of orders as the audit takes them. */
export function orderTable(understanding: Understanding, unit: Unit): OrderTable {
  const { columns, plan, header } = understanding;
  const found = columns.flatMap(({ at, heading, means, addsTo, unit: own }): OrderColumn[] =>
    addsTo !== undefined
      ? []
      : means.flatMap((key) => {
          const meaning = MEANT.get(key);
          return meaning === undefined ? [] : [{ ...meaning, at, heading, unit: inUnit(unit, own) }];
        }),
  );
  const headings = header.texts.map((texts) => texts.join(' '));
  const untold = columns.filter(
    ({ at, means, addsTo }) => means.length === 0 && addsTo === undefined && header.reads[at]?.money === true,
  );
  return {
    found,
    headings,
    findings: aboutColumns(understanding, unit),
    plan,
    untold: untold.slice(0, MOST_UNTOLD).map(({ at }) => at),
  };
}

const PLAIN = /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?$/;
const figureCell = (raw: CellIn): Cell =>
  typeof raw === 'string' && PLAIN.test(raw) ? Number(raw) : cellOf(raw);

/** One row as it stands, what it is, and its order where it is one. */
export interface OrderLine {
  readonly at: number;
  readonly is: RowKind;
  readonly cells: readonly CellIn[];
  readonly order: Order | undefined;
}

export class OrderRows {
  private readonly reader: RowReader;
  private readonly held = new Map<number, readonly CellIn[]>();
  readonly written = new Written();

  constructor(
    readonly table: OrderTable,
    readonly above: Above = new Above(),
  ) {
    this.reader = new RowReader(table.plan, above);
  }

  /** The rows that wait for what follows them. */
  get waiting(): [number, readonly CellIn[]][] {
    return [...this.held];
  }

  /** The rows that are certain once this one is seen. */
  push(at: number, cells: readonly CellIn[]): OrderLine[] {
    this.held.set(at, cells);
    // An empty cell is 0 on some hosts.
    const blank = cells.every((raw) => raw === 0 || isBlank(raw));
    return this.reader.push(at, blank ? [] : cells.map(figureCell)).map((read) => this.line(read));
  }

  end(): OrderLine[] {
    return this.reader.end().map((read) => this.line(read));
  }

  private line(read: RowRead): OrderLine {
    const cells = this.held.get(read.row) ?? [];
    this.held.delete(read.row);
    const order = read.is === 'window' ? this.order(read, cells) : undefined;
    return { at: read.row, is: read.is, cells, order };
  }

  private order(read: RowRead, cells: readonly CellIn[]): Order {
    const values = { ...read.values };
    const unread: { column: OrderColumn; refusal: Finding }[] = [];
    for (const column of this.table.found) this.written.note(column, cells[column.at]);
    for (const one of read.unread) {
      const column = this.table.found.find(({ at, key }) => at === one.at && key === one.key);
      if (column === undefined) continue;
      if (one.isOneWay === true) {
        values.draw = toEitherSide(values);
        continue;
      }
      const refusal = refused(column, cells[column.at], one, read.row);
      if (refusal !== undefined) unread.push({ column, refusal });
    }
    for (const column of this.table.found) {
      const refusal = BOUNDED.has(column.key) ? outOfBounds(column, values[column.key]) : undefined;
      if (refusal === undefined) continue;
      values[column.key] = undefined;
      unread.push({ column, refusal });
    }
    this.perPanel(values);
    const { unit = INCHES } = this.table.found.find(({ key }) => key === 'projection') ?? {};
    const window = windowOf(values, unit);
    return { window, ordered: orderedIn(values), facts: this.factsIn(values, cells), unread };
  }

  /** A finished width of the pair is each panel’s half; a price by the width is no price by the yard. */
  private perPanel(values: Values): void {
    for (const { keys, per } of this.table.plan.slots) {
      if (per === 'pair' && keys[0] === 'finishedWidth' && values.finishedWidth !== undefined)
        values.finishedWidth =
          Number(values.finishedWidth) / panelsOf((values.draw as Draw | undefined) ?? 'pair');
      if (keys[0] === 'unitPrice' && per !== undefined) values.unitPrice = undefined;
    }
  }

  private factsIn(values: Values, cells: readonly CellIn[]): Facts {
    const facts: Partial<Record<OrderKey, unknown>> = {};
    for (const [key, value] of Object.entries(values) as [OrderKey, string | number | undefined][]) {
      const meaning = MEANT.get(key);
      if (meaning?.group !== 'fact' || value === undefined) continue;
      facts[key] = asFact(key, value, meaning.kind);
    }
    const dated = this.table.found.find(({ key }) => key === 'date');
    if (dated !== undefined && facts.date === undefined) {
      const day = dayEitherWay(cells[dated.at], dated);
      if (day !== undefined) facts.date = day;
    }
    return facts as Facts;
  }
}

/** One panel is cut alike for either side; it is drawn to where there is more room beside the opening. */
const toEitherSide = ({ leftExtension = 0, rightExtension = 0 }: Values): Draw =>
  Number(rightExtension) > Number(leftExtension) ? 'one-way right' : 'one-way left';

/** Why a count is none that its kind takes, like a quantity of 0. */
function outOfBounds(
  { kind, heading, unit }: OrderColumn,
  value: string | number | undefined,
): Finding | undefined {
  if (value === undefined) return undefined;
  try {
    kind.read(value, { name: heading, unit });
    return undefined;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding;
    throw thrown;
  }
}

function asFact(key: OrderKey, value: string | number, kind: Kind<unknown>): unknown {
  if (key === 'date') return { early: value, late: value };
  return kind.quantity === 'money' ? money(value) : value;
}

/** A date that could be two is kept as both. */
function dayEitherWay(raw: CellIn, { heading, unit }: OrderColumn): unknown {
  if (isBlank(raw) || typeof raw === 'object') return undefined;
  try {
    return DATE.read(raw, { name: heading, unit });
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

/** Why a cell is left out, in the words of its kind; undefined where it can be read after all. */
function refused(
  column: OrderColumn,
  raw: CellIn,
  { text }: RowRead['unread'][number],
  row: number,
): Finding | undefined {
  const { kind, heading, unit, key } = column;
  try {
    const value = typeof raw === 'object' ? undefined : kind.read(raw, { name: heading, unit });
    if (value !== undefined && key === 'date') return undefined;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding;
    throw thrown;
  }
  return finding(
    'cellsUnread',
    heading,
    letters(column.at),
    headingOf(key),
    1,
    `${letters(column.at)}${row}`,
    text,
  );
}

function orderedIn(values: Values): Partial<Record<FigureKey, number>> {
  const ordered: Partial<Record<FigureKey, number>> = {};
  for (const key of FIGURE_KEYS) {
    const value = values[key];
    if (typeof value === 'number') ordered[key] = value;
  }
  return ordered;
}
