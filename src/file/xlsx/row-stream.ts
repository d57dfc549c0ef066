/** The rows of a large sheet, read while its part is unpacked, so that no more than a piece of it is held. */
import { createInflateRaw } from 'node:zlib';
import { Readable } from 'node:stream';
import { readSheet, type RowSeen } from './sheet';
import { damaged } from './xml';
import { BrokenZip, nodeChecksum, STORED, type Entry } from './zip';

const CLOSES = /<\/(?:[\w.-]+:)?row\s*>/g;
const BEGINS = /<(?:[\w.-]+:)?sheetData(?:\s[^>]*)?>/;
const ENDS = /<\/(?:[\w.-]+:)?sheetData\s*>/;
const NUMBER = /<(?:[\w.-]+:)?row\s[^>]*?\br="(\d+)"/;
/** No row is longer. */
const LONGEST = 64 * 1_048_576;

/** A sheet written in a way that only the whole of it tells. */
export class NotInRows extends Error {}

async function* textOf(entry: Entry): AsyncGenerator<string> {
  const packed = Readable.from([Buffer.from(entry.packed)]);
  const bytes = entry.method === STORED ? packed : packed.pipe(createInflateRaw());
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let [size, sum] = [0, 0];
  try {
    for await (const chunk of bytes) {
      size += (chunk as Buffer).length;
      if (size > entry.size) break;
      sum = nodeChecksum?.(chunk as Buffer, sum) ?? entry.checksum;
      yield decoder.decode(chunk as Buffer, { stream: true });
    }
  } catch {
    throw new BrokenZip('a part does not unpack');
  }
  if (size !== entry.size || sum !== entry.checksum) throw new BrokenZip('a part is not what was saved');
}

/** One row as the file has it, still to be read; with it, rows before it that close themselves. */
export interface RowText {
  /** Counted from 0. */
  readonly row: number;
  readonly xml: string;
}

/**
 * Every row that is closed by a tag of its own, in turn; at the end, what stands around the rows. Throws
 * NotInRows where comments, unnumbered rows or the like make the pieces uncertain.
 */
export async function* rowTexts(entry: Entry): AsyncGenerator<readonly RowText[], string> {
  let [around, rest] = ['', ''];
  let where: 'before' | 'in' | 'after' = 'before';
  for await (const text of textOf(entry)) {
    rest += text;
    if (rest.length > LONGEST) throw new NotInRows();
    if (where === 'before') {
      const begins = BEGINS.exec(rest);
      if (begins === null) continue;
      around = rest.slice(0, begins.index + begins[0].length);
      if (around.endsWith('/>')) throw new NotInRows();
      rest = rest.slice(around.length);
      where = 'in';
    }
    if (where === 'in') {
      const ends = ENDS.exec(rest);
      const { rows, left } = cut(ends === null ? rest : rest.slice(0, ends.index));
      if (rows.length > 0) yield rows;
      if (ends === null) rest = left;
      else {
        rest = rest.slice(ends.index);
        where = 'after';
      }
    }
  }
  if (where !== 'after') throw damaged(entry.name, 'its rows do not end');
  return around + rest;
}

function cut(text: string): { rows: RowText[]; left: string } {
  if (text.includes('<!')) throw new NotInRows();
  const rows: RowText[] = [];
  let from = 0;
  for (const { index, 0: tag } of text.matchAll(CLOSES)) {
    const xml = text.slice(from, index + tag.length);
    const number = NUMBER.exec(xml.slice(xml.lastIndexOf('<row ') < 0 ? 0 : xml.lastIndexOf('<row ')))?.[1];
    if (number === undefined) throw new NotInRows();
    rows.push({ row: Number(number) - 1, xml });
    from = index + tag.length;
  }
  return { rows, left: text.slice(from) };
}

/** Rows as readSheet gives them, with all they hold. */
export function readRows(
  texts: readonly RowText[],
  part: string,
  strings: readonly string[],
): readonly RowSeen[] {
  const xml = texts.map((one) => one.xml).join('');
  const { rows, addressed } = readSheet(
    `<worksheet><sheetData>${xml}</sheetData></worksheet>`,
    part,
    strings,
  );
  if (!addressed) throw new NotInRows();
  return rows;
}

/** The ranges merged in a sheet, from what stands around its rows. */
export const mergedAround = (around: string, part: string): readonly string[] =>
  readSheet(around, part, []).merged;
