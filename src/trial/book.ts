/** The sheet in the page as a Book. */
import { IUndoRedoService } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import {
  IEditorBridgeService,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
  type FWorkbook,
  type FWorksheet,
} from '@univerjs/preset-sheets-core';
import { areaAt, common, readAddress, sameSheet, type Area } from '../book/address';
import type {
  Ability,
  Block,
  Book,
  CellValue,
  Changes,
  Contents,
  Detail,
  Mark,
  Stop,
  TableSeen,
} from '../book/book';
import { MARKED } from '../book/roles';
import { trouble } from '../book/trouble';
import { areaOf, rangeOf, valueOf } from './cells';
import { changedBy } from './changed';
import type { Grid } from './grid';
import { scrolledTo } from './scroll';
import { Writer } from './write';

/** A marked cell, and the colour it had. */
interface Marked {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly colour: string | null;
}

const MARKS = 'marks';
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

export class TrialBook implements Book {
  readonly lacks: ReadonlyMap<Ability, string> = new Map<Ability, string>([
    ['charts', 'The trial workbook draws no charts; they stand in the file it saves.'],
    [
      'drawings',
      'The grid of the trial workbook shows no drawings; they stand in the print view and in the file it saves.',
    ],
    ['print', 'The grid of the trial workbook does not print; its print set-up is kept for the saved file.'],
  ]);
  /** Between two parts the page can be used, and the fill be stopped. */
  readonly fills = 20_000;
  readonly joinsRequests = true;
  readonly owner = 'this page';
  private readonly writer: Writer;
  private readonly formulas: FormulaDataModel;

  constructor(
    private readonly grid: Grid,
    private readonly workbook: FWorkbook,
  ) {
    const injector = grid.univer.__getInjector();
    this.writer = new Writer(grid.api, workbook, injector);
    this.formulas = injector.get(FormulaDataModel);
  }

  get title(): string {
    return this.workbook.getName();
  }

  contents(): Promise<Contents> {
    return Promise.resolve({
      sheets: this.workbook.getSheets().map((sheet) => ({
        name: sheet.getSheetName(),
        hidden: sheet.isSheetHidden(),
        protected: sheet.getWorksheetPermission().isProtected(),
        used: this.used(sheet),
      })),
      tables: this.tables(),
      names: this.workbook.getDefinedNames().map((one) => ({
        name: one.getName(),
        area: readAddress(one.getFormulaOrRefString().replace(/^=/, '')),
      })),
    });
  }

  private used(sheet: FWorksheet): Area | undefined {
    let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
    sheet
      .getSheet()
      .getCellMatrix()
      .forValue((row, column, cell) => {
        if (valueOf(cell) === null && !cell?.f && !cell?.si) return;
        [top, bottom] = [Math.min(top, row), Math.max(bottom, row)];
        [left, right] = [Math.min(left, column), Math.max(right, column)];
      });
    return bottom < 0
      ? undefined
      : areaAt(sheet.getSheetName(), top, left, bottom - top + 1, right - left + 1);
  }

  private tables(): TableSeen[] {
    return this.workbook.getTableList().flatMap((one): TableSeen[] => {
      const sheet = this.workbook.getSheetBySheetId(one.subUnitId);
      if (sheet === null) return [];
      const area = areaOf(sheet.getSheetName(), one.range as Parameters<typeof areaOf>[1]);
      const columns = Array.from({ length: area.columns }, (_, at) =>
        String(valueOf(sheet.getSheet().getCellRaw(area.row, area.column + at)) ?? `Column${at + 1}`),
      );
      return [{ name: one.name, area, headerRow: true, totalsRow: false, columns }];
    });
  }

  selection(): Promise<Area> {
    return Promise.resolve(this.selected());
  }
  private selected(): Area {
    const sheet = this.workbook.getActiveSheet();
    const range = sheet.getActiveRange()?.getRange();
    return range === undefined
      ? areaAt(sheet.getSheetName(), 0, 0)
      : areaOf(sheet.getSheetName(), this.inside(sheet, range));
  }
  /** A whole column or row has no ends of its own. */
  private inside(sheet: FWorksheet, range: ReturnType<typeof rangeOf>) {
    const whole = (figure: number, otherwise: number): number =>
      Number.isFinite(figure) ? figure : otherwise;
    return {
      startRow: whole(range.startRow, 0),
      endRow: whole(range.endRow, sheet.getMaxRows() - 1),
      startColumn: whole(range.startColumn, 0),
      endColumn: whole(range.endColumn, sheet.getMaxColumns() - 1),
    };
  }
  onSelection(listener: (area: Area) => void): Promise<Stop> {
    const { api } = this.grid;
    const tell = (): void => {
      if (api.getActiveWorkbook()?.getId() === this.workbook.getId()) listener(this.selected());
    };
    const stop = api.onCommandExecuted(({ id }) => {
      if (id === SetSelectionsOperation.id || id === SetWorksheetActiveOperation.id) tell();
    });
    return Promise.resolve(() => {
      stop.dispose();
    });
  }
  onChange(listener: (area: Area) => void): Promise<Stop> {
    const stop = this.grid.api.onCommandExecuted((command, how) => {
      const area = changedBy(command, how, (id) => this.workbook.getSheetBySheetId(id)?.getSheetName());
      if (area !== undefined) listener(area);
    });
    return Promise.resolve(() => {
      stop.dispose();
    });
  }
  goTo(area: Area): Promise<void> {
    const sheet = this.writer.sheet(area.sheet);
    this.workbook.setActiveSheet(sheet);
    sheet.getRange(rangeOf(area)).activate();
    const { ySplit, xSplit } = sheet.getFreeze();
    sheet.scrollToCell(
      scrolledTo(area.row - 2, ySplit, (row) => sheet.getRowHeight(row)),
      scrolledTo(area.column - 1, xSplit, (column) => sheet.getColumnWidth(column)),
    );
    return Promise.resolve();
  }

  read(areas: readonly Area[], detail: Detail = 'whole'): Promise<readonly Block[]> {
    return Promise.resolve(areas.map((area) => this.block(area, detail)));
  }

  private block(area: Area, detail: Detail): Block {
    const facade = this.writer.sheet(area.sheet);
    const sheet = facade.getSheet();
    const unit = this.workbook.getId();
    const id = sheet.getSheetId();
    const spilled = this.formulas.getArrayFormulaCellData()[unit]?.[id];
    const values: CellValue[][] = [];
    const formulas: (string | null)[][] = [];
    const formats: string[][] = [];
    const hiddenRows: number[] = [];
    let bare = true;
    for (let row = area.row; row < area.row + area.rows; row++) {
      if (!sheet.getRowVisible(row)) hiddenRows.push(row);
      const line = { values: [] as CellValue[], formulas: [] as (string | null)[], formats: [] as string[] };
      for (let column = area.column; column < area.column + area.columns; column++) {
        const cell = sheet.getCellRaw(row, column);
        line.values.push(valueOf(cell) ?? valueOf(spilled?.[row]?.[column]));
        const held = cell?.f || cell?.si;
        bare &&= !held && !cell?.s && valueOf(cell) === null;
        line.formulas.push(
          held ? (this.formulas.getFormulaStringByCell(row, column, id, unit) ?? cell.f ?? null) : null,
        );
        if (detail === 'whole') {
          const style = this.workbook.getWorkbook().getStyles().getStyleByCell(cell);
          line.formats.push(style?.n?.pattern ?? 'General');
        }
      }
      values.push(line.values);
      formulas.push(line.formulas);
      formats.push(line.formats);
    }
    return {
      area,
      values,
      formulas,
      formats,
      merged: sheet
        .getMergeData()
        .map((range) => areaOf(area.sheet, range))
        .filter((one) => common(one, area) !== undefined),
      hiddenRows,
      table: this.tables().find((one) => common(one.area, area) !== undefined),
      protected: facade.getWorksheetPermission().isProtected(),
      bare,
    };
  }

  async inOneStep(
    _says: string,
    work: (write: (changes: Changes) => Promise<void>) => Promise<void>,
  ): Promise<void> {
    const injector = this.grid.univer.__getInjector();
    if (injector.get(IEditorBridgeService).isVisible().visible) throw trouble('editing');
    const joined = joinSteps(injector.get(IUndoRedoService), this.workbook.getId());
    try {
      await work(async (changes) => {
        const { remember, forget } = changes;
        if (remember !== undefined) await this.remember(remember.key, remember.value);
        await this.writer.write(changes);
        if (forget !== undefined) await this.remember(forget, undefined);
        if (changes.puts?.length || changes.clear?.length) await this.settled();
        await breath();
      });
    } finally {
      joined();
    }
  }

  /** A cell being edited keeps no other shut here. */
  whenLeft(): Promise<void> {
    return Promise.resolve();
  }

  /** Until every formula touched so far has its value. */
  private settled(): Promise<void> {
    return this.grid.api.getFormula().onCalculationResultApplied();
  }

  async recalculate(): Promise<void> {
    this.grid.api.getFormula().executeCalculation();
    await this.settled();
  }

  mark(marks: readonly Mark[]): Promise<void> {
    return this.inOneStep('Mark findings', async () => {
      const kept = [...this.marks()];
      for (const { area, weight, sentence } of marks) {
        const sheet = this.writer.sheet(area.sheet);
        for (let row = area.row; row < area.row + area.rows; row++) {
          for (let column = area.column; column < area.column + area.columns; column++) {
            if (!kept.some((one) => sameCell(one, area.sheet, row, column))) {
              const colour = sheet.getRange(row, column).getBackground();
              kept.push({ sheet: area.sheet, row, column, colour: colour === '#fff' ? null : colour });
            }
          }
        }
        this.writer.style(area, { bg: { rgb: `#${MARKED[weight]}` } });
        this.writer.note(area, sentence);
      }
      await this.remember(MARKS, kept);
    });
  }

  marked(sheet: string): Promise<number> {
    return Promise.resolve(this.marks().filter((one) => sameSheet(one.sheet, sheet)).length);
  }

  unmark(sheet?: string): Promise<void> {
    return this.inOneStep('Take marks away', async () => {
      const left: Marked[] = [];
      for (const one of this.marks()) {
        if (sheet !== undefined && !sameSheet(one.sheet, sheet)) {
          left.push(one);
          continue;
        }
        const area = areaAt(one.sheet, one.row, one.column);
        this.writer.style(area, { bg: one.colour === null ? null : { rgb: one.colour } });
        this.writer.sheet(one.sheet).getRange(one.row, one.column).deleteNote();
      }
      await this.remember(MARKS, left.length === 0 ? undefined : left);
    });
  }

  private marks(): readonly Marked[] {
    return (this.kept()[MARKS] ?? []) as readonly Marked[];
  }

  private kept(): Record<string, unknown> {
    return (this.workbook.getCustomMetadata() ?? {}) as Record<string, unknown>;
  }
  recall(key: string): Promise<unknown> {
    return Promise.resolve(this.kept()[key]);
  }
  remember(key: string, value: unknown): Promise<void> {
    const rest = Object.fromEntries(Object.entries(this.kept()).filter(([one]) => one !== key));
    this.workbook.setCustomMetadata(value === undefined ? rest : { ...rest, [key]: value });
    return Promise.resolve();
  }
}

/** Everything until the function given back is called is one step; the grid's own batch would undo the first first. */
function joinSteps(undo: IUndoRedoService, unit: string): () => void {
  const before = undo.pitchTopUndoElement();
  const batch = undo.__tempBatchingUndoRedo(unit);
  return () => {
    batch.dispose();
    const joined = undo.pitchTopUndoElement();
    if (joined && joined !== before) joined.undoMutations.reverse();
  };
}

const sameCell = (one: Marked, sheet: string, row: number, column: number): boolean =>
  sameSheet(one.sheet, sheet) && one.row === row && one.column === column;
