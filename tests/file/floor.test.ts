import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Workbook } from '@cj-tech-master/excelts';
import { describe, expect, it } from 'vitest';
import { command } from './command';
import { formulaAt, opened, scratch, shown } from './book';

const demo = fileURLToPath(new URL('../../src/file/demo/measures.xlsx', import.meta.url));

const floor = command('floor');

describe('npm run hem -- floor', () => {
  it('plans each fabric roll by roll, no roll overfilled and every cut placed', async () => {
    const { exit, out } = await floor(demo, '--roll', '60 yd', '--json');
    expect(exit).toBe(0);
    const { windows, fabrics } = JSON.parse(out) as {
      windows: number;
      fabrics: {
        cuts: number;
        proven: boolean;
        rolls: { length: number; cuts: { length: number; count: number }[] }[];
      }[];
    };
    expect(windows).toBe(46);
    for (const { cuts, rolls, proven } of fabrics) {
      expect(proven).toBe(true);
      expect(rolls.flatMap((roll) => roll.cuts).reduce((sum, { count }) => sum + count, 0)).toBe(cuts);
      for (const { length, cuts: placed } of rolls) {
        const cut = placed.reduce((sum, one) => sum + one.length * one.count, 0);
        expect(cut).toBeLessThanOrEqual(length * 36 + 1e-6);
      }
    }
  }, 60_000);

  it('a room is cut from one lot where lots are named', async () => {
    const rolls = Array.from({ length: 12 }, () => '60').join('; ');
    const lots = Array.from({ length: 12 }, (_, at) => (at < 6 ? 'A' : 'B')).join('; ');
    const { out } = await floor(demo, '--fabric', 'ostrel linen', '--rolls', rolls, '--lots', lots, '--json');
    const { fabrics } = JSON.parse(out) as {
      fabrics: { rolls: { lot: string; cuts: { room: string }[] }[] }[];
    };
    const lotOf = new Map<string, Set<string>>();
    for (const { lot, cuts } of fabrics[0]?.rolls ?? []) {
      for (const { room } of cuts) lotOf.set(room, (lotOf.get(room) ?? new Set()).add(lot));
    }
    expect(lotOf.size).toBe(33);
    expect([...lotOf.values()].every((set) => set.size === 1)).toBe(true);
  }, 60_000);

  it('rolls that fall short are said, and the exit code is 1', async () => {
    const { exit, err } = await floor(demo, '--fabric', 'Ostrel linen', '--rolls', '58; 60');
    expect(exit).toBe(1);
    expect(err).toContain('fall short');
  }, 60_000);

  it('the what-if table marks the cheapest choice', async () => {
    const choice = ['--fullness', '2; 2.5', '--widths', '54; 118', '--price', '28.90'];
    const { out } = await floor(demo, '--fabric', 'Ostrel linen', ...choice);
    const marked = out.split('\n').filter((line) => line.startsWith('  * fullness'));
    expect(marked).toHaveLength(1);
    expect(out).toContain('too narrow to railroad');
  }, 60_000);

  it('plans the lining too, on rolls of its own', async () => {
    const { out } = await floor(demo, '--json');
    const { fabrics } = JSON.parse(out) as { fabrics: { fabric: string; layer: string; cloth: number }[] };
    expect(fabrics.filter(({ layer }) => layer === 'lining').map(({ fabric }) => fabric)).toEqual([
      'lining',
      'blackout lining',
    ]);
  }, 60_000);

  it.each([
    [['--rolls', 'six'], '--rolls, roll 1 reads “six”'],
    [['--lots', 'A'], 'Give them with --rolls'],
    [['--flaws', '1: 3'], 'Give them with --rolls'],
    [['--rolls', '60; 60'], 'Say which with --fabric'],
    [['--fabric', 'Ostrel linen', '--rolls', '60', '--flaws', '12-13'], 'like “2: 12-12 1/2; 30”'],
    [['--fabric', 'Ostrel linen', '--rolls', '60', '--flaws', '2: 12-13'], '--rolls has 1'],
    [['--fabric', 'Ostrel linen', '--rolls', '60', '--flaws', '1: torn'], '--flaws, roll 1 reads “torn”'],
    [['--fabric', 'Ostrel linen', '--rolls', '60', '--flaws', '1: 61'], 'does not lie on roll 1'],
    [['--in-hand'], 'has no table of rolls'],
    [['--repeats', 'sometimes'], '--repeats reads “sometimes”'],
    [['--rooms', '501-510'], 'does not say which of the'],
    [['--rooms', '4999: 501-510'], 'names the row “4999”, and there is none'],
    [['--rooms', '401: five'], 'five'],
    [['--types', '401'], '--types reads “401”'],
    [['-o', 'planned.csv'], 'must end in .xlsx'],
    [['--rolls', '60; 60', '--lots', 'A'], '1 lots for 2 rolls'],
    [['--spares', 'many'], '--spares reads “many”'],
    [['--seconds', '0'], '--seconds reads “0”'],
    [['--fabric', 'none such'], 'has no window of the fabric “none such”'],
  ])(
    '%j is refused with a sentence',
    async (words, sentence) => {
      const { exit, err } = await floor(demo, ...words);
      expect(exit).toBe(2);
      expect(err).toContain(sentence);
    },
    60_000,
  );
});

const WINDOWS = [
  [
    'Room',
    'Room type',
    'Rod width',
    'Finished drop',
    'Heading',
    'Fabric',
    'Fabric width',
    'Repeat',
    'Lining',
    'Qty',
  ],
  ['King', 'Guest', 104, 96, 'pinch', 'Ostrel linen', 54, 25, 'lined', 1],
  ['Suite', 'Guest', 104, 96, 'pinch', 'Ostrel linen', 54, 25, 'lined', 2],
];
const ROLLS = [
  ['Roll of', 'Dye lot', 'Roll length (yd)', 'Flaws'],
  ['Ostrel linen', 'A', 40, '10-11'],
  ['Ostrel linen', 'A', 30, null],
];

/** A measure sheet of our own invention, with its rolls and rules where they are given. */
async function bookOf(
  rules: readonly (readonly [string, string])[] = [],
  rows: readonly unknown[][] = WINDOWS,
) {
  const book = new Workbook();
  for (const [name, cells] of [
    ['Openings', rows],
    ['Rolls in store', ROLLS],
    ['House', rules.map((one) => [...one])],
  ] as const)
    for (const row of cells.length === 0 ? [] : [book.addWorksheet(name)]) row.addRows(cells as never);
  if (rules.length > 0) book.definedNames.add(`House!$A$1:$B$${rules.length}`, 'HouseRules');
  const path = join(scratch(), 'floor.xlsx');
  writeFileSync(path, new Uint8Array(await book.xlsx.writeBuffer()));
  return path;
}

interface Told {
  readonly windows: number;
  readonly fabrics: {
    readonly fabric: string;
    readonly cuts: number;
    readonly rolls: {
      roll: number;
      lot?: string;
      cuts: { room?: string; length: number; count: number; stretchFrom: number; toStart?: number }[];
    }[];
    readonly short: { count: number }[];
  }[];
  readonly whatIf?: { repeatRule: string; yardage: number; cheapest: boolean }[];
}
const told = async (...words: string[]): Promise<Told> =>
  JSON.parse((await floor(...words, '--json')).out) as Told;

describe('a floor of a workbook of its own', { timeout: 60_000 }, () => {
  it('is planned on the workbook’s own rolls, around their flaws; the lining, which has none, to order', async () => {
    const path = await bookOf();
    expect((await floor(path, '--in-hand')).err).toContain('note lining: the workbook has no roll of it');
    const { fabrics } = await told(path, '--in-hand');
    const [linen, lining] = fabrics;
    // 18 cuts of 125: 360 in before the flaw give 2, 1,044 after it 8, the second roll 8.
    expect(linen?.rolls.map(({ roll, lot }) => [roll, lot])).toEqual([
      [1, 'A'],
      [2, 'A'],
    ]);
    expect(linen?.short).toEqual([]);
    expect(linen?.rolls[0]?.cuts.map(({ stretchFrom }) => stretchFrom)).toContain(396);
    expect([lining?.fabric, lining?.cuts, lining?.rolls.length]).toEqual(['lining', 18, 1]);
  });

  it('says what is short once the rolls give up cloth to the pattern’s start', async () => {
    const path = await bookOf([['pattern start', 'one repeat']]);
    const { fabrics } = await told(path, '--in-hand');
    // (360 − 25), (1,044 − 25) and (1,080 − 25) in: 2 + 8 + 8 cuts are still 18 of 18; 24 yd less are not.
    expect(fabrics[0]?.short).toEqual([]);
    expect(fabrics[0]?.rolls[0]?.cuts[0]?.toStart).toBe(25);
    const short = await floor(path, '--rolls', '40; 27', '--flaws', '1: 10-11');
    expect(short.exit).toBe(1);
    expect(short.out).toContain('25 in to the pattern’s start + ');
    expect(short.err).toContain('fall short by 1 of 125 in');
  });

  it('one row becomes a window in each room, and types are counted', async () => {
    const path = await bookOf();
    const rooms = await told(path, '--rooms', 'King: 401-410 even; not 404');
    // 4 rooms and the suite's 2 windows.
    expect(rooms.windows).toBe(6);
    const cut = rooms.fabrics[0]?.rolls.flatMap(({ cuts }) => cuts.map(({ room }) => room));
    expect(new Set(cut)).toEqual(new Set(['402', '406', '408', '410', 'Suite']));
    expect((await told(path, '--types', 'King: 12; suite: 3')).windows).toBe(12 + 3 * 2);
    const one = await bookOf([], WINDOWS.slice(0, 2));
    expect((await told(one, '--rooms', '401-448 even; not 402')).windows).toBe(23);
  });

  it('takes a quantity typed as 0 for no window, and says so', async () => {
    const rows = WINDOWS.map((row, at) => (at === 1 ? [...row.slice(0, -1), 0] : row));
    const path = await bookOf([], rows);
    expect((await told(path)).windows).toBe(2);
    const { exit, out } = await floor(path);
    expect(exit).toBe(1);
    expect(out).toMatch(/Openings row 2: Qty reads 0, so the row is no window\. Write how many windows/);
  });

  it('gives a bay its bends and a rod for each straight part', async () => {
    const rows = [
      ['Room', 'Inside width', 'Finished drop', 'Heading', 'Fabric', 'Fabric width', 'Qty'],
      ['Salon', '30 + 60 + 30', 96, 'pinch', 'Ostrel linen', 54, 1],
      ['Study', 72, 96, 'pinch', 'Ostrel linen', 54, 1],
    ];
    expect((await floor(await bookOf([], rows))).out).toMatch(/bends 2\b/);
  });

  it('compares repeat rules in the what-if table', async () => {
    const rules = 'every cut up; first cut exact';
    const { whatIf } = await told(await bookOf(), '--repeats', rules);
    const upright = whatIf?.filter(({ yardage }) => yardage > 0) ?? [];
    // 18 cuts of 125 in are 62½ yd; two runs, each with a first cut of 112, are 26 in less: 61⅞.
    expect(upright.map(({ repeatRule, yardage }) => [repeatRule, yardage])).toEqual([
      ['every cut up', 62.625],
      ['first cut exact', 61.875],
    ]);
  });

  it('-o writes the workbook with the list and the totals, and leaves the rest of it as it was', async () => {
    const path = await bookOf([['pattern start', 'one repeat']]);
    const out = join(scratch(), 'planned.xlsx');
    const { exit, err } = await floor(path, '--in-hand', '-o', out);
    expect([exit, err]).toEqual([0, expect.stringContaining(out) as string]);
    const [before, after] = [await opened(path), await opened(out)];
    expect(after.sheets.map(({ name }) => name)).toEqual([
      ...before.sheets.map(({ name }) => name),
      'Cutting list',
      'Floor totals',
    ]);
    const cells = shown(after);
    for (const [place, value] of shown(before)) expect([place, cells.get(place)]).toEqual([place, value]);
    expect(after.tables.map(({ name }) => name)).toEqual([
      'Cutting_list',
      'Floor_totals',
      'Floor_rods',
      'Floor_cloths',
    ]);
    const list = after.tables[0]!;
    expect(list.columns).toContain('cut length (in)');
    expect([...cells.values()]).toContain('to the pattern’s start');
    // The check is a formula, computed: every cut wanted is in the list.
    const [check] = [...cells].find(([, value]) => value === 'cuts in the list')!;
    const place = check.replace('!A', '!B');
    expect(formulaAt(after, place)).toBe('SUM(Cutting_cuts)');
    expect(cells.get(place)).toBe(18 + 18);
    // A second plan in the same workbook stands beside the first.
    await floor(out, '--in-hand', '-o', out);
    expect((await opened(out)).sheets.map(({ name }) => name)).toContain('Cutting list 2');
  });

  it('-o writes nothing where no plan can be made', async () => {
    const out = join(scratch(), 'planned.xlsx');
    const short = await floor(await bookOf(), '--roll', '2', '-o', out);
    expect([short.exit, existsSync(out)]).toEqual([2, false]);
    expect(short.err).toContain('Order longer rolls');
  });
});
