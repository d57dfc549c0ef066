/** From one window to a floor: rows for many rooms, types by floors, and one figure for many rooms. */
import { CENTIMETRES, INCHES, type Unit } from '../../core/exact/unit';
import { roomNumbers } from '../../core/floor/room-numbers';
import { areaAt, cellText, common, placeText, within, type Area } from '../address';
import { apply, type Watch } from '../apply';
import {
  filled,
  type Block,
  type Book,
  type CellPut,
  type CellValue,
  type Changes,
  type Dress,
  type NameSeen,
  type TableSeen,
} from '../book';
import type { ColumnsRead, SheetColumn, WantedColumn } from '../columns';
import { shifted } from '../formula';
import { windowsSheet } from '../sheets/windows';
import { trouble } from '../trouble';

/** Rows to be written, seen before a cell is touched. */
export interface RoomRows {
  readonly says: string;
  readonly changes: Changes;
  /** Cells of the rows copied that are given another room or quantity. */
  readonly mayOverwrite: readonly Area[];
  /** Where the new rows stand; undefined where only rows that were there change. */
  readonly area: Area | undefined;
}

/** A row to be written like another, some of its cells given. */
interface Copy {
  readonly like: number;
  readonly given: ReadonlyMap<number, CellValue>;
}

const nameOf = ({ block }: ColumnsRead): string => block.table?.name ?? block.area.sheet;
const columnFor = (read: ColumnsRead, key: string): SheetColumn | undefined =>
  read.columns.find((one) => one.key === key);

function needColumn(read: ColumnsRead, key: string, what: string): number {
  const column = columnFor(read, key)?.column;
  if (column === undefined) throw trouble('noColumn', what, nameOf(read));
  return column;
}

const cellOf = ({ block }: ColumnsRead, row: number, column: number): CellValue =>
  block.values[row - block.area.row]?.[column - block.area.column] ?? null;
const plainRoom = (value: CellValue): string =>
  String(value ?? '')
    .trim()
    .toLowerCase();
const windowRows = (read: ColumnsRead): readonly number[] =>
  read.lines.filter(({ kind }) => kind === 'window').map(({ row }) => row);

/** A room number stays a number in the sheet, unless it begins with 0. */
const asCell = (room: string): CellValue => (/^[1-9]\d*$/.test(room) ? Number(room) : room);

/** Rows for every room of the pattern, like the row `like`; that row stays as it is unless it has no room. */
export async function roomRows(
  book: Book,
  read: ColumnsRead,
  like: number,
  pattern: string,
): Promise<RoomRows> {
  if (!windowRows(read).includes(like)) throw trouble('notARow', nameOf(read));
  const rooms = roomNumbers(pattern);
  const column = needColumn(read, 'room', 'the room');
  const own = plainRoom(cellOf(read, like, column));
  const there = new Map(windowRows(read).map((row) => [plainRoom(cellOf(read, row, column)), row]));
  const wanted = rooms.filter((room) => room.toLowerCase() !== own);
  const taken = wanted.find((room) => there.has(room.toLowerCase()));
  if (taken !== undefined) throw trouble('roomThere', taken, (there.get(taken.toLowerCase()) ?? 0) + 1);
  const [first, ...rest] = wanted;
  const unnamed = own === '' && first !== undefined;
  const copies = (unnamed ? rest : wanted).map((room): Copy => ({
    like,
    given: new Map([[column, asCell(room)]]),
  }));
  const puts = unnamed
    ? [{ area: areaAt(read.block.area.sheet, like, column), cells: [[asCell(first)]] }]
    : [];
  const stays = unnamed || rooms.length > wanted.length ? '' : ` Row ${like + 1} stays as it is.`;
  return written(book, read, copies, { puts, mayOverwrite: [], more: stays });
}

/** A matrix of types down and floors across, as rows of windows with their quantities. */
export async function matrixRows(book: Book, read: ColumnsRead, matrix: Area): Promise<RoomRows> {
  const { sheet } = read.block.area;
  const [block] = await book.read([matrix], 'contents');
  if (block === undefined || matrix.rows < 2 || matrix.columns < 2)
    throw trouble('matrixShape', placeText(matrix));
  const [room, quantity] = [
    needColumn(read, 'room', 'the room'),
    needColumn(read, 'quantity', 'the quantity'),
  ];
  const rows = new Map(windowRows(read).map((row) => [plainRoom(cellOf(read, row, room)), row]));
  const copies: Copy[] = [];
  const puts: { area: Area; cells: CellPut[][] }[] = [];
  for (const { type, counts, at } of typesOf(block)) {
    const like = rows.get(plainRoom(type));
    if (like === undefined) throw trouble('matrixType', at, type, nameOf(read));
    const each = Number(cellOf(read, like, quantity) ?? 1);
    const given = counts.map(
      ({ floor, count }) =>
        new Map<number, CellValue>([
          [room, `${type}, ${floor}`],
          [quantity, count * (each > 0 ? each : 1)],
        ]),
    );
    // The row the type was entered on becomes its first floor, so that it is not counted twice.
    const [first, ...others] = given;
    for (const [column, value] of first ?? []) {
      if (formulaAt(read, like, column) !== null) throw trouble('ownFormula', cellText(like, column));
      puts.push({ area: areaAt(sheet, like, column), cells: [[value]] });
    }
    copies.push(...others.map((one): Copy => ({ like, given: one })));
  }
  if (puts.length === 0) throw trouble('matrixShape', placeText(matrix));
  const mayOverwrite = puts.map(({ area }) => area);
  const types = puts.length / 2;
  const more = ` ${types === 1 ? 'The row of its type becomes its' : `The ${types} rows of the types become their`} first floor.`;
  return written(book, read, copies, { puts, mayOverwrite, more });
}

interface TypeRow {
  readonly type: string;
  readonly counts: readonly { readonly floor: string; readonly count: number }[];
  /** The cell that names it. */
  readonly at: string;
}

function typesOf({ values, area }: Block): readonly TypeRow[] {
  const floors = (values[0] ?? []).map((value) => String(value ?? '').trim());
  return values.slice(1).flatMap((row, down): TypeRow[] => {
    const type = String(row[0] ?? '').trim();
    if (type === '') return [];
    const counts = row.slice(1).flatMap((value, across) => {
      const cell = cellText(area.row + 1 + down, area.column + 1 + across);
      const floor = floors[across + 1] ?? '';
      if (!filled(value)) return [];
      const count = Number(value);
      if (!Number.isInteger(count) || count < 0) throw trouble('matrixNumber', cell, String(value));
      if (floor === '') throw trouble('matrixShape', placeText(area));
      return count === 0 ? [] : [{ floor, count }];
    });
    return [{ type, counts, at: cellText(area.row + 1 + down, area.column) }];
  });
}

const formulaAt = ({ block }: ColumnsRead, row: number, column: number): string | null =>
  block.formulas[row - block.area.row]?.[column - block.area.column] ?? null;

/** The columns of the table itself, not of what may stand beside it. */
function ownColumns(read: ColumnsRead): ReadonlySet<number> {
  const { block, header, columns } = read;
  return new Set(
    columns
      .filter((_, at) => block.table !== undefined || header.headings[at] !== '')
      .map(({ column }) => column),
  );
}

async function written(
  book: Book,
  read: ColumnsRead,
  copies: readonly Copy[],
  own: {
    readonly puts: Changes['puts'] & {};
    readonly mayOverwrite: readonly Area[];
    readonly more: string;
  },
): Promise<RoomRows> {
  const { table, area: whole } = read.block;
  const { sheet, column, columns } = table?.area ?? whole;
  if (copies.length === 0)
    return {
      says: `No row is added.${own.more}`,
      changes: { puts: own.puts },
      mayOverwrite: own.mayOverwrite,
      area: undefined,
    };
  const start = (windowRows(read).at(-1) ?? read.header.row) + 1;
  const area = areaAt(sheet, start, column, copies.length, columns);
  const likes = [...new Set(copies.map(({ like }) => like))];
  const [target, ...models] = await book.read([
    area,
    ...likes.map((row) => areaAt(sheet, row, column, 1, columns)),
  ]);
  if (target === undefined) throw trouble('missing', `The sheet “${sheet}”`);
  const grown = table === undefined ? undefined : growth(table, area);
  const mine = ownColumns(read);
  const inTheWay = firstInTheWay(target, table, mine);
  if (inTheWay !== undefined) throw trouble('rowsInTheWay', `${placeText(inTheWay)} of “${sheet}”`);
  const cells = copies.map(({ like, given }, i) => {
    const model = models[likes.indexOf(like)] as Block;
    return Array.from({ length: columns }, (_, j): CellPut => {
      const said = given.get(column + j);
      if (said !== undefined) return said;
      const formula = model.formulas[0]?.[j] ?? null;
      if (formula === null) return mine.has(column + j) ? (model.values[0]?.[j] ?? undefined) : undefined;
      const there = target.formulas[i]?.[j] ?? null;
      return there === null && mine.has(column + j)
        ? { formula: shifted(formula, start + i - like, 0) }
        : undefined;
    });
  });
  const { names } = await book.contents();
  const moved = grown === undefined ? [] : grownNames(names, table as TableSeen, grown);
  const bigger = grown === undefined ? '' : ` The table grows to ${placeText(grown)}.`;
  return {
    says: `${copies.length === 1 ? 'One row is' : `${copies.length} rows are`} added in rows ${start + 1} to ${start + copies.length}.${bigger}${own.more}`,
    changes: {
      puts: [...own.puts, { area, cells }],
      dress: formatsOf(models[0] as Block, area),
      ...(grown !== undefined && ownLooks(table as TableSeen, grown)),
      ...(grown !== undefined && { resize: [{ table: (table as TableSeen).name, area: grown }] }),
      ...(moved.length > 0 && { movedNames: moved }),
    },
    mayOverwrite: own.mayOverwrite,
    area,
  };
}

/** The table with room for the rows, where its own rows do not suffice. */
function growth(table: TableSeen, area: Area): Area | undefined {
  const rows = area.row + area.rows - table.area.row;
  const body = table.area.rows - (table.totalsRow ? 1 : 0);
  if (rows <= body) return undefined;
  if (table.totalsRow) throw trouble('totalsBelow', table.name);
  return { ...table.area, rows };
}

/** Inside the user's table a formula that shows nothing is no obstacle; below it nothing may stand. */
function firstInTheWay(
  target: Block,
  table: TableSeen | undefined,
  mine: ReadonlySet<number>,
): Area | undefined {
  const { area } = target;
  for (const [i, row] of target.values.entries()) {
    for (const [j, value] of row.entries()) {
      const at = areaAt(area.sheet, area.row + i, area.column + j);
      const inside = table !== undefined && common(table.area, at) !== undefined;
      const holds = filled(value) || (!inside && (target.formulas[i]?.[j] ?? null) !== null);
      if (holds && (mine.has(at.column) || table !== undefined)) return at;
    }
  }
  return undefined;
}

/** Named ranges over whole columns of the table go on being whole. */
const grownNames = (names: readonly NameSeen[], { area }: TableSeen, grown: Area) =>
  names.flatMap(({ name, area: named }) => {
    if (named === undefined || common(named, area) === undefined) return [];
    const whole = named.row === area.row + 1 && named.rows === area.rows - 1;
    return whole ? [{ name, area: { ...named, rows: grown.rows - 1 } }] : [];
  });

const formatsOf = (model: Block, area: Area): readonly Dress[] =>
  (model.formats[0] ?? []).flatMap((format, j): Dress[] =>
    format === 'General' || format === ''
      ? []
      : [{ area: { ...area, column: area.column + j, columns: 1 }, format }],
  );

/** Rows joined to our own sheet of windows look like those above them, with the same choices. */
function ownLooks({ name, area, columns }: TableSeen, grown: Area): Pick<Changes, 'dress' | 'validations'> {
  const number = /^windows(_\d+)?$/i.exec(name);
  if (number === null) return {};
  const draft = windowsSheet({
    unit: /\(cm\)/.test(columns.join()) ? CENTIMETRES : INCHES,
    paper: 'letter',
    windows: area.rows - 1,
    sheet: () => area.sheet,
    name: (base) => `${base}${number[1] ?? ''}`,
  });
  // Only where the columns still stand as we made them.
  if (draft.newTables?.[0] === undefined || !within(draft.newTables[0].area, area)) return {};
  if (!within(area, draft.newTables[0].area)) return {};
  const added = { row: area.row + area.rows, rows: grown.rows - area.rows };
  const below = <T extends { readonly area: Area }>(list: readonly T[] = []): T[] =>
    list
      .filter((one) => one.area.row === area.row + 1 && one.area.rows === area.rows - 1)
      .map((one) => ({ ...one, area: { ...one.area, ...added } }));
  return { dress: below(draft.dress), validations: below(draft.validations) };
}

export async function writeRooms(book: Book, roomRows: RoomRows, watch: Watch = {}): Promise<void> {
  await apply(book, 'Add rooms', roomRows.changes, { ...watch, mayOverwrite: roomRows.mayOverwrite });
}

/** One column set to one value for every room of the pattern; how many rows were set. */
export async function setForRooms(
  book: Book,
  read: ColumnsRead,
  given: { readonly pattern: string; readonly column: SheetColumn; readonly value: string },
  wanted: readonly WantedColumn[],
  unit: Unit,
  watch: Watch = {},
): Promise<number> {
  const rooms = roomNumbers(given.pattern);
  const room = needColumn(read, 'room', 'the room');
  const rowsOf = new Map<string, number[]>();
  for (const row of windowRows(read)) {
    const key = plainRoom(cellOf(read, row, room));
    rowsOf.set(key, [...(rowsOf.get(key) ?? []), row]);
  }
  const lacking = rooms.filter((one) => !rowsOf.has(one.toLowerCase()));
  if (lacking.length > 0) throw trouble('roomsMissing', listed(lacking), nameOf(read));
  const typed = given.value.trim();
  const meaning = wanted.find(({ key }) => key === given.column.key);
  const small = given.column.unit ?? unit.small;
  meaning?.field.kind.read(typed, { name: given.column.heading, unit: { ...unit, small } });
  const value: CellValue = typed === '' ? null : /^-?\d+(\.\d+)?$/.test(typed) ? Number(typed) : typed;
  const rows = rooms.flatMap((one) => rowsOf.get(one.toLowerCase()) ?? []);
  const formula = rows.find((row) => formulaAt(read, row, given.column.column) !== null);
  if (formula !== undefined) throw trouble('ownFormula', cellText(formula, given.column.column));
  const areas = rows.map((row) => areaAt(read.block.area.sheet, row, given.column.column));
  await apply(
    book,
    `Set ${given.column.heading}`,
    { puts: areas.map((area) => ({ area, cells: [[value]] })) },
    { ...watch, mayOverwrite: areas },
  );
  return rows.length;
}

const listed = (rooms: readonly string[]): string => {
  const shown = rooms.slice(0, 5).join(', ');
  return rooms.length > 5 ? `${shown} and ${rooms.length - 5} more` : shown;
};
