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

/** Where a formula finds each meaning: a column of the user's, or what a line beside the table says for all. */
function sourcesOf(read: ColumnsRead, unit: Unit): Map<string, Omit<Source, 'level'>> {
  const sources = new Map<string, Omit<Source, 'level'>>();
  const left = read.block.area.column;
  for (const { column, heading, keys, plain, reading } of read.columns) {
    const own = reading?.unit;
    const usual = isYardageKey((keys[0] ?? '') as OrderKey) ? unit.large : unit.small;
    const parts = read.table.columns.find(({ addsTo }) => addsTo === column - left)?.at;
    const source: Omit<Source, 'level'> = {
      column,
      heading,
      ...(own !== undefined && own !== usual && { unit: own }),
      ...(keys.length > 1 && { keys }),
      ...(reading?.halves === true && { halves: true }),
      ...(reading?.per !== undefined && { per: reading.per }),
      ...(parts !== undefined && { parts: parts + left }),
      ...(!plain && { byRow: true }),
    };
    for (const key of keys) if (!sources.has(key)) sources.set(key, source);
  }
  const { measuredTo, stated } = read.table.understanding.plan;
  const said = { ...stated, ...(sources.has('measured') && { measuredTo }) };
  for (const [key, constant] of Object.entries(said))
    if (constant !== undefined && !sources.has(key))
      sources.set(key, { column: -1, heading: key, constant: String(constant) });
  return sources;
}

/** In a table the whole column is filled: a row without figures stays blank by its formula. */
function rowsToFill(read: ColumnsRead): (readonly [number, number])[] {
  const { table } = read.block;
  if (table === undefined) return runsOf(read);
  const rows = table.area.rows - 1 - (table.totalsRow ? 1 : 0);
  return rows > 0 ? [[table.area.row + 1, rows]] : [];
}

type WayTo = ReturnType<typeof waysTo>;

/** Outputs asked for, each after those it is worked out from, which join where the table has no column for them. */
function inOrder(given: PlanGiven, has: ReadonlyMap<string, number>, way: WayTo): Wish[] {
  const list: Wish[] = [];
  const under = new Set<string>();
  const add = (wish: Wish): void => {
    if (list.some((one) => one.key === wish.key) || under.has(wish.key)) return;
    under.add(wish.key);
    const output = given.outputs.find((one) => one.key === wish.key);
    if (output !== undefined && wish.same === undefined && way(output.key)?.by !== 'row') {
      const needed = functionNamed(output.calls)?.parameters ?? [];
      for (const parameter of needed) {
        const key = output.takes[parameter.name];
        if (key === undefined || has.has(key)) continue;
        const asked = given.wishes.find((one) => one.key === key);
        const worked = given.outputs.some((one) => one.key === key) && !parameter.optional;
        if (asked !== undefined || worked) add(asked ?? { key });
      }
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

/** Works out where everything would go. Throws a Trouble where it cannot be done. Writes nothing. */
export async function plan(book: Book, given: PlanGiven): Promise<Plan> {
  const { read, outputs, wanted } = given;
  const { block } = read;
  const { sheet } = block.area;
  const runs = rowsToFill(read);
  const first = runs[0]?.[0];
  if (first === undefined) throw trouble('noRows', sheet);
  const firstWindow = read.lines.find((line) => line.kind === 'window')?.row ?? first;
  const sources = new Map<string, Source>();
  for (const [key, source] of sourcesOf(read, given.unit)) {
    const level = source.constant === undefined ? levelOf(block, firstWindow, source.column) : 0;
    sources.set(key, { ...source, level });
  }
  const asked = new Set(given.wishes.map((one) => one.key));
  // A column headed like an output and still empty is no figure yet: it is worked out first.
  const empty = new Set(
    read.columns.flatMap((one) => (one.key !== undefined && one.samples.length === 0 ? [one.key] : [])),
  );
  const isOutput = (key: string): boolean => outputs.some((one) => one.key === key);
  const has = new Map(
    [...sources].flatMap(([key, { level }]) =>
      asked.has(key) || (empty.has(key) && isOutput(key)) ? [] : [[key, level] as const],
    ),
  );
  // One figure for every row is as good as a column of the table.
  for (const { key, same } of given.wishes) if (same !== undefined) has.set(key, 0);
  const rowOnly = new Set(
    [...sources].flatMap(([key, { byRow }]) => (byRow === true && has.has(key) ? [key] : [])),
  );
  const way = waysTo(outputs, has, rowOnly);
  const wishes = inOrder(given, has, way);
  // A column of the table that is headed like an output is where that output goes.
  const own = new Map(
    wishes.flatMap(({ key, at }) => {
      const column = sources.get(key)?.column;
      return at === undefined && column !== undefined ? [[key, column] as const] : [];
    }),
  );
  const beside = wishes.filter((one) => one.at === undefined && !own.has(one.key)).length;
  const { block: right, free } = await freeBeside(book, read, beside);
  const { table } = block;
  const edge = block.area.column + block.area.columns;
  const placed: { wish: Wish; heading: string; column: number }[] = [];
  for (const wish of wishes) {
    const heading =
      outputs.find((one) => one.key === wish.key)?.heading ??
      wanted.find((one) => one.key === wish.key)?.heading ??
      wish.key;
    const grown = placed.filter((one) => one.column >= edge).length;
    const column = wish.at ?? own.get(wish.key) ?? (table === undefined ? free.shift() : edge + grown);
    if (column === undefined) throw trouble('noRoom', table?.name ?? sheet, letters(edge));
    if (table !== undefined && wish.at === undefined && !own.has(wish.key) && !free.includes(column))
      throw trouble('noRoom', table.name, letters(column));
    const other = placed.find((one) => one.column === column);
    if (other !== undefined) throw trouble('twice', letters(column), other.heading, heading);
    const used = read.columns.find(
      (one) => one.column === column && one.key !== undefined && one.key !== wish.key,
    );
    if (used !== undefined) throw trouble('ownInput', letters(column), used.heading);
    placed.push({ wish, heading, column });
  }
  const headerRow = block.area.row + read.header.row + read.header.rows - 1;
  const there = await occupied(
    book,
    sheet,
    headerRow,
    runs,
    placed.map((one) => one.column),
  );
  const columns = placed.map(({ wish, heading, column }, at): PlannedColumn => {
    const output = outputs.find((one) => one.key === wish.key);
    const by = way(wish.key)?.by ?? 'columns';
    const row =
      output !== undefined && by === 'row' ? handed(output, usable(sources, given), given.unit) : [];
    const formula =
      wish.same === undefined ? formulaOf(given, wish.key, sources, row, way, first) : undefined;
    const level = wish.same === undefined ? (way(wish.key)?.level ?? 1) : 0;
    sources.set(wish.key, { column, heading, level });
    return {
      key: wish.key,
      heading,
      column,
      ...(formula === undefined ? { same: wish.same ?? '' } : { formula }),
      by,
      level,
      handed: row,
      format: output?.format ?? 'General',
      overwrite: wish.overwrite ?? false,
      ...(there[at] ?? { alreadyFilled: 0, keepsHeading: false }),
    };
  });
  let joined = 0;
  while (table !== undefined && columns.some((one) => one.column === edge + joined)) joined += 1;
  const touches = touched(sheet, headerRow, runs, columns);
  return {
    sheet,
    table,
    grown:
      table !== undefined && joined > 0 ? { ...table.area, columns: table.area.columns + joined } : undefined,
    headerRow,
    runs,
    columns,
    touches,
    says: touches.map((area) => placeText(area)).join(', '),
    hiddenRows: [...new Set([...block.hiddenRows, ...right.hiddenRows])].filter((row) =>
      runs.some(([from, rows]) => row >= from && row < from + rows),
    ),
  };
}

function formulaOf(
  given: PlanGiven,
  key: string,
  sources: ReadonlyMap<string, Source>,
  list: readonly Handed[],
  way: WayTo,
  row: number,
): string {
  const output = given.outputs.find((one) => one.key === key);
  const cellFunction = output && functionNamed(output.calls);
  if (output === undefined || cellFunction === undefined) throw trouble('missing', `The column “${key}”`);
  const place = { row, unit: given.unit, rules: given.rules };
  const by = way(key)?.by;
  if (by === 'row') return wholeRowFormula(output, list, place);
  if (by === undefined) throw trouble('needsColumn', output.heading, lacking(given, output, sources, way));
  return rowFormula(cellFunction, output, sources, place);
}

/** Columns of the table that are headed like an asked output are where that goes, not what it comes from. */
function usable(sources: ReadonlyMap<string, Source>, given: PlanGiven): ReadonlyMap<string, Source> {
  const asked = new Set(given.wishes.flatMap(({ key, same }) => (same === undefined ? [key] : [])));
  return new Map([...sources].filter(([key]) => !asked.has(key)));
}

/** What an output cannot do without, as a column is headed. */
function lacking(
  given: PlanGiven,
  output: OutputColumn,
  sources: ReadonlyMap<string, Source>,
  way: WayTo,
): string {
  for (const { name, optional } of functionNamed(output.calls)?.parameters ?? []) {
    const key = output.takes[name];
    if (optional || key === undefined || sources.has(key) || way(key) !== undefined) continue;
    const other = given.outputs.find((one) => one.key === key);
    if (other !== undefined) return lacking(given, other, sources, way);
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
): Promise<readonly Pick<PlannedColumn, 'alreadyFilled' | 'firstFilled' | 'keepsHeading'>[]> {
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
