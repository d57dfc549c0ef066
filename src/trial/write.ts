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
  type FWorkbook,
  type FWorksheet,
} from '@univerjs/preset-sheets-core';
import { AddSheetTableMutation, DeleteSheetTableMutation } from '@univerjs/preset-sheets-table';
import type { Area } from '../book/address';
import { areaText, readAddress, sameSheet } from '../book/address';
import type { Changes, Dress, Layout, NewChart, NewName, Put, Validation } from '../book/book';
import { shifted } from '../book/formula';
import { trouble } from '../book/trouble';
import { cellOf, rangeOf, valueOf } from './cells';
import { PIXELS_A_POINT, pixelsFor } from './letters';
import { styleOf } from './role-styles';

/** Charts that were written and whose sheets are still there. */
export function keptCharts(workbook: FWorkbook): readonly NewChart[] {
  const sheets = workbook.getSheets().map((one) => one.getSheetName());
  const kept = (workbook.getCustomMetadata()?.['charts'] ?? []) as readonly NewChart[];
  return kept.filter(({ at }) => sheets.some((name) => sameSheet(name, at.sheet)));
}

type Cells = IObjectMatrixPrimitiveType<ICellData>;
const ALIGNED = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;
const alignedTo = (align: Dress['align']): IStyleData => (align === undefined ? {} : { ht: ALIGNED[align] });

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
    for (const { name } of changes.newSheets ?? []) this.workbook.insertSheet(name);
    for (const { table, area } of changes.resize ?? []) await this.resize(table, area);
    for (const one of changes.movedNames ?? []) this.moveName(one);
    for (const { area, looksToo } of changes.clear ?? [])
      this.cells(area, () => ({ ...cellOf(null), ...(looksToo && { s: null }) }));
    this.put(changes.puts ?? []);
    for (const { name, area } of changes.newTables ?? []) this.addTable(name, area);
    for (const one of changes.newNames ?? []) this.addName(one);
    for (const { area, role, format, align } of changes.dress ?? []) {
      const style = {
        ...alignedTo(align),
        ...(role === undefined ? {} : styleOf(role)),
        ...(format === undefined ? {} : { n: { pattern: format } }),
      };
      this.style(area, style);
    }
    for (const one of changes.validations ?? []) await this.validate(one);
    for (const one of changes.layouts ?? []) this.layOut(one);
    this.keepCharts(changes.newCharts ?? []);
    for (const { area, text } of changes.notes ?? []) this.note(area, text);
    for (const name of changes.remove?.sheets ?? []) await this.removeSheet(name);
    for (const name of changes.remove?.names ?? []) this.removeName(name);
    if (changes.newSheets?.length) this.workbook.setActiveSheet(active);
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

  /** By its mutation, told to be about style: the engine would forget formulas of cells set without one. */
  style(area: Area, style: IStyleData): void {
    const unitId = this.workbook.getId();
    const cellValue: Cells = {};
    for (let i = 0; i < area.rows; i++) {
      const row: Record<number, ICellData> = (cellValue[area.row + i] = {});
      for (let j = 0; j < area.columns; j++) row[area.column + j] = { s: style };
    }
    const trigger = SetStyleCommand.id;
    const params = { unitId, subUnitId: this.sheet(area.sheet).getSheetId(), cellValue, trigger };
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

  private layOut({ sheet: name, frozenRows = 0, frozenColumns = 0, widths = {}, ...more }: Layout): void {
    const sheet = this.sheet(name);
    const { print, heights = {}, merged = [], plain } = more;
    if (plain === true) sheet.setHiddenGridlines(true);
    for (const { row, column, rows, columns } of merged) sheet.getRange(row, column, rows, columns).merge();
    if (frozenRows + frozenColumns > 0) {
      sheet.setFreeze({
        xSplit: frozenColumns,
        ySplit: frozenRows,
        startRow: frozenRows,
        startColumn: frozenColumns,
      });
    }
    for (const [column, characters] of Object.entries(widths)) {
      sheet.setColumnWidth(Number(column), pixelsFor(characters));
    }
    for (const [row, points] of Object.entries(heights))
      sheet.setRowHeightsForced(Number(row), 1, Math.ceil(points * PIXELS_A_POINT));
    // There is no printing here: what was asked goes on into the file.
    if (print !== undefined) sheet.setCustomMetadata({ ...sheet.getCustomMetadata(), print });
  }

  /** Nothing is drawn here: a chart goes on into the file. */
  private keepCharts(charts: readonly NewChart[]): void {
    if (charts.length === 0) return;
    const named = new Set(charts.map(({ name }) => name));
    const others = keptCharts(this.workbook).filter(({ name }) => !named.has(name));
    this.workbook.setCustomMetadata({ ...this.workbook.getCustomMetadata(), charts: [...others, ...charts] });
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
