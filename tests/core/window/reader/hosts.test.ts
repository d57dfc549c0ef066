/** The same table through every host: the figures agree to the last digit, or a sentence asks. */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../../../functions/index';
import { areaAt } from '../../../../src/book/address';
import { readColumns } from '../../../../src/book/columns';
import { readFloor } from '../../../../src/book/floor/floor';
import { MemoryBook } from '../../../../src/book/memory';
import { WANTED } from '../../../../src/book/wanted';
import { Refusal } from '../../../../src/core/cell/answer';
import type { CellIn } from '../../../../src/core/cell/fields';
import { cellFigure } from '../../../../src/core/cell/steps';
import { readHouse } from '../../../../src/core/house/house';
import { workedOut } from '../../../../src/core/window/figure';
import { FIGURES } from '../../../../src/core/window/figures';
import { WindowWork } from '../../../../src/core/window/job';
import { headingsByKey, windowOfRow } from '../../../../src/core/window/reader/as-window';
import { cellOf } from '../../../../src/core/window/reader/cells';
import { readTable } from '../../../../src/core/window/reader/read';
import { sheetOf, tablesIn, type KnownTable } from '../../../../src/make/reading/score';

const TABLES = tablesIn(fileURLToPath(new URL('../tables', import.meta.url)));
const USUAL = FIGURES.filter((figure) => figure.usual === true);
type Line = readonly unknown[];

const houseFor = ({ unit }: KnownTable) => readHouse(unit === 'cm' ? [['unit', 'centimetres']] : null);

function figuresOf(work: () => WindowWork, unit: ReturnType<typeof readHouse>['unit']): Line {
  try {
    const worked = work();
    return USUAL.map((one) => {
      const figure = workedOut(one, worked);
      return figure === undefined ? '' : cellFigure(figure, unit);
    });
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return ['no figure'];
  }
}

/** What the core makes of each window row, by the whole sheet. */
function byCore(table: KnownTable): { header: readonly number[]; lines: Map<number, Line> } | undefined {
  const house = houseFor(table);
  const read = readTable(sheetOf(table), { unit: house.unit });
  if (!('columns' in read)) return undefined;
  const lines = new Map<number, Line>();
  for (const one of read.rows) {
    if (one.is !== 'window') continue;
    const cells = (sheetOf(table).rows[one.row] ?? []).map(cellOf);
    const work = (): WindowWork =>
      new WindowWork(
        windowOfRow(one, cells, read.columns, house.unit),
        house.rules,
        headingsByKey(read.columns),
      );
    lines.set(one.row, figuresOf(work, house.unit));
  }
  return { header: read.header, lines };
}

const rulesOf = (table: KnownTable): CellIn => (table.unit === 'cm' ? [['unit', 'centimetres']] : null);
const plain = (table: KnownTable): CellIn[][] => {
  const rows = sheetOf(table).rows;
  const columns = Math.max(...rows.map((row) => row.length));
  return rows.map((row) =>
    Array.from({ length: columns }, (_, at) => {
      const cell = row[at] ?? null;
      return typeof cell === 'object' && cell !== null ? (cell as { day: number }).day : cell;
    }),
  );
};

/** SCHEDULE’s lines; a sentence where it asks. */
function bySchedule(table: KnownTable, headers: CellIn[][], rows: CellIn[][]): readonly Line[] | string {
  const outcome = functionNamed('SCHEDULE')!.call([headers, rows, null, rulesOf(table)]);
  return 'error' in outcome ? outcome.finding.sentence : (outcome.cells as readonly Line[]);
}
/** A row with a sentence has no figure. */
const lineOf = (line: Line | undefined): Line =>
  line === undefined || typeof line[0] !== 'string' || line[0] === '' ? (line ?? []) : ['no figure'];

/** A line above the headings, or a merge below them, says what a range of headings and rows does not show. */
const saidElsewhere = (table: KnownTable): boolean => {
  const read = readTable(sheetOf(table), { unit: houseFor(table).unit });
  if (!('columns' in read)) return false;
  const { plan, units, header } = read.understanding;
  return (
    plan.measuredTo !== undefined ||
    Object.keys(plan.stated).length > 0 ||
    units.note !== undefined ||
    (sheetOf(table).merged ?? []).some(({ row, rows }) => rows > 1 && row > (header.rows.at(-1) ?? 0))
  );
};

describe.each(TABLES)('$file', ({ table }) => {
  const core = byCore(table);
  const elsewhere = saidElsewhere(table);
  const rows = plain(table);
  const headers = (core?.header ?? []).map((row) => rows[row]!);
  const below = (core?.header.at(-1) ?? 0) + 1;

  it('the pane’s floor', async () => {
    if (core === undefined) return;
    const book = new MemoryBook({
      Sheet: {
        rows: rows as never,
        merged: (sheetOf(table).merged ?? []).map((one) => ({ ...one, sheet: 'Sheet' })),
      } as never,
    });
    const [block] = await book.read([areaAt('Sheet', 0, 0, rows.length, rows[0]!.length)]);
    const house = houseFor(table);
    const read = readColumns(block!, WANTED, house.unit);
    const floor = readFloor(read!, { rows: rulesOf(table) as never });
    for (const { row, work } of floor.windows)
      expect([row, figuresOf(() => work, house.unit)]).toEqual([row, core.lines.get(row)]);
    expect([...floor.windows, ...floor.unread].map(({ row }) => row).sort((a, b) => a - b)).toEqual([
      ...core.lines.keys(),
    ]);
  });

  it('SCHEDULE of all the rows', () => {
    if (core === undefined || elsewhere) return;
    const lines = bySchedule(table, headers, rows.slice(below));
    if (typeof lines === 'string') {
      expect(lines).toMatch(/could be|known here/);
      return;
    }
    for (const [row, line] of core.lines) {
      const found = lineOf(lines[row - below]);
      if (found[0] === 'no figure') continue;
      expect([row + 1, found]).toEqual([row + 1, line]);
    }
  });

  it('SCHEDULE of each row by itself', () => {
    if (core === undefined || elsewhere) return;
    for (const [row, line] of core.lines) {
      const lines = bySchedule(table, headers, [rows[row]!]);
      if (typeof lines === 'string') continue;
      const found = lineOf(lines[0]);
      if (found[0] === 'no figure' || found.every((cell) => cell === '')) continue;
      expect([row + 1, found]).toEqual([row + 1, line]);
    }
  });
});
