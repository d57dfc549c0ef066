/** A floor read out of a surveyed table: every window worked out, its totals, its cuts, its prices. */
import type { Money } from '../../core/exact/money';
import { NO_FITTINGS, PIECE_WORDS, withMore, type Fittings, type Piece } from '../../core/heading/fittings';
import { Refusal } from '../../core/cell/answer';
import { BEHIND, type Behind } from '../../core/cloth/behind';
import { headingsByKey, windowOfRow } from '../../core/window/reader/as-window';
import { cellOf } from '../../core/window/reader/cells';
import { WindowWork } from '../../core/window/job';
import { exact, NO_LENGTH, type Length } from '../../core/exact/length';
import { readHouse, type House } from '../../core/house/house';
import { fabricOf } from '../../core/floor/tally';
import { filled } from '../book';
import type { ColumnsRead, SheetColumn } from '../columns';
import type { RulesSeen } from '../rule-lines';

/** A window row with where it stands and how it is told from others. */
export interface FloorWindow {
  /** Sheet row. */
  readonly row: number;
  readonly work: WindowWork;
  readonly type: string;
  readonly floor: string;
}

export interface Floor {
  readonly sheet: string;
  readonly house: House;
  readonly windows: readonly FloorWindow[];
  /** Rows that cannot be worked out, each with its sentence. */
  readonly unread: readonly { readonly row: number; readonly sentence: string }[];
}

const UNSAID = 'not said';

/** “King, 4” is a type and its floor; room 412 is on floor 4. Columns of the user's own come first. */
export function placeOf(room: string, type = '', floor = ''): { type: string; floor: string } {
  const parts = /^(.+?),\s*(?:floor\s+)?([^,]+)$/i.exec(room.trim());
  const number = /^[a-z]*(\d{1,2})\d{2}[a-z]?$/i.exec(room.trim());
  return {
    type: type || (parts?.[1] ?? UNSAID),
    floor: floor || (parts?.[2] ?? number?.[1] ?? UNSAID),
  };
}

/** Columns of the user's that say what a window cannot: its type and its floor. */
export const PLACE_HEADINGS = {
  type: /^(room|window) ?type$|^type$/i,
  floor: /^(floor|storey|level)( no\.?)?$/i,
} as const;

const headed = (read: ColumnsRead, like: RegExp): SheetColumn | undefined =>
  read.columns.find(({ key, heading }) => key === undefined && like.test(heading.trim()));

/** Works every window row out, under the workbook's rules; a row that cannot be is told apart. */
/** `spares`: asked for instead of the house's share. */
export function readFloor(
  read: ColumnsRead,
  seen: Pick<RulesSeen, 'rows'> | undefined,
  spares?: Money,
): Floor {
  const own = readHouse(seen?.rows ?? null);
  const house = spares === undefined ? own : { ...own, rules: { ...own.rules, spareWindows: spares } };
  const { block } = read;
  const [type, floor] = [headed(read, PLACE_HEADINGS.type), headed(read, PLACE_HEADINGS.floor)];
  const windows: FloorWindow[] = [];
  const unread: { row: number; sentence: string }[] = [];
  const names = headingsByKey(read.table.columns);
  for (const { row, kind, read: own } of read.lines) {
    if (kind !== 'window') continue;
    const cells = block.values[row - block.area.row] ?? [];
    const said = (column: SheetColumn | undefined): string => {
      const value = column === undefined ? null : cells[column.column - block.area.column];
      return filled(value) ? String(value).trim() : '';
    };
    try {
      const window = windowOfRow(own, cells.map(cellOf), read.table.columns, house.unit);
      const work = new WindowWork(window, house.rules, names);
      work.laid();
      windows.push({ row, work, ...placeOf(window.room ?? '', said(type), said(floor)) });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      unread.push({ row, sentence: thrown.finding.sentence });
    }
  }
  return { sheet: block.area.sheet, house, windows, unread };
}

export interface GroupTotal {
  readonly name: string;
  readonly windows: number;
  readonly widths: number;
  readonly cuts: number;
  readonly yardage: Length;
  /** Yardage of each cloth behind the face. */
  readonly behind: Readonly<Partial<Record<Behind, Length>>>;
}

function withBehind(sum: GroupTotal['behind'], work: WindowWork): GroupTotal['behind'] {
  const all: Partial<Record<Behind, Length>> = { ...sum };
  for (const cloth of work.clothsBehind)
    all[cloth] = exact((sum[cloth] ?? NO_LENGTH) + (work.behind(cloth)?.yardage ?? NO_LENGTH));
  return all;
}

/** The cloths behind the face that these windows have. */
export const clothsBehind = (windows: readonly FloorWindow[]): readonly Behind[] =>
  BEHIND.filter((cloth) => windows.some(({ work }) => work.clothsBehind.includes(cloth)));

/** Sums by a word each window has, in the order the words first appear. */
export function totalsBy(
  windows: readonly FloorWindow[],
  groupOf: (window: FloorWindow) => string,
): readonly GroupTotal[] {
  const groups = new Map<string, GroupTotal>();
  for (const window of windows) {
    const { work } = window;
    const name = groupOf(window);
    const sum = groups.get(name) ?? {
      name,
      windows: 0,
      widths: 0,
      cuts: 0,
      yardage: NO_LENGTH,
      behind: {},
    };
    const { yardage, cuts } = work.laid();
    groups.set(name, {
      name,
      windows: sum.windows + work.quantity,
      widths: sum.widths + work.widths() * work.quantity,
      cuts: sum.cuts + cuts,
      yardage: exact(sum.yardage + yardage),
      behind: withBehind(sum.behind, work),
    });
  }
  return [...groups.values()];
}

export const GROUPS = {
  fabric: ({ work }: FloorWindow): string => fabricOf(work),
  lining: ({ work }: FloorWindow): string => work.window.lining ?? 'unlined',
  'room type': ({ type }: FloorWindow): string => type,
  floor: ({ floor }: FloorWindow): string => floor,
} as const;
export type GroupName = keyof typeof GROUPS;

/** Rods of one length, longest first, with all that hangs on them. */
export interface RodTotal {
  readonly rod: Length;
  readonly rods: number;
  readonly hardware: Fittings;
}

export function rodTotals(windows: readonly FloorWindow[]): readonly RodTotal[] {
  const byRod = new Map<Length, RodTotal>();
  for (const { work } of windows) {
    const { rod, quantity } = work;
    const sum = byRod.get(rod) ?? { rod, rods: 0, hardware: NO_FITTINGS };
    byRod.set(rod, {
      rod,
      rods: sum.rods + (work.window.hangOn === 'none' ? 0 : quantity),
      hardware: withMore(sum.hardware, work.fittings(), quantity),
    });
  }
  return [...byRod.values()].sort((one, other) => other.rod - one.rod);
}

/** The kinds of pieces that some rod of them has. */
export const piecesOf = (rods: readonly RodTotal[]): readonly (readonly [Piece, string])[] =>
  PIECE_WORDS.filter(([key]) => rods.some(({ hardware }) => hardware[key] > 0));
