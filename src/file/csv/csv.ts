/** A CSV file as rows, a batch at a time, and rows as CSV that no spreadsheet takes for formulas. */
import { createReadStream } from 'node:fs';
import { CsvError, parse } from 'csv-parse/sync';
import type { CellOut } from '../../core/cell/fields';
import type { Encoding } from './encoding';
import { Problem } from '../problem';

const QUOTED = /"[^"]*"/g;
const PARTINGS = [',', ';', '\t', '|'] as const;

/** The sign that parts the cells: the one that most evenly parts the first lines. */
export function partingOf(start: string): string {
  const lines = start
    .replace(QUOTED, '')
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== '')
    .slice(0, 30);
  let best = PARTINGS[0] as string;
  let most = 0;
  for (const sign of PARTINGS) {
    const counts = lines.map((line) => line.split(sign).length - 1).sort((a, b) => a - b);
    const middle = counts[Math.floor(counts.length / 2)] ?? 0;
    if (middle > most) [best, most] = [sign, middle];
  }
  return best;
}

async function startOf(path: string, encoding: Encoding): Promise<string> {
  for await (const chunk of createReadStream(path, { end: 65_535 }))
    return new TextDecoder(encoding.name).decode(chunk as Buffer);
  return '';
}

/** The sign between two rows: the first line’s. */
const lineEndOf = (start: string): string => /\r\n|\n|\r/.exec(start.replace(QUOTED, ''))?.[0] ?? '\n';

/** A record that is longer has lost its closing quotation mark. */
const LONGEST = 1 << 20;

interface Taken {
  readonly rows: string[][];
  /** A last row whose end is still to come. */
  readonly rest: string;
}

/** The whole rows a text begins with. */
function takeRows(text: string, parting: string, lineEnd: string): Taken {
  const last = text.lastIndexOf(lineEnd);
  if (last < 0) return { rows: [], rest: text };
  const lines = text.slice(0, last + lineEnd.length);
  const rest = text.slice(lines.length);
  // Without quotation marks there is nothing to tell apart, and that is far quicker. A cell holds on
  // to the text that it was cut from: each line is a copy, so that it is not the whole chunk.
  if (!lines.includes('"')) {
    const rows = text.slice(0, last).split(lineEnd);
    return { rows: rows.map((line) => Buffer.from(line).toString().split(parting)), rest };
  }
  const rows: string[][] = [];
  let bytes = 0;
  try {
    parse(lines, {
      delimiter: parting,
      record_delimiter: lineEnd,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      on_record: (row: string[], { bytes_records }) => {
        rows.push(row);
        bytes = bytes_records;
        return null;
      },
    });
    return { rows, rest };
  } catch (thrown) {
    if (!(thrown instanceof CsvError) || thrown.code !== 'CSV_QUOTE_NOT_CLOSED') throw thrown;
    return { rows, rest: Buffer.from(text).subarray(bytes).toString() };
  }
}

/** Rows in batches, blank lines kept so that rows count as a spreadsheet counts them. */
export async function* csvBatches(path: string, encoding: Encoding): AsyncGenerator<string[][]> {
  const start = await startOf(path, encoding);
  const [parting, lineEnd] = [partingOf(start), lineEndOf(start)];
  const decoder = new TextDecoder(encoding.name);
  let before = 0;
  let rest = '';
  for await (const chunk of createReadStream(path)) {
    const taken = takeRows(rest + decoder.decode(chunk as Buffer, { stream: true }), parting, lineEnd);
    yield taken.rows;
    before += taken.rows.length;
    rest = taken.rest;
    if (rest.length > LONGEST) throw neverClosed(path, before + 1);
  }
  rest += decoder.decode();
  if (rest === '') return;
  const { rows, rest: open } = takeRows(rest + lineEnd, parting, lineEnd);
  if (open !== '') throw neverClosed(path, before + rows.length + 1);
  yield rows;
}

const neverClosed = (path: string, row: number): Problem =>
  new Problem(
    `“${path}” opens a quotation mark in row ${row} and never closes it. Mend that row and try again.`,
  );

/** Text that a spreadsheet would take for a formula gets an apostrophe before it and stays text. */
export const asText = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

export function csvLine(cells: readonly CellOut[]): string {
  return cells
    .map((cell) => {
      if (typeof cell !== 'string') return String(cell);
      const text = asText(cell);
      return /[",;\n\r\t']/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
    })
    .join(',');
}
