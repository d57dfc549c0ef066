/**
 * A past order's row: what was measured, the figures that were ordered, and the facts and money
 * that stand beside them. The reader finds its columns and reads it.
 */
import type { Finding } from '../cell/answer';
import type { Window } from './columns';
import type { Facts } from './facts';
import type { FigureKey } from './figures';
import type { MeaningGroup, OrderKey } from './meanings';
import { isBlank, readBack, type CellIn, type Kind } from '../cell/fields';
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

/** One order as read. What could not be read is left out and said. */
export interface Order {
  readonly window: Window;
  readonly ordered: Readonly<Partial<Record<FigureKey, number>>>;
  readonly facts: Facts;
  readonly unread: readonly { readonly column: OrderColumn; readonly refusal: Finding }[];
}

const MOST_KEPT = 4_000;
const UNIT_IN_TEXT = /(mm|cm|m|yd|ft|in|["'″′”’])[a-z.]*\s*$/i;

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
      const sign = currencyIn(raw);
      if (sign !== undefined) this.remember(column, sign, sign);
    } else if (kind.quantity === 'date' && !/^\d{4}-\d{2}-\d{2}|^\d{5}$/.test(raw))
      this.remember(column, 'text', raw);
  }

  /** What another reader noted further down; what was noted first stays. */
  noteLater(column: OrderColumn, marks: ReadonlyMap<string, string>): void {
    for (const [mark, text] of marks) this.keep(column, mark, text);
  }

  private remember(column: OrderColumn, mark: string, raw: unknown): void {
    if (this.marks.get(column)?.has(mark) !== true) this.keep(column, mark, readBack(raw));
  }

  private keep(column: OrderColumn, mark: string, text: string): void {
    let marks = this.marks.get(column);
    if (marks === undefined) this.marks.set(column, (marks = new Map<string, string>()));
    if (!marks.has(mark)) marks.set(mark, text);
  }
}

/** A word in the place of an amount is no currency. */
const currencyIn = (text: string): string | undefined =>
  /\d/.test(text) ? /[$€£¥]|[a-z]{3}/i.exec(text)?.[0] : undefined;

const METRIC = new Set(['mm', 'cm', 'm']);
function systemOf(text: string): string {
  const unit = UNIT_IN_TEXT.exec(text)?.[1]?.toLowerCase();
  return unit === undefined ? 'bare' : METRIC.has(unit) ? 'metric' : 'imperial';
}
const isLength = ({ quantity }: Kind<unknown>): boolean => quantity === 'length' || quantity === 'yardage';
