/** The words of this house in the workbook: the sheet that says what its headings mean, read and written for the pane. */
import {
  readHouseWords,
  wordFor,
  WORDS_HEADINGS,
  WORDS_SHEET,
  type HouseWords,
  type WordsRead,
} from '../core/window/reader/house-words';
import { headingOf } from '../core/window/reader/meanings';
import type { OrderKey } from '../core/window/meanings';
import { areaAt, sameSheet, type Area } from './address';
import { apply, show, type Watch } from './apply';
import type { Block, Book, BookRead, Contents, Put } from './book';
import type { ColumnsRead, Corrections } from './columns';

/** What the sheet says; undefined where the workbook has none. Words that mean nothing of ours are passed over. */
export async function houseWords(book: BookRead, contents: Contents): Promise<HouseWords | undefined> {
  const block = await wordsBlock(book, contents);
  return block === undefined ? undefined : readHouseWords(block.values)?.words;
}

async function wordsBlock(book: BookRead, contents: Contents): Promise<Block | undefined> {
  const used = contents.sheets.find(({ name }) => sameSheet(name, WORDS_SHEET))?.used;
  if (used === undefined) return undefined;
  const [block] = await book.read([used], 'contents');
  return block;
}

/** A heading and what it means, as the sheet has them. */
export type Word = readonly [heading: string, means: string];

const asWords = (keys: readonly string[]): string =>
  keys.length === 0 ? 'none' : keys.map((key) => headingOf(key as OrderKey)).join(' + ');

/** What the user has said of the columns of a table. */
export const wordsSaid = ({ columns }: ColumnsRead): readonly Word[] =>
  columns.flatMap(({ corrected, reading, heading, key, keys }): Word[] => {
    const own = reading?.heading ?? heading;
    return corrected && own !== '' ? [[own, asWords(key === undefined ? [] : keys)]] : [];
  });

/** All words of the workbook's own sheet, to be taken up in another. */
export async function wordsOfBook(book: BookRead): Promise<readonly Word[]> {
  const block = await wordsBlock(book, await book.contents());
  const { written = [] } = (block && readHouseWords(block.values)) ?? {};
  return written.map(([heading, keys]): Word => [heading, asWords(keys)]);
}

export interface Kept {
  readonly written: number;
  /** Headings of which the sheet says something else: what stands there stays. */
  readonly otherwise: readonly string[];
}

const WIDTHS = { 0: 32, 1: 32 };

/** Where words go: below those that stand there, else under headings of their own. */
function putsOf(
  sheet: string,
  words: readonly Word[],
  block: Block | undefined,
  at: WordsRead['at'] | undefined,
): { readonly puts: readonly Put[]; readonly first: Area } {
  const below = block === undefined ? 0 : block.area.row + block.area.rows;
  const left = block?.area.column ?? 0;
  const columns = at === undefined ? [left, left + 1] : [left + at.heading, left + at.means];
  const row = at === undefined ? below + 1 : below;
  const heads = WORDS_HEADINGS.map((text, part) => ({
    area: areaAt(sheet, below, columns[part] ?? 0),
    cells: [[text]],
  }));
  const listed = columns.map((column, part) => ({
    area: areaAt(sheet, row, column, words.length),
    cells: words.map((word) => [word[part] ?? '']),
  }));
  return {
    puts: [...(at === undefined ? heads : []), ...listed],
    first: areaAt(sheet, row, columns[0] ?? 0),
  };
}

/** Writes words below those that the sheet has, or on a new sheet, in one undo step. */
export async function keepWords(book: Book, words: readonly Word[], watch: Watch = {}): Promise<Kept> {
  const contents = await book.contents();
  const block = await wordsBlock(book, contents);
  const there = block === undefined ? undefined : readHouseWords(block.values);
  const known = there?.words ?? new Map<string, readonly OrderKey[]>();
  const fresh = words.filter(([heading]) => wordFor(heading, known) === undefined);
  const otherwise = words.flatMap(([heading, means]) => {
    const own = wordFor(heading, known);
    return own === undefined || asWords(own) === means ? [] : [heading];
  });
  if (fresh.length === 0) return { written: 0, otherwise };
  const named = contents.sheets.find(({ name }) => sameSheet(name, WORDS_SHEET))?.name;
  const sheet = named ?? WORDS_SHEET;
  const { puts, first } = putsOf(sheet, fresh, block, there?.at);
  await apply(
    book,
    'Keep the words of this house',
    {
      ...(named === undefined && { newSheets: [{ name: sheet }], layouts: [{ sheet, widths: WIDTHS }] }),
      puts,
    },
    watch,
  );
  await show(book, first);
  return { written: fresh.length, otherwise };
}

/** The columns of a table that the house's words explain, as corrections are kept. */
export function correctionsFrom({ columns }: ColumnsRead, words: HouseWords | undefined): Corrections {
  const said: Record<string, string | null> = {};
  for (const { id, reading, heading } of columns) {
    const keys = words === undefined ? undefined : wordFor(reading?.heading ?? heading, words);
    if (keys !== undefined) said[id] = keys.length === 0 ? null : keys.join('+');
  }
  return said;
}
