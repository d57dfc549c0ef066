/** Reads a workbook: what is in it, and the cells of areas, in a number of requests that does not grow with them. */
import { common, readAddress, sameSheet, type Area } from '../book/address';
import type { Block, CellValue, Contents, NameSeen, TableSeen } from '../book/book';

const PLACE = 'rowIndex,columnIndex,rowCount,columnCount';

interface Place {
  readonly rowIndex: number;
  readonly columnIndex: number;
  readonly rowCount: number;
  readonly columnCount: number;
}

const areaOf = (sheet: string, place: Place): Area => ({
  sheet,
  row: place.rowIndex,
  column: place.columnIndex,
  rows: place.rowCount,
  columns: place.columnCount,
});

export const rangeOf = (context: Excel.RequestContext, area: Area): Excel.Range =>
  context.workbook.worksheets
    .getItem(area.sheet)
    .getRangeByIndexes(area.row, area.column, area.rows, area.columns);

function askTables(context: Excel.RequestContext): Excel.TableCollection {
  const { tables } = context.workbook;
  return tables.load(
    'items/name,items/showHeaders,items/showTotals,items/columns/items/name,items/worksheet/name',
  );
}

/** Where tables lie is asked for in a second request: a table tells its range only when it is known by name. */
function askPlaces(tables: Excel.TableCollection): () => TableSeen[] {
  const placed = tables.items.map((table) => ({ table, range: table.getRange().load(PLACE) }));
  return () =>
    placed.map(({ table, range }) => ({
      name: table.name,
      area: areaOf(table.worksheet.name, range),
      headerRow: table.showHeaders,
      totalsRow: table.showTotals,
      columns: table.columns.items.map((one) => one.name),
    }));
}

const nameSeen = ({ name, type, value }: Excel.NamedItem): NameSeen => ({
  name,
  area: type === 'Range' ? readAddress(String(value).replace(/\$/g, '')) : undefined,
});

/** Two requests, whatever the workbook holds. */
export async function readContents(context: Excel.RequestContext): Promise<Contents> {
  const { worksheets, names } = context.workbook;
  worksheets.load('items/name,items/visibility,items/protection/protected');
  names.load('items/name,items/type,items/value');
  const tables = askTables(context);
  await context.sync();
  const places = askPlaces(tables);
  const sheets = worksheets.items.map((sheet) => ({
    sheet,
    used: sheet.getUsedRangeOrNullObject(true).load(PLACE),
    own: sheet.names.load('items/name,items/type,items/value'),
  }));
  await context.sync();
  return {
    sheets: sheets.map(({ sheet, used }) => ({
      name: sheet.name,
      hidden: sheet.visibility !== 'Visible',
      protected: sheet.protection.protected,
      used: used.isNullObject ? undefined : areaOf(sheet.name, used),
    })),
    tables: places(),
    names: [names, ...sheets.map((one) => one.own)].flatMap(({ items }) => items.map(nameSeen)),
  };
}

const blank = (value: unknown): CellValue => (value === '' ? null : (value as CellValue));

/** Text that begins with “=” is the same as value and as formula; a formula never shows its own text. */
const formulaOf = (formula: unknown, value: unknown): string | null =>
  typeof formula === 'string' && formula.startsWith('=') && formula !== value ? formula : null;

export interface Wants {
  readonly formats: boolean;
  /** Which cells are merged. Older desktops forget what can be undone when they are asked (office-js #5918). */
  readonly merged: boolean;
}

/** An area's own grid from what was told of its used part; the rest is blank. */
function spread<T>(area: Area, used: Area | undefined, told: readonly (readonly T[])[], none: T): T[][] {
  return Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.columns }, (__, j) =>
      used === undefined ? none : (told[area.row + i - used.row]?.[area.column + j - used.column] ?? none),
    ),
  );
}

/**
 * Reads the used part of areas in one request, so that blank columns weigh nothing; in a second where the
 * tables lie, and which rows are hidden where some are.
 */
export async function readBlocks(
  context: Excel.RequestContext,
  areas: readonly Area[],
  wants: Wants,
): Promise<Block[]> {
  const asked = areas.map((area) => {
    const range = rangeOf(context, area);
    range.load('rowHidden,format/protection/locked');
    // With what is only dressed: a cell without contents or looks of its own is bare.
    const used = range.getUsedRangeOrNullObject(false);
    used.load('rowIndex,columnIndex,rowCount,columnCount,values,formulas');
    if (wants.formats) used.load('numberFormat');
    const { protection } = context.workbook.worksheets.getItem(area.sheet);
    protection.load('protected');
    const merged = wants.merged
      ? range
          .getMergedAreasOrNullObject()
          .load('areas/items/rowIndex,areas/items/columnIndex,areas/items/rowCount,areas/items/columnCount')
      : undefined;
    return { area, range, used, protection, merged };
  });
  const tables = askTables(context);
  await context.sync();
  const places = askPlaces(tables);
  const hidden = asked.map(({ area, range }) =>
    (range.rowHidden as boolean | null) === null && area.rows > 1
      ? range.getRowProperties({ rowHidden: true })
      : undefined,
  );
  if (tables.items.length > 0 || hidden.some((one) => one !== undefined)) await context.sync();
  const placed = places();
  return asked.map(({ area, range, used, protection, merged }, at): Block => {
    const none = used.isNullObject;
    const part = none ? undefined : areaOf(area.sheet, used);
    const told = none ? [] : (used.values as unknown[][]);
    const formulas = none
      ? []
      : (used.formulas as unknown[][]).map((line, i) => line.map((one, j) => formulaOf(one, told[i]?.[j])));
    const values = told.map((line) => line.map(blank));
    const all = range.rowHidden as boolean | null;
    return {
      area,
      values: spread<CellValue>(area, part, values, null),
      formulas: spread<string | null>(area, part, formulas, null),
      formats: wants.formats
        ? spread(area, part, none ? [] : (used.numberFormat as string[][]), 'General')
        : [],
      merged:
        merged === undefined || merged.isNullObject
          ? []
          : merged.areas.items.map((one) => areaOf(area.sheet, one)),
      hiddenRows: Array.from({ length: area.rows }, (_, row) => row)
        .filter((row) => all === true || hidden[at]?.value[row]?.rowHidden === true)
        .map((row) => area.row + row),
      table: placed.find(
        (one) => sameSheet(one.area.sheet, area.sheet) && common(one.area, area) !== undefined,
      ),
      protected: protection.protected && range.format.protection.locked !== false,
      bare: none,
    };
  });
}

/** Blocks read in parts put together again, top to bottom. */
export function joined(area: Area, parts: readonly Block[]): Block {
  const [first] = parts;
  if (first === undefined || parts.length === 1) return first as Block;
  const merged = parts.flatMap((one) => one.merged);
  return {
    area,
    values: parts.flatMap((one) => one.values),
    formulas: parts.flatMap((one) => one.formulas),
    formats: parts.flatMap((one) => one.formats),
    merged: merged.filter(
      (one, at) => merged.findIndex((other) => JSON.stringify(other) === JSON.stringify(one)) === at,
    ),
    hiddenRows: parts.flatMap((one) => one.hiddenRows),
    table: parts.find((one) => one.table !== undefined)?.table,
    protected: parts.some((one) => one.protected),
    bare: parts.every((one) => one.bare === true),
  };
}
