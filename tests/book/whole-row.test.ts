import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import type { Book, CellValue } from '../../src/book/book';
import type { Corrections } from '../../src/book/columns';
import { fill } from '../../src/book/fill';
import type { SheetGiven } from '../../src/book/memory';
import { plan, type Plan, type PlanGiven, type Wish } from '../../src/book/plan';
import { preview } from '../../src/book/preview';
import { survey } from '../../src/book/survey';
import { ROW_OUTPUTS, WANTED } from '../../src/book/wanted';
import { CENTIMETRES, INCHES, type Unit } from '../../src/core/exact/unit';
import { engineBook as bookOn, HOSTS } from './engine-book';

interface More {
  readonly unit?: Unit;
  readonly rules?: string;
  readonly said?: Corrections;
}
async function planned(
  book: Book,
  wishes: readonly Wish[],
  more: More = {},
): Promise<{ given: PlanGiven; plan: Plan }> {
  const unit = more.unit ?? INCHES;
  const { read } = await survey(book, WANTED, unit, areaAt('Floor', 0, 0, 1, 20), more.said ?? {});
  const given: PlanGiven = {
    read,
    wanted: WANTED,
    outputs: ROW_OUTPUTS,
    wishes,
    unit,
    rules: more.rules ?? '',
  };
  return { given, plan: await plan(book, given) };
}
const wish = (...keys: string[]): Wish[] => keys.map((key) => ({ key }));

describe.each(HOSTS)('where an empty cell is handed over as %s', (_host, empties) => {
  const engineBook = (sheets = {}): ReturnType<typeof bookOn> => bookOn(sheets, empties);

  async function filledWith(
    rows: NonNullable<SheetGiven['rows']>,
    wishes: readonly Wish[],
    more: More & { house?: SheetGiven } = {},
  ) {
    const book = engineBook({ Floor: { rows }, ...(more.house && { Rules: more.house }) });
    const { given, plan } = await planned(book, wishes, more);
    const shown = preview(plan, given, more.house?.rows ?? null);
    await fill(book, plan);
    const cells = await Promise.all(
      plan.columns.map(async ({ column }) => {
        const [block] = await book.read([areaAt('Floor', 1, column, rows.length - 1, 1)]);
        return block!.values.map((row) => row[0]!);
      }),
    );
    return { plan, shown, cells, book };
  }
  const rowsOf = (columns: readonly (readonly CellValue[])[]): CellValue[][] =>
    (columns[0] ?? []).map((_, at) => columns.map((one) => one[at] ?? null));

  const LISTS: readonly [string, NonNullable<SheetGiven['rows']>][] = [
    [
      'measured',
      [
        ['Room', 'W', 'Ext L', 'Ht', 'Style', 'Fab W', 'Rep', 'Lining', 'Lining W', 'cloth weight', 'Qty'],
        ['1', '84 1/2', null, 98, 'pinch', 54, 25.25, 'lined', 54, 12, 2],
        ['2', 72, 12, 98, 'grommet', 54, null, 'unlined', 54, 12, null],
        ['3', 40, null, 96, 'wave', 118, null, null, 54, 9, 3],
        ['4', null, null, null, null, null, null, null, null, null, 1],
      ],
    ],
    [
      'rod and drop known',
      [
        ['Rod width', 'Finished drop', 'Heading', 'Fabric width', 'Lining', 'Lining width', 'Qty'],
        [94, 96, 'box', 54, 'lined', 54, 2],
        [106.5, 101, 'rod pocket', 60, null, 54, null],
      ],
    ],
  ];
  /** Everything but what the table has, and what needs a column it has not. */
  const askable = (rows: NonNullable<SheetGiven['rows']>): string[] => {
    const has = rows[0]!;
    return ROW_OUTPUTS.map((one) => one.key).filter(
      (key) =>
        (key !== 'weight' || has.includes('cloth weight')) &&
        (!has.includes('Rod width') || (key !== 'rodWidth' && key !== 'finishedDrop')),
    );
  };
  const PRICED: SheetGiven = {
    rows: ['pinch', 'grommet', 'wave', 'box', 'rod pocket'].map((word) => [`labor ${word}`, 10]),
  };

  describe('every figure of the user’s own table', () => {
    it.each(LISTS)('stands on two levels of HEM functions at most, %s', async (_name, rows) => {
      const keys = askable(rows);
      const { plan, book } = await filledWith(rows, wish(...keys), {
        rules: 'Rules!$A$1:$B$5',
        house: PRICED,
      });
      expect(plan.columns.map((one) => one.key).sort()).toEqual([...keys].sort());
      // Counted anew, from the formulas as they stand in the cells.
      const [block] = await book.read([areaAt('Floor', 1, 0, 1, 40)]);
      const formulas = block!.formulas[0]!;
      const depth = (column: number): number => {
        const formula = formulas[column];
        if (formula === null || formula === undefined) return 0;
        const refers = [...formula.matchAll(/\b([A-Z]{1,2})2\b/g)].map(([, text = '']) =>
          [...text].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0),
        );
        const ours = (formula.match(/HEM\./g) ?? []).length;
        expect([formula, ours]).toEqual([formula, 1]);
        return ours + Math.max(0, ...refers.map((one) => depth(one - 1)));
      };
      for (const { column, level, heading } of plan.columns) {
        expect([heading, depth(column)]).toEqual([heading, level]);
        expect(level).toBeLessThanOrEqual(2);
      }
    });

    it.each(LISTS)('shows beforehand what its cell holds afterwards, %s', async (_name, rows) => {
      const { shown, cells } = await filledWith(rows, wish(...askable(rows)), {
        rules: 'Rules!$A$1:$B$5',
        house: PRICED,
      });
      expect(shown.map((row) => row.cells.map((cell) => cell.value))).toEqual(
        rowsOf(cells).slice(0, shown.length),
      );
      // A row of which nothing is known stays blank.
      for (const column of cells.slice(0)) expect(column[3] ?? '').toBe('');
    });

    it('is as worked by hand: marks, space, rings, brackets, rod pieces, labor', async () => {
      const rows = [
        ['Rod width', 'Finished drop', 'Heading', 'Fabric width', 'cloth weight', 'Qty'],
        [105, 96, 'pinch', 54, 12, 2],
        [96, 96, 'grommet', 54, 30, 1],
      ];
      const keys = ['widths', 'marks', 'markSpace', 'rings', 'brackets', 'rodPieces', 'labor'];
      const { cells, plan } = await filledWith(rows, wish(...keys), {
        rules: 'Rules!$A$1:$B$5',
        house: PRICED,
      });
      expect(plan.columns.map((one) => one.key)).toEqual(keys);
      // 105 in, 6 widths of 54: 3 a panel, 5 pleats to a width; 52½ ÷ 14 = 3¾ apart; 2 × (15 + 2) rings.
      // 28 yd² of 12 oz is 21 lb, from 20 lb heavy: spans of 36 in at most; 6 widths × 10 × 2 windows.
      expect(cells.map((one) => one[0])).toEqual([6, 15, 3.75, 34, 4, '1 × 120 in', 120]);
      // Grommets hang without rings; stock rods of 120 and 96 in are the shortest that reach (common practice).
      expect(cells.map((one) => one[1]).slice(3, 6)).toEqual([0, 4, '1 × 96 in']);
    });

    it('keeps a figure of all the windows of the row their number, and gives 0 where that is 0', async () => {
      const rows = [
        ['Rod width', 'Finished drop', 'Heading', 'Fabric width', 'Qty'],
        [105, 96, 'pinch', 54, 2],
        [105, 96, 'pinch', 54, 0],
        [105, 96, 'pinch', 54, null],
      ];
      const { cells, shown } = await filledWith(rows, wish('hardwareCost', 'rings'), {
        rules: 'Rules!$A$1:$B$1',
        house: { rows: [['price per ring', 1]] },
      });
      // 34 rings a window, as above, at 1.00 each.
      expect(cells).toEqual([
        [68, 0, 34],
        // The widths that rings are counted by.
        [6, 6, 6],
        [34, 34, 34],
      ]);
      expect(shown.map((row) => row.cells.map(({ value }) => value))).toEqual(rowsOf(cells));
    });

    it('counts the table’s own widths where it has them', async () => {
      const rows = [
        ['Rod width', 'Finished drop', 'Heading', 'Widths', 'Fabric width'],
        [105, 96, 'pinch', 7, 54],
      ];
      const { cells, plan } = await filledWith(rows, wish('labor'), {
        rules: 'Rules!$A$1:$B$5',
        house: PRICED,
      });
      expect(plan.columns[0]?.formula).toContain('HEM.LABOR(D2');
      expect(cells).toEqual([[70]]);
    });
  });

  describe('what the user says of the columns', () => {
    const rows = [
      ['Pokój', 'Szer. (cm)', 'Wys.', 'Styl', 'Tkanina'],
      ['1', 183, 244, 'pinch', 140],
      ['2', '183 bis', 244, 'pinch', 140],
    ];
    const said: Corrections = {
      'szer. (cm)': 'openingWidth',
      'wys.': 'measured',
      styl: 'heading',
      tkanina: 'fabricWidth',
    };
    it('reaches SCHEDULE and CHECK under headings they read', async () => {
      const { plan, cells, shown } = await filledWith(rows, wish('marks', 'findings'), {
        unit: CENTIMETRES,
        said,
        rules: 'Rules!$A$1:$B$1',
        house: { rows: [['unit', 'centimetres']] },
      });
      expect(plan.columns[0]?.formula).toContain(
        'HEM.SCHEDULE({"inside width (Szer. cm)","measured height (Wys.)","heading (Styl)","fabric width (Tkanina)"},CHOOSE({1,2,3,4},B2,',
      );
      expect(typeof cells[0]?.[0]).toBe('number');
      expect(cells[1]?.[0]).toBe('');
      // A row that cannot be read says so by the table’s heading, in the cell and beforehand.
      expect(cells[0]?.[1]).toContain('(Szer. cm) reads “183 bis”, which is not a length.');
      expect(cells[1]?.[1]).toContain('(Szer. cm) reads “183 bis”');
      expect(shown[1]?.cells[0]?.value).toBe(cells[0]?.[1]);
    });

    it('in another unit than the house’s is converted for them too', async () => {
      const { cells } = await filledWith(
        [
          ['Inside W (cm)', 'Drop', 'Style', 'Fab W'],
          [152.4, 96, 'pinch', 54],
          ['152,4', 96, 'pinch', 54],
        ],
        wish('rings', 'findings'),
      );
      // 60 in: rod 82, each panel 41 + 6½ finished; both rows alike.
      expect(cells[0]?.[0]).toBe(cells[0]?.[1]);
      expect(cells[0]?.[0]).toBeGreaterThan(10);
      expect(cells[1]).toEqual(['', '']);
    });

    it('CHECK compares what was ordered', async () => {
      const { cells } = await filledWith(
        [
          ['Rod', 'Drop', 'Style', 'Fab W', 'Widths', 'Yds'],
          [94, 96, 'pinch', 54, 5, 15.625],
          [94, 96, 'pinch', 54, 5, 18.625],
        ],
        wish('findings'),
      );
      expect(cells[0]?.[0]).toBe('');
      // 5 cuts of 112 in are 15 5⁄9 yd, up to 15⅝.
      expect(cells[0]?.[1]).toMatch(
        /^yardage \(Yds\) reads 18 5\/8 yd; worked out from the row it is 15 5\/8 yd/,
      );
    });
  });

  describe('a sentence of the preview', () => {
    it('names the table’s columns, and the house rule where it has none', async () => {
      const { shown } = await filledWith(
        [
          ['W', 'R ext', 'Ht', 'Hdg', 'Goods W', 'Full.'],
          [72, 30, 98, 'wave', 54, null],
          [72, 12, 98, 'wave', 1, 2],
          [72, 12, 'low', 'pinch', 54, null],
          ['much', 12, 98, 'pinch', 54, null],
        ],
        wish('yardage'),
        { rules: 'Rules!$A$1:$B$1', house: { rows: [['fullness wave', 2.6]] } },
      );
      const said = shown.map((row) => row.cells.flatMap((cell) => cell.findings).join(' '));
      expect(said[0]).toContain('R ext is 30 in; for an opening of 72 in');
      expect(said[0]).toContain('house rule “fullness wave” reads 2.6');
      expect(said[1]).toMatch(/Goods W reads 1 in, and 2 in of it/);
      expect(said[2]).toMatch(/^Ht reads “low”/);
      expect(said[3]).toMatch(/^W reads “much”, which is not a length\. Write it like [^.]+\.$/);
      expect(said.join(' ')).not.toMatch(/[a-z]_[a-z]/);
    });
  });
});
