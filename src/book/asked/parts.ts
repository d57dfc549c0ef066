/** What a formula without functions of ours is worked out from: each cell in the words that stand beside it. */
import { areaAt, areaText, letters, type Area } from '../address';
import type { Book, CellValue } from '../book';
import { Trouble } from '../trouble';
import { areasIn, readFormula, Unfollowed } from './formula-read';

export interface AskedPart {
  readonly from: Area;
  readonly label: string;
  /** Of a longer range the sum of its figures. */
  readonly value: CellValue;
  /** How many figures are in that sum; undefined for one cell. */
  readonly figures?: number;
}

/** A range of so many cells is shown cell by cell. */
const MOST_CELLS = 8;
const MOST_PARTS = 24;
/** So many rows above a range are looked through for its heading. */
const LOOKED_UP = 6;

const cellsOf = ({ sheet, row, column, rows, columns }: Area): Area[] =>
  Array.from({ length: rows * columns }, (_, at) =>
    areaAt(sheet, row + Math.floor(at / columns), column + (at % columns)),
  );

const isWord = (value: CellValue | undefined): value is string =>
  typeof value === 'string' && value.trim() !== '' && !value.startsWith('#');

/** The nearest words to the left, else the nearest above. */
async function labelOf(book: Book, { sheet, row, column, rows }: Area): Promise<string> {
  const top = Math.max(0, row - LOOKED_UP);
  const [left, above] = await book.read(
    [areaAt(sheet, row, 0, 1, column + 1), areaAt(sheet, top, column, row - top + 1, 1)],
    'contents',
  );
  const beside = left?.values[0]?.slice(0, column).findLast(isWord);
  const heading = above?.values.slice(0, -1).flat().findLast(isWord);
  return (rows === 1 ? (beside ?? heading) : (heading ?? beside)) ?? `column ${letters(column)}`;
}

async function partOf(book: Book, from: Area): Promise<AskedPart> {
  const [[block], label] = await Promise.all([book.read([from], 'contents'), labelOf(book, from)]);
  const values = block?.values.flat() ?? [];
  if (values.length === 1) return { from, label, value: values[0] ?? null };
  const figures = values.filter((one) => typeof one === 'number');
  const sum = figures.reduce((all, one) => all + one, 0);
  return { from, label, value: Math.round(sum * 1e6) / 1e6, figures: figures.length };
}

/** In the order of the formula, each cell once; none where the pane cannot follow it. */
export async function partsOf(book: Book, formula: string, cell: Area): Promise<readonly AskedPart[]> {
  try {
    const areas = areasIn(readFormula(formula, cell, await book.contents())).flatMap((area) =>
      area.rows * area.columns <= MOST_CELLS ? cellsOf(area) : [area],
    );
    const once = [...new Map(areas.map((area) => [areaText(area), area])).values()];
    return await Promise.all(once.slice(0, MOST_PARTS).map((from) => partOf(book, from)));
  } catch (thrown) {
    // A sheet that is gone has no words for its cells.
    if (thrown instanceof Unfollowed || (thrown instanceof Trouble && thrown.code === 'missing')) return [];
    throw thrown;
  }
}
