/**
 * Computes of a workbook file what must be computed: cells with HEM functions, cells without a value, and
 * what depends on one whose value changed. Every other formula keeps the value that the file holds.
 */
import { areaText, cellText, common, readAddress, sheetText } from '../../book/address';
import { areaOf, type Run } from '../../engine/native/compile';
import type { Call } from '../../engine/functions';
import { Area, Fault, Grid, Unproven, Wanting, type Scalar } from '../../engine/native/values';
import { Dropped, PENDING, World } from '../../engine/native/world';
import type { CellValue, Progress } from '../../engine/workbook';
import { spread } from '../../engine/native/call';
import { Stopped } from '../../engine/native/ranges';
import { collect, typedText, type Collected, type FormulaCell } from './collect';
import { directoryOf } from './directory';
import { Order, type Leaf } from './order';
import { Shapes } from './shapes';
import { BookSheets, hasValue, scalarOf } from './sheets';
import type { WorkbookFile } from '../xlsx/workbook';

/** What became of a formula that was computed, or should have been. */
export interface Answer {
  /** Its value, or the rows it fills; undefined where it could not be computed: it holds no value then. */
  readonly value: Scalar | Grid | undefined;
  readonly calls: readonly Call[];
  /** Why it could not be computed, or what stands in the way of a spill. */
  readonly why?: string;
  /** A circle: the old value stays. */
  readonly circle?: true;
}

export interface Recalculation {
  readonly file: WorkbookFile;
  readonly formulas: readonly FormulaCell[];
  /** By the formula's number; undefined where the value of the file was kept. */
  readonly answers: readonly (Answer | undefined)[];
  /** Kept values that only the program that shows the workbook can renew. */
  readonly volatile: number;
  readonly sheets: BookSheets;
  readonly world: World;
  /** How many formulas that stand alike were read. */
  readonly shapes: Shapes;
}

export interface Wish {
  /** Every formula is computed, whatever the file holds for it. */
  readonly everything?: boolean;
  readonly progress?: Progress | undefined;
  /** Asked now and then; may throw to end the work. */
  readonly watch?: (() => void) | undefined;
}

export const cellName = (file: WorkbookFile, at: { sheet: number; row: number; column: number }): string =>
  `${sheetText(file.sheets[at.sheet]?.name ?? '')}!${cellText(at.row, at.column)}`;

const GOES = 8;

export function recalculate(file: WorkbookFile, wish: Wish = {}): Recalculation {
  const shapes = new Shapes(file, directoryOf(file));
  const all = collect(file, shapes);
  let reaches = new Map<number, Area>();
  let dynamic = false;
  for (let go = 1; ; go++) {
    const work: Work = new Work(file, all, shapes, { ...wish, reaches, dynamic });
    const { changed, grown } = work.run();
    // What finds its cells while it is computed is computed only where anything changed at all.
    const again: boolean = changed && !dynamic && work.findsCells;
    if ((again || grown) && go < GOES) {
      dynamic ||= again;
      reaches = work.reaches;
      continue;
    }
    return work.result();
  }
}

interface Known extends Wish {
  /** How far spills went in an earlier go, by formula. */
  readonly reaches: ReadonlyMap<number, Area>;
  /** Whether formulas that find their cells while they are computed are computed. */
  readonly dynamic: boolean;
}

class Work {
  readonly reaches = new Map<number, Area>();
  readonly #answers: (Answer | undefined)[];
  readonly #done: Uint8Array;
  readonly #old: Scalar[];
  readonly #innerOld = new Map<number, { row: number; column: number; value: Scalar }[]>();
  readonly #sheets: BookSheets;
  readonly #world: World;
  readonly #order: Order;
  readonly #calls: Call[] = [];
  #changed = false;
  #volatile = 0;

  constructor(
    readonly file: WorkbookFile,
    readonly all: Collected,
    readonly shapes: Shapes,
    readonly known: Known,
  ) {
    const { formulas, inner } = all;
    this.#answers = new Array<Answer | undefined>(formulas.length).fill(undefined);
    this.#done = new Uint8Array(formulas.length);
    this.#sheets = new BookSheets(file);
    this.#world = new World(this.#sheets);
    this.#world.heard = (cellFunction, outcome) => {
      this.#calls.push({ cellFunction, outcome });
    };
    this.#old = formulas.map(({ cell }) => scalarOf(cell));
    const fresh: Leaf[] = [];
    for (const { owner, cell } of inner) {
      const sheet = formulas[owner]?.sheet ?? 0;
      const list = this.#innerOld.get(owner) ?? [];
      this.#innerOld.set(owner, list);
      list.push({ row: cell.row, column: cell.column, value: scalarOf(cell) });
      fresh.push({ sheet, row: cell.row, column: cell.column, owner });
    }
    for (const one of this.#reached(fresh)) fresh.push(one);
    const leaves = function* (): Generator<Leaf> {
      for (const [owner, { sheet, row, column }] of formulas.entries()) yield { sheet, row, column, owner };
      yield* fresh;
    };
    for (const { sheet, row, column } of leaves()) this.#sheets.put(sheet, row, column, PENDING);
    for (const { sheet, row, column, kind, reach } of formulas)
      if (kind === 'dynamic' && reach.rows * reach.columns > 1)
        this.#sheets.spills.set(
          `${sheet}!${row}!${column}`,
          new Area(sheet, row, column, reach.rows, reach.columns),
        );
    this.#order = new Order(formulas.length, leaves(), (at, visit) => {
      this.#reads(at, visit);
    });
    this.#sheets.formulaAt = (sheet, row, column) => {
      const owner = this.#order.ownerAt(sheet, row, column);
      const formula = owner === undefined ? undefined : formulas[owner];
      return formula?.row === row && formula.column === column ? typedText(formula) : undefined;
    };
  }

  /** Cells that spills of an earlier go filled, and that no formula was known to fill. */
  #reached(inner: readonly Leaf[]): Leaf[] {
    const { reaches } = this.known;
    if (reaches.size === 0) return [];
    const name = (sheet: number, row: number, column: number): string => `${sheet}!${row}!${column}`;
    const taken = new Set(
      [...this.all.formulas, ...inner].map(({ sheet, row, column }) => name(sheet, row, column)),
    );
    const found: Leaf[] = [];
    for (const [owner, area] of reaches)
      for (let row = area.row; row < area.row + area.rows; row++)
        for (let column = area.column; column < area.column + area.columns; column++)
          if (!taken.has(name(area.sheet, row, column)))
            found.push({ sheet: area.sheet, row, column, owner });
    return found;
  }

  get findsCells(): boolean {
    return this.all.formulas.some(({ shape }) => shape.everything);
  }

  #reads(at: number, visit: (area: Area) => void): void {
    const formula = this.all.formulas[at];
    for (const read of formula?.shape.reads ?? []) {
      const area = areaOf(read, formula?.sheet ?? 0, formula?.row ?? 0, formula?.column ?? 0);
      visit(area);
      if (read.lastSheet === undefined || read.sheet === undefined) continue;
      const [from, to] = [Math.min(read.sheet, read.lastSheet), Math.max(read.sheet, read.lastSheet)];
      for (let sheet = from; sheet <= to; sheet++)
        visit(new Area(sheet, area.row, area.column, area.rows, area.columns));
    }
  }

  run(): { readonly changed: boolean; readonly grown: boolean } {
    const { order, circles } = this.#order.sorted();
    const { progress, watch } = this.known;
    // Members of a circle keep their values, so that what follows them reads those.
    for (const at of circles.keys())
      if (hasValue((this.all.formulas[at] as FormulaCell).cell)) this.#restore(at);
    let count = 0;
    for (const at of order) {
      count += 1;
      if (count % 256 === 0) {
        progress?.(count, order.length);
        watch?.();
      }
      if (this.#done[at] === 1) {
        if (circles.has(at)) this.#inCircle(at);
        continue;
      }
      this.#settle(at);
    }
    this.#nameCircles(circles);
    return { changed: this.#changed, grown: this.#grown() };
  }

  /** What a circle must keep though what it reads has changed is named. */
  #inCircle(at: number): void {
    if (this.#answers[at] !== undefined || !(this.#isSeed(at) || this.#order.concerned(at))) return;
    this.#answers[at] = {
      value: undefined,
      calls: SILENT,
      circle: true,
      why: 'it refers to itself in a circle',
    };
  }

  /** Where one member of a circle is named, all of it is. */
  #nameCircles(circles: ReadonlyMap<number, number>): void {
    const named = new Set<number>();
    for (const [at, group] of circles) if (this.#answers[at]?.circle === true) named.add(group);
    for (const [at, group] of circles)
      if (named.has(group))
        this.#answers[at] ??= {
          value: undefined,
          calls: SILENT,
          circle: true,
          why: 'it refers to itself in a circle',
        };
  }

  /** Formulas that must be computed whatever they read. */
  #isSeed(at: number): boolean {
    const { shape, cell } = this.all.formulas[at] as FormulaCell;
    if (this.known.everything === true || shape.ours || this.file.stale) return true;
    if (!hasValue(cell)) return true;
    if (cell.formula?.always === true && !shape.volatile) return true;
    return this.known.dynamic && shape.everything;
  }

  /** Computes a formula, or what it turns out to need first; without a call for each, for chains are long. */
  #settle(first: number): void {
    const path = [first];
    const within = new Set(path);
    for (let at = path.at(-1); at !== undefined; at = path.at(-1)) {
      const wanted = this.#try(at);
      if (wanted === undefined) {
        path.pop();
        within.delete(at);
      } else if (within.has(wanted)) {
        this.#turnsInCircle(at);
        path.pop();
        within.delete(at);
      } else {
        path.push(wanted);
        within.add(wanted);
      }
    }
  }

  /** Found only while it was computed. */
  #turnsInCircle(at: number): void {
    const why = 'it refers to itself in a circle';
    if (!hasValue((this.all.formulas[at] as FormulaCell).cell)) {
      this.#drop(at, why);
      return;
    }
    this.#restore(at);
    this.#answers[at] = { value: undefined, calls: SILENT, circle: true, why };
  }

  /** Gives the formula that is needed first, or nothing where this one is settled. */
  #try(at: number): number | undefined {
    if (this.#done[at] === 1) return undefined;
    if (!this.#isSeed(at) && !this.#order.concerned(at)) {
      this.#restore(at);
      return undefined;
    }
    const formula = this.all.formulas[at] as FormulaCell;
    const { compiled } = formula.shape;
    this.#calls.length = 0;
    this.#world.at(formula.sheet, formula.row, formula.column);
    try {
      if (compiled === undefined) throw new Unproven(formula.shape.why);
      this.#take(at, fitted(answered(compiled.run, this.#world), formula));
    } catch (thrown) {
      if (thrown instanceof Wanting) {
        const wanted = this.#order.ownerAt(thrown.sheet, thrown.row, thrown.column);
        if (wanted !== undefined) return wanted;
      }
      if (!(thrown instanceof Unproven)) throw thrown;
      if (this.#keepable(at)) this.#restore(at);
      else this.#drop(at, thrown.message);
    }
    return undefined;
  }

  /** Computed only because everything was asked for: where that fails, the file's value is as good as before. */
  #keepable(at: number): boolean {
    const { cell, shape } = this.all.formulas[at] as FormulaCell;
    return (
      this.known.everything === true &&
      !shape.ours &&
      !this.file.stale &&
      hasValue(cell) &&
      !(cell.formula?.always === true && !shape.volatile) &&
      !this.#order.concerned(at)
    );
  }

  /** The file's own value stands. */
  #restore(at: number): void {
    const { sheet, row, column, shape } = this.all.formulas[at] as FormulaCell;
    if (shape.volatile) this.#volatile += 1;
    this.#done[at] = 1;
    this.#sheets.put(sheet, row, column, this.#old[at] ?? null);
    for (const inner of this.#innerOld.get(at) ?? [])
      this.#sheets.put(sheet, inner.row, inner.column, inner.value);
  }

  #drop(at: number, why: string): void {
    const formula = this.all.formulas[at] as FormulaCell;
    const { sheet, row, column } = formula;
    this.#done[at] = 1;
    this.#answers[at] = { value: undefined, calls: SILENT, why };
    this.#changed = true;
    const dropped = new Dropped(`needs ${cellName(this.file, formula)}, which could not be computed`);
    this.#sheets.put(sheet, row, column, dropped);
    this.#order.change(sheet, row, column);
    for (const inner of this.#innerOld.get(at) ?? []) {
      this.#sheets.put(sheet, inner.row, inner.column, dropped);
      this.#order.change(sheet, inner.row, inner.column);
    }
  }

  /** A formula's answer into its cells. */
  #take(at: number, given: Scalar | Grid): void {
    const formula = this.all.formulas[at] as FormulaCell;
    const { sheet, row, column } = formula;
    const calls = withWords(this.#calls);
    let value = given;
    let why: string | undefined;
    if (formula.kind === 'dynamic' && value instanceof Grid) {
      const area = new Area(sheet, row, column, value.rows, value.columns);
      const blocker = this.#blocker(at, area);
      if (blocker !== undefined) {
        why = `${cellName(this.file, formula)} shows #SPILL!: it wants ${value.rows} × ${value.columns} cells and ${blocker} is in the way. Clear that, or move the formula.`;
        value = new Fault('#SPILL!');
      }
    }
    this.#done[at] = 1;
    this.#answers[at] = why === undefined ? { value, calls } : { value, calls, why };
    const filled = value instanceof Grid ? value : new Grid(1, 1, [value]);
    const key = `${sheet}!${row}!${column}`;
    this.#sheets.spills.delete(key);
    if (value instanceof Grid && formula.kind === 'dynamic') {
      const area = new Area(sheet, row, column, value.rows, value.columns);
      this.#sheets.spills.set(key, area);
      this.reaches.set(at, area);
    }
    const old = this.#innerOld.get(at) ?? [];
    const before = new Map(old.map((one) => [`${one.row}!${one.column}`, one.value]));
    for (const one of old)
      if (one.row >= row + filled.rows || one.column >= column + filled.columns)
        this.#put(formula, one, null, one.value);
    for (let r = 0; r < filled.rows; r++)
      for (let c = 0; c < filled.columns; c++) {
        const was = r + c === 0 ? (this.#old[at] ?? null) : (before.get(`${row + r}!${column + c}`) ?? null);
        const known = r + c > 0 || hasValue(formula.cell);
        this.#put(formula, { row: row + r, column: column + c }, filled.at(r, c), known ? was : undefined);
      }
  }

  #put(
    formula: FormulaCell,
    { row, column }: { row: number; column: number },
    value: Scalar,
    old: Scalar | undefined,
  ): void {
    const same = old !== undefined && sameScalar(value, old) && !this.file.stale;
    this.#sheets.put(formula.sheet, row, column, same ? old : value);
    if (same) return;
    this.#changed = true;
    this.#order.change(formula.sheet, row, column);
  }

  /** Whether a spill went where no earlier go knew of it, and a formula reads there. */
  #grown(): boolean {
    const fresh: Area[] = [];
    for (const [at, area] of this.reaches) {
      const { reach } = this.all.formulas[at] as FormulaCell;
      const known = this.known.reaches.get(at);
      const rows = Math.max(reach.rows, known?.rows ?? 0);
      const columns = Math.max(reach.columns, known?.columns ?? 0);
      if (area.rows > rows || area.columns > columns) fresh.push(area);
    }
    if (fresh.length === 0) return false;
    return (
      this.all.formulas.some((_, at) => {
        let hit = false;
        this.#reads(at, (read) => {
          hit ||= fresh.some((area) => overlap(area, read));
        });
        return hit;
      }) || this.findsCells
    );
  }

  #blocker(at: number, area: Area): string | undefined {
    const { sheet, row, column } = this.all.formulas[at] as FormulaCell;
    if (area.row + area.rows > 1_048_576 || area.column + area.columns > 16_384)
      return 'the edge of the sheet';
    for (let r = row; r < row + area.rows; r++)
      for (let c = column; c < column + area.columns; c++) {
        if (r === row && c === column) continue;
        const there = this.#sheets.at(sheet, r, c);
        if (there === undefined || there === null) continue;
        const owner = this.#order.ownerAt(sheet, r, c);
        if (owner === at) continue;
        return owner !== undefined && this.all.formulas[owner]?.row !== r
          ? 'another spill'
          : cellName(this.file, { sheet, row: r, column: c });
      }
    const place = { sheet: '', row, column, rows: area.rows, columns: area.columns };
    for (const ref of this.file.sheets[sheet]?.seen.merged ?? []) {
      const merged = readAddress(ref);
      if (merged !== undefined && common(merged, place) !== undefined)
        return `the merged cell ${areaText({ ...merged, sheet: this.file.sheets[sheet]?.name ?? '' })}`;
    }
    for (const table of this.file.tables) {
      const there = table.sheet === sheet ? readAddress(table.ref) : undefined;
      if (there !== undefined && common(there, place) !== undefined) return `the table ${table.name}`;
    }
    return undefined;
  }

  result(): Recalculation {
    const { file, shapes } = this;
    return {
      file,
      formulas: this.all.formulas,
      answers: this.#answers,
      volatile: this.#volatile,
      sheets: this.#sheets,
      world: this.#world,
      shapes,
    };
  }
}

const SILENT: readonly Call[] = [];

/** Hundreds of thousands of calls are not kept with their steps: only what has something to say. */
function withWords(calls: readonly Call[]): readonly Call[] {
  const said = calls.flatMap(({ cellFunction, outcome }): Call[] => {
    if ('error' in outcome) return [{ cellFunction, outcome }];
    const { cells, findings, unit } = outcome;
    return findings.length === 0 ? [] : [{ cellFunction, outcome: { cells, findings, unit, steps: [] } }];
  });
  return said.length === 0 ? SILENT : said;
}

const overlap = (one: Area, other: Area): boolean =>
  one.sheet === other.sheet &&
  one.row < other.row + other.rows &&
  other.row < one.row + one.rows &&
  one.column < other.column + other.columns &&
  other.column < one.column + one.columns;

/** What a formula's answer puts into its cells: an array of old fills its reach, no more and no less. */
function fitted(plain: Scalar | Grid, { kind, reach: { rows, columns } }: FormulaCell): Scalar | Grid {
  if (kind !== 'array') return kind === 'plain' && plain instanceof Grid ? plain.at(0, 0) : plain;
  const cells: Scalar[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) cells.push(spread(plain, row, column));
  return rows * columns === 1 ? (cells[0] ?? 0) : new Grid(rows, columns, cells);
}

/** What a formula gives, as cells hold it. */
export function answered(run: Run, world: World): Scalar | Grid {
  try {
    const plain = whole(world.value(run(world)));
    return plain instanceof Grid && plain.cells.length === 1 ? plain.at(0, 0) : plain;
  } catch (thrown) {
    if (thrown instanceof Stopped) return thrown.fault;
    // A LAMBDA that calls itself without end.
    if (thrown instanceof RangeError) throw new Unproven('it goes too deep into itself');
    throw thrown;
  }
}

/** A blank that a formula gives is 0; a number that no cell can hold is #NUM!. */
const cellOf = (one: Scalar): Scalar =>
  one === null
    ? 0
    : typeof one === 'number' && !Number.isFinite(one)
      ? new Fault('#NUM!')
      : Object.is(one, -0)
        ? 0
        : one;
function whole(value: Scalar | Grid): Scalar | Grid {
  return value instanceof Grid ? new Grid(value.rows, value.columns, value.cells.map(cellOf)) : cellOf(value);
}

/** A program that computed before us may differ in a number's last digit: then its own stands. */
export function sameScalar(one: Scalar, other: Scalar): boolean {
  if (typeof one === 'number' && typeof other === 'number')
    return one === other || Math.abs(one - other) <= 1e-14 * Math.max(Math.abs(one), Math.abs(other));
  if (one instanceof Fault || other instanceof Fault)
    return one instanceof Fault && other instanceof Fault && one.code === other.code;
  return one === other;
}

/** As a cell of the file holds it: an error by its text. */
export const asCell = (value: Scalar): CellValue => (value instanceof Fault ? value.code : value);
