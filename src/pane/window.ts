/** The window a cell is about: its row in a window table, or the inputs of the function it asks. */
import { areaAt, sameSheet, type Area } from '../book/address';
import type { Book } from '../book/book';
import type { ColumnsRead } from '../book/columns';
import { survey } from '../book/survey';
import { Trouble } from '../book/trouble';
import { WANTED } from '../book/wanted';
import { Refusal } from '../core/cell/answer';
import { COLUMN_KEYS, readInto, WINDOW_COLUMNS, type ColumnKey, type Window } from '../core/window/columns';
import { isBlank, type CellIn } from '../core/cell/fields';
import { WindowWork } from '../core/window/job';
import { orderColumns } from '../core/window/order';
import { exact, type Length } from '../core/exact/length';
import { readHouse, type House } from '../core/house/house';
import type { Asked } from '../book/asked/asked';

export interface WindowSeen {
  readonly work: WindowWork;
  readonly house: House;
  /** How the sheet heads the column a cell stands in, where it is a row of the table. */
  headingAt(at: Area): string | undefined;
}

type Cells = Partial<Record<ColumnKey, { readonly raw: CellIn; readonly name: string }>>;

/** Figures of a column in another unit than the house's keep their unit as text. */
const inUnit = (raw: CellIn, unit: string | undefined, house: House): CellIn =>
  unit === undefined || unit === house.unit.small || isBlank(raw) || !/^[\d.]+$/.test(String(raw))
    ? raw
    : `${String(raw)} ${unit}`;

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
function fromCall({ inputs }: Asked, house: House): Cells {
  const rowsOf = (name: string): readonly CellIn[] => {
    const value = inputs.find((one) => one.name === name)?.value;
    const first = Array.isArray(value) ? (value as CellIn[])[0] : undefined;
    return Array.isArray(first) ? (first as CellIn[]) : [];
  };
  const row = [rowsOf('rows'), rowsOf('row')].find((one) => one.length > 0) ?? [];
  const columns = orderColumns(rowsOf('headers'), house.unit).found;
  return Object.fromEntries(
    columns.flatMap(({ key, at, heading, unit }) =>
      key in WINDOW_COLUMNS
        ? [[key, { raw: inUnit(row[at] ?? null, unit.small, house), name: heading }] as const]
        : [],
    ),
  );
}

async function fromRow(book: Book, cell: Area, read: ColumnsRead | undefined, house: House): Promise<Cells> {
  if (read === undefined || !isWindow(read, cell.row)) return {};
  const [row] = await book.read(
    [areaAt(cell.sheet, cell.row, read.block.area.column, 1, read.block.area.columns)],
    'cells',
  );
  const cells: Cells = {};
  for (const { key, column, heading, unit } of read.columns) {
    if (key === undefined || !(key in WINDOW_COLUMNS)) continue;
    const raw = row?.values[0]?.[column - read.block.area.column] ?? null;
    cells[key as ColumnKey] = { raw: inUnit(raw, unit, house), name: heading };
  }
  return cells;
}

const camel = (name: string): string =>
  name.replace(/_([a-z])/g, (_all, letter: string) => letter.toUpperCase());

function fromInputs(asked: Asked): Cells {
  const cells: Cells = {};
  for (const { name, value } of asked.inputs) {
    const key = camel(name) as ColumnKey;
    if (COLUMN_KEYS.includes(key)) cells[key] = { raw: value, name };
  }
  return cells;
}

/** What the function was given comes before what stands in its row. */
function merged(row: Cells, inputs: Cells): Cells {
  const given = Object.entries(inputs).filter(([, { raw }]) => !isBlank(raw));
  return {
    ...row,
    ...Object.fromEntries(
      given.map(([key, { raw, name }]) => [key, { raw, name: row[key as ColumnKey]?.name ?? name }]),
    ),
  };
}

/** What can be read of the cells; one that cannot is left out, as the function itself says why. */
function windowOf(cells: Cells, house: House): Window {
  const window: Partial<Record<ColumnKey, unknown>> = {};
  for (const [key, cell] of Object.entries(cells) as [ColumnKey, { raw: CellIn; name: string }][]) {
    try {
      readInto(window, key, cell.raw, { name: cell.name, unit: house.unit });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
    }
  }
  return window as Window;
}

export async function windowSeen(book: Book, cell: Area, asked: Asked): Promise<WindowSeen> {
  const house = readHouse(asked.inputs.find((one) => one.name === 'rules')?.value);
  const read = await tableAround(book, cell, house);
  const whole = fromCall(asked, house);
  // A cell outside any window table is worked out from its function's inputs alone.
  const cells: Cells =
    Object.keys(whole).length > 0 ? whole : merged(await fromRow(book, cell, read, house), fromInputs(asked));
  const names = Object.fromEntries(Object.entries(cells).map(([key, { name }]) => [key, name]));
  return {
    work: new WindowWork(windowOf(cells, house), house.rules, names),
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
