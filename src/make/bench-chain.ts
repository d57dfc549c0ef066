/**
 * The chain from the opening to the price for many windows: through the core, through the engine as
 * cells, and as native formulas in the same engine and in LibreOffice. All must agree to the cent.
 */
import type { CellIn } from '../core/cell/fields';
import type { Window } from '../core/window/columns';
import { windowOf } from '../core/window/reader/as-window';
import { cellOf } from '../core/window/reader/cells';
import { understandGiven } from '../core/window/reader/given';
import { RowReader } from '../core/window/reader/rows';
import { WindowWork } from '../core/window/job';
import { toUnit } from '../core/exact/length';
import { money, type Money } from '../core/exact/money';
import { sellPrice } from '../core/price/price';
import { quote, type PriceList } from '../core/quote/quote';
import { readHouse } from '../core/house/house';
import { INCHES } from '../core/exact/unit';
import { Engine } from '../engine/engine';
import { nodeLibrary } from '../engine/node';
import type { CellAt, CellValue } from '../engine/workbook';
import { inputCells, plainWindows, sixCalls, sixFormulas, type PlainWindow } from './native';
import { computedByLibreOffice, sheetFile, type SheetCell } from './office-suite';

export interface Timed {
  readonly what: string;
  readonly microseconds: number;
  /** Cells or figures a window. */
  readonly counts: string;
}

/** The compiler has done with a window's chain only after some 20 turns of 10,000. */
const WARM = 30;
const LABOR = 32.5;
/** LibreOffice is started for each turn; with fewer windows its start would drown them. */
const STEADY = 60_000;
const RULES = [
  ['labor pinch', LABOR],
  ['sell rate', 0.45],
];

/** How the columns of a plain window are headed. */
const HEADINGS = [
  'inside width',
  'measured height',
  'draw',
  'fabric width',
  'fullness',
  'vertical repeat',
  'quantity',
  'heading',
];

/** Windows out of raw cells, as every host reads them. */
function windowsOf(rows: readonly (readonly CellIn[])[]): readonly Window[] {
  const found = understandGiven([HEADINGS], rows.slice(0, 1), INCHES);
  if ('none' in found) throw new Error(found.none);
  const reader = new RowReader(found.plan);
  return rows.flatMap((row, at) =>
    reader.push(at, row.map(cellOf)).map(({ values }) => windowOf(values, INCHES)),
  );
}

/** Microseconds of processor time since: a busy machine makes them no longer. */
function processorTime(since?: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return user + system;
}

/** The least of several turns, in microseconds a window: the first ones warm the compiler up. */
function best(turns: number, windows: number, work: () => void): number {
  let least = Infinity;
  for (let turn = 0; turn < turns; turn++) {
    const started = process.cpuUsage();
    work();
    least = Math.min(least, processorTime(started));
  }
  return least / windows;
}

export interface CorePrice {
  readonly rod: number;
  readonly drop: number;
  readonly widths: number;
  readonly cut: number;
  readonly yardage: number;
  readonly price: number;
}

/** The same six figures from the core. */
function sixOf(work: WindowWork, yardPrice: Money, markup: Money): CorePrice {
  const yardage = toUnit(work.cloth().yardage, 'yd');
  const cost = yardPrice.times(money(yardage)).plus(work.labor().value.times(work.quantity));
  return {
    rod: toUnit(work.rodWidth().value, 'in'),
    drop: toUnit(work.finishedDrop().value, 'in'),
    widths: work.widths(),
    cut: toUnit(work.cutLength().value, 'in'),
    yardage,
    price: sellPrice({ cost, rate: markup, basis: 'markup on cost' }).value.toNumber(),
  };
}

export interface Chain {
  readonly windows: number;
  readonly times: readonly Timed[];
  /** Windows whose figures differ anywhere; LibreOffice's are in it where it is installed. */
  readonly differing: number;
  readonly withLibreOffice: boolean;
}

export async function benchChain(count: number, doing: (what: string) => void): Promise<Chain> {
  const windows = plainWindows(count);
  const house = readHouse(RULES);
  const rows = windows.map((one) => [...inputCells(one).slice(0, HEADINGS.length - 1), 'pinch']);
  const times: Timed[] = [];
  const took = (what: string, microseconds: number, counts: string): void => {
    times.push({ what, microseconds, counts });
  };

  const read = windowsOf(rows);
  const prices = windows.map((one) => [money(one.yardPrice), money(one.markup)] as const);
  const price = (at: number, work: WindowWork): CorePrice => {
    const [yardPrice, markup] = prices[at] as (typeof prices)[number];
    return sixOf(work, yardPrice, markup);
  };
  let ours: CorePrice[] = [];
  const core = best(WARM, count, () => {
    ours = read.map((window, at) => price(at, new WindowWork(window, house.rules)));
  });
  took('core', core, 'six figures');
  took(
    'core, advice with it',
    best(WARM, count, () => {
      for (const [at, window] of read.entries()) {
        const work = new WindowWork(window, house.rules);
        work.yardage();
        price(at, work);
      }
    }),
    'and what would save cloth, in a sentence each',
  );
  took(
    'core, from raw cells',
    best(WARM, count, () => {
      for (const [at, window] of windowsOf(rows).entries()) price(at, new WindowWork(window, house.rules));
    }),
    'eight cells read, six figures',
  );
  const priceList: PriceList = new Map([['face fabric', { breaks: [{ from: 0, price: money(48.5) }] }]]);
  took(
    'core, a whole job',
    best(5, count, () => {
      const works = read.map((window) => new WindowWork(window, house.rules));
      for (const work of works) {
        work.finishedWidth();
        work.stack();
        work.marks();
      }
      quote(works, priceList, house.rules);
    }),
    'marks, stack, rings and brackets too, one quote',
  );

  doing('the engine, HEM cells');
  const byCalls = await inEngine(windows, (row) => sixCalls(row, '$R$1:$S$1'), [['labor pinch', LABOR]]);
  took('engine, HEM cells', byCalls.microseconds, 'six cells');
  doing('the engine, native cells');
  const byFormulas = await inEngine(windows, sixFormulas, []);
  took('engine, native cells', byFormulas.microseconds, 'six cells');
  doing('LibreOffice, native cells');
  const suite = inLibreOffice(plainWindows(STEADY));
  if (suite !== undefined) took('LibreOffice, native cells', suite.microseconds, 'six cells');

  const others = [byCalls.rows, byFormulas.rows, ...(suite === undefined ? [] : [suite.rows])];
  const differing = ours.filter((one, at) =>
    others.some((list) => !Object.values(one).every((figure, i) => near(figure, list[at]?.[i]))),
  ).length;
  return { windows: count, times, differing, withLibreOffice: suite !== undefined };
}

const near = (one: number, other: CellValue | undefined): boolean => Math.abs(one - Number(other)) < 1e-6;

interface Computed {
  readonly microseconds: number;
  readonly rows: readonly (readonly CellValue[])[];
}

/** Only the calculation is timed, not the opening of the workbook. */
async function inEngine(
  windows: readonly PlainWindow[],
  formulas: (row: number) => readonly string[],
  rules: readonly (readonly CellValue[])[],
): Promise<Computed> {
  const cells: CellAt[] = windows.flatMap((window, row) => [
    ...inputCells(window).map((value, column) => ({ row, column, value })),
    ...formulas(row + 1).map((formula, at) => ({ row, column: 10 + at, value: null, formula })),
  ]);
  for (const [row, line] of rules.entries()) {
    for (const [at, value] of line.entries()) cells.push({ row, column: 17 + at, value });
  }
  const engine = new Engine(nodeLibrary(), { sheets: [{ name: 'Windows', cells }], names: [] });
  const started = process.cpuUsage();
  const computed = await engine.calculate();
  const microseconds = processorTime(started) / windows.length;
  engine.dispose();
  const rows: CellValue[][] = windows.map(() => []);
  for (const { row, column, value } of computed) (rows[row] ??= [])[column - 10] = value;
  return { microseconds, rows };
}

/**
 * LibreOffice opens, computes and writes in one go. The same sheet with the figures in place of the
 * formulas is taken off; what is left is reading the formulas and computing them.
 */
function inLibreOffice(windows: readonly PlainWindow[]): Computed | undefined {
  const formulas = windows.map((one, at): SheetCell[] => [...inputCells(one), ...sixFormulas(at + 1)]);
  const first = computedByLibreOffice(sheetFile(formulas));
  if (first === undefined) return undefined;
  const figures = windows.map((one, at): SheetCell[] => [
    ...inputCells(one),
    ...(first.rows[at] ?? []).slice(10).map(Number),
  ]);
  const seconds = (rows: readonly (readonly SheetCell[])[]): number =>
    Math.min(...[1, 2].map(() => computedByLibreOffice(sheetFile(rows))?.seconds ?? Infinity));
  const spent = Math.min(first.seconds, seconds(formulas)) - seconds(figures);
  return {
    microseconds: (Math.max(spent, 0) * 1e6) / windows.length,
    rows: first.rows.map((row) => row.slice(10).map(Number)),
  };
}
