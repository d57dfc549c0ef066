/**
 * A past order's row: what was measured, the figures that were ordered, and the facts and money
 * that stand beside them. Columns are found by their headings, whatever else the sheet holds.
 */
import { finding, Refusal, type Finding } from '../cell/answer';
import type { Window } from './columns';
import type { Facts } from './facts';
import type { FigureKey } from './figures';
import { MEANINGS, type Meaning, type MeaningGroup, type OrderKey } from './meanings';
import { isBlank, readBack, type CellIn, type Kind } from '../cell/fields';
import type { LengthUnit } from '../exact/length';
import { bare } from '../cell/treatment';
import type { Unit } from '../exact/unit';

/** A column of the sheet: where it stands, its heading as the sheet has it, and what it means. */
export interface OrderColumn {
  readonly key: OrderKey;
  readonly group: MeaningGroup;
  readonly at: number;
  readonly heading: string;
  readonly kind: Kind<unknown>;
  readonly unit: Unit;
}

export interface OrderColumns {
  readonly found: readonly OrderColumn[];
  /** The whole header row, tidied. */
  readonly headings: readonly string[];
  readonly findings: readonly Finding[];
}

const HEADING_UNITS: Readonly<Record<string, LengthUnit>> = {
  in: 'in',
  inch: 'in',
  inche: 'in',
  cm: 'cm',
  centimetre: 'cm',
  centimeter: 'cm',
  mm: 'mm',
  millimetre: 'mm',
  millimeter: 'mm',
  ft: 'ft',
  feet: 'ft',
  m: 'm',
  metre: 'm',
  meter: 'm',
  yd: 'yd',
  yard: 'yd',
};

const tidy = (raw: CellIn): string =>
  String(raw ?? '')
    .replace(/[\s_]+/g, ' ')
    .trim();
const withoutBrackets = (heading: string): string => heading.replace(/[([{][^)\]}]*[)\]}]/g, ' ');
/** “Fabric $” is no fabric, while “Total $” is a total. */
const priced = (heading: string): string => withoutBrackets(heading).replace(/[$€£¥]/g, ' price ');
/** A plural is told from a singular here: “widths” are counted, a “width” is measured. */
const plain = (heading: string): string => heading.toLowerCase().replace(/[^a-z0-9²/]+/g, '');

/** "Width (cm)" is in centimetres, whatever the house measures in. */
function unitOfHeading(heading: string, house: Unit): Unit {
  const bracketed = /[([{]\s*([^)\]}]*?)\s*[)\]}]/.exec(heading)?.[1];
  if (bracketed === undefined) return house;
  const unit = bracketed === '"' ? 'in' : HEADING_UNITS[bare(bracketed)];
  return unit === undefined || unit === house.small || unit === house.large
    ? house
    : { ...house, small: unit, large: unit };
}

/** From the surest way of reading a heading to the loosest. */
const WAYS: readonly ((heading: string, meaning: Meaning) => boolean)[] = [
  (heading, meaning) => plain(heading) === plain(meaning.heading),
  (heading, meaning) => meaning.also.some((words) => plain(words) === plain(heading)),
  (heading, meaning) => [meaning.heading, ...meaning.also].some((words) => bare(words) === bare(heading)),
];

/** Which column is what. A second column of one meaning is left out, and said so. */
export function orderColumns(
  headers: readonly CellIn[],
  unit: Unit,
  /** What the user says of a column, by its place: a meaning, or null for none. */
  said: Readonly<Record<number, OrderKey | null>> = {},
): OrderColumns {
  const headings = headers.map(tidy);
  const taken = new Map<OrderKey, OrderColumn>();
  const columns: (OrderColumn | undefined)[] = headings.map(() => undefined);
  const findings: Finding[] = [];
  const take = (at: number, meaning: Meaning): void => {
    const heading = headings[at] ?? '';
    const column = { ...meaning, at, heading, unit: unitOfHeading(heading, unit) };
    columns[at] = column;
    taken.set(meaning.key, column);
  };
  for (const meaning of MEANINGS) {
    const at = headings.findIndex((_, at) => said[at] === meaning.key);
    if (at >= 0) take(at, meaning);
  }
  const open = (at: number): boolean =>
    columns[at] === undefined && said[at] === undefined && headings[at] !== '';
  for (const spelled of [priced, withoutBrackets]) {
    for (const way of WAYS) {
      for (const [at, heading] of headings.entries()) {
        if (!open(at)) continue;
        const words = spelled(heading);
        const money = words !== priced(heading);
        const meaning = MEANINGS.find(
          (one) => !taken.has(one.key) && (!money || one.kind.quantity === 'money') && way(words, one),
        );
        if (meaning !== undefined) take(at, meaning);
      }
    }
  }
  for (const [at, heading] of headings.entries()) {
    if (!open(at)) continue;
    const meaning = MEANINGS.find((one) => WAYS.some((way) => way(priced(heading), one)));
    const first = meaning === undefined ? undefined : taken.get(meaning.key);
    if (meaning !== undefined && first !== undefined)
      findings.push(finding('secondColumn', heading, heading, meaning.heading, first.heading));
  }
  const found = columns.filter((one): one is OrderColumn => one !== undefined);
  for (const { heading, unit: own, group } of found) {
    if (own !== unit && group !== 'fact')
      findings.push(finding('columnInOtherUnit', heading, heading, own.small, unit.name));
  }
  return { found, headings, findings };
}

/** One order as read. What could not be read is left out and said. */
export interface Order {
  readonly window: Window;
  readonly ordered: Readonly<Partial<Record<FigureKey, number>>>;
  readonly facts: Facts;
  readonly unread: readonly { readonly column: OrderColumn; readonly refusal: Finding }[];
}

type Held = { readonly value: unknown } | { readonly refusal: Finding };

const MOST_KEPT = 4_000;
const UNIT_IN_TEXT = /(mm|cm|m|yd|ft|in|["'″′”’])[a-z.]*\s*$/i;

/** Reads rows through their columns; a text met before is not read again. */
export class OrderReader {
  /** By column; undefined where texts seldom repeat themselves. */
  private readonly kept: (Map<string, Held> | undefined)[];
  readonly written = new Written();

  constructor(readonly columns: OrderColumns) {
    this.kept = columns.found.map(() => new Map<string, Held>());
  }

  read(row: readonly CellIn[]): Order {
    const window: Partial<Record<OrderKey, unknown>> = {};
    const ordered: Partial<Record<OrderKey, number>> = {};
    const facts: Partial<Record<OrderKey, unknown>> = {};
    let unread: { column: OrderColumn; refusal: Finding }[] | undefined;
    const { found } = this.columns;
    for (let at = 0; at < found.length; at++) {
      const column = found[at] as OrderColumn;
      const raw = row[column.at];
      if (raw === '' || isBlank(raw)) continue;
      const held = this.cell(column, raw, at);
      if ('refusal' in held) {
        (unread ??= []).push({ column, refusal: held.refusal });
        continue;
      }
      if (held.value === undefined) continue;
      if (column.group === 'window') window[column.key] = held.value;
      else if (column.group === 'fact') facts[column.key] = held.value;
      else ordered[column.key] = held.value as number;
    }
    if (window.rodWidth !== undefined) ordered.rodWidth = window.rodWidth as number;
    if (window.finishedDrop !== undefined) ordered.finishedDrop = window.finishedDrop as number;
    return { window: window as Window, ordered, facts: facts as Facts, unread: unread ?? [] };
  }

  private cell(column: OrderColumn, raw: CellIn, at: number): Held {
    this.written.note(column, raw);
    if (typeof raw !== 'string') return readCell(column, raw);
    const kept = this.kept[at];
    const known = kept?.get(raw);
    if (known !== undefined) return known;
    const held = readCell(column, raw);
    if (kept?.set(raw, held).size === MOST_KEPT) this.kept[at] = undefined;
    return held;
  }
}

/** How columns are written: a unit, a currency sign or a date as text, each with the first cell seen. */
export class Written {
  readonly marks = new Map<OrderColumn, Map<string, string>>();
  private readonly seen = new Map<OrderColumn, Set<string>>();

  /** Notes which unit or currency sign a cell carries, or that it is a date in letters. */
  note(column: OrderColumn, raw: CellIn): void {
    if (raw === '' || isBlank(raw)) return;
    const { kind } = column;
    if (typeof raw !== 'string') {
      if (isLength(kind)) this.remember(column, 'bare', raw);
      return;
    }
    let seen = this.seen.get(column);
    if (seen === undefined) this.seen.set(column, (seen = new Set()));
    if (seen.has(raw)) return;
    if (seen.size < MOST_KEPT) seen.add(raw);
    if (isLength(kind)) this.remember(column, systemOf(raw), raw);
    else if (kind.quantity === 'money' && column.group === 'fact') {
      const sign = /[$€£¥]|[a-z]{3}/i.exec(raw)?.[0];
      if (sign !== undefined) this.remember(column, sign, sign);
    } else if (kind.quantity === 'date' && !/^\d{4}-\d{2}-\d{2}|^\d{5}$/.test(raw))
      this.remember(column, 'text', raw);
  }

  private remember(column: OrderColumn, mark: string, raw: unknown): void {
    let marks = this.marks.get(column);
    if (marks === undefined) this.marks.set(column, (marks = new Map<string, string>()));
    if (!marks.has(mark)) marks.set(mark, readBack(raw));
  }
}

const METRIC = new Set(['mm', 'cm', 'm']);
function systemOf(text: string): string {
  const unit = UNIT_IN_TEXT.exec(text)?.[1]?.toLowerCase();
  return unit === undefined ? 'bare' : METRIC.has(unit) ? 'metric' : 'imperial';
}
const isLength = ({ quantity }: Kind<unknown>): boolean => quantity === 'length' || quantity === 'yardage';

function readCell({ kind, heading, unit }: OrderColumn, raw: CellIn): Held {
  try {
    return { value: kind.read(raw, { name: heading, unit }) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { refusal: thrown.finding };
    throw thrown;
  }
}

/** Most cells are told apart by their first letter: this is asked of every cell of a table. */
function sameText(raw: string, heading: string): boolean {
  const [one, other] = [raw.trimStart().charCodeAt(0) | 32, heading.charCodeAt(0) | 32];
  return one === other && tidy(raw).toLowerCase() === heading.toLowerCase();
}

/** Whether a row says the headings once more, as a list of several pages does. */
export function repeatsHeadings(row: readonly CellIn[], headings: readonly string[]): boolean {
  let cells = 0;
  let repeated = 0;
  for (let at = 0; at < row.length; at++) {
    const raw = row[at];
    if (raw === '' || raw === 0 || isBlank(raw)) continue;
    cells++;
    const heading = headings[at];
    if (typeof raw === 'string' && heading !== undefined && heading !== '' && sameText(raw, heading))
      repeated++;
  }
  return repeated >= 2 && repeated * 2 > cells;
}

const TOTAL = /^((grand|sub|floor|job|order)[\s-]*)?totals?\b|^sum\b|\btotals?:?$/i;
export type RowKind = 'order' | 'blank' | 'total' | 'section' | 'heading';

/** What a row below the header is: totals and repeated headings are no orders. */
export function rowKind(row: readonly CellIn[], { headings, found }: OrderColumns): RowKind {
  let cells = 0;
  let words = '';
  for (const raw of row) {
    // An empty cell is 0 on some hosts.
    if (raw === '' || raw === 0 || isBlank(raw)) continue;
    cells++;
    if (typeof raw === 'string' && words === '') words = raw;
  }
  if (cells === 0) return 'blank';
  if (words !== '' && repeatsHeadings(row, headings)) return 'heading';
  if (words !== '' && cells < found.length && TOTAL.test(words.trim())) return 'total';
  return cells === 1 && words !== '' && !/^[\d\s.,]+$/.test(words) ? 'section' : 'order';
}
