/** A table's columns. */
import type { Area } from '../address';
import {
  accessDenied,
  found,
  invalidArgument,
  itemNotFound,
  kind,
  NotInStandIn,
  thing,
  type Kind,
} from '../kind';
import { cellsIn, isFilled, keyOf, type TableModel } from '../model';
import { deletion, insertion, shiftCells } from '../shift';
import type { World } from '../world';
import { rangeOf, RANGE } from './range';
import { eachCell, enter } from './rangeValues';
import { bodyOf, nameColumns } from './tables';

interface ColumnModel {
  readonly table: TableModel;
  readonly id: number;
}

const place = ({ table, id }: ColumnModel): number => {
  const at = table.columns.findIndex((one) => one.id === id);
  if (at < 0) throw itemNotFound();
  return at;
};
const whole = (column: ColumnModel): Area => ({
  ...column.table.area,
  column: column.table.area.column + place(column),
  columns: 1,
});
const body = (column: ColumnModel): Area => ({
  ...whole(column),
  row: bodyOf(column.table).row,
  rows: bodyOf(column.table).rows,
});

const FILTER = kind<ColumnModel>('Filter', {
  scalars: { Criteria: { get: (column) => column.table.columns[place(column)]?.filter ?? null } },
  methods: {
    ApplyValuesFilter(column, [values]) {
      const { table } = column;
      const wanted = (values as readonly unknown[]).map(String);
      found(table.columns[place(column)]).filter = { filterOn: 'Values', values };
      const { row, column: at, rows } = body(column);
      for (let each = row; each < row + rows; each += 1) {
        if (!wanted.includes(String(table.sheet.cell(each, at)?.value ?? '')))
          table.sheet.hiddenRows.add(each);
      }
    },
    Clear(column) {
      found(column.table.columns[place(column)]).filter = null;
      const { row, rows } = body(column);
      for (let each = row; each < row + rows; each += 1) column.table.sheet.hiddenRows.delete(each);
    },
    Apply() {
      throw new NotInStandIn('Filter.Apply()');
    },
  },
});

const TABLE_COLUMN: Kind<ColumnModel> = kind<ColumnModel>('TableColumn', {
  id: ({ id }) => id,
  scalars: {
    Id: { get: ({ id }) => id },
    Index: { get: place },
    Name: {
      get: (column) => column.table.columns[place(column)]?.name,
      set(column, value, world) {
        const { table } = column;
        world.mayWrite(table.sheet, { ...whole(column), rows: 1 });
        if (!table.showHeaders) throw invalidArgument();
        enter(world, table.sheet, table.area.row, table.area.column + place(column), `'${String(value)}`);
      },
    },
    Values: {
      get: (column, world) =>
        RANGE.scalars['Values']?.get({ sheet: column.table.sheet, area: whole(column) }, world),
      set(column, value, world) {
        RANGE.scalars['Values']?.set?.({ sheet: column.table.sheet, area: whole(column) }, value, world);
      },
    },
  },
  parts: { Filter: (column) => thing(FILTER, column) },
  methods: {
    GetRange: (column) => rangeOf(column.table.sheet, whole(column)),
    GetDataBodyRange: (column) => rangeOf(column.table.sheet, body(column)),
    GetHeaderRowRange: (column) =>
      rangeOf(column.table.sheet, {
        ...whole(column),
        rows: found(column.table.showHeaders ? 1 : undefined),
      }),
    GetTotalRowRange(column) {
      const area = whole(column);
      return rangeOf(column.table.sheet, {
        ...area,
        row: area.row + area.rows - 1,
        rows: found(column.table.showTotals ? 1 : undefined),
      });
    },
    Delete(column, _, world) {
      const { table } = column;
      if (table.sheet.protection !== undefined) throw accessDenied();
      if (table.columns.length === 1) throw invalidArgument();
      const gone = whole(column);
      for (const [row, at] of [...cellsIn(table.sheet, gone)]) table.sheet.cells.delete(keyOf(row, at));
      reshape(table, () => {
        shiftCells(world, deletion(table.sheet, gone, 'Left'));
      });
      table.columns.splice(place(column), 1);
      table.area = { ...table.area, columns: table.area.columns - 1 };
    },
  },
});

/** Moves cells while the table's own area is kept out of the way. */
function reshape(table: TableModel, move: () => void): void {
  const { area } = table;
  table.area = { row: area.row, column: area.column, rows: area.rows, columns: 0 };
  move();
  table.area = area;
}

function addColumn(table: TableModel, [index, values, name]: readonly unknown[], world: World) {
  if (table.sheet.protection !== undefined) throw accessDenied();
  const at =
    index === undefined || index === null || Number(index) < 0 ? table.columns.length : Number(index);
  if (at > table.columns.length) throw invalidArgument();
  const added: Area = { ...table.area, column: table.area.column + at, columns: 1 };
  const after = { ...added, columns: 16_384 - added.column };
  if ([...cellsIn(table.sheet, after)].some(([, , cell]) => isFilled(cell))) {
    reshape(table, () => {
      shiftCells(world, insertion(table.sheet, added, 'Right'));
    });
  }
  const id = world.book.newNumber();
  table.columns.splice(at, 0, { id, name: '', filter: null });
  table.area = { ...table.area, columns: table.area.columns + 1 };
  if (name !== undefined && name !== null)
    enter(world, table.sheet, added.row, added.column, `'${String(name)}`);
  if (values !== undefined && values !== null) {
    eachCell({ sheet: table.sheet, area: added }, values, (row, column, value) => {
      if (row !== added.row || name === undefined || name === null)
        enter(world, table.sheet, row, column, value);
    });
  }
  nameColumns(table, world);
  return thing(TABLE_COLUMN, { table, id });
}

const columns = (table: TableModel): ColumnModel[] => table.columns.map(({ id }) => ({ table, id }));
const find = (table: TableModel, key: unknown): ColumnModel | undefined => {
  const wanted = table.columns.find(
    (one) => one.id === key || one.name.toLowerCase() === String(key).toLowerCase(),
  );
  return wanted === undefined ? undefined : { table, id: wanted.id };
};

export const TABLE_COLUMNS: Kind<TableModel> = kind<TableModel>('TableColumnCollection', {
  scalars: { Count: { get: (table) => table.columns.length } },
  items: (table) => columns(table).map((one) => thing(TABLE_COLUMN, one)),
  find(table, key) {
    const one = find(table, key);
    return one === undefined ? undefined : thing(TABLE_COLUMN, one);
  },
  methods: {
    GetCount: (table) => table.columns.length,
    GetItem: (table, [key]) => thing(TABLE_COLUMN, found(find(table, key))),
    GetItemAt: (table, [at]) => thing(TABLE_COLUMN, found(columns(table)[Number(at)])),
    Add: addColumn,
  },
});
