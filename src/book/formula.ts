/** Formulas as text: what moves when one is filled on, and how a value is written inside one. */
import { cellText, columnOf, letters, MOST_COLUMNS, MOST_ROWS } from './address';

/** Strings, quoted sheets, names in brackets are passed over; cells, columns and rows are taken apart. */
const PARTS =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^[\]]*\])*\]|(\$?)([A-Za-z]{1,3})(\$?)([1-9]\d{0,6})(?![\w.(!])|(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})(?![\w.(!])|(\$?)([1-9]\d{0,6}):(\$?)([1-9]\d{0,6})(?![\w.])|[A-Za-z_\\][\w.\\]*|\d[\w.]*/g;

/** The formula as it stands `down` rows below and `right` columns beside: $ keeps a reference in place. */
export function shifted(formula: string, down: number, right: number): string {
  if (down === 0 && right === 0) return formula;
  const row = (fixed: string, text: string): number => Number(text) - 1 + (fixed === '$' ? 0 : down);
  const column = (fixed: string, text: string): number => columnOf(text) + (fixed === '$' ? 0 : right);
  const onSheet = (at: number, most: number): boolean => at >= 0 && at < most;
  return formula.replace(PARTS, (...found: (string | undefined)[]) => {
    const [whole = '', c1$, c, r1$, r, a$, a, b$, b, p$, p, q$, q] = found;
    if (c !== undefined && r !== undefined) {
      const at = { row: row(r1$ ?? '', r), column: column(c1$ ?? '', c) };
      return onSheet(at.row, MOST_ROWS) && onSheet(at.column, MOST_COLUMNS)
        ? cellText(at.row, at.column, { row: r1$ === '$', column: c1$ === '$' })
        : '#REF!';
    }
    if (a !== undefined && b !== undefined) {
      const [from, to] = [column(a$ ?? '', a), column(b$ ?? '', b)];
      return onSheet(from, MOST_COLUMNS) && onSheet(to, MOST_COLUMNS)
        ? `${a$}${letters(from)}:${b$}${letters(to)}`
        : '#REF!';
    }
    if (p !== undefined && q !== undefined) {
      const [from, to] = [row(p$ ?? '', p), row(q$ ?? '', q)];
      return onSheet(from, MOST_ROWS) && onSheet(to, MOST_ROWS) ? `${p$}${from + 1}:${q$}${to + 1}` : '#REF!';
    }
    return whole;
  });
}

const at = (letter: 'R' | 'C', fixed: string, to: number, from: number): string => {
  if (fixed === '$') return `${letter}${to + 1}`;
  return to === from ? letter : `${letter}[${to - from}]`;
};

/** The formula of the cell at `row` and `column` with its references counted from there: R[-1]C2. */
export function countedFrom(formula: string, row: number, column: number): string {
  const down = (fixed: string | undefined, text: string): string =>
    at('R', fixed ?? '', Number(text) - 1, row);
  const across = (fixed: string | undefined, text: string): string =>
    at('C', fixed ?? '', columnOf(text), column);
  return formula.replace(PARTS, (...found: (string | undefined)[]) => {
    const [whole = '', c1$, c, r1$, r, a$, a, b$, b, p$, p, q$, q] = found;
    if (c !== undefined && r !== undefined) return down(r1$, r) + across(c1$, c);
    if (a !== undefined && b !== undefined) return `${across(a$, a)}:${across(b$, b)}`;
    if (p !== undefined && q !== undefined) return `${down(p$, p)}:${down(q$, q)}`;
    return whole;
  });
}

/** What a host makes of a formula when it is entered: spaces, capitals, and how a table's own row is named. */
export const plainly = (formula: string): string =>
  formula
    .replace(/\[#This Row\],?/gi, '')
    .replace(/[A-Za-z_\\][\w.\\]*\[/g, '')
    .replace(/[\s@[\]]/g, '')
    .toLowerCase();

/** Whether a cell's formula is the one that was entered, though the host may spell it otherwise. */
export const sameFormula = (one: string, other: string): boolean =>
  one === other || plainly(one) === plainly(other);

/** A row's number or a column's letters in a formula, counted from 0. */
export interface Reference {
  readonly axis: 'row' | 'column';
  readonly place: number;
  readonly from: number;
  readonly to: number;
}

/** Every row and column that moves when the formula is filled on, in the order they stand. */
export function referencesIn(formula: string): Reference[] {
  const list: Reference[] = [];
  for (const found of formula.matchAll(PARTS)) {
    const [, c1$, c, r1$, r, a$, a, b$, b, p$, p, q$, q] = found;
    let at = found.index;
    const add = (axis: Reference['axis'], fixed: string | undefined, text: string | undefined): void => {
      if (text === undefined) return;
      const from = at + (fixed?.length ?? 0);
      at = from + text.length;
      const place = axis === 'row' ? Number(text) - 1 : columnOf(text);
      if (fixed !== '$') list.push({ axis, place, from, to: at });
    };
    add('column', c1$, c);
    add('row', r1$, r);
    const [one, other, axis] = a === undefined ? ([p, q, 'row'] as const) : ([a, b, 'column'] as const);
    add(axis, a === undefined ? p$ : a$, one);
    at += 1;
    add(axis, a === undefined ? q$ : b$, other);
  }
  return list;
}
