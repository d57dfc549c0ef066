/** Tables of a sheet and of the workbook. */
import { intersection, type Area } from '../address';
import {
  accessDenied,
  collection,
  found,
  held,
  invalidArgument,
  keptAll,
  kind,
  thing,
  type Kind,
} from '../kind';
import { cellsIn, isFilled, type Sheet, type TableModel, type Workbook } from '../model';
import { insertion, shiftCells } from '../shift';
import type { World } from '../world';
import { nameNamed } from './names';
import { rangeOf, resolve, type RangeModel } from './range';
import { enter } from './rangeValues';
import { TABLE_COLUMNS } from './tableColumns';
import { TABLE_ROWS } from './tableRows';
import { AUTO_FILTER } from './autoFilter';
import { WORKSHEET } from './worksheet';

export const bodyOf = ({ area, showHeaders, showTotals }: TableModel): Area => ({
  ...area,
  row: area.row + (showHeaders ? 1 : 0),
  rows: area.rows - (showHeaders ? 1 : 0) - (showTotals ? 1 : 0),
});

/** A table's name, or Table[Column], where an address is expected. */
export function tableArea(world: World, reference: string): RangeModel | undefined {
  const [, name = '', column] = /^([^[\]]+)(?:\[([^[\]]*)\])?$/.exec(reference) ?? [];
  const table = world.book.tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (table === undefined) return undefined;
  const body = bodyOf(table);
  if (column === undefined || column === '') return { sheet: table.sheet, area: body };
  if (column === '#All') return { sheet: table.sheet, area: table.area };
  if (column === '#Headers') return { sheet: table.sheet, area: { ...table.area, rows: 1 } };
  const at = table.columns.findIndex((one) => one.name.toLowerCase() === column.toLowerCase());
  return at < 0 ? undefined : { sheet: table.sheet, area: { ...body, column: body.column + at, columns: 1 } };
}

function checkTableName(world: World, name: string, own: TableModel): void {
  if (!/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(name)) throw invalidArgument();
  const taken = world.book.tables.some((one) => one !== own && one.name.toLowerCase() === name.toLowerCase());
  if (taken || nameNamed(world, name, undefined) !== undefined) throw invalidArgument();
}

const mayReshape = (table: TableModel): void => {
  if (table.sheet.protection !== undefined) throw accessDenied();
};

/** The row under the table: cells there move down a row. */
function setTotals(table: TableModel, value: boolean, world: World): void {
  mayReshape(table);
  if (value === table.showTotals) return;
  const row = table.area.row + table.area.rows;
  if (value) {
    const below = { ...table.area, row, rows: 1 };
    if ([...cellsIn(table.sheet, below)].some(([, , cell]) => isFilled(cell)))
      shiftCells(world, insertion(table.sheet, below, 'Down'));
    table.area = { ...table.area, rows: table.area.rows + 1 };
    const first = table.sheet.open(row, table.area.column);
    if (!isFilled(first)) first.value = 'Total';
  } else {
    for (const [, , cell] of cellsIn(table.sheet, { ...table.area, row: row - 1, rows: 1 })) {
      cell.value = '';
      delete cell.formula;
    }
    table.area = { ...table.area, rows: table.area.rows - 1 };
  }
  table.showTotals = value;
  world.dirty = true;
}

export const TABLE: Kind<TableModel> = kind<TableModel>('Table', {
  id: (table) => table.id,
  scalars: {
    Id: held<TableModel, 'id'>('id'),
    Name: {
      get: (table) => table.name,
      set(table, value, world) {
        checkTableName(world, String(value), table);
        table.name = String(value);
      },
    },
    ShowHeaders: {
      get: (table) => table.showHeaders,
      set(table, value) {
        mayReshape(table);
        if (value === table.showHeaders) return;
        const step = value === true ? 1 : -1;
        table.area = { ...table.area, row: table.area.row - step, rows: table.area.rows + step };
        table.showHeaders = value === true;
      },
    },
    ShowTotals: {
      get: (table) => table.showTotals,
      set(table, value, world) {
        setTotals(table, value === true, world);
      },
    },
    Style: held<TableModel, 'style'>('style', true),
    ...keptAll((table: TableModel) => table.bag, {
      HighlightFirstColumn: false,
      HighlightLastColumn: false,
      ShowBandedRows: true,
      ShowBandedColumns: false,
      ShowFilterButton: true,
    }),
  },
  parts: {
    Columns: (table) => thing(TABLE_COLUMNS, table),
    Rows: (table) => thing(TABLE_ROWS, table),
    Worksheet: (table) => thing(WORKSHEET, table.sheet),
    AutoFilter: (table) => thing(AUTO_FILTER, table.sheet),
  },
  methods: {
    GetRange: (table) => rangeOf(table.sheet, table.area),
    GetDataBodyRange: (table) => rangeOf(table.sheet, bodyOf(table)),
    GetHeaderRowRange: (table) =>
      rangeOf(table.sheet, { ...table.area, rows: found(table.showHeaders ? 1 : undefined) }),
    GetTotalRowRange: (table) =>
      rangeOf(table.sheet, {
        ...table.area,
        row: table.area.row + table.area.rows - 1,
        rows: found(table.showTotals ? 1 : undefined),
      }),
    Resize(table, [range], world) {
      mayReshape(table);
      const { sheet, area } = resolve(world, table.sheet, range);
      if (
        sheet !== table.sheet ||
        area.row !== table.area.row ||
        intersection(area, table.area) === undefined ||
        area.rows < 2
      )
        throw invalidArgument();
      checkFree(world, sheet, area, table);
      table.area = area;
      nameColumns(table, world);
    },
    ConvertToRange(table, _, world) {
      mayReshape(table);
      world.book.tables = world.book.tables.filter((one) => one !== table);
      return rangeOf(table.sheet, table.area);
    },
    Delete(table, _, world) {
      mayReshape(table);
      for (const [row, column] of [...cellsIn(table.sheet, table.area)])
        table.sheet.cells.delete(row * 16_384 + column);
      world.book.tables = world.book.tables.filter((one) => one !== table);
      world.dirty = true;
    },
    ClearFilters(table) {
      for (const column of table.columns) column.filter = null;
      for (let row = table.area.row; row < table.area.row + table.area.rows; row += 1)
        table.sheet.hiddenRows.delete(row);
    },
  },
});

function checkFree(world: World, sheet: Sheet, area: Area, own?: TableModel): void {
  if (world.book.tablesOn(sheet).some((one) => one !== own && intersection(one.area, area) !== undefined))
    throw invalidArgument();
  if (sheet.merged.some((merge) => intersection(merge, area) !== undefined)) throw invalidArgument();
}

/** Headings become texts, filled in and made unlike each other where needed. */
export function nameColumns(table: TableModel, world: World): void {
  const known = table.columns;
  table.columns = [];
  for (let at = 0; at < table.area.columns; at += 1) {
    table.columns.push({
      id: known[at]?.id ?? world.book.newNumber(),
      name: known[at]?.name ?? '',
      filter: null,
    });
  }
  if (!table.showHeaders) return;
  table.columns.forEach((_, at) => {
    const { row, column } = table.area;
    enter(
      world,
      table.sheet,
      row,
      column + at,
      `'${String(table.sheet.cell(row, column + at)?.value ?? '')}`,
    );
  });
}

function addTable(world: World, from: Sheet, address: unknown, hasHeaders: unknown) {
  const { sheet, area: given } = resolve(world, from, address);
  if (sheet.protection !== undefined) throw accessDenied();
  checkFree(world, sheet, given);
  let area = given;
  if (hasHeaders === true && given.rows === 1) area = { ...given, rows: 2 };
  if (hasHeaders !== true) {
    shiftCells(world, insertion(sheet, { ...given, rows: 1 }, 'Down'));
    area = { ...given, rows: given.rows + 1 };
  }
  let number = world.book.tables.length + 1;
  while (world.book.tables.some((one) => one.name === `Table${String(number)}`)) number += 1;
  const table: TableModel = {
    id: world.book.newId(),
    name: `Table${String(number)}`,
    sheet,
    area,
    columns: [],
    showHeaders: true,
    showTotals: false,
    style: 'TableStyleMedium2',
    bag: {},
  };
  world.book.tables.push(table);
  nameColumns(table, world);
  return thing(TABLE, table);
}

const named = (table: TableModel): unknown[] => [table.id, table.name];
const ofBook = collection<Workbook, TableModel>('TableCollection', () => TABLE, {
  items: (book) => book.tables,
  named,
  places: true,
  counts: true,
});
export const ALL_TABLES: Kind<Workbook> = {
  ...ofBook,
  methods: {
    ...ofBook.methods,
    Add: (book, [address, hasHeaders], world) => addTable(world, book.active, address, hasHeaders),
  },
};

const ofSheet = collection<Sheet, TableModel>('TableCollection', () => TABLE, {
  items: (sheet, world) => world.book.tablesOn(sheet),
  named,
  places: true,
  counts: true,
});
export const SHEET_TABLES: Kind<Sheet> = {
  ...ofSheet,
  methods: {
    ...ofSheet.methods,
    Add: (sheet, [address, hasHeaders], world) => addTable(world, sheet, address, hasHeaders),
  },
};

export const RANGE_TABLES: Kind<readonly TableModel[]> = collection<readonly TableModel[], TableModel>(
  'TableScopedCollection',
  () => TABLE,
  {
    items: (tables) => tables,
    named,
  },
);
