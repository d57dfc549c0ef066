/** The window a cell is about: its row in a window table, or the inputs of the function it asks. */
import { sameSheet, type Area } from '../book/address';
import type { Book } from '../book/book';
import type { ColumnsRead } from '../book/columns';
import { survey } from '../book/survey';
import { Trouble } from '../book/trouble';
import { WANTED } from '../book/wanted';
import { Refusal } from '../core/cell/answer';
import { COLUMN_KEYS, readInto, type ColumnKey, type Window } from '../core/window/columns';
import { isBlank, type CellIn } from '../core/cell/fields';
import { WindowWork } from '../core/window/job';
import { headingsByKey, windowOf } from '../core/window/reader/as-window';
import { cellOf } from '../core/window/reader/cells';
import { understandGiven } from '../core/window/reader/given';
import { RowReader } from '../core/window/reader/rows';
import { exact, type Length } from '../core/exact/length';
import { readHouse, type House } from '../core/house/house';
import type { Asked } from '../book/asked/asked';

export interface WindowSeen {
  readonly work: WindowWork;
  readonly house: House;
  /** How the sheet heads the column a cell stands in, where it is a row of the table. */
  headingAt(at: Area): string | undefined;
}

/** A window as far as it can be read, and how the sheet heads each of its columns. */
interface Seen {
  readonly window: Window;
  readonly names: Partial<Record<string, string>>;
}

/** The table the cell stands in; undefined outside any. */
async function tableAround(book: Book, cell: Area, house: House): Promise<ColumnsRead | undefined> {
  try {
    return (await survey(book, WANTED, house.unit, cell)).read;
  } catch (thrown) {
    if (thrown instanceof Trouble) return undefined;
    throw thrown;
  }
}

const isWindow = (read: ColumnsRead, row: number): boolean =>
  read.lines.some((line) => line.row === row && line.kind === 'window');

function headingAt(read: ColumnsRead | undefined, at: Area): string | undefined {
  if (read === undefined || at.columns > 1 || at.rows > 1 || !isWindow(read, at.row)) return undefined;
  if (!sameSheet(at.sheet, read.block.area.sheet)) return undefined;
  const heading = read.columns.find((one) => one.column === at.column)?.heading;
  return heading === '' ? undefined : heading;
}

/** What a call of SCHEDULE or CHECK hands over: headings and the first of its rows. */
function fromCall({ inputs }: Asked, house: House): Seen | undefined {
  const rowsIn = (name: string): readonly (readonly CellIn[])[] => {
    const value = inputs.find((one) => one.name === name)?.value;
    return Array.isArray(value) && Array.isArray(value[0]) ? (value as CellIn[][]) : [];
  };
  const [row] = [rowsIn('rows'), rowsIn('row')].find((one) => one.length > 0) ?? [];
  const headers = rowsIn('headers');
  if (row === undefined || headers.length === 0) return undefined;
  const found = understandGiven(headers, [row], house.unit);
  if ('none' in found) return undefined;
  const reader = new RowReader(found.plan);
  const [read] = [...reader.push(0, row.map(cellOf)), ...reader.end()];
  return read === undefined
    ? undefined
    : { window: windowOf(read.values, house.unit), names: headingsByKey(found.columns) };
}

function fromRow(cell: Area, read: ColumnsRead | undefined, house: House): Seen {
  const line = read?.lines.find(({ row, kind }) => row === cell.row && kind === 'window');
  if (read === undefined || line === undefined) return { window: {}, names: {} };
  return { window: windowOf(line.read.values, house.unit), names: headingsByKey(read.table.columns) };
}

const camel = (name: string): string =>
  name.replace(/_([a-z])/g, (_all, letter: string) => letter.toUpperCase());

/** What the function was given, as far as it can be read: what cannot, the function itself says. */
function fromInputs(asked: Asked, house: House): Seen {
  const window: Partial<Record<ColumnKey, unknown>> = {};
  const names: Partial<Record<string, string>> = {};
  for (const { name, value } of asked.inputs) {
    const key = camel(name) as ColumnKey;
    if (!COLUMN_KEYS.includes(key) || isBlank(value)) continue;
    names[key] = name;
    try {
      readInto(window, key, value, { name, unit: house.unit });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
    }
  }
  return { window: window as Window, names };
}

/** What the function was given comes before what stands in its row, under the sheet’s headings. */
const merged = (row: Seen, inputs: Seen): Seen => ({
  window: { ...row.window, ...inputs.window },
  names: { ...inputs.names, ...row.names },
});

export async function windowSeen(book: Book, cell: Area, asked: Asked): Promise<WindowSeen> {
  const house = readHouse(asked.inputs.find((one) => one.name === 'rules')?.value);
  const read = await tableAround(book, cell, house);
  // A cell outside any window table is worked out from its function's inputs alone.
  const seen = fromCall(asked, house) ?? merged(fromRow(cell, read, house), fromInputs(asked, house));
  return {
    work: new WindowWork(seen.window, house.rules, seen.names),
    house,
    headingAt: (at) => headingAt(read, at),
  };
}

export interface Saved {
  readonly narrower: Length;
  readonly widths: number;
  readonly yardage: Length;
}

const orNone = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
};

/** How far the rod is from needing fewer widths, and the cloth that would spare. */
export const savedBy = ({ work }: WindowSeen): Saved | undefined =>
  orNone(() => {
    const narrower = work.saveWidth().value;
    const rod = work.window.rodWidth ?? work.rodWidth().value;
    const after = new WindowWork({ ...work.window, rodWidth: exact(rod - narrower) }, work.rules);
    return {
      narrower,
      widths: work.widths() - after.widths(),
      yardage: exact(work.yardage().value - after.yardage().value),
    };
  });

export const deliveredFullness = ({ work }: WindowSeen): number | undefined =>
  orNone(() => work.cloth().work.delivered);
