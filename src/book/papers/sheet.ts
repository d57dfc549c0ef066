/** A paper as a sheet of the workbook: cells that point at the job's, none of them a function of ours. */
import { entryText, type Entry, type EntryKind, type Page, type Paper } from '../../core/papers/paper';
import { areaAt } from '../address';
import type { CellPut, Dress } from '../book';
import { charactersOf } from '../column-width';
import { together, type Draft } from '../sheets/draft';
import { markOf, pointingAt } from './again';
import { bandsOf, LETTERS, type Band } from './bands';

const POINTS = 72;
export const INCHES: Readonly<Record<Page['size'], readonly [wide: number, high: number]>> = {
  letter: [8.5, 11],
  a4: [8.27, 11.69],
};

/** What a page has room for, in points. */
export function roomOn({ size, landscape, margins }: Page): { wide: number; high: number } {
  const [short, long] = INCHES[size];
  const [wide, high] = landscape ? [long, short] : [short, long];
  const [left, top, right, bottom] = margins;
  return { wide: (wide - left - right) * POINTS, high: (high - top - bottom) * POINTS };
}

/** So that a font a little wider does not ask for a second page across. */
const SAFE = 0.985;

const FORMATS: Readonly<Record<EntryKind, string>> = {
  words: '@',
  money: '#,##0.00',
  count: 'General',
  yardage: '0.00#',
  share: '0.0##%',
  day: 'd mmmm yyyy',
};

/** The row repeated on every page; none where its table ends on the page it begins on. */
function headerOf(bands: readonly Band[], breaks: readonly number[]): number {
  const header = bands.findIndex(({ repeated }) => repeated === true);
  const last = bands.findLastIndex(({ ofRepeated }) => ofRepeated === true);
  return breaks.some((at) => at > header && at <= last) ? header : -1;
}

/** How a paper's sheet is written. */
export interface SheetWish {
  /** Before every amount, where the house has one. */
  readonly sign?: string;
  /** Values alone, for who has not the job: no formula, no mark. */
  readonly values?: boolean;
}

function putOf({ as, value, at }: Entry, values: boolean): CellPut {
  if (at !== undefined && !values) return { formula: pointingAt(at) };
  // A day that is only said is text, or the sheet's own format would be the reader's guess.
  return as === 'day' && at === undefined ? entryText({ as, value }) : value;
}

/** Rows at which a page begins, so that what belongs together is not parted. */
export function breaksOf(bands: readonly Band[], high: number): readonly number[] {
  const breaks: number[] = [];
  const header = bands.findIndex(({ repeated }) => repeated === true);
  const again = bands[header]?.height ?? 0;
  let used = 0;
  for (let at = 0; at < bands.length;) {
    let end = at;
    while (end < bands.length - 1 && bands[end]?.keep === true) end++;
    const stretch = bands.slice(at, end + 1);
    const needs = stretch.reduce((sum, { height }) => sum + height, 0);
    const asked = stretch[0]?.newPage === true;
    if (at > 0 && (asked || used + needs > high)) {
      breaks.push(at);
      used = header >= 0 && at > header ? again : 0;
    }
    used += needs;
    at = end + 1;
  }
  return breaks;
}

/** What the cells of a paper hold, and the mark that tells later whether somebody changed them. */
function putsOf({ kind, page }: Paper, bands: readonly Band[], sheet: string, values: boolean): Draft {
  const puts = bands.flatMap(({ cells }, row) =>
    cells.flatMap(({ from, entry }) =>
      // A cell that nothing is written in is none that somebody could have emptied.
      entry === undefined || entry.value === '' ? [] : [{ row, column: from, put: putOf(entry, values) }],
    ),
  );
  const mark = areaAt(sheet, 0, page.columns + 1);
  const grid = Array.from({ length: bands.length }, () => Array<CellPut>(page.columns).fill(undefined));
  for (const { row, column, put } of puts) (grid[row] as CellPut[])[column] = put;
  return together(
    { puts: [{ area: areaAt(sheet, 0, 0, bands.length, page.columns), cells: grid }] },
    values
      ? {}
      : { puts: [{ area: mark, cells: [[markOf(kind, puts)]] }], dress: [{ area: mark, role: 'note' }] },
  );
}

/** Suites round a column each in its own way; one that fills the page to its edge would have it made smaller. */
const NOT_WHOLE = 0.997;

/** Columns each as wide as it is, the last less by what they are too much together. */
function within(widths: readonly number[], wide: number): readonly number[] {
  const over = widths.reduce((sum, one) => sum + one, 0) - wide;
  return over <= 0 ? widths : widths.map((one, at) => (at === widths.length - 1 ? one - over : one));
}

/** A paper laid out: its columns in points, its rows, where pages begin, and the row that every page repeats. */
export interface Laid {
  readonly across: readonly number[];
  readonly bands: readonly Band[];
  readonly breaks: readonly number[];
  /** Below 0 where none is repeated. */
  readonly header: number;
}

export function layPaper(paper: Paper): Laid {
  const { page } = paper;
  const { wide, high } = roomOn(page);
  const each = (wide / page.columns) * SAFE;
  const across =
    page.widths === undefined
      ? Array.from({ length: page.columns }, () => each)
      : within(page.widths, wide * NOT_WHOLE);
  const bands = bandsOf(paper, each);
  const breaks = breaksOf(bands, high);
  return { across, bands, breaks, header: headerOf(bands, breaks) };
}

const quoted = (text: string): string => `"${text.replace(/"/g, '')}"`;

/** The number format of an entry; the unit of a yardage is in it, so that its cell stays a figure. */
function formatOf({ as, unit, zero }: Entry, money: string): string {
  if (as === 'money') return zero === undefined ? money : `${money};-${money};${quoted(zero)}`;
  if (as !== 'yardage' || unit === undefined) return FORMATS[as];
  // Cloth is told to the eighth; a pair or an hour as it is.
  return `${unit === 'yd' || unit === 'm' ? FORMATS[as] : FORMATS.count} ${quoted(unit)}`;
}

/** Left to itself, a suite puts words of a script that runs from right to left against the next column. */
function sided(align: Dress['align'], entry: Entry | undefined): Pick<Dress, 'align'> {
  const side = align ?? (entry?.as === 'words' ? 'left' : undefined);
  return side === undefined ? {} : { align: side };
}

export function paperDraft(
  paper: Paper,
  sheet: string,
  { sign = '', values = false }: SheetWish = {},
): Draft {
  const { page } = paper;
  const { across, bands, breaks, header } = layPaper(paper);
  const money = sign === '' ? FORMATS.money : `${quoted(sign)}${FORMATS.money}`;
  const merged = bands.flatMap(({ cells }, row) =>
    cells.filter(({ span }) => span > 1).map(({ from, span }) => areaAt(sheet, row, from, 1, span)),
  );
  return together(
    { newSheets: [{ name: sheet }] },
    putsOf(paper, bands, sheet, values),
    ...bands.map(({ cells }, row): Draft => ({
      dress: cells.map(({ from, span, role, entry, align }) => ({
        area: areaAt(sheet, row, from, 1, span),
        role,
        ...(entry !== undefined && entry.as !== 'words' && { format: formatOf(entry, money) }),
        ...sided(align, entry),
      })),
    })),
    {
      newDrawings: bands.flatMap(({ drawn }, row) =>
        drawn === undefined
          ? []
          : [{ name: `Drawing ${row + 1}`, at: areaAt(sheet, row, 0), drawing: drawn, letters: LETTERS }],
      ),
      layouts: [
        {
          sheet,
          widths: Object.fromEntries(across.map((points, at) => [at, charactersOf(points)])),
          heights: Object.fromEntries(bands.map(({ height }, row) => [row, height])),
          merged,
          plain: true,
          print: {
            landscape: page.landscape,
            paper: page.size,
            area: areaAt(sheet, 0, 0, bands.length, page.columns),
            breaks,
            margins: page.margins,
            ...(paper.foot !== '' && { foot: paper.foot }),
            ...(header >= 0 && { repeatRows: [header, header] as const }),
          },
        },
      ],
    },
  );
}
