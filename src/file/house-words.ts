/** The words of a house for a command: from the book that --words names, or from the sheet in the file itself. */
import { readHouseWords, WORDS_SHEET, type HouseWords } from '../core/window/reader/house-words';
import { Problem } from './problem';
import type { NamedSheet } from './sheets';
import { openSheets } from './table';

const isWordsSheet = ({ name }: { readonly name: string }): boolean =>
  name.trim().toLowerCase().startsWith(WORDS_SHEET.toLowerCase());

function wordsOf(sheet: Pick<NamedSheet, 'rows'>, path: string): HouseWords | undefined {
  const read = readHouseWords(sheet.rows);
  const [unknown] = read?.unknown ?? [];
  if (unknown !== undefined)
    throw new Problem(
      `“${path}” says that a heading means “${unknown}”, which is no column of ours. Say it as a heading of ours, like vertical repeat, or leave the cell blank where it is none.`,
    );
  return read?.words;
}

/** The house's words among a file's own sheets; undefined where it has none. */
export function wordsAmong(
  sheets: readonly Pick<NamedSheet, 'name' | 'rows'>[],
  path: string,
): HouseWords | undefined {
  const own = sheets.find(isWordsSheet);
  return own === undefined ? undefined : wordsOf(own, path);
}

/** What --words names: the sheet of that name in a workbook, or a table of “heading” and “means”. */
export async function readWordsBook(path: string | undefined): Promise<HouseWords | undefined> {
  if (path === undefined) return undefined;
  const sheets = await openSheets(path, undefined);
  const found =
    wordsAmong(sheets, path) ??
    sheets.reduce<HouseWords | undefined>((words, sheet) => words ?? wordsOf(sheet, path), undefined);
  if (found === undefined)
    throw new Problem(
      `“${path}” holds no words of a house. They stand on a sheet “${WORDS_SHEET}” in two columns, headed “heading” and “means”, like “Gds W” and “fabric width”.`,
    );
  return found;
}
