/** Changes, as the grid's own commands: each can be undone by the person. */
import {
  DataValidationErrorStyle,
  DataValidationOperator,
  DataValidationType,
  HorizontalAlign,
  type ICellData,
  type IStyleData,
  IUndoRedoService,
  type Injector,
  type IObjectMatrixPrimitiveType,
} from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import {
  IFunctionService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
} from '@univerjs/engine-formula';
import {
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  SetStyleCommand,
  SetWorksheetColWidthMutation,
  SetWorksheetColWidthMutationFactory,
  SheetInterceptorService,
  type FWorkbook,
  type FWorksheet,
} from '@univerjs/preset-sheets-core';
import { AddSheetTableMutation, DeleteSheetTableMutation } from '@univerjs/preset-sheets-table';
import type { Area } from '../book/address';
import { rowsAlike } from '../book/alike';
import { areaText, readAddress, sameSheet } from '../book/address';
import type { Changes, Dress, Layout, NewChart, NewDrawing, NewName, Put, Validation } from '../book/book';
import { shifted } from '../book/formula';
import { trouble } from '../book/trouble';
import { cellOf, rangeOf, valueOf } from './cells';
import { PIXELS_A_POINT, pixelsFor } from './letters';
import { styleOf } from './role-styles';

/** What the grid shows none of and the saved file has. */
interface Drawn {
  readonly charts: NewChart;
  readonly drawings: NewDrawing;
}

/** Those that were written and whose sheets are still there. */
export function keptDrawn<Kind extends keyof Drawn>(workbook: FWorkbook, kind: Kind): readonly Drawn[Kind][] {
  const sheets = workbook.getSheets().map((one) => one.getSheetName());
  const kept = (workbook.getCustomMetadata()?.[kind] ?? []) as readonly Drawn[Kind][];
  return kept.filter(({ at }) => sheets.some((name) => sameSheet(name, at.sheet)));
}

type Cells = IObjectMatrixPrimitiveType<ICellData>;
const ALIGNED = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;
const alignedTo = (align: Dress['align']): IStyleData => (align === undefined ? {} : { ht: ALIGNED[align] });

/** What is dressed twice keeps of the first look what the second leaves alone. */
const together = (had: ICellData['s'], more: IStyleData): IStyleData =>
  typeof had === 'object' && had !== null
    ? { ...had, ...more, ...(had.bd && more.bd && { bd: { ...had.bd, ...more.bd } }) }
    : more;

export class Writer {
  private readonly undo: IUndoRedoService;

  constructor(
    private readonly api: FUniver,
    private readonly workbook: FWorkbook,
    private readonly injector: Injector,
  ) {
    this.undo = injector.get(IUndoRedoService);
  }

  sheet(name: string): FWorksheet {
    const found = this.workbook.getSheets().find((one) => sameSheet(one.getSheetName(), name));
    if (found === undefined) throw trouble('missing', `The sheet “${name}”`);
    return found;
  }

  async write(changes: Changes): Promise<void> {
    const active = this.workbook.getActiveSheet();
    await this.makeRoom(changes);
    this.put(changes.puts ?? []);
    this.callNew(changes);
    this.dress(changes.dress ?? []);
    for (const one of changes.validations ?? []) await this.validate(one);
    for (const one of changes.layouts ?? []) await this.layOut(one);
    this.keepAllDrawn(changes);
    for (const { area, text } of changes.notes ?? []) this.note(area, text);
    await this.remove(changes.remove ?? {});
    if (changes.newSheets?.length) this.workbook.setActiveSheet(active);
  }

  /** What must be there before a cell is written. */
  private async makeRoom({
    newSheets = [],
    resize = [],
    movedNames = [],
    clear = [],
  }: Changes): Promise<void> {
    for (const { name } of newSheets) this.workbook.insertSheet(name);
    for (const { table, area } of resize) await this.resize(table, area);
    for (const one of movedNames) this.moveName(one);
    for (const { area, looksToo } of clear)
      this.cells(area, () => ({ ...cellOf(null), ...(looksToo && { s: null }) }));
  }

  private callNew({ newTables = [], newNames = [] }: Changes): void {
    for (const { name, area } of newTables) this.addTable(name, area);
    for (const one of newNames) this.addName(one);
  }

  private async remove({ sheets = [], names = [] }: NonNullable<Changes['remove']>): Promise<void> {
    for (const name of sheets) await this.removeSheet(name);
    for (const name of names) this.removeName(name);
  }

  /** Every cell of an area gets what `dataAt` says; undefined leaves it alone. */
  cells(area: Area, dataAt: (row: number, column: number) => ICellData | undefined): void {
    const sheet = this.sheet(area.sheet);
    if (area.row + area.rows > sheet.getMaxRows()) sheet.setRowCount(area.row + area.rows + 50);
    if (area.column + area.columns > sheet.getMaxColumns())
      sheet.setColumnCount(area.column + area.columns + 5);
    const value: Cells = {};
    for (let i = 0; i < area.rows; i++) {
      const row: Record<number, ICellData> = (value[area.row + i] = {});
      for (let j = 0; j < area.columns; j++) {
        const cell = dataAt(i, j);
        if (cell !== undefined) row[area.column + j] = cell;
      }
    }
    this.command('sheet.command.set-range-values', sheet, { range: rangeOf(area), value });
  }

  /** All looks of one sheet in one step: a paper has thousands of them. */
  private dress(all: readonly Dress[]): void {
    const bySheet = new Map<string, { area: Area; style: IStyleData }[]>();
    for (const { area, role, format, align } of all) {
      const list = bySheet.get(area.sheet) ?? [];
      const style = {
        ...alignedTo(align),
        ...(role === undefined ? {} : styleOf(role)),
        ...(format === undefined ? {} : { n: { pattern: format } }),
      };
      bySheet.set(area.sheet, [...list, { area, style }]);
    }
    for (const [sheet, list] of bySheet) this.styles(sheet, list);
  }

  style(area: Area, style: IStyleData): void {
    this.styles(area.sheet, [{ area, style }]);
  }

  /** By its mutation, told to be about style: the engine would forget formulas of cells set without one. */
  private styles(sheet: string, all: readonly { readonly area: Area; readonly style: IStyleData }[]): void {
    const unitId = this.workbook.getId();
    const cellValue: Cells = {};
    for (const { area, style } of all)
      for (let row = area.row; row < area.row + area.rows; row++) {
        const line = (cellValue[row] ??= {});
        for (let column = area.column; column < area.column + area.columns; column++)
          line[column] = { s: together(line[column]?.s, style) };
      }
    const trigger = SetStyleCommand.id;
    const params = { unitId, subUnitId: this.sheet(sheet).getSheetId(), cellValue, trigger };
    const back = { ...SetRangeValuesUndoMutationFactory(this.injector, params), trigger };
    this.api.syncExecuteCommand(SetRangeValuesMutation.id, params);
    this.undo.pushUndoRedo({
      unitID: unitId,
      undoMutations: [{ id: SetRangeValuesMutation.id, params: back }],
      redoMutations: [{ id: SetRangeValuesMutation.id, params }],
    });
  }

  private command(id: string, sheet: FWorksheet, params: object): void {
    const done: unknown = this.api.syncExecuteCommand(id, {
      unitId: this.workbook.getId(),
      subUnitId: sheet.getSheetId(),
      ...params,
    });
    if (done !== true) throw trouble('refused', 'these cells may not be changed');
  }

  private put(puts: readonly Put[]): void {
    for (const { area, cells, formula } of puts) {
      if (this.sheet(area.sheet).getWorksheetPermission().isProtected())
        throw trouble('protected', area.sheet);
      this.cells(area, (i, j) => {
        const put = formula === undefined ? cells?.[i]?.[j] : { formula: shifted(formula, i, j) };
        return put === undefined ? undefined : cellOf(put);
      });
    }
  }

  /** By its mutation: the grid's own command refuses a table named like a sheet, which Excel allows. */
  private addTable(name: string, area: Area): void {
    const sheet = this.sheet(area.sheet);
    const unitId = this.workbook.getId();
    const tableId = crypto.randomUUID();
    const header = Array.from({ length: area.columns }, (_, at) =>
      String(valueOf(sheet.getSheet().getCellRaw(area.row, area.column + at)) ?? `Column${at + 1}`),
    );
    const range = rangeOf(area);
    const params = {
      unitId,
      subUnitId: sheet.getSheetId(),
      tableId,
      name,
      range,
      header,
      options: { showHeader: true },
    };
    this.api.syncExecuteCommand(AddSheetTableMutation.id, params);
    this.undo.pushUndoRedo({
      unitID: unitId,
      undoMutations: [{ id: DeleteSheetTableMutation.id, params: { unitId, tableId } }],
      redoMutations: [{ id: AddSheetTableMutation.id, params }],
    });
  }

  private addName({ name, area, says }: NewName): void {
    const builder = this.workbook.newDefinedNameBuilder().setName(name).setRef(areaText(area, true));
    if (says !== undefined) builder.setComment(says);
    this.nameCommand('sheet.command.insert-defined-name', builder.setScopeToWorkbook().build());
  }
  /** By its mutations: the grid's own command, undone from its end, would take the name away for good. */
  private moveName({ name, area }: NewName): void {
    const found = this.workbook.getDefinedName(name);
    if (found === null) throw trouble('missing', `The range “${name}”`);
    const unitId = this.workbook.getId();
    const params = { ...found.toBuilder().build(), unitId };
    const moved = { ...params, formulaOrRefString: areaText(area, true) };
    // Only a name taken away and set anew is looked up again by the formulas that speak of it.
    const steps = (from: typeof params, to: typeof params) => [
      { id: RemoveDefinedNameMutation.id, params: from },
      { id: SetDefinedNameMutation.id, params: to },
    ];
    const redoMutations = steps(params, moved);
    for (const one of redoMutations) this.api.syncExecuteCommand(one.id, one.params);
    this.injector.get(IFunctionService).deleteFormulaAstCacheKey(name);
    // A step of the book is undone from its end: so these two stand the other way about.
    const undoMutations = steps(moved, params).reverse();
    this.undo.pushUndoRedo({ unitID: unitId, undoMutations, redoMutations });
  }
  private removeName(name: string): void {
    const found = this.workbook.getDefinedName(name);
    if (found !== null) this.nameCommand('sheet.command.remove-defined-name', found.toBuilder().build());
  }
  private nameCommand(id: string, params: object): void {
    if (
      this.api.syncExecuteCommand<object, boolean>(id, { ...params, unitId: this.workbook.getId() }) !== true
    )
      throw trouble('refused', 'this name may not be changed');
  }

  private async resize(name: string, area: Area): Promise<void> {
    const table = this.workbook.getTableInfoByName(name);
    if (table === undefined) throw trouble('missing', `The table “${name}”`);
    const done = await this.sheet(area.sheet).setTableRange(table.id, rangeOf(area));
    if (!done) throw trouble('refused', `the table “${name}” cannot cover these cells`);
  }

  private async removeSheet(name: string): Promise<void> {
    const found = this.workbook.getSheets().find((one) => sameSheet(one.getSheetName(), name));
    if (found === undefined) return;
    for (const table of found.getSubTableInfos()) await this.workbook.removeTable(table.id);
    this.workbook.deleteSheet(found);
  }

  private async validate({ area, words, from, number, says, otherwise }: Validation): Promise<void> {
    const sheet = this.sheet(area.sheet);
    await this.api.executeCommand('sheet.command.addDataValidation', {
      unitId: this.workbook.getId(),
      subUnitId: sheet.getSheetId(),
      rule: {
        uid: crypto.randomUUID(),
        ranges: [rangeOf(area)],
        allowBlank: true,
        prompt: says,
        showInputMessage: true,
        error: says,
        showErrorMessage: true,
        errorStyle: otherwise === 'stop' ? DataValidationErrorStyle.STOP : DataValidationErrorStyle.WARNING,
        ...(number === undefined
          ? {
              type: DataValidationType.LIST,
              formula1: words === undefined ? `=${this.placed(from ?? '', area.sheet)}` : words.join(','),
            }
          : {
              type: number.whole === true ? DataValidationType.WHOLE : DataValidationType.DECIMAL,
              operator:
                number.most === undefined
                  ? DataValidationOperator.GREATER_THAN_OR_EQUAL
                  : DataValidationOperator.BETWEEN,
              formula1: String(number.least),
              ...(number.most === undefined ? {} : { formula2: String(number.most) }),
            }),
      },
    });
  }

  /** The grid takes choices from an address only: a name is followed to where it points. */
  private placed(from: string, sheet: string): string {
    const at = this.workbook.getDefinedName(from)?.getFormulaOrRefString() ?? from;
    const area = readAddress(at, sheet);
    return area === undefined ? at : areaText(area, true);
  }

  private async layOut({
    sheet: name,
    frozenRows = 0,
    frozenColumns = 0,
    widths = {},
    ...more
  }: Layout): Promise<void> {
    const sheet = this.sheet(name);
    const { print, heights = {}, merged = [], plain } = more;
    if (plain === true) sheet.setHiddenGridlines(true);
    if (merged.length > 0)
      await this.api.executeCommand('sheet.command.add-worksheet-merge', {
        unitId: this.workbook.getId(),
        subUnitId: sheet.getSheetId(),
        selections: merged.map(rangeOf),
        defaultMerge: true,
      });
    if (frozenRows + frozenColumns > 0) {
      sheet.setFreeze({
        xSplit: frozenColumns,
        ySplit: frozenRows,
        startRow: frozenRows,
        startColumn: frozenColumns,
      });
    }
    this.setWidths(sheet, widths);
    for (const { points, areas } of rowsAlike(name, heights))
      this.command('sheet.command.set-row-height', sheet, {
        ranges: areas.map(rangeOf),
        value: Math.ceil(points * PIXELS_A_POINT),
      });
    // There is no printing here: what was asked goes on into the file.
    if (print !== undefined) sheet.setCustomMetadata({ ...sheet.getCustomMetadata(), print });
  }

  /** By its mutation: the grid's own command takes one width, and measures every cell of the sheet each time. */
  private setWidths(sheet: FWorksheet, widths: Readonly<Record<number, number>>): void {
    const columns = Object.keys(widths).map(Number);
    if (columns.length === 0) return;
    const target = { unitId: this.workbook.getId(), subUnitId: sheet.getSheetId() };
    const lastRow = Math.max(0, sheet.getSheet().getLastRowWithContent());
    const ranges = columns.map((column) => ({
      ...{ startRow: 0, endRow: lastRow },
      ...{ startColumn: column, endColumn: column },
    }));
    const colWidth = Object.fromEntries(
      Object.entries(widths).map(([column, characters]) => [column, pixelsFor(characters)]),
    );
    const params = { ...target, ranges, colWidth };
    const back = SetWorksheetColWidthMutationFactory(params, sheet.getSheet());
    this.api.syncExecuteCommand(SetWorksheetColWidthMutation.id, params);
    // Text that wraps at the new widths takes rows as high as it needs.
    const heights = this.injector
      .get(SheetInterceptorService)
      .generateMutationsOfAutoHeight({ ...target, ranges, autoHeightRanges: ranges });
    for (const { id, params: one } of heights.redos) this.api.syncExecuteCommand(id, one);
    this.undo.pushUndoRedo({
      unitID: target.unitId,
      undoMutations: [{ id: SetWorksheetColWidthMutation.id, params: back }, ...heights.undos],
      redoMutations: [{ id: SetWorksheetColWidthMutation.id, params }, ...heights.redos],
    });
  }

  private keepAllDrawn({ newCharts = [], newDrawings = [] }: Changes): void {
    this.keepDrawn('charts', newCharts);
    this.keepDrawn('drawings', newDrawings);
  }

  /** Nothing is drawn here: it goes on into the file. */
  private keepDrawn<Kind extends keyof Drawn>(kind: Kind, drawn: readonly Drawn[Kind][]): void {
    if (drawn.length === 0) return;
    const same = (one: Drawn[Kind]): boolean =>
      drawn.some(({ name, at }) => name === one.name && sameSheet(at.sheet, one.at.sheet));
    const others = keptDrawn(this.workbook, kind).filter((one) => !same(one));
    this.workbook.setCustomMetadata({ ...this.workbook.getCustomMetadata(), [kind]: [...others, ...drawn] });
  }

  note(area: Area, text: string): void {
    const height = 40 + 18 * Math.ceil(text.length / 30);
    this.sheet(area.sheet).getRange(area.row, area.column).createOrUpdateNote({
      id: crypto.randomUUID(),
      row: area.row,
      col: area.column,
      width: 240,
      height,
      note: text,
      show: false,
    });
  }
}
