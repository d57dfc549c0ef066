import { describe, expect, it } from 'vitest';
import { areaAt, letters } from '../../src/book/address';
import type { Book, CellValue } from '../../src/book/book';
import { fill, rememberFill } from '../../src/book/fill';
import { MemoryBook, type SheetGiven } from '../../src/book/memory';
import { plan, type Plan, type PlanGiven, type Wish } from '../../src/book/plan';
import { preview } from '../../src/book/preview';
import { mappings, survey } from '../../src/book/survey';
import { trouble, Trouble } from '../../src/book/trouble';
import { ROW_OUTPUTS, WANTED } from '../../src/book/wanted';
import { CENTIMETRES, INCHES, type Unit } from '../../src/core/exact/unit';
import { engineBook as bookOn, HOSTS } from './engine-book';

const SCHEDULE: SheetGiven['rows'] = [
  ['Marsh Lane Inn: windows', null, null, null, null, null, null, null],
  ['Room', 'Width', 'Ext L', 'Ext R', 'Height', 'Style', 'Fabric W', 'Qty'],
  ['Bar', 72, null, null, 98, 'pinch', 54, 1],
  ['Snug', '84 1/2', 12, 0, 98, 'grommet', 54, 2],
  ['Hall', 'tbc', null, null, 98, 'pinch', 54, 1],
];

async function planned(
  book: Book,
  wishes: readonly Wish[],
  more: { unit?: Unit; at?: ReturnType<typeof areaAt>; rules?: string } = {},
): Promise<{ given: PlanGiven; plan: Plan; place: string }> {
  const unit = more.unit ?? INCHES;
  const { read, place } = await survey(book, WANTED, unit, more.at ?? areaAt('Floor', 1, 0));
  const given: PlanGiven = {
    read,
    wanted: WANTED,
    outputs: ROW_OUTPUTS,
    wishes,
    unit,
    rules: more.rules ?? '',
  };
  return { given, plan: await plan(book, given), place };
}
const wish = (...keys: string[]): Wish[] => keys.map((key) => ({ key }));
async function values(book: Book, row: number, column: number, rows: number, columns: number) {
  const [block] = await book.read([areaAt('Floor', row, column, rows, columns)]);
  return block!.values;
}
async function formulas(book: Book, row: number, column: number, rows: number, columns: number) {
  const [block] = await book.read([areaAt('Floor', row, column, rows, columns)]);
  return block!.formulas;
}
const troubleOf = async (work: Promise<unknown>): Promise<Trouble> => {
  const thrown = await work.then(
    () => undefined,
    (failure: unknown) => failure,
  );
  expect(thrown).toBeInstanceOf(Trouble);
  return thrown as Trouble;
};

describe.each(HOSTS)('where an empty cell is handed over as %s', (_host, empties) => {
  const engineBook = (sheets = {}): ReturnType<typeof bookOn> => bookOn(sheets, empties);

  describe('the user’s own table', () => {
    it('is given the columns asked for and those they are worked out from', async () => {
      const book = engineBook({ Floor: { rows: SCHEDULE } });
      const { plan } = await planned(book, wish('yardage'));
      expect(plan.columns.map((one) => `${letters(one.column)} ${one.heading}`)).toEqual([
        'I rod width',
        'J finished drop',
        'K yardage',
      ]);
      expect(plan.says).toBe('I2:K5');
      expect(plan.columns[0]?.formula).toBe('=IF(B3="","",HEM.RODWIDTH(B3,IF(C3="","",C3),IF(D3="","",D3)))');
    });

    it('shows beforehand what the cells hold afterwards', async () => {
      const book = engineBook({ Floor: { rows: SCHEDULE } });
      const { given, plan } = await planned(book, wish('widths', 'yardage', 'labor'));
      const shown = preview(plan, given, null);
      await fill(book, plan);
      const cells = await values(book, 2, 8, 3, plan.columns.length);
      expect(shown.map((row) => row.cells.map((cell) => cell.value))).toEqual(cells);
      // Worked by hand from TRADE's rules: 72 + 11 + 11 = 94; 84½ + 12 + 0 = 96½; drops 98 − 2 and 98 + 2.
      expect(cells[0]?.slice(0, 2)).toEqual([94, 5]);
      expect(cells[1]?.[0]).toBe(96.5);
      expect(cells[2]?.[0]).toBe('#VALUE!');
      expect(shown[2]?.cells[0]?.findings.join()).toMatch(/^Width reads “tbc”, which is not a length/);
      expect(shown[1]?.cells[0]?.findings.join()).toMatch(/^Ext R is 0 in; for an opening/);
    });

    it('0 is a figure and blank is not, in an extension', async () => {
      const book = engineBook({
        Floor: {
          rows: [
            ['Width', 'Ext L', 'Ext R', 'Drop', 'Style'],
            [60, 0, null, 84, 'pinch'],
            [60, null, null, 84, 'pinch'],
          ],
        },
      });
      await fill(book, (await planned(book, wish('rodWidth'), { at: areaAt('Floor', 0, 0) })).plan);
      // An opening over 44 up to 96 in takes 11 each side where none is given (common practice, no source).
      expect((await values(book, 1, 5, 2, 1)).flat()).toEqual([71, 82]);
    });

    it('a blank row stays blank', async () => {
      const book = engineBook({
        Floor: {
          rows: [
            ['Room', 'Inside width', 'Drop', 'Style'],
            ['1', 60, 84, 'pinch'],
            ['2', null, 84, 'pinch'],
          ],
        },
      });
      await fill(book, (await planned(book, wish('rodWidth'), { at: areaAt('Floor', 0, 0) })).plan);
      expect((await values(book, 1, 4, 2, 1)).flat()).toEqual([82, '']);
    });

    it('in centimetres in an inch house is converted by name, text too', async () => {
      const rows = [
        ['Room', 'Inside width (cm)', 'Drop', 'Style'],
        ['1', 152.4, 84, 'pinch'],
        ['2', '152,4', 84, 'pinch'],
      ];
      const book = engineBook({ Floor: { rows } });
      const { given, plan } = await planned(book, wish('rodWidth'), { at: areaAt('Floor', 0, 0) });
      expect(plan.columns[0]?.formula).toContain('CONVERT(B2,"cm","in")');
      await fill(book, plan);
      // 152.4 cm is 60 in exactly (NIST SP 811): 60 + 11 + 11.
      expect((await values(book, 1, 4, 2, 1)).flat()).toEqual([82, 82]);
      expect(preview(plan, given, null).map((row) => row.cells[0]?.value)).toEqual([82, 82]);
      const metric = await planned(book, wish('rodWidth'), { unit: CENTIMETRES, at: areaAt('Floor', 0, 0) });
      expect(metric.plan.columns[0]?.formula).not.toContain('CONVERT');
    });

    it('three floor readings go in together', async () => {
      const rows = [
        ['Room', 'Width', 'Height', 'Measured centre', 'Measured right', 'Style'],
        ['1', 60, 98.25, 98, 98.5, 'pinch'],
      ];
      const book = engineBook({ Floor: { rows } });
      const { given, plan } = await planned(book, wish('finishedDrop'), { at: areaAt('Floor', 0, 0) });
      expect(plan.columns[0]?.formula).toContain(
        'HEM.DROP(CHOOSE({1,2,3},IF(C2="","",C2),IF(D2="","",D2),IF(E2="","",E2)),F2',
      );
      await fill(book, plan);
      expect((await values(book, 1, 6, 1, 1)).flat()).toEqual([96]);
      expect(preview(plan, given, null)[0]?.cells[0]?.value).toBe(96);
    });

    it('an unlined window needs no lining, and labor is for all the windows of the row', async () => {
      const rows = [
        ['Room', 'Rod width', 'Finished drop', 'Style', 'Fabric W', 'Lining', 'Lining W', 'Qty'],
        ['1', 94, 96, 'pinch', 54, 'unlined', 54, 2],
        ['2', 94, 96, 'pinch', 54, 'lined', 54, 2],
      ];
      const rules: SheetGiven = {
        rows: [
          ['labor pinch', 10],
          ['labor lined', 2],
        ],
      };
      const book = engineBook({ Floor: { rows }, Rules: rules });
      const { given, plan } = await planned(book, wish('liningYardage', 'labor'), {
        at: areaAt('Floor', 0, 0),
        rules: 'Rules!$A$1:$B$2',
      });
      await fill(book, plan);
      const cells = await values(book, 1, 8, 2, plan.columns.length);
      expect(cells[0]?.[0]).toBe(0);
      expect(cells[1]?.[0]).toBeGreaterThan(0);
      // 5 widths × 10 × 2 windows; lined 5 × 12 × 2.
      expect(cells.map((row) => row.at(-1))).toEqual([100, 120]);
      expect(preview(plan, given, rules.rows).map((row) => row.cells.map((cell) => cell.value))).toEqual(
        cells,
      );
    });

    it('a quantity typed as 0 is no window: its figures are 0, totals stand, and the findings say it', async () => {
      const book = engineBook({
        Floor: {
          rows: [
            ['Room', 'Width', 'Height', 'Style', 'Fabric W', 'Lining', 'Lining width', 'Qty'],
            ['Bar', 72, 98, 'pinch', 54, 'lined', 54, 1],
            ['Snug', 72, 98, 'pinch', 54, 'lined', 54, 0],
            ['Loft', 72, 98, 'pinch', 54, 'lined', 54, null],
          ],
        },
      });
      const { plan } = await planned(book, wish('yardage', 'liningYardage', 'findings'), {
        at: areaAt('Floor', 0, 0),
      });
      await fill(book, plan);
      const at = (key: string): number => plan.columns.find((one) => one.key === key)?.column ?? -1;
      const column = async (key: string) => (await values(book, 1, at(key), 3, 1)).flat();
      // By hand: 5 cuts of 112 in are 15 5/9 yd, up to 15 5/8; the second row is no window.
      expect(await column('yardage')).toEqual([15.625, 0, 15.625]);
      const [lined, none, blank] = (await column('liningYardage')) as number[];
      expect([none, blank]).toEqual([0, lined]);
      const findings = (await column('findings')) as string[];
      expect(findings[1]).toMatch(
        /^quantity \(Qty\) reads 0, so the row is no window\. Write how many windows are alike; blank is one\./,
      );
      expect([findings[0], findings[2]].join()).not.toContain('no window');
    });

    it('totals, sections and repeated headers are left alone', async () => {
      const rows = [
        ['Room', 'Inside width', 'Drop', 'Style'],
        ['Ground floor', null, null, null],
        ['G1', 60, 84, 'pinch'],
        ['Total', 60, null, null],
        ['Room', 'Inside width', 'Drop', 'Style'],
        ['F1', 60, 90, 'pinch'],
      ];
      const book = engineBook({ Floor: { rows } });
      const { plan } = await planned(book, wish('rodWidth'), { at: areaAt('Floor', 0, 0) });
      expect(plan.says).toBe('E1, E3, E6');
      await fill(book, plan);
      expect((await formulas(book, 0, 4, 6, 1)).flat().map((one) => one?.slice(0, 7) ?? null)).toEqual([
        null,
        null,
        '=IF(B3=',
        null,
        null,
        '=IF(B6=',
      ]);
    });
  });

  describe('where the columns go', () => {
    it('beside the table, past columns that are not empty', async () => {
      const rows = SCHEDULE!.map((row, at) => (at === 4 ? [...row, 'call back'] : row)) as CellValue[][];
      const book = new MemoryBook({ Floor: { rows } });
      const { plan } = await planned(book, wish('rodWidth'), { at: areaAt('Floor', 1, 0, 1, 8) });
      expect(plan.columns[0]?.column).toBe(9);
    });
    it('into a column of the table that is headed so and empty, heading kept', async () => {
      const rows = SCHEDULE!.map((row, at) => (at === 1 ? [...row, 'Yds'] : row)) as CellValue[][];
      const book = new MemoryBook({ Floor: { rows } });
      const { plan } = await planned(book, wish('yardage'));
      const yardage = plan.columns.find((one) => one.key === 'yardage');
      expect(yardage).toMatchObject({ column: 8, keepsHeading: true, alreadyFilled: 0 });
      await fill(book, plan);
      expect((await values(book, 1, 8, 1, 1)).flat()).toEqual(['Yds']);
    });
    it('an empty column headed like an output is worked out first, where it stands', async () => {
      const rows = SCHEDULE!.map((row, at) =>
        at === 1 ? ['Rod width', ...row] : [null, ...row],
      ) as CellValue[][];
      const book = new MemoryBook({ Floor: { rows } });
      const { plan } = await planned(book, wish('widths'));
      expect(plan.columns.map((one) => [one.heading, letters(one.column)])).toEqual([
        ['rod width', 'A'],
        ['widths', 'J'],
      ]);
    });
    it('never over a filled cell, unless the user says so for that column', async () => {
      const rows = SCHEDULE!.map((row, at) =>
        at === 1 ? [...row, 'Yds'] : at > 1 ? [...row, 12] : row,
      ) as CellValue[][];
      const book = new MemoryBook({ Floor: { rows } });
      const first = await planned(book, wish('yardage'));
      const before = book.picture();
      expect((await troubleOf(fill(book, first.plan))).message).toMatch(
        /^I3 of “Floor” already holds something/,
      );
      expect(book.picture()).toBe(before);
      const again = await planned(book, [{ key: 'yardage', overwrite: true }]);
      await fill(book, again.plan);
      expect((await formulas(book, 2, 8, 1, 1)).flat()[0]).toContain('HEM.YARDAGE');
    });
    it('where the user points, and never over a column that is worked with', async () => {
      const book = new MemoryBook({ Floor: { rows: SCHEDULE! } });
      const { plan } = await planned(book, [{ key: 'rodWidth', at: 12 }]);
      expect(plan.says).toBe('M2:M5');
      expect(await troubleOf(planned(book, [{ key: 'rodWidth', at: 1, overwrite: true }]))).toMatchObject({
        code: 'ownInput',
      });
      expect(
        await troubleOf(
          planned(book, [
            { key: 'rodWidth', at: 12 },
            { key: 'stack', at: 12 },
          ]),
        ),
      ).toMatchObject({ code: 'twice' });
    });
    it('one figure for every row becomes an input column of its own', async () => {
      const rows = SCHEDULE!.map((row) => row.filter((_, at) => at !== 6));
      const book = new MemoryBook({ Floor: { rows } });
      expect((await troubleOf(planned(book, wish('widths')))).message).toMatch(/^widths needs fabric width/);
      const { plan } = await planned(book, [{ key: 'fabricWidth', same: 54 }, { key: 'widths' }]);
      await fill(book, plan);
      expect((await values(book, 1, 7, 4, 1)).flat()).toEqual(['fabric width', 54, 54, 54]);
      expect((await formulas(book, 2, 9, 1, 1)).flat()[0]).toContain('HEM.WIDTHS(I3,F3,H3');
    });
  });

  describe('an Excel table', () => {
    const body = SCHEDULE!.slice(1) as CellValue[][];
    const area = areaAt('Floor', 0, 0, 4, 8);
    const totals = [...body, ['Total', null, null, null, null, null, null, 4]];
    it('grows by the columns, its totals row left alone', async () => {
      const book = new MemoryBook({ Floor: { rows: totals } }).withTable(
        'Openings',
        { ...area, rows: 5 },
        true,
      );
      const { plan } = await planned(book, wish('rodWidth', 'stack'), { at: areaAt('Floor', 2, 2) });
      await fill(book, plan);
      const [table] = (await book.contents()).tables;
      expect(table).toMatchObject({ area: { rows: 5, columns: 10 } });
      expect(table?.columns.slice(8)).toEqual(['rod width', 'stack']);
      expect((await values(book, 4, 8, 1, 2)).flat()).toEqual([null, null]);
      book.undo();
      expect((await book.contents()).tables[0]?.area.columns).toBe(8);
    });
    it('cannot grow over a neighbour', async () => {
      const rows = totals.map((row, at) => (at === 4 ? [...row, 'mine'] : row));
      const book = new MemoryBook({ Floor: { rows } }).withTable('Openings', { ...area, rows: 5 }, true);
      const said = await troubleOf(planned(book, wish('rodWidth'), { at: areaAt('Floor', 2, 2) }));
      expect(said.message).toMatch(/^Column I beside the table “Openings” is not empty/);
    });
    it('stopped midway has its old size again', async () => {
      const book = new MemoryBook({ Floor: { rows: body } }).withTable('Openings', area);
      const { plan } = await planned(book, wish('rodWidth'), { at: areaAt('Floor', 2, 2) });
      const before = book.picture();
      const stop = new AbortController();
      const said = await troubleOf(fill(book, plan, { signal: stop.signal, progress: () => stop.abort() }));
      expect(said.code).toBe('cancelled');
      expect(book.picture()).toBe(before);
    });
  });

  describe('in the way', () => {
    const cases: [string, SheetGiven, RegExp][] = [
      ['a protected sheet', { rows: SCHEDULE!, protected: true }, /“Floor” is protected/],
      ['filtered rows', { rows: SCHEDULE!, hiddenRows: [3] }, /^Row 4 of “Floor” is hidden/],
    ];
    it.each(cases)('%s: a sentence, and the workbook as it was', async (_name, sheet, sentence) => {
      const book = new MemoryBook({ Floor: sheet });
      const before = book.picture();
      const { plan } = await planned(book, wish('rodWidth'));
      expect((await troubleOf(fill(book, plan))).message).toMatch(sentence);
      expect(book.picture()).toBe(before);
    });
    it('a merged cell below the headings is passed by; pointed at, it is refused', async () => {
      const sheet: SheetGiven = { rows: SCHEDULE!, merged: [{ row: 2, column: 8, rows: 3, columns: 1 }] };
      const book = new MemoryBook({ Floor: sheet });
      expect((await planned(book, wish('rodWidth'))).plan.says).toBe('J2:J5');
      const { plan } = await planned(book, [{ key: 'rodWidth', at: 8 }]);
      expect((await troubleOf(fill(book, plan))).message).toMatch(/^I3:I5 is a merged cell/);
    });
    it('no header, no rows, no sheet', async () => {
      const book = new MemoryBook({
        Floor: {
          rows: [
            ['Paint', 'Price'],
            ['blue', 4],
          ],
        },
        Empty: {},
      });
      expect(await troubleOf(planned(book, [], { at: areaAt('Floor', 0, 0) }))).toMatchObject({
        code: 'noHeader',
      });
      expect(await troubleOf(planned(book, [], { at: areaAt('Empty', 0, 0) }))).toMatchObject({
        code: 'missing',
      });
      const bare = new MemoryBook({ Floor: { rows: SCHEDULE!.slice(0, 2) } });
      expect(await troubleOf(planned(bare, wish('rodWidth')))).toMatchObject({ code: 'noRows' });
    });
    it('a cell being edited while the plan is made', async () => {
      const book = new MemoryBook({ Floor: { rows: SCHEDULE! } });
      book.failNext = trouble('editing');
      expect((await troubleOf(planned(book, wish('rodWidth')))).message).toMatch(/being edited/);
    });
  });

  describe('10,000 rows', () => {
    const rows = [
      SCHEDULE![1]!,
      ...Array.from({ length: 10_000 }, (_, at) => [`${at}`, 40 + (at % 80), null, null, 98, 'pinch', 54, 1]),
    ];
    it('are filled in few requests', async () => {
      const book = new MemoryBook({ Floor: { rows } });
      const { plan } = await planned(book, wish('widths', 'yardage', 'cutLength', 'stack'), {
        at: areaAt('Floor', 0, 0),
      });
      const before = book.trips;
      await fill(book, plan);
      expect(book.trips - before).toBeLessThan(10);
      expect((await formulas(book, 10_000, 8, 1, 1)).flat()[0]).toContain('B10001');
    });
    it('cancelled midway, the workbook is as it was', async () => {
      const book = new MemoryBook({ Floor: { rows } });
      const { plan } = await planned(book, wish('widths', 'yardage'), { at: areaAt('Floor', 0, 0) });
      const before = book.picture();
      const stop = new AbortController();
      const said = await troubleOf(
        fill(book, plan, { signal: stop.signal, progress: (done) => void (done > 20_000 && stop.abort()) }),
      );
      expect(said.message).toBe('Stopped. The workbook is as it was.');
      expect(book.picture()).toBe(before);
    });
  });

  describe('a mapping', () => {
    it('is kept in the workbook and found again, also when the sheet was renamed', async () => {
      const rows = SCHEDULE!.map((row, at) =>
        at === 1 ? row.map((cell) => (cell === 'Style' ? 'Wishes' : cell)) : row,
      );
      const book = new MemoryBook({ Floor: { rows } });
      const first = await survey(book, WANTED, INCHES, areaAt('Floor', 1, 0), {
        'ext l': null,
        wishes: 'heading',
      });
      const given: PlanGiven = {
        read: first.read,
        wanted: WANTED,
        outputs: ROW_OUTPUTS,
        wishes: wish('widths'),
        unit: INCHES,
        rules: '',
      };
      const before = await plan(book, given);
      await fill(book, before);
      await rememberFill(book, first.place, first.read, before);
      expect((await mappings(book)).map((one) => one.outputs)).toEqual([['rodWidth', 'widths']]);
      const again = await survey(book, WANTED, INCHES, areaAt('Floor', 1, 0));
      expect(again.mapping?.outputs).toEqual(['rodWidth', 'widths']);
      expect(again.read.columns.find((one) => one.id === 'wishes')).toMatchObject({
        key: 'heading',
        corrected: true,
      });
      expect(again.read.columns.find((one) => one.id === 'ext l')?.key).toBeUndefined();

      const renamed = new MemoryBook({ Attic: { rows } });
      await renamed.remember('mappings', await book.recall('mappings'));
      const found = await survey(renamed, WANTED, INCHES, areaAt('Attic', 1, 0));
      expect(found.mapping?.of).toBe('Floor');
    });
    it('that somebody spoilt is passed over', async () => {
      const book = new MemoryBook({ Floor: { rows: SCHEDULE! } });
      await book.remember('mappings', [{ of: 3 }, 'x', null]);
      expect((await survey(book, WANTED, INCHES, areaAt('Floor', 1, 0))).mapping).toBeUndefined();
    });
  });
});
