/** A workbook in memory: for tests, and for trying a write out before it is done for real. */
import { areaAt, common, sameSheet, within, type Area } from './address';
import type {
  Ability,
  Block,
  Book,
  CellPut,
  CellValue,
  Changes,
  Contents,
  Detail,
  Layout,
  Mark,
  NewChart,
  Note,
  Role,
  SheetSeen,
  Stop,
  TableSeen,
  Validation,
} from './book';
import { shifted } from './formula';
import { MOST_AT_ONCE } from './requests';
import { trouble } from './trouble';

/** A filled cell: its formula, if any, and what it shows. */
export interface Cell {
  value: CellValue;
  formula?: string;
}

interface Sheet {
  name: string;
  protected: boolean;
  cells: Map<number, Map<number, Cell>>;
  merged: Area[];
  hiddenRows: Set<number>;
}

/** Everything undo brings back. */
interface State {
  sheets: Sheet[];
  tables: TableSeen[];
  names: { name: string; area: Area }[];
  dress: { area: Area; role?: Role; format?: string }[];
  validations: Validation[];
  layouts: Layout[];
  notes: Note[];
  charts: NewChart[];
  marks: Mark[];
}

/** What a calculator is given and fills: every cell of every sheet, with the tables and names. */
export interface Sheets {
  readonly sheets: readonly { name: string; cells: ReadonlyMap<number, ReadonlyMap<number, Cell>> }[];
  readonly contents: Contents;
}
/** Works out all formulas and sets each cell's value. */
export type Calculate = (sheets: Sheets) => Promise<void> | void;

export interface SheetGiven {
  /** Row by row from A1; text that begins with “=” is a formula. */
  readonly rows?: readonly (readonly CellValue[])[];
  readonly merged?: readonly Omit<Area, 'sheet'>[];
  readonly hiddenRows?: readonly number[];
  readonly protected?: boolean;
}

const cellGiven = (raw: CellValue): Cell | undefined =>
  raw === null || raw === ''
    ? undefined
    : typeof raw === 'string' && raw.startsWith('=')
      ? { value: null, formula: raw }
      : { value: raw };

export class MemoryBook implements Book {
  readonly title = 'Workbook';
  readonly lacks: ReadonlyMap<Ability, string> = new Map();
  readonly owner = 'this workbook’s own';
  /** As a host that writes each cell; tests of one that takes a formula for many at once say more. */
  fills = MOST_AT_ONCE;
  joinsRequests = true;
  /** Requests so far, as a host would count round trips. */
  trips = 0;
  /** The next request fails with this, as a host does when a cell is being edited. */
  failNext: Error | undefined;
  /** Where `goTo` went last. */
  shown: Area | undefined;

  private state: State = {
    sheets: [],
    tables: [],
    names: [],
    dress: [],
    validations: [],
    layouts: [],
    notes: [],
    charts: [],
    marks: [],
  };
  private readonly past: { says: string; state: State }[] = [];
  private readonly kept = new Map<string, string>();
  private readonly listeners = new Set<(area: Area) => void>();
  private readonly watchers = new Set<(area: Area) => void>();
  private selected: Area = areaAt('Sheet1', 0, 0);
  /** None since it was last written into: calculating waits until somebody reads. */
  private calculated: Promise<void> | undefined = Promise.resolve();

  constructor(
    sheets: Readonly<Record<string, SheetGiven>> = {},
    private readonly calculate?: Calculate,
  ) {
    for (const [name, given] of Object.entries(sheets)) {
      const cells = new Map<number, Map<number, Cell>>();
      given.rows?.forEach((row, at) => {
        const filled = row.flatMap((raw, column): [number, Cell][] => {
          const cell = cellGiven(raw);
          return cell === undefined ? [] : [[column, cell]];
        });
        if (filled.length > 0) cells.set(at, new Map(filled));
      });
      this.state.sheets.push({
        name,
        cells,
        protected: given.protected ?? false,
        merged: (given.merged ?? []).map((area) => ({ ...area, sheet: name })),
        hiddenRows: new Set(given.hiddenRows),
      });
      if (this.state.sheets.length === 1) this.selected = areaAt(name, 0, 0);
    }
  }

  /** Makes a table of an area whose first row holds the headings. */
  withTable(name: string, area: Area, totalsRow = false): this {
    this.addTable(name, area, totalsRow);
    return this;
  }

  // What tests look at

  get undoable(): readonly string[] {
    return this.past.map((step) => step.says);
  }
  undo(): void {
    const step = this.past.pop();
    if (step !== undefined) this.state = step.state;
  }
  /** Everything that can be seen, to compare before and after. */
  picture(): string {
    return JSON.stringify(this.state, (_key, value: unknown) =>
      value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value,
    );
  }
  get looks(): Readonly<Omit<State, 'sheets'>> {
    return this.state;
  }
  select(area: Area): void {
    this.selected = area;
    for (const listener of this.listeners) listener(area);
  }

  // The port

  contents(): Promise<Contents> {
    return this.trip(() => this.seen());
  }
  selection(): Promise<Area> {
    return this.trip(() => this.selected);
  }
  onSelection(listener: (area: Area) => void): Promise<Stop> {
    this.listeners.add(listener);
    return Promise.resolve(() => void this.listeners.delete(listener));
  }
  onChange(listener: (area: Area) => void): Promise<Stop> {
    this.watchers.add(listener);
    return Promise.resolve(() => void this.watchers.delete(listener));
  }
  goTo(area: Area): Promise<void> {
    return this.trip(() => {
      this.sheet(area.sheet);
      this.shown = area;
      this.select(area);
    });
  }

  async read(areas: readonly Area[], detail: Detail = 'whole'): Promise<readonly Block[]> {
    await (this.calculated ??= this.recalculate());
    return this.trip(() => areas.map((area) => this.block(area, detail)));
  }

  async inOneStep(
    says: string,
    work: (write: (changes: Changes) => Promise<void>) => Promise<void>,
  ): Promise<void> {
    const before = structuredClone(this.state);
    await work(async (changes) => {
      await this.trip(() => this.change(changes));
      const touched = [...(changes.puts ?? []), ...(changes.clear ?? [])].map(({ area }) => area);
      for (const tell of this.watchers) for (const area of touched) tell(area);
      this.calculated = undefined;
    });
    this.past.push({ says, state: before });
  }

  whenLeft(): Promise<void> {
    return this.trip(() => undefined);
  }

  async recalculate(): Promise<void> {
    await this.calculate?.({ sheets: this.state.sheets, contents: this.seen() });
  }

  mark(marks: readonly Mark[]): Promise<void> {
    return this.trip(() => {
      this.past.push({ says: 'Mark', state: structuredClone(this.state) });
      const old = this.state.marks.filter((one) => !marks.some((mark) => common(mark.area, one.area)));
      this.state.marks = [...old, ...marks];
    });
  }
  marked(sheet: string): Promise<number> {
    return this.trip(() => this.state.marks.filter((one) => sameSheet(one.area.sheet, sheet)).length);
  }
  unmark(sheet?: string): Promise<void> {
    return this.trip(() => {
      this.state.marks = this.state.marks.filter(
        (one) => sheet !== undefined && !sameSheet(one.area.sheet, sheet),
      );
    });
  }

  recall(key: string): Promise<unknown> {
    return this.trip(() => {
      const text = this.kept.get(key);
      return text === undefined ? undefined : (JSON.parse(text) as unknown);
    });
  }
  remember(key: string, value: unknown): Promise<void> {
    return this.trip(() => {
      this.keep(key, value);
    });
  }

  // How it is done

  private async trip<T>(work: () => T): Promise<T> {
    this.trips += 1;
    await Promise.resolve();
    const failure = this.failNext;
    this.failNext = undefined;
    if (failure !== undefined) throw failure;
    return work();
  }

  private keep(key: string, value: unknown): void {
    if (value === undefined) this.kept.delete(key);
    else this.kept.set(key, JSON.stringify(value));
  }

  private sheet(name: string): Sheet {
    const found = this.state.sheets.find((one) => sameSheet(one.name, name));
    if (found === undefined) throw trouble('missing', `The sheet “${name}”`);
    return found;
  }

  private seen(): Contents {
    return {
      sheets: this.state.sheets.map((one): SheetSeen => {
        const rows = [...one.cells.keys()];
        const columns = [...one.cells.values()].flatMap((row) => [...row.keys()]);
        const row = rows.reduce((least, at) => Math.min(least, at), Infinity);
        const column = columns.reduce((least, at) => Math.min(least, at), Infinity);
        const last = rows.reduce((most, at) => Math.max(most, at), 0);
        const right = columns.reduce((most, at) => Math.max(most, at), 0);
        return {
          name: one.name,
          hidden: false,
          protected: one.protected,
          used:
            rows.length === 0 ? undefined : areaAt(one.name, row, column, last - row + 1, right - column + 1),
        };
      }),
      tables: [...this.state.tables],
      names: [...this.state.names],
    };
  }

  private block(area: Area, detail: Detail): Block {
    const sheet = this.sheet(area.sheet);
    const each = <T>(valueAt: (row: number, column: number) => T): T[][] =>
      Array.from({ length: area.rows }, (_, i) =>
        Array.from({ length: area.columns }, (__, j) => valueAt(area.row + i, area.column + j)),
      );
    const cell = (row: number, column: number): Cell | undefined => sheet.cells.get(row)?.get(column);
    const dressed = this.state.dress.some((one) => common(one.area, area));
    const formats =
      detail === 'whole'
        ? this.state.dress.filter((one) => one.format !== undefined && common(one.area, area))
        : [];
    return {
      area,
      values: each((row, column) => cell(row, column)?.value ?? null),
      formulas: each((row, column) => cell(row, column)?.formula ?? null),
      formats:
        detail !== 'whole'
          ? []
          : each(
              (row, column) =>
                formats.findLast((one) => common(one.area, areaAt(area.sheet, row, column)))?.format ??
                'General',
            ),
      merged: detail === 'cells' ? [] : sheet.merged.filter((one) => common(one, area)),
      hiddenRows: [...sheet.hiddenRows]
        .filter((row) => row >= area.row && row < area.row + area.rows)
        .sort((a, b) => a - b),
      table: this.state.tables.find((one) => common(one.area, area)),
      protected: sheet.protected,
      bare: !dressed && each((row, column) => cell(row, column)).every((row) => row.every((one) => !one)),
    };
  }

  private change(changes: Changes): void {
    if (changes.remember !== undefined) this.keep(changes.remember.key, changes.remember.value);
    this.makeSheets(changes.newSheets ?? []);
    this.move(changes);
    this.fill(changes);
    this.nameNew(changes);
    this.furnish(changes);
    this.takeAway(changes.remove ?? {});
    if (changes.forget !== undefined) this.keep(changes.forget, undefined);
    // The headings of a table are its header cells.
    this.state.tables = this.state.tables.map((one) => ({ ...one, columns: this.headings(one.area) }));
  }

  private makeSheets(list: NonNullable<Changes['newSheets']>): void {
    for (const { name } of list) {
      if (this.state.sheets.some((one) => sameSheet(one.name, name))) throw trouble('nameClash', name);
      this.state.sheets.push({
        name,
        protected: false,
        cells: new Map(),
        merged: [],
        hiddenRows: new Set(),
      });
    }
  }

  /** Tables and names that stand already get their new areas. */
  private move({ resize = [], movedNames = [] }: Changes): void {
    for (const { table, area } of resize) {
      const at = this.state.tables.findIndex((one) => one.name === table);
      const old = this.state.tables[at];
      if (old === undefined) throw trouble('missing', `The table “${table}”`);
      this.state.tables[at] = { ...old, area };
    }
    for (const { name, area } of movedNames) {
      const at = this.state.names.findIndex((one) => one.name === name);
      if (at < 0) throw trouble('missing', `The range “${name}”`);
      this.state.names[at] = { name, area };
    }
  }

  private fill({ clear = [], puts = [] }: Changes): void {
    for (const { area, looksToo } of clear) {
      this.put(
        area,
        Array.from({ length: area.rows }, () => Array<null>(area.columns).fill(null)),
        undefined,
      );
      if (looksToo) this.state.dress = this.state.dress.filter((one) => !within(one.area, area));
    }
    for (const put of puts) this.put(put.area, put.cells, put.formula);
  }

  private nameNew({ newTables = [], newNames = [] }: Changes): void {
    for (const { name, area } of newTables) this.addTable(name, area, false);
    for (const { name, area } of newNames) {
      if (this.taken(name)) throw trouble('nameClash', name);
      this.state.names.push({ name, area });
    }
  }

  /** Everything about cells that is not in them. */
  private furnish(changes: Changes): void {
    this.state.dress.push(...(changes.dress ?? []));
    this.state.validations.push(...(changes.validations ?? []));
    this.state.layouts.push(...(changes.layouts ?? []));
    this.state.notes.push(...(changes.notes ?? []));
    this.state.charts.push(...(changes.newCharts ?? []));
  }

  private takeAway({ sheets = [], names = [] }: NonNullable<Changes['remove']>): void {
    for (const name of sheets) {
      this.state.sheets = this.state.sheets.filter((one) => !sameSheet(one.name, name));
      this.state.tables = this.state.tables.filter((one) => !sameSheet(one.area.sheet, name));
    }
    for (const name of names) this.state.names = this.state.names.filter((one) => one.name !== name);
  }

  private taken(name: string): boolean {
    return [...this.state.tables, ...this.state.names].some(
      (one) => one.name.toLowerCase() === name.toLowerCase(),
    );
  }

  private headings(area: Area): string[] {
    const cells = this.sheet(area.sheet).cells.get(area.row);
    return Array.from({ length: area.columns }, (_, at) =>
      String(cells?.get(area.column + at)?.value ?? `Column${at + 1}`),
    );
  }

  private addTable(name: string, area: Area, totalsRow: boolean): void {
    if (this.taken(name)) throw trouble('nameClash', name);
    this.state.tables.push({ name, area, headerRow: true, totalsRow, columns: this.headings(area) });
  }

  private put(
    area: Area,
    cells: readonly (readonly CellPut[])[] | undefined,
    formula: string | undefined,
  ): void {
    const sheet = this.sheet(area.sheet);
    if (sheet.protected) throw trouble('protected', sheet.name);
    for (let i = 0; i < area.rows; i++) {
      const row = sheet.cells.get(area.row + i) ?? new Map<number, Cell>();
      sheet.cells.set(area.row + i, row);
      for (let j = 0; j < area.columns; j++) {
        const put = formula === undefined ? cells?.[i]?.[j] : { formula: shifted(formula, i, j) };
        if (put === undefined) continue;
        if (put === null || put === '') row.delete(area.column + j);
        else if (typeof put === 'object') row.set(area.column + j, { value: null, formula: put.formula });
        else row.set(area.column + j, { value: put });
      }
      if (row.size === 0) sheet.cells.delete(area.row + i);
    }
  }
}
