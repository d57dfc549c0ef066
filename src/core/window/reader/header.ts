/** Where the headings of a sheet stand, however many titles are above, and how two or three rows of them join. */
import { joinHeadings, readHeading, unitWord, type HeadingRead } from './heading';
import { saidBy } from './meanings';
import { isDay, type Cell, type Row } from './cells';

/** A merged range, counted from 0. */
export interface Merged {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export interface Header {
  /** Rows of the sheet, from 0. */
  readonly rows: readonly number[];
  /** By column, the texts from the highest row to the lowest. */
  readonly texts: readonly (readonly string[])[];
  readonly reads: readonly HeadingRead[];
}

/** So many rows are looked through for headings. */
const LOOKED_THROUGH = 400;
/** Headings this well understood count as known. */
const KNOWN = 0.6;
const LEAST_KNOWN = 3;

const scores = new Map<string, number>();
/** How well a text is understood as a heading, whatever it means. */
export function headingScore(text: string): number {
  const kept = scores.get(text);
  if (kept !== undefined) return kept;
  let best = 0;
  if (text.length <= 60) for (const score of saidBy(readHeading(text)).values()) best = Math.max(best, score);
  if (scores.size > 5_000) scores.clear();
  scores.set(text, best);
  return best;
}

const textOf = (cell: Cell | undefined): string => (typeof cell === 'string' ? cell : '');
/** “11.5yds”, “x2”, “$31.50/yd”. */
/** “1 off” heads what one of several takes. */
const ONE_OFF = /^(?:1|one)[- ]off$/i;
const FIGURE_AND_UNIT = /^(?:[$£€x×]\s?)?\d[\d.,\s½¼¾/]*(?:\/?\s?[a-z]{1,7}\.?)?$/i;
const isFigure = (cell: Cell): boolean =>
  typeof cell === 'number' ||
  isDay(cell) ||
  (typeof cell === 'string' &&
    !ONE_OFF.test(cell) &&
    ((/^[\d½¼¾⅛⅜⅝⅞]/.test(cell) && !/[a-z]{3}/i.test(cell)) || FIGURE_AND_UNIT.test(cell)));

function rowScore(row: Row): { score: number; known: number } {
  let [score, known, texts] = [0, 0, 0];
  for (const cell of row) {
    if (cell === null) continue;
    if (isFigure(cell)) score -= 0.8;
    else if (typeof cell === 'string') {
      texts++;
      const said = headingScore(cell);
      if (said >= KNOWN) known++;
      score += said >= 0.4 ? said : -0.15;
    }
  }
  return { score: texts < 2 ? 0 : score, known };
}

const isUnitRow = (row: Row): boolean => {
  const cells = row.filter((cell) => cell !== null);
  return (
    cells.length > 0 &&
    cells.every(
      (cell) =>
        typeof cell === 'string' &&
        /^\(?[^a-z]*(?:[a-z]{1,11})?[^a-z]*\)?$/i.test(cell) &&
        unitWord(cell.replace(/[()[\]]/g, '')) !== undefined,
    )
  );
};

const MOST_WORDS = 4;
const WIDEST_GROUP = 9;
/** A title or a note, where a group has a name. */
const isSentence = (text: string): boolean =>
  text.length > 40 || text.split(' ').length > MOST_WORDS || /\b(?:is|are)\b/i.test(text);

/** Over how many columns of a row the widest name above them reaches. */
function widestReach(row: Row, below: Row): number {
  let [widest, from] = [0, -1];
  const last = Math.max(row.length, below.length);
  for (let at = 0; at <= last; at++) {
    if (at < last && (row[at] ?? null) === null) continue;
    if (from >= 0) widest = Math.max(widest, below.slice(from, at).filter((cell) => cell !== null).length);
    from = at;
  }
  return widest;
}

/** A row of names over groups of columns: several texts, no figure, at least one that is known. */
function isGroupRow(row: Row | undefined, below: Row): boolean {
  if (row === undefined) return false;
  const cells = row.filter((cell) => cell !== null);
  if (cells.length < 2 || cells.some((cell) => typeof cell !== 'string' || isFigure(cell))) return false;
  if (cells.some((cell) => isSentence(textOf(cell)))) return false;
  if (widestReach(row, below) > WIDEST_GROUP) return false;
  const known = cells.filter((cell) => headingScore(textOf(cell)) >= 0.3).length;
  return known * 2 >= cells.length && below.filter((cell) => cell !== null).length >= 2;
}

/** “$45 / window” over a column of what was charged: a heading may state one rate, where a row of data has several. */
const RATE = /^[$£€]\s?[\d.,]+\s*(?:\/|per\b|an?\b)\s*[a-z]+$/i;
const statesARate = (cells: Row, cell: Cell): boolean =>
  RATE.test(textOf(cell)) && cells.filter((one) => RATE.test(textOf(one))).length === 1;

/** A lower row of headings: no figures, and its words are headings rather than a window's. */
function isLowerRow(row: Row | undefined, above: Row): boolean {
  if (row === undefined) return false;
  const cells = row.filter((cell) => cell !== null);
  if (cells.length < 2) return false;
  if (cells.some((cell) => typeof cell !== 'string' || (isFigure(cell) && !statesARate(cells, cell))))
    return false;
  if (isUnitRow(row)) return true;
  const known = cells.filter(
    (cell) =>
      headingScore(textOf(cell)) >= 0.4 ||
      ONE_OFF.test(textOf(cell)) ||
      unitWord(textOf(cell).replace(/[()]/g, '')) !== undefined,
  ).length;
  const same = row.filter(
    (cell, at) => cell !== null && textOf(cell).toLowerCase() === textOf(above[at]).toLowerCase(),
  ).length;
  return known >= 2 && known >= cells.length * 0.7 && same < 2;
}

/** A row of words that all stand below names merged over several columns parts these, whatever they say. */
function isUnderGroups(row: Row | undefined, above: number, merged: readonly Merged[]): boolean {
  const groups = merged.filter((one) => one.row === above && one.rows === 1 && one.columns > 1);
  const filled = [...(row ?? []).entries()].filter(([, cell]) => cell !== null);
  return (
    filled.length >= 2 &&
    filled.every(
      ([at, cell]) =>
        typeof cell === 'string' &&
        !isFigure(cell) &&
        groups.some(({ column, columns }) => at >= column && at < column + columns),
    )
  );
}

const coverOf = (merged: readonly Merged[], row: number, column: number): Merged | undefined =>
  merged.find(
    (one) =>
      row >= one.row && row < one.row + one.rows && column >= one.column && column < one.column + one.columns,
  );

/** What one row of a header says over each column; a group's name reaches over the columns below it. */
function textsOfRow(
  rows: readonly Row[],
  row: number,
  below: readonly Row[],
  merged: readonly Merged[],
  columns: number,
): string[] {
  const anyMerged = merged.some((one) => one.row === row && one.columns > 1);
  let group = '';
  return Array.from({ length: columns }, (_, column) => {
    const cover = coverOf(merged, row, column);
    const text = textOf(rows[row]?.[column]);
    const under = below.some((lower) => (lower[column] ?? null) !== null);
    // A cell merged over both rows says its heading once.
    if (cover !== undefined && cover.row <= row && text === '')
      return cover.row === row ? textOf(rows[cover.row]?.[cover.column]) : '';
    if (!under) group = '';
    else if (text !== '') group = text;
    return text === '' && under && !anyMerged ? group : text;
  });
}

/** By column, what each of the header's rows says; a group's name reaches over its columns. */
function textsOf(
  rows: readonly Row[],
  at: readonly number[],
  merged: readonly Merged[],
  columns: number,
): string[][] {
  const texts = Array.from({ length: columns }, (): string[] => []);
  for (const [depth, row] of at.entries()) {
    const below = at.slice(depth + 1).map((lower) => rows[lower] ?? []);
    const said = textsOfRow(rows, row, below, merged, columns);
    for (const [column, list] of texts.entries()) {
      const text = said[column] ?? '';
      if (text !== '' && list.at(-1)?.toLowerCase() !== text.toLowerCase()) list.push(text);
    }
  }
  return texts;
}

export function headerAt(rows: readonly Row[], at: readonly number[], merged: readonly Merged[]): Header {
  const columns = Math.max(
    ...at.map((row) => rows[row]?.length ?? 0),
    ...at.map((row) => rows[row + 1]?.length ?? 0),
  );
  const texts = textsOf(rows, at, merged, columns);
  return { rows: at, texts, reads: texts.map((list) => joinHeadings(list)) };
}

/** The rows of a header around its best row. */
function grown(rows: readonly Row[], main: number, merged: readonly Merged[]): number[] {
  const at = [main];
  while (at.length < 3 && isGroupRow(rows[(at[0] ?? 0) - 1], rows[at[0] ?? 0] ?? []))
    at.unshift((at[0] ?? 0) - 1);
  for (;;) {
    const last = at.at(-1) ?? main;
    const lower = rows[last + 1];
    if (at.length >= 3 || !(isLowerRow(lower, rows[last] ?? []) || isUnderGroups(lower, last, merged))) break;
    at.push(last + 1);
  }
  return at;
}

export interface Headers {
  readonly header: Header;
  /** Where other rows of other headings stand below: another table begins there. */
  readonly others: readonly number[];
}

const signature = (row: Row): string =>
  row
    .map((cell) => textOf(cell).toLowerCase())
    .filter((text) => text !== '')
    .join('|');

/** Finds the headings among a sheet's rows; `pointed` are rows somebody says they are. */
export function findHeader(rows: readonly Row[], merged: readonly Merged[]): Headers | undefined {
  const tried: { row: number; score: number }[] = [];
  for (let row = 0; row < Math.min(rows.length, LOOKED_THROUGH); row++) {
    const { score, known } = rowScore(rows[row] ?? []);
    if (known >= LEAST_KNOWN && score >= 1.8) tried.push({ row, score });
  }
  const most = tried.reduce((best, { score }) => Math.max(best, score), 0);
  const first = tried.find(({ score }) => score >= most * 0.7);
  if (first === undefined) return undefined;
  const at = grown(rows, first.row, merged);
  const own = new Set(at.map((row) => signature(rows[row] ?? [])));
  const others = tried
    .filter(
      ({ row, score }) => row > (at.at(-1) ?? 0) && score >= 2.4 && !own.has(signature(rows[row] ?? [])),
    )
    .filter(({ row }) => !mostlySame(rows[row] ?? [], rows, at))
    .map(({ row }) => row);
  return { header: headerAt(rows, at, merged), others };
}

function mostlySame(row: Row, rows: readonly Row[], at: readonly number[]): boolean {
  const texts = row.filter((cell) => cell !== null).length;
  const same = row.filter((cell, column) =>
    at.some(
      (head) => cell !== null && textOf(rows[head]?.[column]).toLowerCase() === textOf(cell).toLowerCase(),
    ),
  ).length;
  return same * 2 > texts;
}
