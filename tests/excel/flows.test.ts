import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../functions/index';
import { areaAt } from '../../src/book/address';
import { fill, rememberFill } from '../../src/book/fill';
import { plan, type Plan, type PlanGiven } from '../../src/book/plan';
import { mappings, survey } from '../../src/book/survey';
import { newJob, USUAL_JOB } from '../../src/book/template';
import { ROW_OUTPUTS, WANTED } from '../../src/book/wanted';
import { INCHES } from '../../src/core/exact/unit';
import { HOSTS } from '../book/engine-book';
import { calculating } from '../office/calculator';
import { at, openedIn, picture, type Opened } from './opened';

const SCHEDULE = [
  ['Marsh Lane Inn: windows', null, null, null, null, null, null, null],
  ['Room', 'Width', 'Ext L', 'Ext R', 'Height', 'Style', 'Fabric W', 'Qty'],
  ['Bar', 72, null, null, 98, 'pinch', 54, 1],
  ['Snug', '84 1/2', 12, 0, 98, 'grommet', 54, 2],
] as const;

async function planned(
  { book }: Opened,
  ...keys: readonly string[]
): Promise<{ plan: Plan; given: PlanGiven; place: string }> {
  const { read, place } = await survey(book, WANTED, INCHES, areaAt('Windows', 1, 0));
  const given: PlanGiven = {
    read,
    wanted: WANTED,
    outputs: ROW_OUTPUTS,
    wishes: keys.map((key) => ({ key })),
    unit: INCHES,
    rules: '',
  };
  return { plan: await plan(book, given), given, place };
}

describe('a new job in Excel', () => {
  it.each([
    ['the first in its workbook', 'Sheet1'],
    ['a second, under names with a number', 'Windows'],
  ])(
    '%s arrives whole, calculates without an error, in as many requests for 24 windows as for 400',
    async (_, sheet) => {
      const counts: number[] = [];
      for (const windows of [24, 400]) {
        const opened = await openedIn([], { sheets: [sheet] });
        opened.trips();
        await newJob(opened.book, { ...USUAL_JOB, windows });
        counts.push(opened.trips());
        expect(opened.host.unknown).toEqual([]);
        if (windows > 24) continue;
        for (const [host, empties] of HOSTS) {
          await calculating(empties)(opened.host.world);
          const wrong = opened.host.book.sheets.flatMap((sheet) =>
            [...sheet.cells.values()]
              .filter(({ value, formula }) => formula !== undefined && /^#/.test(String(value)))
              .map(({ formula, value }) => `${sheet.name}: ${String(formula)} ${String(value)}`),
          );
          expect(wrong, host).toEqual([]);
          const checks = opened.host.book.sheets.find(({ name }) => name.startsWith('Checks'));
          expect(checks?.cell(2, 0)?.value, host).toBe('all checks are well');
        }
        expect(opened.host.book.tables.length).toBeGreaterThan(2);
      }
      const [few = 0, many = 0] = counts;
      expect({ few, many }).toEqual({ few, many: few });
    },
  );

  it('a second job stands beside the first, and a job that fails leaves nothing behind', async () => {
    const opened = await openedIn([], { sheets: ['Sheet1'] });
    const small = { ...USUAL_JOB, windows: 2 };
    expect([await newJob(opened.book, small), await newJob(opened.book, small)]).toEqual([1, 2]);
    const before = picture(opened);
    const stopped = new AbortController();
    const halfway = newJob(opened.book, small, { signal: stopped.signal, progress: () => { stopped.abort(); } }); // prettier-ignore
    await expect(halfway).rejects.toThrow('Stopped. The workbook is as it was.');
    expect(picture(opened)).toBe(before);
  });
});

describe('the user’s own table in Excel', () => {
  it.each(HOSTS.flatMap(([host, empties]) => [false, true].map((made) => [host, made, empties] as const)))(
    'gets its columns with the answers of our functions (empties as %s, made a table: %s)',
    async (_, made, empties) => {
      const opened = await openedIn(SCHEDULE);
      opened.host.world.calculator = calculating(empties);
      if (made)
        await opened.book.inOneStep('Table', (write) =>
          write({ newTables: [{ name: 'Openings', area: at('A2:H4') }] }),
        );
      const { plan, given, place: name } = await planned(opened, 'yardage');
      await fill(opened.book, plan);
      const last = plan.columns.at(-1);
      const [block] = await opened.book.read([areaAt('Windows', 1, last?.column ?? 0, 3)]);
      const yardage = functionNamed('YARDAGE');
      const outcome = yardage?.call([94, 96, 'pinch', 54]);
      expect(outcome).toHaveProperty('cells');
      expect(block?.values[1]).toEqual([
        outcome !== undefined && 'cells' in outcome ? outcome.cells : undefined,
      ]);
      expect(block?.values[2]?.[0]).toBeTypeOf('number');
      expect(opened.host.unknown).toEqual([]);

      await rememberFill(opened.book, name, given.read, plan);
      expect((await mappings(opened.book)).length).toBe(1);
    },
  );

  it.each([
    ['the usual columns', 8, ['rodWidth', 'finishedDrop', 'widths', 'cutLength', 'yardage']],
    ['every column', 10, ROW_OUTPUTS.map((one) => one.key)],
    ['every column', 15, ROW_OUTPUTS.map((one) => one.key)],
  ])(
    '%s beside a table of %i take as many requests for 200, 2,000 and 10,000 rows, from the survey to the last cell',
    async (_, columns, keys) => {
      const sizes = [200, 2_000, 10_000];
      const counts: number[] = [];
      const largest: number[] = [];
      for (const rows of sizes) {
        const further = Array.from(
          { length: columns - 8 },
          (_, at) => ['Lining width', 'Cloth weight'][at] ?? `Remark ${at}`,
        );
        const lines = Array.from({ length: rows }, (_, row) => [
          ...[`Room ${row}`, 60 + (row % 50), null, null, 98, 'pinch', 54, 1],
          ...further.map((_, at) => [54, 10][at] ?? 'as agreed'),
        ]);
        const [title, headings] = SCHEDULE;
        const opened = await openedIn([title, [...headings, ...further], ...lines]);
        opened.trips();
        const { plan } = await planned(opened, ...keys);
        await fill(opened.book, plan);
        expect(plan.runs).toEqual([[2, rows]]);
        for (const column of plan.columns)
          expect(opened.sheet.cell(rows + 1, column.column)?.formula).toMatch(/HEM\./);
        counts.push(opened.trips());
        largest.push(Math.max(...opened.host.trips));
      }
      console.log(
        `${keys.length} columns, ${sizes.join(', ')} rows: ${counts.join(', ')} requests, of ${largest.join(', ')} characters at most`,
      );
      expect(counts).toEqual(sizes.map(() => counts[0]));
      expect(counts[0]).toBeLessThan(25);
      // A column's formula is sent once: what is sent hardly grows with the rows.
      expect(largest.at(-1)).toBeLessThan(1.1 * (largest[0] ?? 0));
    },
  );
});
