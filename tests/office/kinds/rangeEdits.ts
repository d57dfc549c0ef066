/** What may be done to a range: clear, insert, delete, merge, copy, select. */
import { holds, intersection, type Area } from '../address';
import { ExcelError, invalidArgument, NotInStandIn, type Kind } from '../kind';
import { cellsIn, keyOf, type Cell, type Sheet } from '../model';
import { carried, copyOf, deletion, insertion, removeCells, shiftCells } from '../shift';
import type { World } from '../world';
import { rangeOf, resolve, type RangeModel } from './range';

const CLEARS: Readonly<Record<string, (cell: Cell) => void>> = {
  All(cell) {
    CLEARS['Contents']?.(cell);
    delete cell.style;
  },
  Contents(cell) {
    cell.value = '';
    delete cell.formula;
  },
  Formats(cell) {
    delete cell.style;
  },
};

function clear(world: World, sheet: Sheet, area: Area, what: string): void {
  const apply = CLEARS[what];
  if (apply === undefined) throw new NotInStandIn(`Range.Clear('${what}')`);
  world.mayWrite(sheet, area);
  for (const [row, column, cell] of [...cellsIn(sheet, area)]) {
    world.unspill(sheet, row, column);
    apply(cell);
    if (cell.value === '' && cell.formula === undefined && cell.style === undefined)
      sheet.cells.delete(keyOf(row, column));
  }
  if (what !== 'Contents') {
    for (let column = area.column; area.rows > 1_000_000 && column < area.column + area.columns; column += 1)
      sheet.columnStyles.delete(column);
    sheet.conditionalFormats = sheet.conditionalFormats.filter((one) => !holds(area, one.area));
  }
  if (what === 'All') {
    sheet.merged = sheet.merged.filter((merge) => !holds(area, merge));
    world.book.tables = world.book.tables.filter(
      (table) => table.sheet !== sheet || !holds(area, table.area),
    );
  }
  world.dirty = true;
}

function mayMove({ sheet, area }: RangeModel, world: World, option: string): void {
  if (sheet.protection !== undefined) world.mayChange(sheet, option);
  const lane = option.endsWith('Rows')
    ? { ...area, rows: 1_048_576 - area.row }
    : { ...area, columns: 16_384 - area.column };
  if (world.cutsMerge(sheet, lane)) {
    throw new ExcelError('InvalidOperation', "We can't do that to a merged cell.");
  }
}

export const EDITS: Kind<RangeModel>['methods'] = {
  Clear({ sheet, area }, [what], world) {
    clear(world, sheet, area, String(what ?? 'All'));
  },
  Insert(range, [way], world) {
    mayMove(range, world, way === 'Down' ? 'allowInsertRows' : 'allowInsertColumns');
    shiftCells(world, insertion(range.sheet, range.area, String(way)));
    return rangeOf(range.sheet, range.area);
  },
  Delete(range, [way], world) {
    mayMove(range, world, way === 'Up' ? 'allowDeleteRows' : 'allowDeleteColumns');
    removeCells(world, range.sheet, range.area);
    shiftCells(world, deletion(range.sheet, range.area, String(way)));
  },
  Merge({ sheet, area }, [across], world) {
    world.mayWrite(sheet, area);
    const areas =
      across === true
        ? Array.from({ length: area.rows }, (_, row) => ({ ...area, row: area.row + row, rows: 1 }))
        : [area];
    if (world.book.tablesOn(sheet).some((table) => intersection(table.area, area) !== undefined))
      throw invalidArgument();
    for (const one of areas) {
      sheet.merged = sheet.merged.filter((merge) => intersection(merge, one) === undefined);
      sheet.merged.push(one);
      for (const [row, column, cell] of cellsIn(sheet, one)) {
        if (row !== one.row || column !== one.column) CLEARS['Contents']?.(cell);
      }
    }
  },
  Unmerge({ sheet, area }, _, world) {
    world.mayWrite(sheet, area);
    sheet.merged = sheet.merged.filter((merge) => intersection(merge, area) === undefined);
  },
  /** Copies a block; a smaller source is repeated over the target, as pasting does. */
  CopyFrom({ sheet, area }, [source, what, skipBlanks, transpose], world) {
    const kind = String(what ?? 'All');
    if (skipBlanks === true || transpose === true)
      throw new NotInStandIn('Range.CopyFrom with blanks skipped or transposed');
    const from = resolve(world, sheet, source);
    const rows = Math.max(area.rows, from.area.rows);
    const columns = Math.max(area.columns, from.area.columns);
    if (rows % from.area.rows !== 0 || columns % from.area.columns !== 0) throw invalidArgument();
    world.mayWrite(sheet, { ...area, rows, columns });
    const originals = new Map<number, Cell>();
    for (const [row, column, cell] of cellsIn(from.sheet, from.area))
      originals.set(keyOf(row, column), copyOf(cell));
    for (let row = 0; row < rows; row += 1) {
      for (let column = 0; column < columns; column += 1) {
        const up = from.area.row + (row % from.area.rows);
        const left = from.area.column + (column % from.area.columns);
        paste(
          world,
          sheet,
          area.row + row,
          area.column + column,
          originals.get(keyOf(up, left)) ?? { value: '' },
          kind,
          up,
          left,
        );
      }
    }
    world.dirty = true;
  },
  /** One record a row, with what was asked for. */
  GetRowProperties({ sheet, area }, [wanted]) {
    const asked = Object.keys((wanted ?? {}) as object);
    const other = asked.find((name) => name !== 'rowHidden' && name !== 'rowIndex');
    if (other !== undefined) throw new NotInStandIn(`Range.GetRowProperties({ ${other} })`);
    return Array.from({ length: area.rows }, (_, at) => ({
      ...(asked.includes('rowHidden') ? { rowHidden: sheet.hiddenRows.has(area.row + at) } : {}),
      ...(asked.includes('rowIndex') ? { rowIndex: area.row + at } : {}),
    }));
  },
  Select({ sheet, area }, _, world) {
    world.book.active = sheet;
    world.book.selection = area;
  },
  Calculate(_, __, world) {
    world.dirty = true;
  },
  _ValidateArraySize({ area }, [rows, columns]) {
    if (rows !== area.rows || columns !== area.columns) {
      throw invalidArgument(
        "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
      );
    }
  },
};

function paste(
  world: World,
  sheet: Sheet,
  row: number,
  column: number,
  original: Cell,
  what: string,
  fromRow: number,
  fromColumn: number,
): void {
  if (!['All', 'Values', 'Formulas', 'Formats'].includes(what))
    throw new NotInStandIn(`Range.CopyFrom('${what}')`);
  world.unspill(sheet, row, column);
  const cell = sheet.open(row, column);
  if (what !== 'Formats') {
    cell.value = original.value;
    delete cell.formula;
    delete cell.spilledFrom;
    if (what !== 'Values' && original.formula !== undefined)
      cell.formula = carried(original.formula, row - fromRow, column - fromColumn);
  }
  if (what === 'All' || what === 'Formats') {
    if (original.style === undefined) delete cell.style;
    else cell.style = { ...original.style };
  }
}
