/** A range: where it is and how to get from it to others. Its values and edits stand beside. */
import {
  absolute,
  bounding,
  holds,
  intersection,
  MAX_COLUMNS,
  MAX_ROWS,
  onSheet,
  quoted,
  readArea,
  writeArea,
  type Area,
} from '../address';
import {
  found,
  invalidArgument,
  invalidReference,
  isThing,
  itemNotFound,
  kind,
  selfOf,
  thing,
  type Kind,
  type Thing,
} from '../kind';
import { usedArea, type Sheet } from '../model';
import type { World } from '../world';
import { RANGE_CONDITIONAL_FORMATS } from './conditionalFormats';
import { EDITS } from './rangeEdits';
import { FORMAT } from './rangeFormat';
import { RANGE_AREAS } from './rangeAreas';
import { CELLS } from './rangeValues';
import { nameNamed } from './names';
import { RANGE_TABLES, tableArea } from './tables';
import { VALIDATION } from './validation';
import { WORKSHEET } from './worksheet';

export interface RangeModel {
  readonly sheet: Sheet;
  readonly area: Area;
}

export const rangeOf = (sheet: Sheet, area: Area): Thing => {
  if (!onSheet(area)) throw invalidArgument();
  return thing(RANGE, { sheet, area });
};

/** An address, a name or a table's name, as `getRange` takes it; the whole sheet where nothing is said. */
export function resolve(world: World, from: Sheet, address: unknown): RangeModel {
  if (address === undefined || address === null || address === '') {
    return { sheet: from, area: { row: 0, column: 0, rows: MAX_ROWS, columns: MAX_COLUMNS } };
  }
  if (isThing(address)) return selfOf(address, RANGE);
  const { sheet, rest } = world.sheetOf(String(address), from);
  if (sheet === undefined) throw invalidArgument();
  const area = readArea(rest);
  if (area !== undefined) return { sheet, area };
  const named = nameNamed(world, rest, sheet);
  if (named !== undefined) return resolve(world, sheet, named.formula.replace(/^=/, ''));
  const table = tableArea(world, rest);
  if (table !== undefined) return table;
  throw invalidArgument();
}

const address = ({ sheet, area }: RangeModel): string => `${quoted(sheet.name)}!${writeArea(area)}`;
export const absoluteAddress = ({ sheet, area }: RangeModel): string =>
  `${quoted(sheet.name)}!${absolute(area)}`;

const place =
  (to: (area: Area, given: readonly number[]) => Area): Kind<RangeModel>['methods'][string] =>
  ({ sheet, area }, given) =>
    rangeOf(
      sheet,
      to(
        area,
        given.map((value) => (value === undefined || value === null ? NaN : Number(value))),
      ),
    );

const or = (value: number | undefined, otherwise: number): number =>
  value === undefined || Number.isNaN(value) ? otherwise : value;

/** The block of filled cells around a range, as Ctrl+A finds it. */
function surrounding(sheet: Sheet, start: Area): Area {
  let area = start;
  for (;;) {
    const row = Math.max(0, area.row - 1);
    const column = Math.max(0, area.column - 1);
    const wider = {
      row,
      column,
      rows: area.row + area.rows + 1 - row,
      columns: area.column + area.columns + 1 - column,
    };
    const used = usedArea(sheet, wider, true);
    const grown = used === undefined ? area : bounding(area, used);
    if (holds(area, grown)) return area;
    area = grown;
  }
}

/** Points that stand before a row or column. */
const before = (sizes: ReadonlyMap<number, number>, count: number, usual: number): number =>
  [...sizes].reduce((sum, [at, size]) => sum + (at < count ? size - usual : 0), count * usual);

export const RANGE: Kind<RangeModel> = kind<RangeModel>('Range', {
  referenced: true,
  scalars: {
    Address: { get: address },
    AddressLocal: { get: address },
    RowIndex: { get: ({ area }) => area.row },
    ColumnIndex: { get: ({ area }) => area.column },
    RowCount: { get: ({ area }) => area.rows },
    ColumnCount: { get: ({ area }) => area.columns },
    Left: { get: ({ sheet, area }) => before(sheet.columnWidths, area.column, 48) },
    Top: { get: ({ sheet, area }) => before(sheet.rowHeights, area.row, 15) },
    CellCount: { get: ({ area }) => area.rows * area.columns },
    IsEntireColumn: { get: ({ area }) => area.rows === MAX_ROWS },
    IsEntireRow: { get: ({ area }) => area.columns === MAX_COLUMNS },
    ...CELLS,
  },
  parts: {
    Worksheet: ({ sheet }) => thing(WORKSHEET, sheet),
    Format: (range) => thing(FORMAT, range),
    DataValidation: (range) => thing(VALIDATION, range),
    ConditionalFormats: (range) => thing(RANGE_CONDITIONAL_FORMATS, range),
  },
  methods: {
    GetCell: place((area, [row = 0, column = 0]) => ({
      row: area.row + row,
      column: area.column + column,
      rows: 1,
      columns: 1,
    })),
    GetRow: place((area, [row = 0]) => inside(area, { ...area, row: area.row + row, rows: 1 })),
    GetColumn: place((area, [column = 0]) =>
      inside(area, { ...area, column: area.column + column, columns: 1 }),
    ),
    GetLastCell: place((area) => ({
      row: area.row + area.rows - 1,
      column: area.column + area.columns - 1,
      rows: 1,
      columns: 1,
    })),
    GetLastRow: place((area) => ({ ...area, row: area.row + area.rows - 1, rows: 1 })),
    GetLastColumn: place((area) => ({ ...area, column: area.column + area.columns - 1, columns: 1 })),
    GetEntireColumn: place((area) => ({ ...area, row: 0, rows: MAX_ROWS })),
    GetEntireRow: place((area) => ({ ...area, column: 0, columns: MAX_COLUMNS })),
    GetOffsetRange: place((area, [down = 0, across = 0]) => ({
      ...area,
      row: area.row + down,
      column: area.column + across,
    })),
    GetResizedRange: place((area, [rows = 0, columns = 0]) => ({
      ...area,
      rows: area.rows + rows,
      columns: area.columns + columns,
    })),
    GetAbsoluteResizedRange: place((area, [rows = 1, columns = 1]) => ({ ...area, rows, columns })),
    GetColumnsAfter: place((area, [count]) => ({
      ...area,
      column: area.column + area.columns,
      columns: or(count, 1),
    })),
    GetColumnsBefore: place((area, [count]) => ({
      ...area,
      column: area.column - or(count, 1),
      columns: or(count, 1),
    })),
    GetRowsBelow: place((area, [count]) => ({ ...area, row: area.row + area.rows, rows: or(count, 1) })),
    GetRowsAbove: place((area, [count]) => ({ ...area, row: area.row - or(count, 1), rows: or(count, 1) })),
    GetBoundingRect({ sheet, area }, [other], world) {
      const second = resolve(world, sheet, other);
      if (second.sheet !== sheet) throw invalidReference();
      return rangeOf(sheet, bounding(area, second.area));
    },
    GetIntersection({ sheet, area }, [other], world) {
      const second = resolve(world, sheet, other);
      return rangeOf(sheet, found(second.sheet === sheet ? intersection(area, second.area) : undefined));
    },
    GetUsedRange: ({ sheet, area }, [valuesOnly]) =>
      rangeOf(sheet, usedArea(sheet, area, valuesOnly === true) ?? { ...area, rows: 1, columns: 1 }),
    GetUsedRangeOrNullObject({ sheet, area }, [valuesOnly]) {
      const used = usedArea(sheet, area, valuesOnly === true);
      return used === undefined ? null : rangeOf(sheet, used);
    },
    GetSurroundingRegion: ({ sheet, area }) => rangeOf(sheet, surrounding(sheet, area)),
    GetSpillingToRange({ sheet, area }) {
      const spill = found(sheet.cell(area.row, area.column)?.spill);
      return rangeOf(sheet, { ...area, ...spill });
    },
    GetMergedAreas({ sheet, area }) {
      const areas = sheet.merged.filter((merge) => intersection(merge, area) !== undefined);
      if (areas.length === 0) throw itemNotFound();
      return thing(RANGE_AREAS, { sheet, areas });
    },
    GetTables: ({ sheet, area }, [fully], world) =>
      thing(
        RANGE_TABLES,
        world.book
          .tablesOn(sheet)
          .filter((table) =>
            fully === true ? holds(area, table.area) : intersection(area, table.area) !== undefined,
          ),
      ),
    ...EDITS,
  },
});

/** `getRow(3)` of a two-row range is refused. */
function inside(area: Area, wanted: Area): Area {
  if (!holds(area, wanted)) throw invalidArgument();
  return wanted;
}
