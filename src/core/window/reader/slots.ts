/** How each column of a table is read, what its rows may be, and what a row gives. */
import type { LengthUnit } from '../../exact/length';
import type { Unit } from '../../exact/unit';
import type { OrderKey } from '../meanings';
import type { Codes } from './codes';
import type { DayOrder } from './dates';
import type { Per } from './heading';
import type { OtherKey } from './meanings';
import type { Value } from './values';

export type RowKind = 'window' | 'section' | 'total' | 'note' | 'repeat header' | 'blank' | 'other goods';
export type Values = Partial<Record<OrderKey, Value | undefined>>;

/** What a row leaves unread. */
export interface Unread {
  readonly at: number;
  readonly key: OrderKey;
  readonly text: string;
  /** Of a draw that is one panel. */
  readonly isOneWay?: true;
}

export interface RowRead {
  /** Row of the sheet, from 0. */
  readonly row: number;
  readonly is: RowKind;
  readonly values: Values;
  readonly unread: readonly Unread[];
  /** Dates among fractions, by column. */
  readonly dated: readonly number[];
}

/** How one column's cells are read. */
export interface Slot {
  readonly at: number;
  readonly part: number | undefined;
  readonly heading: string;
  readonly keys: readonly OrderKey[];
  readonly other: OtherKey | undefined;
  readonly unit: LengthUnit;
  readonly per: Per | undefined;
  /** The column whose figure this one's part is added to. */
  readonly addsTo: number | undefined;
  /** Whether a bare figure in brackets behind a room counts its windows. */
  readonly counts?: boolean | undefined;
  /** Whether its cells are feet and inches with a dash between. */
  readonly dashed?: boolean | undefined;
  /** What its figures say of the draw. */
  readonly draws?: 'each is a pair' | '2 is a pair' | undefined;
  /** Whether its percentages are added to flat. */
  readonly added?: boolean | undefined;
  /** The one lining that its heading asks for by yes and no. */
  readonly yesIs?: 'blackout' | 'interlined' | undefined;
}

export interface Plan {
  readonly slots: readonly Slot[];
  /** The header's rows, for finding them again further down. */
  readonly headings: readonly (readonly string[])[];
  readonly unit: Unit;
  readonly order: DayOrder | undefined;
  /** Whether figures are written like “3,76”. */
  readonly decimalComma: boolean;
  /** What its columns’ code numbers stand for. */
  readonly codes: Codes;
  /** Measured to, where a line above the headings or a heading says it for every row. */
  readonly measuredTo: string | undefined;
  /** What a line above says for every row, where no column does. */
  readonly stated: Values;
  /** How many facts a usual window row has. */
  readonly usual: ReadonlySet<OrderKey>;
}
