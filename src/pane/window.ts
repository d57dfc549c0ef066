/** The window a cell is about: its row in a window table, or the inputs of the function it asks. */
import { areaAt, type Area } from '../book/address';
import type { Book } from '../book/book';
import { survey } from '../book/survey';
import { Trouble } from '../book/trouble';
import { WANTED } from '../book/wanted';
import { Refusal } from '../core/answer';
import { COLUMN_KEYS, WINDOW_COLUMNS, type ColumnKey, type Window } from '../core/columns';
import { isBlank, readField, type CellIn, type Field } from '../core/fields';
import { WindowWork } from '../core/job';
import { exact, type Length } from '../core/length';
import { readHouse, type House } from '../core/house';
import type { Asked } from './asked';

export interface WindowSeen {
  readonly work: WindowWork;
  readonly house: House;
}

type Cells = Partial<Record<ColumnKey, { readonly raw: CellIn; readonly name: string }>>;

/** Figures of a column in another unit than the house's keep their unit as text. */
const inUnit = (raw: CellIn, unit: string | undefined, house: House): CellIn =>
  unit === undefined || unit === house.unit.small || isBlank(raw) || !/^[\d.]+$/.test(String(raw))
    ? raw
    : `${String(raw)} ${unit}`;

async function fromRow(book: Book, cell: Area, house: House): Promise<Cells> {
  const { read } = await survey(book, WANTED, house.unit, cell);
  if (!read.lines.some((line) => line.row === cell.row && line.kind === 'window')) return {};
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

/** What can be read of the cells; one that cannot is left out, as the function itself says why. */
function windowOf(cells: Cells, house: House): Window {
  const window: Partial<Record<ColumnKey, unknown>> = {};
  for (const [key, cell] of Object.entries(cells) as [ColumnKey, { raw: CellIn; name: string }][]) {
    try {
      const field = WINDOW_COLUMNS[key].field as Field<unknown>;
      window[key] = readField(field, cell.raw, { name: cell.name, unit: house.unit });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
    }
  }
  return window as Window;
}

export async function windowSeen(book: Book, cell: Area, asked: Asked): Promise<WindowSeen> {
  const house = readHouse(asked.inputs.find((one) => one.name === 'rules')?.value);
  let cells: Cells = {};
  try {
    cells = await fromRow(book, cell, house);
  } catch (thrown) {
    // A cell outside any window table is worked out from its function's inputs alone.
    if (!(thrown instanceof Trouble)) throw thrown;
  }
  return { work: new WindowWork(windowOf({ ...fromInputs(asked), ...cells }, house), house.rules), house };
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
