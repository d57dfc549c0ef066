/** What stands in a range's cells: values, formulas, texts, number formats, hidden rows and columns. */
import { readEntry, shown, typeOf } from '../entry';
import { columnName, holds, type Area } from '../address';
import { ExcelError, invalidArgument, NotInStandIn, type Scalar } from '../kind';
import { setStyle, styleAt, type CellValue, type Sheet } from '../model';
import type { World } from '../world';
import type { RangeModel } from './range';

/** Reading more cells at once is refused. Source: Microsoft's page "Resource limits and performance optimization". */
const MOST_CELLS = 5_000_000;

type At = (sheet: Sheet, row: number, column: number) => unknown;

function grid({ sheet, area }: RangeModel, at: At): unknown[][] {
  if (area.rows * area.columns > MOST_CELLS) {
    throw new ExcelError(
      'RangeExceedsLimit',
      'The cell count in the range has exceeded the maximum supported number.',
    );
  }
  return Array.from({ length: area.rows }, (_, row) =>
    Array.from({ length: area.columns }, (__, column) => at(sheet, area.row + row, area.column + column)),
  );
}

const formatAt = (sheet: Sheet, row: number, column: number): string =>
  String(styleAt(sheet, row, column, 'NumberFormat') ?? 'General');
const valueAt = (sheet: Sheet, row: number, column: number): CellValue =>
  sheet.cell(row, column)?.value ?? '';

/** Gives each cell its part of a grid, or all cells the one value. Null leaves a cell as it is. */
export function eachCell(
  { area }: RangeModel,
  given: unknown,
  put: (row: number, column: number, value: unknown) => void,
): void {
  const rows = Array.isArray(given) ? (given as unknown[]) : undefined;
  const lines = rows?.map((line) => (Array.isArray(line) ? (line as unknown[]) : [line]));
  const single = lines === undefined || (lines.length === 1 && lines[0]?.length === 1);
  if (!single && (lines.length !== area.rows || lines.some((line) => line.length !== area.columns))) {
    throw invalidArgument(
      "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
    );
  }
  const one = lines === undefined ? given : lines[0]?.[0];
  for (let row = 0; row < area.rows; row += 1) {
    for (let column = 0; column < area.columns; column += 1) {
      const value = single ? one : lines[row]?.[column];
      if (value !== null && value !== undefined) put(area.row + row, area.column + column, value);
    }
  }
}

/** In merged cells only the first keeps what is written. */
const covered = (sheet: Sheet, row: number, column: number): boolean => {
  const cell: Area = { row, column, rows: 1, columns: 1 };
  return sheet.merged.some((merge) => holds(merge, cell) && !(merge.row === row && merge.column === column));
};

export function enter(world: World, sheet: Sheet, row: number, column: number, raw: unknown): void {
  if (covered(sheet, row, column)) return;
  const from = sheet.cell(row, column)?.spilledFrom;
  const entry = readEntry(raw, formatAt(sheet, row, column));
  if (from !== undefined && entry.value === '' && entry.formula === undefined) return;
  world.unspill(sheet, row, column);
  const cell = sheet.open(row, column);
  delete cell.spilledFrom;
  cell.value = entry.value;
  if (entry.formula === undefined) delete cell.formula;
  else cell.formula = entry.formula;
  if (entry.format !== undefined && formatAt(sheet, row, column) === 'General') {
    (cell.style ??= {})['NumberFormat'] = entry.format;
  }
  renameHeader(world, sheet, row, column);
  world.dirty = true;
}

/** Writing over a table's heading renames its column. */
function renameHeader(world: World, sheet: Sheet, row: number, column: number): void {
  for (const table of world.book.tablesOn(sheet)) {
    if (!table.showHeaders || row !== table.area.row) continue;
    const at = column - table.area.column;
    const one = table.columns[at];
    if (one === undefined) continue;
    const cell = sheet.open(row, column);
    const wanted = String(cell.value) === '' ? `Column${String(at + 1)}` : String(cell.value);
    const taken = (name: string): boolean =>
      table.columns.some((other) => other !== one && other.name === name);
    let name = wanted;
    for (let count = 2; taken(name); count += 1) name = wanted + String(count);
    one.name = name;
    cell.value = name;
  }
}

const entered = (at: At): Scalar<RangeModel> => ({
  get: (range) => grid(range, at),
  set(range, value, world) {
    world.mayWrite(range.sheet, range.area);
    eachCell(range, value, (row, column, raw) => {
      enter(world, range.sheet, row, column, raw);
    });
  },
});

const FORMULAS = entered(
  (sheet, row, column) => sheet.cell(row, column)?.formula ?? valueAt(sheet, row, column),
);

/** “R[-1]C2” in the cell at `row` and `column`, as an address; strings and what stands in brackets are left alone. */
function addressed(formula: string, row: number, column: number): string {
  const at = (given: string | undefined, from: number, show: (to: number) => string): string => {
    if (given === undefined || given === '') return show(from);
    return given.startsWith('[') ? show(from + Number(given.slice(1, -1))) : `$${show(Number(given) - 1)}`;
  };
  const across = (given: string | undefined): string => at(given, column, columnName);
  const down = (given: string | undefined): string => at(given, row, (to) => String(to + 1));
  const lone = /^(?:R(\[-?\d+\]|\d*)|C(\[-?\d+\]|\d*))$/;
  return formula.replace(
    /"(?:[^"]|"")*"|'(?:[^']|'')*'|R(\[-?\d+\]|\d*)C(\[-?\d+\]|\d*)(?![\w.([])|[RC](?:\[-?\d+\]|\d*):[RC](?:\[-?\d+\]|\d*)(?![\w.([])|[A-Za-z_][\w.]*\[(?:[^[\]]|\[[^[\]]*\])*\]|\[(?=[@#A-Za-z[])(?:[^[\]]|\[[^[\]]*\])*\]|[A-Za-z_][\w.]*/g,
    (whole: string, r: string | undefined, c: string | undefined) => {
      if (r !== undefined && c !== undefined) return across(c) + down(r);
      const ends = whole.split(':').map((one) => lone.exec(one));
      if (ends.length !== 2 || ends.includes(null)) return whole;
      return ends.map((one) => (one?.[1] === undefined ? across(one?.[2]) : down(one[1]))).join(':');
    },
  );
}

/** Formulas counted from each cell, as they are entered; nobody here reads them so. */
const FORMULAS_R1C1: Scalar<RangeModel> = {
  get() {
    throw new NotInStandIn('Range.FormulasR1C1');
  },
  set(range, value, world) {
    world.mayWrite(range.sheet, range.area);
    eachCell(range, value, (row, column, raw) => {
      const text = typeof raw === 'string' && raw.startsWith('=') ? addressed(raw, row, column) : raw;
      enter(world, range.sheet, row, column, text);
    });
  },
};

const NUMBER_FORMAT: Scalar<RangeModel> = {
  get: (range) => grid(range, formatAt),
  set(range, value, world) {
    world.mayWrite(range.sheet, range.area);
    if (!Array.isArray(value)) setStyle(range.sheet, range.area, 'NumberFormat', value);
    else
      eachCell(range, value, (row, column, format) => {
        setStyle(range.sheet, { row, column, rows: 1, columns: 1 }, 'NumberFormat', format);
      });
  },
};

const hidden = (
  which: 'hiddenRows' | 'hiddenColumns',
  first: 'row' | 'column',
  count: 'rows' | 'columns',
): Scalar<RangeModel> => ({
  get({ sheet, area }) {
    const known = [...sheet[which]].filter(
      (at) => at >= area[first] && at < area[first] + area[count],
    ).length;
    return known === 0 ? false : known === area[count] ? true : null;
  },
  set({ sheet, area }, value, world) {
    world.mayChange(sheet, which === 'hiddenRows' ? 'allowFormatRows' : 'allowFormatColumns');
    for (let at = area[first]; at < area[first] + area[count]; at += 1) {
      if (value === true) sheet[which].add(at);
      else sheet[which].delete(at);
    }
  },
});

const rowHidden = hidden('hiddenRows', 'row', 'rows');
const columnHidden = hidden('hiddenColumns', 'column', 'columns');

export const CELLS: Record<string, Scalar<RangeModel>> = {
  Values: entered(valueAt),
  Formulas: FORMULAS,
  FormulasR1C1: FORMULAS_R1C1,
  FormulasLocal: { get: (range, world) => FORMULAS.get(range, world) },
  Text: {
    get: (range) =>
      grid(range, (sheet, row, column) => shown(valueAt(sheet, row, column), formatAt(sheet, row, column))),
  },
  ValueTypes: { get: (range) => grid(range, (sheet, row, column) => typeOf(valueAt(sheet, row, column))) },
  NumberFormat: NUMBER_FORMAT,
  NumberFormatLocal: { get: (range, world) => NUMBER_FORMAT.get(range, world) },
  RowHidden: rowHidden,
  ColumnHidden: columnHidden,
  Hidden: {
    get(range, world) {
      const answers = [rowHidden.get(range, world), columnHidden.get(range, world)];
      return answers.includes(true) ? true : answers.includes(null) ? null : false;
    },
  },
  HasSpill: {
    get({ sheet, area }) {
      const cells = grid(
        { sheet, area },
        (on, row, column) =>
          on.cell(row, column)?.spill !== undefined || on.cell(row, column)?.spilledFrom !== undefined,
      ).flat();
      return cells.every((one) => one === true) ? true : cells.includes(true) ? null : false;
    },
  },
};
