/** Writes orders as the workroom keeps them, row by row, and what each row is. */
import type Fraction from 'fraction.js';
import type { Chance } from './chance';
import { plain, sum, ZERO } from './exact';
import { figure, type Figure, type Line, type Word } from './line';
import type { Cell, Column, Goods, Order, Style } from './style';

export type RowKind = 'window' | 'section' | 'total' | 'blank' | 'note' | 'repeat header' | 'other goods';

export interface SheetRow {
  /** Counted from 1. */
  readonly row: number;
  readonly is: RowKind;
  readonly line?: Line;
}

export interface Sheet {
  readonly rows: readonly (readonly Cell[])[];
  /** The rows of the headings, counted from 1. */
  readonly header: readonly number[];
  readonly below: readonly SheetRow[];
}

/** A, B … Z, AA: the column's letters. */
export function lettersOf(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : lettersOf(Math.floor(column / 26) - 1) + last;
}

export const holds = ({ means }: Column, word: Word): boolean =>
  typeof means === 'string' ? means === word : (means?.includes(word) ?? false);

export function headerOf({ layout }: Style): Cell[][] {
  const depth = Math.max(...layout.columns.map(({ heads }) => heads.length));
  return Array.from({ length: depth }, (_, at) => layout.columns.map(({ heads }) => heads[at] ?? null));
}

const padded = (row: readonly Cell[], across: number): Cell[] =>
  Array.from({ length: across }, (_, at) => row[at] ?? null);

function goodsRow({ layout }: Style, { text, figures }: Goods, at: number): Cell[] {
  const row = layout.columns.map((column): Cell => {
    const word = (Object.keys(figures) as Figure[]).find((one) => column.means === one);
    return word === undefined ? null : (figures[word] ?? null);
  });
  row[at] = text;
  return row;
}

function totalRow({ layout }: Style, lines: readonly Line[], extra: readonly Goods[]): Cell[] | undefined {
  const { after } = layout;
  if (after === undefined) return undefined;
  const row = layout.columns.map((column): Cell => {
    const word = after.adds.find((one) => column.means === one);
    if (word === undefined) return null;
    const goods = extra.map(({ figures }) => figures[word] ?? 0).reduce((all, one) => all + one, 0);
    return Math.round((plain(sum(lines.map((line): Fraction => line[word] ?? ZERO)), 4) + goods) * 1e4) / 1e4;
  });
  row[after.at] = after.text;
  return row;
}

/** The whole sheet; other goods stand among the windows where the house sells them. */
export function writeSheet(style: Style, orders: readonly Order[], chance: Chance): Sheet {
  const { layout } = style;
  const across = layout.columns.length;
  const header = headerOf(style);
  const rows: Cell[][] = layout.title.map((row) => padded(row, across));
  const first = rows.length + 1;
  rows.push(...header);
  const below: SheetRow[] = [];
  const put = (row: readonly Cell[], is: RowKind, line?: Line): void => {
    rows.push(padded(row, across));
    below.push(line === undefined ? { row: rows.length, is } : { row: rows.length, is, line });
  };
  let sinceHeader = 0;
  for (const order of orders) {
    if (layout.headerEvery !== undefined && sinceHeader > layout.headerEvery) {
      for (const row of header) put(row, 'repeat header');
      sinceHeader = 0;
    }
    if (layout.before !== undefined) put(layout.before(order), 'section');
    const sold: Goods[] = [];
    order.lines.forEach((line, at) => {
      const place = { order, first: at === 0, above: order.lines[at - 1] };
      put(
        layout.columns.map((column) => column.cell(line, place)),
        'window',
        line,
      );
      sinceHeader++;
      if (layout.goods === undefined || !chance.oneIn(7)) return;
      const goods = chance.pick(layout.goods.sold);
      sold.push(goods);
      put(goodsRow(style, goods, layout.goods.at), 'other goods');
    });
    const total = totalRow(style, order.lines, sold);
    if (total !== undefined) put(total, 'total');
    if (layout.blankAfterOrder === true) put([], 'blank');
  }
  for (const row of layout.foot) put(row, 'note');
  return { rows, header: header.map((_, at) => first + at), below };
}

/** The figures and choices of a line that the sheet's columns hold, as a careful bookkeeper reads them. */
export function valuesOf(line: Line, { layout }: Style): Record<string, string | number> {
  const values: Record<string, string | number> = {};
  const words = layout.columns.flatMap(({ means }) => (means === null ? [] : [means].flat()));
  for (const word of words) {
    const value = line[word];
    if (value !== undefined)
      values[word] = typeof value === 'string' ? value : plain(figure(line, word as Figure), 4);
  }
  return values;
}
