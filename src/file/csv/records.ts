/** The rows of a text file, by their bytes: a line end inside quotation marks belongs to its cell. */
const [LINE_FEED, RETURN, QUOTE] = [10, 13, 34] as const;

export interface Records {
  /** Where each row begins and ends, one after the other; its line end is left out. */
  readonly places: readonly number[];
  /** Where the first row begins whose end is still to come. */
  readonly rest: number;
  /** Whether a quotation mark is open there. */
  readonly open: boolean;
}

/**
 * The whole rows that these bytes begin with, whatever ends each line. `parting` is the sign between two
 * cells; `last` says that nothing follows, so that the rest is a row as well. The bytes are UTF-8 or of
 * any encoding that has ASCII's signs in ASCII's places.
 */
export function recordsIn(bytes: Uint8Array, parting: number, last: boolean): Records {
  const places: number[] = [];
  const end = bytes.length;
  let from = 0;
  let starts = true;
  for (let at = 0; at < end; at++) {
    const byte = bytes[at] as number;
    if (byte === LINE_FEED || byte === RETURN) {
      const next = afterLineEnd(bytes, at);
      // A line feed may still follow a return and belong to it.
      if (next > end && !last) break;
      places.push(from, at);
      from = Math.min(next, end);
      at = from - 1;
      starts = true;
    } else if (byte === QUOTE && starts) {
      at = closing(bytes, at + 1);
      if (at === end) return { places, rest: from, open: true };
      starts = false;
    } else starts = byte === parting;
  }
  if (!last || from === end) return { places, rest: from, open: false };
  places.push(from, end);
  return { places, rest: end, open: false };
}

/** Where the next row begins; beyond the end where that cannot be told yet. */
function afterLineEnd(bytes: Uint8Array, at: number): number {
  if (bytes[at] === LINE_FEED) return at + 1;
  return at + 1 === bytes.length ? at + 2 : bytes[at + 1] === LINE_FEED ? at + 2 : at + 1;
}

/** Where the quotation mark stands that closes a cell; two of them are one that is meant. */
function closing(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(QUOTE, from); at >= 0; at = bytes.indexOf(QUOTE, at + 2))
    if (bytes[at + 1] !== QUOTE) return at;
  return bytes.length;
}

/** One row's cells. A quotation mark within a cell that does not begin with one is an inch mark, and stays. */
export function cellsIn(row: string, parting: string): string[] {
  if (!row.includes('"')) return row.split(parting);
  const cells: string[] = [];
  for (let from = 0; from <= row.length;) {
    let [at, text] = [from, ''];
    if (row[from] === '"') {
      const close = closingIn(row, from + 1);
      const after = row[close + 1];
      if (after === undefined || after === parting) {
        cells.push(row.slice(from + 1, close).replaceAll('""', '"'));
        from = close + 2;
        continue;
      }
      // It closes too early: the marks are the cell's own.
      text = `"${row.slice(from + 1, close).replaceAll('""', '"')}`;
      at = close;
    }
    const next = row.indexOf(parting, at);
    const to = next < 0 ? row.length : next;
    cells.push(text + row.slice(at, to));
    from = to + 1;
  }
  return cells;
}

function closingIn(row: string, from: number): number {
  for (let at = row.indexOf('"', from); at >= 0; at = row.indexOf('"', at + 2))
    if (row[at + 1] !== '"') return at;
  return row.length;
}
