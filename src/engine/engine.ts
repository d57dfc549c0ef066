/** A workbook in the formula engine, without a grid: open, calculate, read back, ask. */
import type { IAllRuntimeData } from '@univerjs/engine-formula';
import {
  engineCell,
  plainValue,
  valueOf,
  type ByCell,
  type BySheet,
  type EngineCell,
  type Range,
} from './cells';
import { circular } from './circle';
import { ourFunctions, type Call, type Empties } from './functions';
import type { Library } from './library';
import { guardReading, partsOf, type Parts, type Univer } from './services';
import { guard, repair } from './repairs';
import { singleFunction } from './single';
import { lastRow, widestColumn } from './size';
import type { CellValue, Computed, Given, Progress, WorkbookOf } from './workbook';

/** What a formula's cell holds between two rounds. */
interface Held {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly spill?: readonly (readonly CellValue[])[];
  readonly range?: Range;
  readonly wanted?: Range;
}

interface Dirty extends Range {
  readonly sheet: number;
}

const ROUNDS = 12;
const WIDE = 16_384;
const placeOf = (sheet: string | number, row: number, column: number): string => `${sheet}!${row}!${column}`;

/** The engine keeps what it read of a formula under the workbook's id, for all workbooks alike. */
let opened = 0;

export class Engine {
  /** Whether formulas refer to themselves in a circle; known after calculating. */
  circular = false;
  readonly #id = `book${(opened += 1)}`;
  readonly #library: Library;
  readonly #univer: Univer;
  readonly #parts: Parts;
  readonly #cells: ByCell<EngineCell>[] = [];
  readonly #formulas: BySheet<{ f: string }> = {};
  readonly #names: Record<string, string>;
  readonly #held: Map<number, Held>[] = [];
  readonly #calls = new Map<string, Call[]>();
  readonly #again = new Set<string>();
  readonly #faults = new Map<string, string>();
  #asked: Call[] | undefined;

  constructor(library: Library, book: WorkbookOf, empties: Empties = 'null') {
    this.#library = library;
    for (const [at, sheet] of book.sheets.entries()) {
      const cells: ByCell<EngineCell> = {};
      const formulas: ByCell<{ f: string }> = (this.#formulas[String(at)] = {});
      for (const { row, column, value, formula } of sheet.cells) {
        (cells[row] ??= {})[column] = formula === undefined ? engineCell(value) : { f: formula };
        if (formula !== undefined) (formulas[row] ??= {})[column] = { f: formula };
      }
      this.#cells.push(cells);
      this.#held.push(new Map());
    }
    this.#names = Object.fromEntries(book.names.map(({ name, refersTo }) => [name, refersTo]));
    this.#univer = this.#open(book);
    this.#parts = partsOf(this.#univer, library);
    const { names, functions } = this.#parts;
    for (const [at, { name, refersTo }] of book.names.entries()) {
      names.registerDefinedName(this.#id, { id: `name${at}`, name, formulaOrRefString: refersTo });
    }
    repair(library, functions);
    functions.registerExecutors(
      singleFunction(library),
      ...ourFunctions(
        library,
        ({ sheet, row, column }, call) => {
          this.#callsAt(placeOf(sheet, row, column)).push(call);
        },
        () => empties,
      ),
    );
    guard(library, functions, (engineFunction, thrown) => {
      this.#fault(`${engineFunction.name} failed: ${String(thrown)}`);
    });
    guardReading(this.#univer, library);
    this.#guardWalking();
  }

  #open(book: WorkbookOf): Univer {
    const { core, formula } = this.#library;
    const univer = new core.Univer({ logLevel: core.LogLevel.SILENT, locale: core.LocaleType.EN_US });
    univer.registerPlugin(formula.UniverFormulaEnginePlugin, { intervalCount: 250 });
    const size = { rowCount: lastRow(book) + 1, columnCount: widestColumn(book) + 1 };
    const ids = book.sheets.map((_, at) => String(at));
    univer.createUnit(core.UniverInstanceType.UNIVER_SHEET, {
      id: this.#id,
      name: '',
      appVersion: '',
      locale: core.LocaleType.EN_US,
      styles: {},
      sheetOrder: ids,
      sheets: Object.fromEntries(
        book.sheets.map(({ name }, at) => [
          String(at),
          { id: String(at), name, cellData: this.#cells[at] ?? {}, ...size },
        ]),
      ),
    });
    return univer;
  }

  /** The first call of a formula computed again starts its list anew. */
  #callsAt(place: string): Call[] {
    if (this.#asked !== undefined) return this.#asked;
    const list = (this.#again.delete(place) ? undefined : this.#calls.get(place)) ?? [];
    this.#calls.set(place, list);
    return list;
  }

  get #place(): string {
    const { currentSubUnitId, currentRow, currentColumn } = this.#parts.runtime;
    return placeOf(currentSubUnitId, currentRow, currentColumn);
  }

  #fault(why: string): void {
    if (!this.#faults.has(this.#place)) this.#faults.set(this.#place, why);
  }

  /** What a formula throws stays its own. A lambda walks inside the walk of its formula. */
  #guardWalking(): void {
    const { formula } = this.#library;
    const { interpreter } = this.#parts;
    const execute = interpreter.execute.bind(interpreter);
    let inside = false;
    interpreter.execute = (node) => {
      if (inside) return execute(node);
      inside = true;
      this.#again.add(this.#place);
      try {
        return execute(node);
      } catch (thrown) {
        this.#fault(String(thrown));
        return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
      } finally {
        inside = false;
      }
    };
  }

  /** Whether the engine can take the formula apart at all. */
  reads(formula: string): boolean {
    try {
      // Without the last step, or what is read here would be remembered without its names.
      return typeof this.#parts.reader.treeBuilder(formula, false) !== 'string';
    } catch {
      return false;
    }
  }

  /** Whether a function of this name is known, ours and the engine's alike. */
  knows(name: string): boolean {
    return this.#parts.functions.hasExecutor(name.toUpperCase());
  }

  /** Computes every formula. A spill may feed a formula computed before it: that one is computed again. */
  async calculate(progress?: Progress): Promise<readonly Computed[]> {
    if (!Object.values(this.#formulas).some((rows) => Object.keys(rows).length > 0)) return [];
    let dirty = await this.#round(undefined, progress);
    for (let round = 1; dirty.length > 0 && round < ROUNDS; round++) dirty = await this.#round(dirty);
    const { cellData, range } = this.#spilled();
    this.#parts.model.setArrayFormulaCellData({ [this.#id]: cellData });
    this.#parts.model.setArrayFormulaRange({ [this.#id]: range });
    return this.#held.flatMap((held, sheet) => [...held.values()].map((one) => this.#computed(sheet, one)));
  }

  /** The cells that refer to themselves in a circle, as sheet!row!column; they hold no meaning. */
  async circle(): Promise<ReadonlySet<string>> {
    if (!this.circular) return new Set();
    const trees = await this.#parts.calculation.getAllDependencyJson();
    const ids = circular(trees.map(({ treeId, parents }) => ({ id: treeId, next: parents })));
    return new Set(
      trees
        .filter(({ treeId }) => ids.has(treeId))
        .map(({ subUnitId, row, column }) => placeOf(subUnitId, row, column)),
    );
  }

  #round(dirty: readonly Dirty[] | undefined, progress?: Progress): Promise<readonly Dirty[]> {
    const { calculation, runtime } = this.#parts;
    const { cellData, range } = this.#spilled();
    return new Promise((resolve, reject) => {
      const watching = calculation.executionInProgressListener$.subscribe((state) => {
        if (state.totalFormulasToCalculate > 0)
          progress?.(state.completedFormulasCount, state.totalFormulasToCalculate);
      });
      const waiting = calculation.executionCompleteListener$.subscribe((data) => {
        watching.unsubscribe();
        waiting.unsubscribe();
        if (runtime.isCycleDependency()) this.circular = true;
        try {
          resolve(this.#take(data));
        } catch (thrown) {
          reject(thrown instanceof Error ? thrown : new Error(String(thrown)));
        }
      });
      calculation
        .execute({
          formulaData: { [this.#id]: this.#formulas },
          arrayFormulaCellData: { [this.#id]: cellData },
          arrayFormulaRange: { [this.#id]: range },
          forceCalculate: dirty === undefined,
          dirtyRanges: (dirty ?? []).map(({ sheet, ...given }) => ({
            unitId: this.#id,
            sheetId: String(sheet),
            range: given,
          })),
          dirtyNameMap: {},
          // Else a formula read for another workbook would bring that one's names along.
          dirtyDefinedNameMap: { [this.#id]: this.#names },
          dirtyUnitFeatureMap: {},
          dirtyUnitOtherFormulaMap: {},
        })
        .catch(reject);
    });
  }

  /** Takes a round's results over, and says which spills are new or changed. */
  #take({ unitData, arrayFormulaRange, arrayFormulaCellData }: IAllRuntimeData): readonly Dirty[] {
    const changed: Dirty[] = [];
    for (const [sheet, held] of this.#held.entries()) {
      const id = String(sheet);
      const ranges = (arrayFormulaRange[this.#id]?.[id] ?? {}) as ByCell<Range | undefined>;
      const spilled = arrayFormulaCellData[this.#id]?.[id];
      const cells = this.#cells[sheet] ?? {};
      unitData[this.#id]?.[id]?.forValue((row, column, result) => {
        const cell = cells[row]?.[column];
        if (cell?.f === undefined) return;
        const value = valueOf(result as EngineCell | null);
        const range = ranges[row]?.[column];
        const next: Held = { row, column, value, ...reach(value, range, spilled) };
        const key = row * WIDE + column;
        const before = held.get(key);
        if (JSON.stringify(before?.spill) !== JSON.stringify(next.spill)) {
          for (const range of [before?.range, next.range])
            if (range !== undefined) changed.push({ ...range, sheet });
        }
        held.set(key, next);
        Object.assign(cell, { v: null }, engineCell(value));
      });
    }
    return changed;
  }

  #spilled(): { cellData: BySheet<EngineCell>; range: BySheet<Range> } {
    const cellData: BySheet<EngineCell> = {};
    const range: BySheet<Range> = {};
    for (const [sheet, held] of this.#held.entries()) {
      const data: ByCell<EngineCell> = (cellData[String(sheet)] = {});
      const ranges: ByCell<Range> = (range[String(sheet)] = {});
      for (const { range, spill } of held.values()) {
        if (range === undefined || spill === undefined) continue;
        (ranges[range.startRow] ??= {})[range.startColumn] = range;
        for (const [r, line] of spill.entries()) {
          const cells = (data[range.startRow + r] ??= {});
          for (const [c, value] of line.entries()) cells[range.startColumn + c] = engineCell(value);
        }
      }
    }
    return { cellData, range };
  }

  #computed(sheet: number, { row, column, value, spill, wanted }: Held): Computed {
    const place = placeOf(sheet, row, column);
    const fault = this.#faults.get(place);
    return {
      sheet,
      row,
      column,
      value,
      calls: this.#calls.get(place) ?? [],
      ...(spill === undefined ? {} : { spill }),
      ...(fault === undefined ? {} : { fault }),
      ...(wanted === undefined
        ? {}
        : {
            wanted: {
              rows: wanted.endRow - wanted.startRow + 1,
              columns: wanted.endColumn - wanted.startColumn + 1,
            },
          }),
    };
  }

  /** One formula beside the workbook, as if typed on its first sheet; nothing stands in a spill's way. */
  async ask(text: string): Promise<Given> {
    const { current, runtime, calculation } = this.#parts;
    const calls: Call[] = (this.#asked = []);
    this.#faults.clear();
    try {
      current.loadDataLite();
      runtime.reset();
      runtime.setCurrent(0, 0, 1_048_576, WIDE, '0', this.#id);
      // The service's declared result is void; it hands back what the formula gave.
      const given = (await (calculation.calculate(text) as unknown)) as Answered | undefined;
      const [fault] = this.#faults.values();
      const rest = { calls, ...(fault === undefined ? {} : { fault }) };
      if (given === undefined) return { value: '#NAME?', ...rest };
      const value = given.isReferenceObject() ? given.toArrayValueObject() : given;
      if (!value.isArray()) return { value: plainValue(value), ...rest };
      const spill = value.getArrayValue().map((row) => Array.from(row, plainValue));
      const first = spill[0]?.[0] ?? 0;
      return spill.length === 1 && spill[0]?.length === 1
        ? { value: first, ...rest }
        : { value: first, spill, ...rest };
    } finally {
      this.#asked = undefined;
    }
  }

  dispose(): void {
    this.#univer.dispose();
  }
}

interface Answered {
  isReferenceObject(): boolean;
  isArray(): boolean;
  isNull(): boolean;
  isBoolean(): boolean;
  getValue(): unknown;
  toArrayValueObject(): Answered;
  getArrayValue(): (Answered | null)[][];
}

/** How far a formula's answer reaches: it spilled, it wanted to, or neither. */
function reach(
  value: CellValue,
  range: Range | undefined,
  spilled: { getValue(row: number, column: number): unknown } | null | undefined,
): Pick<Held, 'spill' | 'range' | 'wanted'> {
  if (range === undefined) return {};
  if (value === '#SPILL!') return { wanted: range };
  const spill: CellValue[][] = [];
  for (let row = range.startRow; row <= range.endRow; row++) {
    const line: CellValue[] = [];
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      line.push(valueOf(spilled?.getValue(row, column) as EngineCell | null | undefined));
    }
    spill.push(line);
  }
  return { spill, range };
}
