/** A CSV file as rows, a batch at a time, and rows as CSV that no spreadsheet takes for formulas. */
import { createReadStream } from 'node:fs';
import { CsvError, parse } from 'csv-parse';
import type { CellOut } from '../core/fields';
import type { Encoding } from './encoding';
import { Problem } from './problem';

const PARTINGS = [',', ';', '\t', '|'] as const;

/** The sign that parts the cells: the one that most evenly parts the first lines. */
export function partingOf(start: string): string {
  const lines = start
    .replace(/"[^"]*"/g, '')
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

const BATCH = 512;

/** Rows in batches, blank lines kept so that rows count as a spreadsheet counts them. */
export async function* csvBatches(path: string, encoding: Encoding): AsyncGenerator<string[][]> {
  const parser = parse({
    delimiter: partingOf(await startOf(path, encoding)),
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    max_record_size: 1 << 20,
  });
  let batch: string[][] = [];
  const ready: string[][][] = [];
  parser.on('readable', () => {
    let row: string[] | null;
    while ((row = parser.read() as string[] | null) !== null) {
      batch.push(row);
      if (batch.length >= BATCH) {
        ready.push(batch);
        batch = [];
      }
    }
  });
  const ended = new Promise<void>((resolve, reject) => {
    parser.on('end', resolve);
    parser.on('error', reject);
  });
  // Whoever stops reading early leaves it unheard.
  ended.catch(() => undefined);
  const decoder = new TextDecoder(encoding.name);
  try {
    for await (const chunk of createReadStream(path, { highWaterMark: 1 << 18 })) {
      if (!parser.write(decoder.decode(chunk as Buffer, { stream: true })))
        await Promise.race([new Promise((resolve) => parser.once('drain', resolve)), ended]);
      for (let next = ready.shift(); next !== undefined; next = ready.shift()) yield next;
    }
    parser.end(decoder.decode());
    await ended;
  } catch (thrown) {
    throw thrown instanceof CsvError ? broken(path, thrown) : thrown;
  }
  yield* ready;
  if (batch.length > 0) yield batch;
}

function broken(path: string, error: CsvError): Problem {
  const { lines } = error as { lines?: number };
  const where = lines === undefined ? '' : ` near line ${lines}`;
  return new Problem(
    error.code === 'CSV_QUOTE_NOT_CLOSED' || error.code === 'CSV_MAX_RECORD_SIZE'
      ? `“${path}” opens a quotation mark${where} and never closes it. Mend that line and try again.`
      : `“${path}” is no readable CSV${where}. Open it in a spreadsheet program, save it as CSV in UTF-8 and try again.`,
  );
}

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
