/** How large the engine's sheets must be: no larger, or references to whole columns take for ever. */
import type { WorkbookOf } from './workbook';

const SPARE = 1_000;
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;
const PLACES = /\$?\b([A-Z]{1,3})\$?(\d{1,7})\b/gi;
const ROWS = /\$?(\d{1,7}):\$?(\d{1,7})/g;
const COLUMNS = /\$?\b([A-Z]{1,3}):\$?([A-Z]{1,3})\b/gi;

const columnOf = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

function* texts(book: WorkbookOf): Generator<string> {
  for (const { cells } of book.sheets)
    for (const { formula } of cells) if (formula !== undefined) yield formula;
  for (const { refersTo } of book.names) yield refersTo;
}

/** The last row anything stands in or points at, and room for spills. */
export function lastRow(book: WorkbookOf): number {
  let last = 0;
  for (const { cells } of book.sheets) for (const { row } of cells) if (row > last) last = row;
  for (const text of texts(book)) {
    for (const [, , row] of text.matchAll(PLACES)) last = Math.max(last, Number(row) - 1);
    for (const [, from, to] of text.matchAll(ROWS)) last = Math.max(last, Number(from) - 1, Number(to) - 1);
  }
  return Math.min(last + SPARE, MOST_ROWS - 1);
}

export function widestColumn(book: WorkbookOf): number {
  let last = 25;
  for (const { cells } of book.sheets) for (const { column } of cells) if (column > last) last = column;
  for (const text of texts(book)) {
    for (const [, column] of text.matchAll(PLACES)) last = Math.max(last, columnOf(column ?? ''));
    for (const [, from, to] of text.matchAll(COLUMNS))
      last = Math.max(last, columnOf(from ?? ''), columnOf(to ?? ''));
  }
  return Math.min(last + 100, MOST_COLUMNS - 1);
}
