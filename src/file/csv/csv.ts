/** A CSV file as rows, a batch at a time, and rows as CSV that no spreadsheet takes for formulas. */
import { createReadStream } from 'node:fs';
import type { CellOut } from '../../core/cell/fields';
import type { Encoding } from './encoding';
import { Problem } from '../problem';
import { cellsIn, recordsIn } from './records';

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

/** A record that is longer has lost its closing quotation mark. */
const LONGEST = 1 << 20;
const BLOCK = 1 << 18;
const MARK = [0xef, 0xbb, 0xbf];

/** A text file as its rows are read. */
export interface Csv {
  readonly path: string;
  readonly encoding: Encoding;
  /** The sign between two cells. */
  readonly parting: string;
}

export async function openCsv(path: string, encoding: Encoding): Promise<Csv> {
  return { path, encoding, parting: partingOf(await startOf(path, encoding)) };
}

/** Whether its rows can be counted by the file's own bytes, so that it can be read in pieces. */
export const isInPieces = ({ encoding }: Csv): boolean => !encoding.name.startsWith('utf-16');

/** Some whole rows that stand one after the other. */
export class Block {
  private readonly decoder: TextDecoder | undefined;

  constructor(
    private readonly csv: Csv,
    private readonly bytes: Buffer,
    private readonly places: readonly number[],
    /** The file's byte at which the first row begins, and at which the next block does. */
    readonly from: number,
    readonly to: number,
  ) {
    this.decoder = csv.encoding.name === 'windows-1252' ? new TextDecoder(csv.encoding.name) : undefined;
  }

  get count(): number {
    return this.places.length / 2;
  }

  /** Where a row begins, as a byte of the file. */
  byteOf(at: number): number {
    return this.from + ((this.places[at * 2] as number) - (this.places[0] as number));
  }

  /** Each cell holds on to its own row's text alone, never to the whole block. */
  row(at: number): string[] {
    const [from, to] = [this.places[at * 2] as number, this.places[at * 2 + 1] as number];
    const { bytes, decoder } = this;
    const text =
      decoder === undefined ? bytes.toString('utf8', from, to) : decoder.decode(bytes.subarray(from, to));
    return cellsIn(text, this.csv.parting);
  }

  rows(): string[][] {
    return Array.from({ length: this.count }, (_, at) => this.row(at));
  }
}

/** A file's bytes from a place on; UTF-16 comes as UTF-8. */
const bytesFrom = ({ path, encoding }: Csv, start: number): AsyncIterable<Buffer> =>
  asUtf8(createReadStream(path, { start, highWaterMark: BLOCK }), encoding);

export async function* asUtf8(stream: AsyncIterable<unknown>, encoding: Encoding): AsyncGenerator<Buffer> {
  if (!encoding.name.startsWith('utf-16')) {
    for await (const chunk of stream) yield chunk as Buffer;
    return;
  }
  const decoder = new TextDecoder(encoding.name);
  for await (const chunk of stream) yield Buffer.from(decoder.decode(chunk as Buffer, { stream: true }));
  yield Buffer.from(decoder.decode());
}

/** The whole file in blocks of rows, or from the row on that begins at a byte and is so numbered. */
export const csvBlocks = (csv: Csv, start = { byte: 0, row: 1 }): AsyncGenerator<Block> =>
  blocksOf(csv, bytesFrom(csv, start.byte), start);

/** Bytes as they come, in blocks of rows. */
export async function* blocksOf(
  csv: Csv,
  chunks: AsyncIterable<Buffer>,
  { byte, row } = { byte: 0, row: 1 },
): AsyncGenerator<Block> {
  const parting = csv.parting.charCodeAt(0);
  let rest = Buffer.alloc(0);
  let at = byte;
  let before = row - 1;
  const blockOf = (bytes: Buffer, last: boolean): Block => {
    const { places, rest: from, open } = recordsIn(bytes, parting, last);
    if (bytes.length - from > LONGEST || (last && open))
      throw neverClosed(csv.path, before + places.length / 2 + 1);
    const block = new Block(csv, bytes, places, at, at + from);
    before += block.count;
    at += from;
    // A copy, so that the block's bytes can go.
    rest = Buffer.from(bytes.subarray(from));
    return block;
  };
  for await (const chunk of chunks) {
    let bytes = rest.length === 0 ? chunk : Buffer.concat([rest, chunk]);
    if (at === 0 && MARK.every((mark, place) => bytes[place] === mark)) {
      bytes = bytes.subarray(MARK.length);
      at = MARK.length;
    }
    yield blockOf(bytes, false);
  }
  if (rest.length > 0) yield blockOf(rest, true);
}

/** Rows in batches, blank lines kept so that rows count as a spreadsheet counts them. */
export async function* csvBatches(path: string, encoding: Encoding): AsyncGenerator<string[][]> {
  for await (const block of csvBlocks(await openCsv(path, encoding))) yield block.rows();
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
