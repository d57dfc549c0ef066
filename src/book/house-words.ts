/** The words of this house in the workbook: the sheet that says what its headings mean, for the pane. */
import { readHouseWords, wordFor, WORDS_SHEET, type HouseWords } from '../core/window/reader/house-words';
import { sameSheet } from './address';
import type { BookRead, Contents } from './book';
import type { ColumnsRead, Corrections } from './columns';

/** What the sheet says; undefined where the workbook has none. Words that mean nothing of ours are passed over. */
export async function houseWords(book: BookRead, contents: Contents): Promise<HouseWords | undefined> {
  const used = contents.sheets.find(({ name }) => sameSheet(name, WORDS_SHEET))?.used;
  if (used === undefined) return undefined;
  const [block] = await book.read([used], 'contents');
  return block === undefined ? undefined : readHouseWords(block.values)?.words;
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
