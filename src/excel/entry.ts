/** What is written into a cell so that text stays text: Excel reads every text as if it were typed. */
import type { CellPut } from '../book/book';

/** A word followed by a number may be a date in some language: “May 1”, “Mai 1”. */
const LIKE_A_DATE = /^\p{L}{3,9}[\s./-]*\d/u;

/** A leading apostrophe marks text; words that Excel leaves alone go without one. */
const asText = (text: string): string =>
  /^\p{L}/u.test(text) && !LIKE_A_DATE.test(text) && !/^(true|false)$/i.test(text) ? text : `'${text}`;

/** null empties a cell in the port and leaves it alone in Excel, where empty text empties it. */
export function entered(put: CellPut): string | number | boolean | null {
  if (put === undefined) return null;
  if (put === null || put === '') return '';
  if (typeof put === 'object') return put.formula;
  return typeof put === 'string' ? asText(put) : put;
}
