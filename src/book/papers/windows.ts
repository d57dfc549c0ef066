/** The windows of a job by the one reader of tables, each with what the client pays for it. */
import { Refusal } from '../../core/cell/answer';
import type { Facts } from '../../core/window/facts';
import { WindowWork } from '../../core/window/job';
import { headingsByKey, windowOfRow } from '../../core/window/reader/as-window';
import { cellOf } from '../../core/window/reader/cells';
import { meaningOf } from '../../core/window/reader/meanings';
import { saysClientPays } from '../../core/window/reader/money-words';
import { readTable, type TableRead } from '../../core/window/reader/read';
import type { RowRead } from '../../core/window/reader/slots';
import type { ColumnRead, Corrections } from '../../core/window/reader/understand';
import type { House } from '../../core/house/house';
import type { JobCloth, JobWindow } from '../../core/papers/job';
import { count, words, type Entry, type EntryKind } from '../../core/papers/paper';
import { sameSheet } from '../address';
import type { Cells, NamedSheet } from './cells';
import { withCloth } from './of-cloth';

export interface WindowsSeen {
  readonly sheet: string;
  /** How names of its job end in the workbook: “_2”; empty where it is the first. */
  readonly job: string;
  /** Whether it is a table that our template made. */
  readonly own: boolean;
  readonly windows: readonly JobWindow[];
  readonly unread: readonly string[];
  /** Of rows whose quantity is 0. */
  readonly noWindows: readonly string[];
  /** Where the amounts stand that the client pays; undefined where the sheet has none. */
  readonly priceColumn: number | undefined;
  readonly lastRow: number;
}

/** The column of what a row sells for: the last that its heading or the reader calls so, with figures in it. */
export function priceColumnOf(
  cells: Cells,
  sheet: string,
  columns: readonly ColumnRead[],
  rows: readonly RowRead[],
): number | undefined {
  const figures = (at: number): boolean =>
    rows.some(({ row, is }) => is === 'window' && typeof cells.at(sheet, row, at) === 'number');
  const called = columns.filter(
    ({ at, means, heading }) => (means.includes('total') || saysClientPays(heading)) && figures(at),
  );
  return called.at(-1)?.at;
}

/** What a row calls its room, also where the reader left two such columns open. */
function roomColumn(columns: readonly ColumnRead[]): number | undefined {
  const sure = columns.find(({ means }) => means.includes('room'));
  const open = columns.find(({ couldBe, other }) => other === 'roomType' || couldBe.includes('room'));
  return (sure ?? open)?.at;
}

/** A heading is enough: where most cells hold the 0 of an empty one, no figure tells of remarks. */
const remarksColumn = (columns: readonly ColumnRead[]): number | undefined =>
  columns.find(({ other }) => other === 'remarks')?.at ??
  columns.find(({ means, heading }) => means.length === 0 && meaningOf(heading)?.key === 'remarks')?.at;

const FACT_KEYS = ['drawnBy', 'certificate', 'railroaded', 'children'] as const;

function factsOf({ values }: RowRead): Facts {
  return Object.fromEntries(
    FACT_KEYS.flatMap((key) => (values[key] === undefined ? [] : [[key, values[key]]])),
  ) as Facts;
}

/** The name of a table that our own template made bears its job's number. */
const OWN_TABLE = /^windows(_\d+)?$/i;

/** A table as it was read, and where what a row says beside its window stands. */
interface Source {
  readonly cells: Cells;
  readonly sheet: NamedSheet;
  readonly read: TableRead;
  readonly house: House;
  readonly cloths: readonly JobCloth[];
  readonly priceColumn: number | undefined;
  readonly roomColumn: number | undefined;
  readonly remarksColumn: number | undefined;
  readonly quantityColumn: number | undefined;
}

/** Why a row is no window that can be worked out. */
interface Unread {
  readonly unread: string;
  readonly noWindow?: boolean;
}

function windowAt(source: Source, one: RowRead, line: number): JobWindow | Unread {
  const { cells, sheet, read, house } = source;
  const { row } = one;
  const entryAt = (column: number | undefined): Entry | undefined =>
    column === undefined ? undefined : cells.entry(sheet.name, row, column);
  const figureAt = (column: number | undefined, as: EntryKind): Entry | undefined =>
    column === undefined ? undefined : cells.figure(sheet.name, row, column, as);
  try {
    const window = windowOfRow(
      withCloth(one, source.cloths),
      (sheet.rows[row] ?? []).map(cellOf),
      read.columns,
      house.unit,
    );
    const work = new WindowWork(window, house.rules, headingsByKey(read.columns));
    work.laid();
    const remarks = entryAt(source.remarksColumn);
    return {
      row,
      line,
      work,
      room: entryAt(source.roomColumn) ?? words(work.window.room ?? `Window ${line}`),
      quantity: figureAt(source.quantityColumn, 'count') ?? count(work.quantity),
      facts: factsOf(one),
      remarks: remarks?.value === 0 ? undefined : remarks,
      price: figureAt(source.priceColumn, 'money'),
    };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    const { code, sentence } = thrown.finding;
    return { unread: `${sheet.name}, row ${row + 1}: ${sentence}`, noWindow: code === 'noWindowInRow' };
  }
}

function windowsIn(
  sheet: NamedSheet,
  read: TableRead,
  { cells, house, cloths, priceColumn }: WindowsAsked,
): WindowsSeen {
  const { columns } = read;
  const source: Source = {
    cells,
    sheet,
    read,
    house,
    cloths,
    priceColumn: priceColumn ?? priceColumnOf(cells, sheet.name, columns, read.rows),
    roomColumn: roomColumn(columns),
    remarksColumn: remarksColumn(columns),
    quantityColumn: columns.find(({ means }) => means.includes('quantity'))?.at,
  };
  const rows = read.rows.filter(({ is }) => is === 'window');
  const all = rows.map((one, at) => windowAt(source, one, at + 1));
  const told = (which: (one: Unread) => boolean): readonly string[] =>
    all.flatMap((one) => ('unread' in one && which(one) ? [one.unread] : []));
  const table = OWN_TABLE.exec(cells.tableAt(sheet.name, rows[0]?.row ?? -1)?.name ?? '');
  return {
    sheet: sheet.name,
    job: table?.[1] ?? '',
    own: table !== null,
    windows: all.filter((one): one is JobWindow => !('unread' in one)),
    unread: told((one) => one.noWindow !== true),
    noWindows: told((one) => one.noWindow === true),
    priceColumn: source.priceColumn,
    lastRow: rows.at(-1)?.row ?? 0,
  };
}

/** Our own table before any other, else where most rows are windows that can be worked out. */
const better = (one: WindowsSeen, other: WindowsSeen): boolean =>
  one.own === other.own ? one.windows.length > other.windows.length : one.own;

/** By which a workbook is looked through for its windows. */
export interface WindowsAsked {
  readonly cells: Cells;
  readonly house: House;
  readonly cloths: readonly JobCloth[];
  /** The user's word for columns of the table. */
  readonly said?: Corrections | undefined;
  readonly priceColumn?: number | undefined;
  /** The sheet that the user chose. */
  readonly sheet?: string | undefined;
}

/** How a job's names end, of our own tables alone: the one on the chosen sheet, else the first. */
export function ownJob({ contents }: Cells, sheet?: string): string | undefined {
  const own = contents.tables.filter(({ name }) => OWN_TABLE.test(name));
  const chosen = sheet === undefined ? own[0] : own.find(({ area }) => sameSheet(area.sheet, sheet));
  return chosen === undefined ? undefined : (OWN_TABLE.exec(chosen.name)?.[1] ?? '');
}

/** The sheet's windows; undefined where it holds none. */
function windowsOn(sheet: NamedSheet, asked: WindowsAsked): WindowsSeen | undefined {
  const { house, said } = asked;
  const read = readTable(sheet, { unit: house.unit, ...(said === undefined ? {} : { said }) });
  return !('columns' in read) || read.none !== undefined ? undefined : windowsIn(sheet, read, asked);
}

/** The sheet that holds the job's windows; undefined where none does. A list of fabrics may look like one. */
export function readWindows(asked: WindowsAsked): WindowsSeen | undefined {
  const { cells, sheet: chosen } = asked;
  let best: WindowsSeen | undefined;
  for (const sheet of cells.sheets) {
    if (chosen !== undefined && !sameSheet(sheet.name, chosen)) continue;
    const seen = windowsOn(sheet, asked);
    if (seen === undefined) continue;
    if (best === undefined || better(seen, best)) best = seen;
    if (best.own) break;
  }
  return best;
}

/** Other sheets whose windows are priced, and so may stand beside a job's as another option. */
export function otherWindows(asked: WindowsAsked, { sheet, own }: WindowsSeen): readonly string[] {
  const others = asked.cells.sheets.filter(({ name }) => !sameSheet(name, sheet));
  return others
    .filter((one) => {
      if (own) return ownJob(asked.cells, one.name) !== undefined;
      const seen = windowsOn(one, { ...asked, priceColumn: undefined });
      return seen !== undefined && seen.windows.length > 0 && seen.priceColumn !== undefined;
    })
    .map(({ name }) => name);
}
