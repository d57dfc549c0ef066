/** Past orders as an invented workroom kept them, with what is wrong in them and what is not. */
import { chanceFrom } from './chance';
import { rulePairs, type RulePair } from './house';
import type { Line } from './line';
import { plantAmong, type Planted } from './plant';
import { holds, lettersOf, valuesOf, writeSheet, type RowKind } from './sheet';
import type { Cell, Style } from './style';

export interface RowTruth {
  readonly row: number;
  readonly is: RowKind;
  /** As the sheet shows them, mistakes included: lengths in the house's unit, yardages in yards or metres. */
  readonly values?: Readonly<Record<string, string | number>>;
  readonly mistake?: RowMistake;
  /** A figure that departs from the rules for a reason written beside it. */
  readonly explained?: string;
}

export interface RowMistake {
  readonly kind: string;
  /** The letters of the column that is wrong, and of every column that disagrees because of it. */
  readonly column: string;
  readonly touches: readonly string[];
  /** Whether any figure shown is beyond the tolerance; only these count. */
  readonly changes: boolean;
}

export interface ColumnTruth {
  readonly means: string | readonly string[] | null;
  readonly unit?: string;
  readonly per?: string;
}

export interface Truth {
  readonly columns: Readonly<Record<string, ColumnTruth>>;
  readonly rows: readonly RowTruth[];
}

export interface PastOrders {
  readonly name: string;
  readonly unit: 'in' | 'cm';
  readonly rows: readonly (readonly Cell[])[];
  readonly header: readonly number[];
  readonly rules: readonly RulePair[];
  readonly truth: Truth;
}

function mistakeOf({ kind, word, touches, changes }: Planted, { layout }: Style): RowMistake {
  const letters = touches.flatMap((one) =>
    layout.columns.flatMap((column, at) => (holds(column, one) ? [lettersOf(at)] : [])),
  );
  const own = layout.columns.findIndex((column) => holds(column, word));
  const column = own < 0 ? (letters[0] ?? 'A') : lettersOf(own);
  return { kind, column, touches: [...new Set([column, ...letters])], changes };
}

function columnsOf({ layout }: Style): Record<string, ColumnTruth> {
  return Object.fromEntries(
    layout.columns.map(({ means, unit, per }, at): [string, ColumnTruth] => [
      lettersOf(at),
      { means, ...(unit === undefined ? {} : { unit }), ...(per === undefined ? {} : { per }) },
    ]),
  );
}

/** So many windows of a house, a share of them mistaken; the same seed gives the same sheet. */
export function pastOrders(style: Style, seed: number, count: number, share = 0.15): PastOrders {
  const chance = chanceFrom(seed);
  const { orders, planted } = plantAmong(style, { windows: count, share }, chance);
  const sheet = writeSheet(style, orders, chance);
  const truthOf = (row: number, is: RowKind, line: Line | undefined): RowTruth => {
    if (line === undefined) return { row, is };
    const wrong = planted.get(line);
    return {
      row,
      is,
      values: valuesOf(line, style),
      ...(wrong === undefined ? {} : { mistake: mistakeOf(wrong, style) }),
      ...(line.note === undefined ? {} : { explained: line.note }),
    };
  };
  return {
    name: style.name,
    unit: style.house.unit === 'inches' ? 'in' : 'cm',
    rows: sheet.rows,
    header: sheet.header,
    rules: rulePairs(style.house),
    truth: {
      columns: columnsOf(style),
      rows: sheet.below.map(({ row, is, line }) => truthOf(row, is, line)),
    },
  };
}
