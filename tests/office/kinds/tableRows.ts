/** A table's rows. */
import type { Area } from '../address';
import { accessDenied, found, invalidArgument, kind, thing, type Kind } from '../kind';
import { cellsIn, isFilled, keyOf, type TableModel } from '../model';
import { deletion, insertion, shiftCells } from '../shift';
import type { World } from '../world';
import { RANGE, rangeOf } from './range';
import { eachCell, enter } from './rangeValues';
import { bodyOf } from './tables';

interface RowModel {
  readonly table: TableModel;
  readonly index: number;
}

const area = ({ table, index }: RowModel): Area => ({
  ...table.area,
  row: bodyOf(table).row + index,
  rows: 1,
});

const TABLE_ROW: Kind<RowModel> = kind<RowModel>('TableRow', {
  scalars: {
    Index: { get: ({ index }) => index },
    Values: {
      get: (row, world) => RANGE.scalars['Values']?.get({ sheet: row.table.sheet, area: area(row) }, world),
      set(row, value, world) {
        RANGE.scalars['Values']?.set?.({ sheet: row.table.sheet, area: area(row) }, value, world);
      },
    },
  },
  methods: {
    GetRange: (row) => rangeOf(row.table.sheet, area(row)),
    Delete(row, _, world) {
      remove(row.table, row.index, 1, world);
    },
  },
});

function remove(table: TableModel, index: number, count: number, world: World): void {
  if (table.sheet.protection !== undefined) throw accessDenied();
  const body = bodyOf(table);
  if (index < 0 || index + count > body.rows || body.rows === count) throw invalidArgument();
  const gone = { ...body, row: body.row + index, rows: count };
  for (const [row, column] of [...cellsIn(table.sheet, gone)]) table.sheet.cells.delete(keyOf(row, column));
  aside(table, () => {
    shiftCells(world, deletion(table.sheet, gone, 'Up'));
  });
  table.area = { ...table.area, rows: table.area.rows - count };
}

/** The table itself does not move when cells under its first row do. */
function aside(table: TableModel, move: () => void): void {
  const { area: own } = table;
  table.area = { ...own, rows: 0 };
  move();
  table.area = own;
}

/** New rows push what stands below the table down. */
function add(table: TableModel, [index, values]: readonly unknown[], world: World) {
  if (table.sheet.protection !== undefined) throw accessDenied();
  const body = bodyOf(table);
  const lines = Array.isArray(values) ? values : [[]];
  const at = index === undefined || index === null || Number(index) < 0 ? body.rows : Number(index);
  if (at > body.rows) throw invalidArgument();
  const added: Area = { ...body, row: body.row + at, rows: lines.length };
  const below = { ...added, rows: 1_048_576 - added.row };
  if ([...cellsIn(table.sheet, below)].some(([, , cell]) => isFilled(cell))) {
    aside(table, () => {
      shiftCells(world, insertion(table.sheet, added, 'Down'));
    });
  }
  table.area = { ...table.area, rows: table.area.rows + lines.length };
  if (Array.isArray(values)) {
    eachCell({ sheet: table.sheet, area: added }, values, (row, column, value) => {
      enter(world, table.sheet, row, column, value);
    });
  }
  return thing(TABLE_ROW, { table, index: at });
}

const rows = (table: TableModel): RowModel[] =>
  Array.from({ length: bodyOf(table).rows }, (_, index) => ({ table, index }));

export const TABLE_ROWS: Kind<TableModel> = kind<TableModel>('TableRowCollection', {
  scalars: { Count: { get: (table) => bodyOf(table).rows } },
  items: (table) => rows(table).map((one) => thing(TABLE_ROW, one)),
  methods: {
    GetCount: (table) => bodyOf(table).rows,
    GetItemAt: (table, [at]) => thing(TABLE_ROW, found(rows(table)[Number(at)])),
    DeleteRowsAt(table, [index, count], world) {
      remove(table, Number(index), Number(count ?? 1), world);
    },
    Add: add,
  },
});
