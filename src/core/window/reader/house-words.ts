/**
 * The words of a house: what its headings mean, once somebody has said so. They stand in a sheet of
 * two columns, the heading as the house writes it and what it means under our own, and come before
 * all evidence wherever that heading stands.
 */
import type { CellIn } from '../../cell/fields';
import type { OrderKey } from '../meanings';
import { cellOf } from './cells';
import { keyNamed } from './meanings';

/** The sheet they stand in. */
export const WORDS_SHEET = 'Words of this house';
export const WORDS_HEADINGS = ['heading', 'means'] as const;

/** By heading, its meanings; an empty list says that it is none of ours. */
export type HouseWords = ReadonlyMap<string, readonly OrderKey[]>;

/** Headings of several rows are joined by “ | ”; capitals, dots and blanks make no other word. */
const plain = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[.:\s]+/g, ' ')
    .trim();

export interface WordsRead {
  /** Where the columns stand among those given, and the row that heads them. */
  readonly at: { readonly head: number; readonly heading: number; readonly means: number };
  readonly words: HouseWords;
  /** The headings as the house writes them, with what they mean. */
  readonly written: readonly (readonly [heading: string, keys: readonly OrderKey[]])[];
  /** What stands under “means” and is no heading of ours. */
  readonly unknown: readonly string[];
}

/** Reads the sheet; undefined where no row heads it so. */
export function readHouseWords(rows: readonly (readonly CellIn[])[]): WordsRead | undefined {
  const texts = rows.map((row) => row.map(cellOf));
  const top = texts.findIndex(
    (row) =>
      row.some((cell) => isHead(cell, WORDS_HEADINGS[0])) &&
      row.some((cell) => isHead(cell, WORDS_HEADINGS[1])),
  );
  const head = texts[top];
  if (head === undefined) return undefined;
  const [heading, means] = WORDS_HEADINGS.map((word) => head.findIndex((cell) => isHead(cell, word)));
  const words = new Map<string, readonly OrderKey[]>();
  const written: (readonly [string, readonly OrderKey[]])[] = [];
  const unknown: string[] = [];
  for (const row of texts.slice(top + 1)) {
    const said = row[heading ?? 0] ?? null;
    if (said === null) continue;
    const meant = String(row[means ?? 1] ?? '')
      .split('+')
      .map((word) => word.trim())
      .filter((word) => word !== '' && word.toLowerCase() !== 'none');
    const keys = meant.map(keyNamed);
    unknown.push(...meant.filter((_, at) => keys[at] === undefined));
    if (keys.includes(undefined)) continue;
    words.set(plain(String(said)), keys as OrderKey[]);
    written.push([String(said), keys as OrderKey[]]);
  }
  return { words, written, unknown, at: { head: top, heading: heading ?? 0, means: means ?? 1 } };
}

const isHead = (cell: unknown, word: string): boolean =>
  typeof cell === 'string' && cell.trim().toLowerCase() === word;

/** What the words say of one heading; undefined where they do not name it. */
export const wordFor = (heading: string, words: HouseWords): readonly OrderKey[] | undefined =>
  words.get(plain(heading));

/** What a house's words say of the columns of a table; the user’s own word for a column stands. */
export function saidByWords(
  texts: readonly (readonly string[])[],
  words: HouseWords | undefined,
  said: ReadonlyMap<number, readonly OrderKey[]> | undefined,
): ReadonlyMap<number, readonly OrderKey[]> | undefined {
  if (words === undefined || words.size === 0) return said;
  const all = new Map(said);
  const taken = new Set([...all.values()].flat());
  for (const [at, list] of texts.entries()) {
    const keys = list.length === 0 ? undefined : wordFor(list.join(' | '), words);
    // One meaning is one column’s: of two headed so the first has it.
    if (keys === undefined || all.has(at) || keys.some((key) => taken.has(key))) continue;
    all.set(at, keys);
    for (const key of keys) taken.add(key);
  }
  return all.size === 0 ? said : all;
}
