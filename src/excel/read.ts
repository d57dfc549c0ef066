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

export interface Sees {
  /** Excel tells which cells are merged. */
  readonly merged: boolean;
}

/** Reads areas in one request, and where the tables lie in a second. */
export async function readBlocks(
  context: Excel.RequestContext,
  areas: readonly Area[],
  whole: boolean,
  sees: Sees,
): Promise<Block[]> {
  const asked = areas.map((area) => {
    const range = rangeOf(context, area);
    range.load(`values,formulas${whole ? ',numberFormat' : ''},format/protection/locked`);
    const { protection } = context.workbook.worksheets.getItem(area.sheet);
    protection.load('protected');
    const merged = sees.merged
      ? range
          .getMergedAreasOrNullObject()
          .load('areas/items/rowIndex,areas/items/columnIndex,areas/items/rowCount,areas/items/columnCount')
      : undefined;
    return { area, range, protection, merged, rows: range.getRowProperties({ rowHidden: true }) };
  });
  const tables = askTables(context);
  await context.sync();
  const places = askPlaces(tables);
  if (tables.items.length > 0) await context.sync();
  const placed = places();
  return asked.map(({ area, range, protection, merged, rows }): Block => {
    const values = range.values as unknown[][];
    return {
      area,
      values: values.map((line) => line.map(blank)),
      formulas: (range.formulas as unknown[][]).map((line, i) =>
        line.map((one, j) => formulaOf(one, values[i]?.[j])),
      ),
      formats: whole ? (range.numberFormat as string[][]) : [],
      merged:
        merged === undefined || merged.isNullObject
          ? []
          : merged.areas.items.map((one) => areaOf(area.sheet, one)),
      hiddenRows: rows.value.flatMap(({ rowHidden }, at) => (rowHidden === true ? [area.row + at] : [])),
      table: placed.find(
        (one) => sameSheet(one.area.sheet, area.sheet) && common(one.area, area) !== undefined,
      ),
      protected: protection.protected && range.format.protection.locked !== false,
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
  };
}
