/**
 * The one reader of the user’s tables. It takes all rows of a sheet and what else its host can show,
 * and gives the header, what every column means and how sure that is, what every row is, every value,
 * what was assumed and what must be asked; or one sentence where no table of windows stands.
 */
import { finding, type Finding } from '../../cell/answer';
import type { CellIn } from '../../cell/fields';
import { letters } from '../../cell/letters';
import type { Unit } from '../../exact/unit';
import type { OrderKey } from '../meanings';
import { aboutAlike, headedAlike } from './alike';
import { cellOf, type Cell, type Row } from './cells';
import { fractionOfDay } from './evidence';
import type { Merged } from './header';
import type { HouseWords } from './house-words';
import { headingOf, nameOf, type MeaningKey } from './meanings';
import { isWindowFact } from './row-kind';
import { RowReader } from './rows';
import type { Plan, RowRead } from './slots';
import type { ColumnRead, Corrections, Understanding } from './understand';
import { understandSheet } from './whole-sheet';

export interface SheetIn {
  /** All rows from A1; a cell that holds a date comes as { day }, counted as spreadsheets count. */
  readonly rows: readonly (readonly CellIn[])[];
  readonly merged?: readonly Merged[];
}

export interface ReadOptions {
  readonly unit: Unit;
  /** Rows somebody says the headings stand in, from 0. */
  readonly header?: readonly number[];
  readonly said?: Corrections;
  /** What the house's own words for headings mean. */
  readonly words?: HouseWords;
  /** Past orders: rooms and prices alone are a table of them. */
  readonly orders?: boolean;
}

export interface TableRead {
  readonly header: readonly number[];
  readonly columns: readonly ColumnRead[];
  /** Every row below the header. */
  readonly rows: readonly RowRead[];
  readonly assumed: readonly OrderKey[];
  readonly findings: readonly Finding[];
  readonly understanding: Understanding;
  /** Why this is no table of windows; undefined where it is one. */
  readonly none: string | undefined;
}
export interface NoTable {
  readonly none: string;
}

const listed = (texts: readonly string[], last: string): string =>
  texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} ${last} ${texts.at(-1) ?? ''}`;
const cellName = (row: number, column: number): string => `${letters(column)}${row + 1}`;

const OF_DRAPERY: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'heading',
  'draw',
  'lining',
  'rodWidth',
  'finishedDrop',
  'verticalRepeat',
  'widths',
  'fabricWidth',
  'return',
  'overlap',
  'fullness',
  'fabric',
  'leftExtension',
  'rightExtension',
  'cutLength',
  'yardage',
  'liningYardage',
  'finishedWidth',
  'measured',
  'measuredTo',
  'floorFinish',
  'railroaded',
  'openingWidth',
  'liningWidth',
]);

/** What only draperies have; lengths, cloth and prices are of other goods too. */
const ONLY_DRAPERY: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'heading',
  'draw',
  'lining',
  'rodWidth',
  'widths',
  'fullness',
  'measuredTo',
  'floorFinish',
  'overlap',
  'return',
  'leftExtension',
  'finishedWidth',
  'cutLength',
]);

/** Why these columns are no table of windows; undefined where they may be one. */
function notOfWindows(columns: readonly ColumnRead[]): string | undefined {
  const known = columns.filter(
    ({ means, sure }) => sure !== 'asked' && means.some((key) => OF_DRAPERY.has(key)),
  );
  const sure = known.filter((one) => one.sure === 'sure').length;
  const drapery = known.some(({ means }) => means.some((key) => ONLY_DRAPERY.has(key)));
  return drapery && (known.length >= 3 || (known.length >= 2 && sure >= 1))
    ? undefined
    : 'The headings found are not those of a table of windows: too few of them say things like inside width, rod width, finished drop, heading or fabric width.';
}

/** Reads a sheet. */
export function readTable(sheet: SheetIn, options: ReadOptions): TableRead | NoTable {
  const merged = sheet.merged ?? [];
  const rows = sheet.rows.map((row): Cell[] => row.map(cellOf));
  const understanding = understandSheet({ rows, merged }, options);
  if ('none' in understanding) return understanding;
  const { header, columns, plan, next } = understanding;
  const no = notOfWindows(columns);
  // Headings that somebody points at are a table’s, whatever they say.
  if (no !== undefined && options.header === undefined && options.orders !== true) return { none: no };
  const read = readRows(rows, (header.rows.at(-1) ?? 0) + 1, next, plan);
  const windows = read.filter(({ is }) => is === 'window');
  const assumed = assumedIn(windows, columns);
  return {
    header: header.rows,
    columns:
      windows.length > 0 || read.every(({ is }) => is === 'blank') ? columns : columns.map(withoutWindow),
    rows: read,
    assumed: assumed.map(({ key }) => key),
    findings: findingsOf(understanding, windows, assumed, rows, options.unit),
    understanding,
    none:
      windows.length > 0 ? undefined : 'The table has headings as for windows, but none of its rows is one.',
  };
}

/** The rows below the headings; from another table's headings on they are notes. */
function readRows(rows: readonly Row[], from: number, next: number | undefined, plan: Plan): RowRead[] {
  const reader = new RowReader(plan);
  const read: RowRead[] = [];
  const last = lastFilled(rows);
  for (let row = from; row <= Math.min(last, (next ?? Infinity) - 1); row++)
    for (const one of reader.push(row, rows[row] ?? [])) read.push(one);
  for (const one of reader.end()) read.push(one);
  for (let row = next ?? Infinity; row <= last; row++)
    read.push({
      row,
      is: (rows[row] ?? []).every((cell) => cell === null) ? 'blank' : 'note',
      values: {},
      unread: [],
      dated: [],
    });
  return read;
}

function lastFilled(rows: readonly Row[]): number {
  for (let row = rows.length - 1; row >= 0; row--)
    if (rows[row]?.some((cell) => cell !== null) === true) return row;
  return -1;
}

interface Assumed {
  readonly key: OrderKey;
  readonly rows: number;
}

/** Where nothing hangs at a window, a width and a drop are those of beds and tables. */
const withoutWindow = (column: ColumnRead): ColumnRead =>
  column.means.some((key) => isWindowFact(key) || key === 'quantity') || column.sure === 'asked'
    ? { ...column, means: [], unit: undefined, per: undefined, sure: 'likely', couldBe: [] }
    : column;

/** What no cell says. A column that may hold it is asked about, and nothing is assumed in its stead. */
function assumedIn(windows: readonly RowRead[], columns: readonly ColumnRead[]): Assumed[] {
  const asked = new Set<MeaningKey>(
    columns.flatMap(({ sure, means, couldBe }) => (sure === 'asked' && means.length === 0 ? couldBe : [])),
  );
  const without = (key: OrderKey, test: (row: RowRead) => boolean = () => true): Assumed => ({
    key,
    rows: windows.filter((row) => test(row) && row.values[key] === undefined).length,
  });
  return [
    without('draw'),
    without('quantity'),
    without('measuredTo', ({ values }) => values.measured !== undefined),
  ].filter(({ key, rows }) => rows > 0 && !asked.has(key));
}

/** What was asked, left out or taken for something, by column. */
function aboutColumns(columns: readonly ColumnRead[]): Finding[] {
  const alike = headedAlike(columns);
  const found: Finding[] = aboutAlike(columns);
  for (const { at, heading, means, other, sure, couldBe, per, perTold } of columns) {
    const column = letters(at);
    if (alike.has(heading.toLowerCase()) && sure === 'asked') continue;
    if (sure === 'asked' && means.length === 0)
      found.push(finding('columnAsked', heading, column, heading, listed(couldBe.map(nameOf), 'or')));
    else if (means.length === 0 && other !== 'panels' && other !== 'layer' && other !== 'place')
      found.push(finding('columnNotRead', heading, column, heading));
    else if (sure === 'likely' && means.length > 0)
      found.push(finding('columnTaken', heading, column, heading, means.map(headingOf).join(' and ')));
    if (perTold && per !== undefined && means[0] !== undefined)
      found.push(finding('perTold', heading, column, headingOf(means[0]), per));
  }
  return found;
}

function findingsOf(
  on: Understanding,
  windows: readonly RowRead[],
  assumed: readonly Assumed[],
  rows: readonly Row[],
  unit: Unit,
): Finding[] {
  const found = aboutColumns(on.columns);
  if (on.units.guessed) found.push(finding('unitTaken', 'unit', on.units.small, unit.name));
  else if (on.units.note !== undefined && on.units.small !== unit.small)
    found.push(finding('unitOfNote', 'unit', on.units.small, on.units.note));
  if (on.dayOrderAsked !== undefined) {
    const row = windows.find(({ row }) => typeof rows[row]?.[on.dayOrderAsked ?? 0] === 'string');
    const cell = row === undefined ? '' : String(rows[row.row]?.[on.dayOrderAsked] ?? '');
    found.push(finding('dayOrderAsked', 'date', letters(on.dayOrderAsked), cell));
  }
  if (on.disagree.length > 0)
    found.push(finding('figuresDisagree', 'columns', listed(on.disagree.map(headingOf), 'and')));
  if (on.next !== undefined) found.push(finding('tableBelow', 'rows', on.next + 1));
  for (const { key, rows: count } of assumed)
    found.push(finding('tableAssumes', headingOf(key), headingOf(key), count));
  return [...found, ...unreadIn(on, windows, rows)];
}

/** What could not be read, once for each column with its count. */
function unreadIn(on: Understanding, windows: readonly RowRead[], rows: readonly Row[]): Finding[] {
  const found: Finding[] = [];
  const columns = new Map<string, { at: number; key: OrderKey; count: number; row: number; text: string }>();
  for (const { row, unread, dated } of windows) {
    for (const at of dated) {
      const cell = rows[row]?.[at] as { day: number } | number;
      const fraction = fractionOfDay(typeof cell === 'number' ? cell : cell.day);
      found.push(
        fraction === undefined
          ? finding('dateNoFigure', cellName(row, at), cellName(row, at), 'a fraction')
          : finding('dateAmongFractions', cellName(row, at), cellName(row, at), String(fraction)),
      );
    }
    for (const { at, key, text } of unread) {
      if (key === 'date' && on.dayOrderAsked === at) continue;
      const known = columns.get(`${at} ${key}`);
      if (known === undefined) columns.set(`${at} ${key}`, { at, key, count: 1, row, text });
      else known.count++;
    }
  }
  for (const { at, key, count, row, text } of columns.values())
    found.push(
      finding('cellsUnread', headingOf(key), letters(at), headingOf(key), count, cellName(row, at), text),
    );
  return found;
}
