/** One sheet. */
import { MAX_COLUMNS, MAX_ROWS } from '../address';
import { found, invalidArgument, kept, keptAll, kind, NotInStandIn, thing, type Kind } from '../kind';
import { usedArea, type Sheet } from '../model';
import { AUTO_FILTER } from './autoFilter';
import { CHARTS, SHAPES } from './drawings';
import { COMMENTS } from './comments';
import { FREEZE_PANES, PAGE_BREAKS, PAGE_LAYOUT } from './furniture';
import { NAMES } from './names';
import { SHEET_PROTECTION } from './protection';
import { rangeOf, resolve } from './range';
import { RANGE_AREAS } from './rangeAreas';
import { CUSTOM_PROPERTIES } from './settings';
import { SHEET_TABLES } from './tables';
import { checkSheetName } from './worksheets';

const bag = (sheet: Sheet) => sheet.bag;
const WHOLE = { row: 0, column: 0, rows: MAX_ROWS, columns: MAX_COLUMNS };

export const WORKSHEET: Kind<Sheet> = kind<Sheet>('Worksheet', {
  id: (sheet) => sheet.id,
  scalars: {
    Id: { get: (sheet) => sheet.id },
    Name: {
      get: (sheet) => sheet.name,
      set(sheet, value, world) {
        checkSheetName(world.book, String(value), sheet);
        sheet.name = String(value);
      },
    },
    Position: {
      get: (sheet, world) => world.book.sheets.indexOf(sheet),
      set(sheet, value, world) {
        const { sheets } = world.book;
        if (Number(value) < 0 || Number(value) >= sheets.length) throw invalidArgument();
        sheets.splice(sheets.indexOf(sheet), 1);
        sheets.splice(Number(value), 0, sheet);
      },
    },
    Visibility: {
      get: (sheet) => sheet.visibility,
      set(sheet, value, world) {
        const others = world.book.sheets.filter((one) => one !== sheet && one.visibility === 'Visible');
        if (value !== 'Visible' && others.length === 0) throw invalidArgument();
        sheet.visibility = String(value);
      },
    },
    StandardWidth: kept(bag, 'StandardWidth', 48),
    StandardHeight: { get: () => 15 },
    ...keptAll(bag, { TabColor: '', ShowGridlines: true, ShowHeadings: true, EnableCalculation: true }),
  },
  parts: {
    Charts: (sheet) => thing(CHARTS, sheet),
    Shapes: (sheet) => thing(SHAPES, sheet),
    Tables: (sheet) => thing(SHEET_TABLES, sheet),
    Names: (sheet, world) => thing(NAMES, { book: world.book, scope: sheet }),
    Comments: (sheet, world) => thing(COMMENTS, { book: world.book, sheet }),
    Protection: (sheet) => thing(SHEET_PROTECTION, sheet),
    FreezePanes: (sheet) => thing(FREEZE_PANES, sheet),
    PageLayout: (sheet) => thing(PAGE_LAYOUT, sheet),
    HorizontalPageBreaks: (sheet) => thing(PAGE_BREAKS, sheet),
    AutoFilter: (sheet) => thing(AUTO_FILTER, sheet),
    CustomProperties: (sheet) => thing(CUSTOM_PROPERTIES, sheet),
  },
  methods: {
    Activate(sheet, _, world) {
      if (sheet.visibility !== 'Visible') throw invalidArgument();
      if (world.book.active !== sheet) world.book.selection = { row: 0, column: 0, rows: 1, columns: 1 };
      world.book.active = sheet;
    },
    Calculate(_, __, world) {
      world.dirty = true;
    },
    Delete(sheet, _, world) {
      const { book } = world;
      const left = book.sheets.filter((one) => one !== sheet);
      if (!left.some((one) => one.visibility === 'Visible')) throw invalidArgument();
      book.sheets.splice(book.sheets.indexOf(sheet), 1);
      book.tables = book.tables.filter((table) => table.sheet !== sheet);
      book.names = book.names.filter((name) => name.scope !== sheet);
      book.comments = book.comments.filter((comment) => comment.sheet !== sheet);
      if (book.active === sheet) book.active = found(left.find((one) => one.visibility === 'Visible'));
      world.dirty = true;
    },
    Copy() {
      throw new NotInStandIn('Worksheet.Copy()');
    },
    GetRange(sheet, [address], world) {
      const range = resolve(world, sheet, address);
      return rangeOf(range.sheet, range.area);
    },
    GetRanges(sheet, [addresses], world) {
      // Source: Microsoft's page of Worksheet.getRanges.
      if (String(addresses).length > 8_192) throw invalidArgument();
      const areas = String(addresses)
        .split(',')
        .map((address) => resolve(world, sheet, address.trim()).area);
      return thing(RANGE_AREAS, { sheet, areas });
    },
    GetCell: (sheet, [row, column]) =>
      rangeOf(sheet, { row: Number(row), column: Number(column), rows: 1, columns: 1 }),
    GetRangeByIndexes: (sheet, [row, column, rows, columns]) =>
      rangeOf(sheet, {
        row: Number(row),
        column: Number(column),
        rows: Number(rows),
        columns: Number(columns),
      }),
    GetUsedRange: (sheet, [valuesOnly]) =>
      rangeOf(
        sheet,
        usedArea(sheet, WHOLE, valuesOnly === true) ?? { row: 0, column: 0, rows: 1, columns: 1 },
      ),
    GetUsedRangeOrNullObject(sheet, [valuesOnly]) {
      const used = usedArea(sheet, WHOLE, valuesOnly === true);
      return used === undefined ? null : rangeOf(sheet, used);
    },
    GetNext: (sheet, [visibleOnly], world) =>
      thing(WORKSHEET, found(beside(sheet, 1, visibleOnly === true, world.book.sheets))),
    GetPrevious: (sheet, [visibleOnly], world) =>
      thing(WORKSHEET, found(beside(sheet, -1, visibleOnly === true, world.book.sheets))),
  },
});

function beside(
  sheet: Sheet,
  step: number,
  visibleOnly: boolean,
  sheets: readonly Sheet[],
): Sheet | undefined {
  for (let at = sheets.indexOf(sheet) + step; at >= 0 && at < sheets.length; at += step) {
    if (!visibleOnly || sheets[at]?.visibility === 'Visible') return sheets[at];
  }
  return undefined;
}
