/** Where a sheet's header row is, however many titles stand above it, and what each row below is. */
import { common, type Area } from './address';
import type { Block, CellValue } from './book';
import { readHeading, sameMeaning } from './headings';

/** A column somebody may have, as far as its name goes. */
export interface Named {
  readonly key: string;
  readonly heading: string;
  readonly also: readonly string[];
}

export interface Header {
  /** First row, counted within the block. */
  readonly row: number;
  readonly rows: 1 | 2;
  /** One for each column of the block. */
  readonly headings: readonly string[];
}

export type LineKind = 'window' | 'blank' | 'total' | 'section' | 'heading';

/** How far below the top a header is looked for. */
const TITLE_ROWS = 60;

export const filled = (value: CellValue | undefined): boolean =>
  value !== null && value !== undefined && !(typeof value === 'string' && value.trim() === '');
const words = (value: CellValue | undefined): string =>
  typeof value === 'string' ? value.replace(/\s+/g, ' ').trim() : '';

const phrases = new WeakMap<Named, readonly (readonly string[])[]>();
/** How well a heading names a column, 0 to 1. */
export function named(heading: string, column: Named): number {
  let known = phrases.get(column);
  if (known === undefined) {
    known = [column.heading, ...column.also].map((text) => readHeading(text).words);
    phrases.set(column, known);
  }
  const read = readHeading(heading).words;
  // Of two that fit, “fabric” is the fabric rather than “colour”.
  return known.reduce(
    (best, phrase, at) => Math.max(best, sameMeaning(read, phrase) * (at === 0 ? 1 : 0.99)),
    0,
  );
}

const bestOf = (heading: string, columns: readonly Named[]): number =>
  heading === '' ? 0 : columns.reduce((best, column) => Math.max(best, named(heading, column)), 0);

/** The cell a merged stretch shows, seen from any cell of it. */
function shown(block: Block, row: number, column: number): CellValue {
  const value = block.values[row]?.[column] ?? null;
  if (filled(value)) return value;
  const at: Area = {
    ...block.area,
    row: block.area.row + row,
    column: block.area.column + column,
    rows: 1,
    columns: 1,
  };
  const merged = block.merged.find((area) => common(area, at) !== undefined);
  if (merged === undefined) return value;
  return block.values[merged.row - block.area.row]?.[merged.column - block.area.column] ?? null;
}

const isUnitRow = (row: readonly CellValue[]): boolean => {
  const texts = row.filter(filled);
  return (
    texts.length > 0 &&
    texts.every((value) => {
      const { words: said, unit } = readHeading(words(value));
      return said.length === 0 && unit !== undefined;
    })
  );
};

/** A group's name stands over its columns, merged or left blank to the right. */
function groups(block: Block, row: number): string[] {
  let last = '';
  return (block.values[row] ?? []).map((_, column) => {
    const text = words(shown(block, row, column));
    const below = words(block.values[row + 1]?.[column]);
    if (text !== '') last = text;
    else if (below === '') last = '';
    return text !== '' ? text : last;
  });
}

function twoRows(block: Block, row: number): string[] {
  const over = groups(block, row);
  return (block.values[row + 1] ?? []).map((_, column) => {
    const below = words(shown(block, row + 1, column));
    const above = over[column] ?? '';
    return below === '' || below === above ? above : `${above} ${below}`.trim();
  });
}

/** Better where a second row of headings belongs to the first than where it is the first window. */
function candidates(block: Block, row: number): Header[] {
  const cells = block.values[row] ?? [];
  const single = cells.map((_, column) => words(shown(block, row, column)));
  const list: Header[] = [{ row, rows: 1, headings: single }];
  const next = block.values[row + 1];
  const textOnly =
    next?.some(filled) === true && next.every((value) => !filled(value) || typeof value === 'string');
  if (textOnly) list.push({ row, rows: 2, headings: twoRows(block, row) });
  return list;
}

/** Finds the header; `prefer` is a sheet row the person points at. Undefined where no row names two columns. */
export function findHeader(block: Block, columns: readonly Named[], prefer?: number): Header | undefined {
  let best: Header | undefined;
  let most = 0;
  for (let row = 0; row < Math.min(block.values.length, TITLE_ROWS); row++) {
    if (block.values[row]?.some(filled) !== true) continue;
    const grouped =
      block.merged.filter((one) => one.row === block.area.row + row && one.columns > 1).length > 1;
    for (const header of candidates(block, row)) {
      const scores = header.headings.map((heading) => bestOf(heading, columns));
      const hits = scores.filter((score) => score >= 0.6);
      const figures = (block.values[row] ?? []).filter((value) => typeof value === 'number').length;
      const units = header.rows === 2 && isUnitRow(block.values[row + 1] ?? []);
      const pointed = prefer !== undefined && block.area.row + row === prefer ? 1_000 : 0;
      const score =
        hits.reduce((sum, one) => sum + one, 0) -
        figures * 0.7 +
        pointed +
        (units ? 0.5 : 0) -
        (header.rows === 1 ? 0 : grouped ? -1.5 : 0.4);
      if (hits.length >= 2 && score > most + 0.01) [best, most] = [header, score];
    }
  }
  return best ?? pointedAt(block, prefer);
}

/** A row the user points at, in words that are not known here: the user says what they mean. */
function pointedAt(block: Block, prefer: number | undefined): Header | undefined {
  const row = prefer === undefined ? -1 : prefer - block.area.row;
  const cells = block.values[row]?.filter(filled) ?? [];
  if (cells.length < 2 || !cells.every((value) => typeof value === 'string')) return undefined;
  return candidates(block, row)[0];
}

const TOTAL = /^(grand\s+|sub-?\s*|floor\s+|job\s+)?totals?\b|^sum\b|\btotals?:?$/i;
const ADDS = /\b(SUM|SUBTOTAL|AGGREGATE|SUMIFS?|COUNTA?|AVERAGE)\(/i;

/** What a row below the header is. */
export function lineKind(block: Block, header: Header, row: number): LineKind {
  const values = block.values[row] ?? [];
  const cells = values.filter(filled);
  if (cells.length === 0) return 'blank';
  const texts = values.map(words).filter((text) => text !== '');
  const repeated = values.filter(
    (value, column) =>
      words(value) !== '' && words(value).toLowerCase() === header.headings[column]?.toLowerCase(),
  );
  if (repeated.length >= 2 && repeated.length * 2 > cells.length) return 'heading';
  if (texts.some((text) => TOTAL.test(text))) return 'total';
  const own = (block.formulas[row] ?? []).filter((formula) => formula !== null);
  if (texts.length === 0 && own.length > 0 && own.every((formula) => ADDS.test(formula))) return 'total';
  return cells.length === 1 && texts.length === 1 ? 'section' : 'window';
}
