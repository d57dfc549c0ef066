/** What would be added to the user's table, before a cell is touched: columns, cells, values of the first rows. */
import { functionNamed } from '../../functions/index';
import type { Unit } from '../core/exact/unit';
import type { OrderKey } from '../core/window/meanings';
import { isYardageKey } from '../core/window/reader/meanings';
import { areaAt, common, letters, placeText, type Area } from './address';
import { filled, type Block, type Book, type TableSeen } from './book';
import type { ColumnsRead, WantedColumn } from './columns';
import { levelOf, waysTo, type Way } from './levels';
import { rowFormula, wholeRowFormula, type Handed, type OutputColumn, type Source } from './row-formula';
import { handed } from './whole-row';
import { trouble } from './trouble';

/** A column the user asks for. */
export interface Wish {
  /** An output's key; or a window column's, with the figure that stands for every row. */
  readonly key: string;
  readonly same?: string | number;
  /** The sheet column the user points at; else beside the table. */
  readonly at?: number;
  /** Whether filled cells of that column may be overwritten. */
  readonly overwrite?: boolean;
}

export interface PlannedColumn {
  readonly key: string;
  readonly heading: string;
  readonly column: number;
  /** In the first row; the others follow. */
  readonly formula?: string;
  /** How it is worked out, and how many levels of HEM functions that stands on, itself included. */
  readonly by: Way['by'];
  readonly level: number;
  /** The columns the whole row is handed over by, where it is. */
  readonly handed: readonly Handed[];
  readonly same?: string | number;
  readonly format: string;
  /** Cells of window rows that hold something already, and the first of them. */
  readonly alreadyFilled: number;
  readonly firstFilled?: string;
  readonly overwrite: boolean;
  /** Whether its heading is the user's and stays. */
  readonly keepsHeading: boolean;
}

export interface Plan {
  readonly sheet: string;
  readonly table: TableSeen | undefined;
  /** The table's area with the new columns, where it grows. */
  readonly grown: Area | undefined;
  readonly headerRow: number;
  /** Stretches of window rows: first row and how many. */
  readonly runs: readonly (readonly [row: number, rows: number])[];
  readonly columns: readonly PlannedColumn[];
  /** Every cell that would be written, headings too. */
  readonly touches: readonly Area[];
  /** The same in words: “J4:L40”. */
  readonly says: string;
  /** Rows of it that are hidden or filtered away. */
  readonly hiddenRows: readonly number[];
}

export interface PlanGiven {
  readonly read: ColumnsRead;
  readonly wanted: readonly WantedColumn[];
  readonly outputs: readonly OutputColumn[];
  readonly wishes: readonly Wish[];
  readonly unit: Unit;
  /** The rules range as it stands in a formula (a name, or a fixed address); empty for the defaults. */
  readonly rules: string;
}

const runsOf = (read: ColumnsRead): (readonly [number, number])[] => {
  const runs: [number, number][] = [];
  for (const { row, kind } of read.lines) {
    if (kind !== 'window') continue;
    const last = runs.at(-1);
    if (last !== undefined && last[0] + last[1] === row) last[1] += 1;
    else runs.push([row, 1]);
  }
  return runs;
};

type Unlevelled = Omit<Source, 'level'>;

/** What a formula must know of a column of the user's. */
function columnSource(
  read: ColumnsRead,
  unit: Unit,
  { column, heading, keys, plain, reading }: ColumnsRead['columns'][number],
): Unlevelled {
  const { unit: own, halves, per } = reading ?? {};
  const usual = isYardageKey((keys[0] ?? '') as OrderKey) ? unit.large : unit.small;
  const left = read.block.area.column;
  const parts = read.table.columns.find(({ addsTo }) => addsTo === column - left)?.at;
  return {
    column,
    heading,
    ...(own !== undefined && own !== usual && { unit: own }),
    ...(keys.length > 1 && { keys }),
    ...(halves === true && { halves: true }),
    ...(per !== undefined && { per }),
    ...(parts !== undefined && { parts: parts + left }),
    ...(!plain && { byRow: true }),
  };
}

/** Where a formula finds each meaning: a column of the user's, or what a line beside the table says for all. */
function sourcesOf(read: ColumnsRead, unit: Unit): Map<string, Unlevelled> {
  const sources = new Map<string, Unlevelled>();
  for (const one of read.columns) {
    const source = columnSource(read, unit, one);
    for (const key of one.keys) if (!sources.has(key)) sources.set(key, source);
  }
  const { measuredTo, stated } = read.table.understanding.plan;
  const said = { ...stated, ...(sources.has('measured') && { measuredTo }) };
  for (const [key, constant] of Object.entries(said))
    if (constant !== undefined && !sources.has(key))
      sources.set(key, { column: -1, heading: key, constant: String(constant) });
  return sources;
}

/** The same with the level of each, as its cell of the first window has it. */
function sourcesWithLevels({ read, unit }: PlanGiven, first: number): Map<string, Source> {
  const row = read.lines.find((line) => line.kind === 'window')?.row ?? first;
  return new Map(
    [...sourcesOf(read, unit)].map(([key, source]) => {
      const level = source.constant === undefined ? levelOf(read.block, row, source.column) : 0;
      return [key, { ...source, level }] as const;
    }),
  );
}

/** In a table the whole column is filled: a row without figures stays blank by its formula. */
function rowsToFill(read: ColumnsRead): (readonly [number, number])[] {
  const { table } = read.block;
  if (table === undefined) return runsOf(read);
  const rows = table.area.rows - 1 - (table.totalsRow ? 1 : 0);
  return rows > 0 ? [[table.area.row + 1, rows]] : [];
}

type WayTo = ReturnType<typeof waysTo>;

/** What the formulas are worked out from. Planned columns join the sources one after the other. */
interface Known {
  readonly given: PlanGiven;
  readonly sources: Map<string, Source>;
  readonly way: WayTo;
}

const isOutput = ({ outputs }: PlanGiven, key: string): boolean => outputs.some((one) => one.key === key);

/** The levels of the columns that stand for a figure already. */
function standing(given: PlanGiven, sources: ReadonlyMap<string, Source>): Map<string, number> {
  const asked = new Set(given.wishes.map((one) => one.key));
  // A column headed like an output and still empty is no figure yet: it is worked out first.
  const empty = new Set(
    given.read.columns.flatMap((one) => (one.key !== undefined && one.samples.length === 0 ? [one.key] : [])),
  );
  const has = new Map(
    [...sources].flatMap(([key, { level }]) =>
      asked.has(key) || (empty.has(key) && isOutput(given, key)) ? [] : [[key, level] as const],
    ),
  );
  // One figure for every row is as good as a column of the table.
  for (const { key, same } of given.wishes) if (same !== undefined) has.set(key, 0);
  return has;
}

/** What an output takes and the table has no column for. */
const absent = ({ calls, takes }: OutputColumn, has: ReadonlyMap<string, number>) =>
  (functionNamed(calls)?.parameters ?? []).flatMap(({ name, optional }) => {
    const key = takes[name];
    return key === undefined || has.has(key) ? [] : [{ key, optional }];
  });

/** Outputs asked for, each after those it is worked out from, which join where the table has no column for them. */
function inOrder(given: PlanGiven, has: ReadonlyMap<string, number>, way: WayTo): Wish[] {
  const list: Wish[] = [];
  const under = new Set<string>();
  const add = (wish: Wish): void => {
    if (list.some((one) => one.key === wish.key) || under.has(wish.key)) return;
    under.add(wish.key);
    const output = given.outputs.find((one) => one.key === wish.key);
    if (output !== undefined && wish.same === undefined && way(output.key)?.by !== 'row')
      for (const { key, optional } of absent(output, has)) {
        const asked = given.wishes.find((one) => one.key === key);
        if (asked !== undefined || (isOutput(given, key) && !optional)) add(asked ?? { key });
      }
    list.push(wish);
  };
  for (const wish of given.wishes) add(wish);
  return list;
}

/** Free columns to the right: every cell from the header to the last row is empty. */
async function freeBeside(
  book: Book,
  read: ColumnsRead,
  count: number,
): Promise<{ block: Block; free: number[] }> {
  const { area, table } = read.block;
  const right = area.column + area.columns;
  const top = area.row + read.header.row;
  const last = table === undefined ? (read.lines.at(-1)?.row ?? top) : table.area.row + table.area.rows - 1;
  const look = areaAt(area.sheet, top, right, last - top + 1, count + 12);
  const [block] = await book.read([look], 'contents');
  if (block === undefined) throw trouble('missing', `The sheet “${area.sheet}”`);
  const free = Array.from({ length: look.columns }, (_, at) => at).filter(
    (at) =>
      block.values.every((row) => !filled(row[at])) &&
      block.merged.every((one) => common(one, areaAt(area.sheet, top, right + at, look.rows)) === undefined),
  );
  return { block, free: free.map((at) => right + at) };
}

interface Placed {
  readonly wish: Wish;
  readonly heading: string;
  readonly column: number;
}

const headingOf = ({ outputs, wanted }: PlanGiven, key: string): string =>
  [...outputs, ...wanted].find((one) => one.key === key)?.heading ?? key;

/** A place is refused where another planned column goes, or where an input of the user's stands. */
function mayGo({ read }: PlanGiven, { wish, heading, column }: Placed, before: readonly Placed[]): void {
  const other = before.find((one) => one.column === column);
  if (other !== undefined) throw trouble('twice', letters(column), other.heading, heading);
  const used = read.columns.find(
    (one) => one.column === column && one.key !== undefined && one.key !== wish.key,
  );
  if (used !== undefined) throw trouble('ownInput', letters(column), used.heading);
}

/** Where each column goes, and the hidden rows of the cells beside the table. */
async function places(
  book: Book,
  { given, sources }: Known,
  wishes: readonly Wish[],
): Promise<{ placed: readonly Placed[]; hiddenRows: readonly number[] }> {
  const { area, table } = given.read.block;
  const edge = area.column + area.columns;
  // A column of the table that is headed like an output is where that output goes.
  const own = ({ key, at }: Wish): number | undefined => at ?? sources.get(key)?.column;
  const beside = wishes.filter((one) => own(one) === undefined).length;
  const { block, free } = await freeBeside(book, given.read, beside);
  /** A table grows without a gap; else any free column will do. */
  const next = (grown: number): number => {
    const column = table === undefined ? free.shift() : edge + grown;
    if (column === undefined) throw trouble('noRoom', area.sheet, letters(edge));
    if (table !== undefined && !free.includes(column)) throw trouble('noRoom', table.name, letters(column));
    return column;
  };
  const placed: Placed[] = [];
  for (const wish of wishes) {
    const grown = placed.filter((one) => one.column >= edge).length;
    const one = { wish, heading: headingOf(given, wish.key), column: own(wish) ?? next(grown) };
    mayGo(given, one, placed);
    placed.push(one);
  }
  return { placed, hiddenRows: block.hiddenRows };
}

type There = Pick<PlannedColumn, 'alreadyFilled' | 'firstFilled' | 'keepsHeading'>;

/** What is written into one column, which those after it may be worked out from. */
function plannedColumn(
  known: Known,
  { wish, heading, column }: Placed,
  row: number,
  there: There = { alreadyFilled: 0, keepsHeading: false },
): PlannedColumn {
  const { given, sources, way } = known;
  const { key, same } = wish;
  const output = given.outputs.find((one) => one.key === key);
  const { by, level } = way(key) ?? { by: 'columns', level: 1 };
  const list = output !== undefined && by === 'row' ? handed(output, usable(sources, given), given.unit) : [];
  const written = same === undefined ? { formula: formulaOf(known, key, list, row) } : { same };
  const ownLevel = same === undefined ? level : 0;
  sources.set(key, { column, heading, level: ownLevel });
  return {
    key,
    heading,
    column,
    ...written,
    by,
    level: ownLevel,
    handed: list,
    format: output?.format ?? 'General',
    overwrite: wish.overwrite ?? false,
    ...there,
  };
}

/** The table's area with the columns that join it; none where none does. */
function grownBy(table: TableSeen | undefined, edge: number, columns: readonly PlannedColumn[]) {
  if (table === undefined) return undefined;
  let joined = 0;
  while (columns.some((one) => one.column === edge + joined)) joined += 1;
  return joined > 0 ? { ...table.area, columns: table.area.columns + joined } : undefined;
}

/** Works out where everything would go. Throws a Trouble where it cannot be done. Writes nothing. */
export async function plan(book: Book, given: PlanGiven): Promise<Plan> {
  const { read, outputs } = given;
  const { area, table, hiddenRows } = read.block;
  const { sheet } = area;
  const runs = rowsToFill(read);
  const first = runs[0]?.[0];
  if (first === undefined) throw trouble('noRows', sheet);
  const sources = sourcesWithLevels(given, first);
  const has = standing(given, sources);
  const rowOnly = new Set(
    [...sources].flatMap(([key, { byRow }]) => (byRow === true && has.has(key) ? [key] : [])),
  );
  const way = waysTo(outputs, has, rowOnly);
  const known = { given, sources, way };
  const beside = await places(book, known, inOrder(given, has, way));
  const { placed } = beside;
  const headerRow = area.row + read.header.row + read.header.rows - 1;
  const there = await occupied(
    book,
    sheet,
    headerRow,
    runs,
    placed.map((one) => one.column),
  );
  const columns = placed.map((one, at) => plannedColumn(known, one, first, there[at]));
  const touches = touched(sheet, headerRow, runs, columns);
  return {
    sheet,
    table,
    grown: grownBy(table, area.column + area.columns, columns),
    headerRow,
    runs,
    columns,
    touches,
    says: touches.map((one) => placeText(one)).join(', '),
    hiddenRows: [...new Set([...hiddenRows, ...beside.hiddenRows])].filter((row) =>
      runs.some(([from, rows]) => row >= from && row < from + rows),
    ),
  };
}

function formulaOf(known: Known, key: string, list: readonly Handed[], row: number): string {
  const { given, sources, way } = known;
  const output = given.outputs.find((one) => one.key === key);
  const cellFunction = output && functionNamed(output.calls);
  if (output === undefined || cellFunction === undefined) throw trouble('missing', `The column “${key}”`);
  const place = { row, unit: given.unit, rules: given.rules };
  const by = way(key)?.by;
  if (by === 'row') return wholeRowFormula(output, list, place);
  if (by === undefined) throw trouble('needsColumn', output.heading, lacking(known, output));
  return rowFormula(cellFunction, output, sources, place);
}

/** Columns of the table that are headed like an asked output are where that goes, not what it comes from. */
function usable(sources: ReadonlyMap<string, Source>, given: PlanGiven): ReadonlyMap<string, Source> {
  const asked = new Set(given.wishes.flatMap(({ key, same }) => (same === undefined ? [key] : [])));
  return new Map([...sources].filter(([key]) => !asked.has(key)));
}

/** What an output cannot do without, as a column is headed. */
function lacking(known: Known, output: OutputColumn): string {
  const { given, sources, way } = known;
  for (const { name, optional } of functionNamed(output.calls)?.parameters ?? []) {
    const key = output.takes[name];
    if (optional || key === undefined || sources.has(key) || way(key) !== undefined) continue;
    const other = given.outputs.find((one) => one.key === key);
    if (other !== undefined) return lacking(known, other);
    return given.wanted.find((one) => one.key === key)?.heading ?? name.replace(/_/g, ' ');
  }
  return output.heading;
}

/** What stands already in the columns, headings and rows: one request for them all. */
async function occupied(
  book: Book,
  sheet: string,
  header: number,
  runs: Plan['runs'],
  columns: readonly number[],
): Promise<readonly There[]> {
  const last = runs.at(-1);
  const rows = last === undefined ? 1 : last[0] + last[1] - header;
  const blocks = await book.read(
    columns.map((column) => areaAt(sheet, header, column, rows, 1)),
    'contents',
  );
  return blocks.map(({ values }, at) => {
    const taken = runs.flatMap(([from, count]) =>
      Array.from({ length: count }, (_, i) => from + i).filter((row) => filled(values[row - header]?.[0])),
    );
    return {
      alreadyFilled: taken.length,
      ...(taken[0] !== undefined && { firstFilled: `${letters(columns[at] ?? 0)}${taken[0] + 1}` }),
      keepsHeading: filled(values[0]?.[0]),
    };
  });
}

/** Columns side by side make one stretch. */
function touched(
  sheet: string,
  header: number,
  runs: Plan['runs'],
  columns: readonly PlannedColumn[],
): Area[] {
  const sorted = [...columns].sort((a, b) => a.column - b.column);
  const stretches: { column: number; columns: number; head: boolean }[] = [];
  for (const one of sorted) {
    const last = stretches.at(-1);
    if (last !== undefined && last.column + last.columns === one.column && last.head === !one.keepsHeading)
      last.columns += 1;
    else stretches.push({ column: one.column, columns: 1, head: !one.keepsHeading });
  }
  return stretches.flatMap((stretch) => {
    const areas = runs.map(([row, rows]) => areaAt(sheet, row, stretch.column, rows, stretch.columns));
    const [firstArea, ...rest] = areas;
    if (!stretch.head || firstArea === undefined) return areas;
    return firstArea.row === header + 1
      ? [{ ...firstArea, row: header, rows: firstArea.rows + 1 }, ...rest]
      : [areaAt(sheet, header, stretch.column, 1, stretch.columns), ...areas];
  });
}
