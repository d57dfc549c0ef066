import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { GROUPS, placeOf, readFloor, rodTotals, totalsBy, type Floor } from '../../../src/book/floor/floor';
import { priceFloor } from '../../../src/book/floor/prices';
import { TO_START, writeFloor } from '../../../src/book/floor/sheets';
import type { SheetGiven } from '../../../src/book/memory';
import { survey } from '../../../src/book/survey';
import { WANTED } from '../../../src/book/wanted';
import { clothJob, clothsOf } from '../../../src/core/floor/floor-cuts';
import { WindowWork } from '../../../src/core/window/job';
import { cutPlan } from '../../../src/core/rolls/rolls';
import { fromUnit, inches, toUnit } from '../../../src/core/exact/length';
import { money } from '../../../src/core/exact/money';
import { INCHES } from '../../../src/core/exact/unit';
import { engineBook } from '../engine-book';

/** Whole widths in each panel, and an overlap on rings too. */
const RULES = {
  rows: [
    ['widths rounding', 'whole per panel'],
    ['overlap on rings', 3],
  ],
};

// By hand: pinch, 2.5, pairs on rods of 72 + 2 × 11 = 94: (94 + 7 + 6) × 2.5 = 267.5, 5 or 6 widths of 54;
// the house's default rounds up each panel, so 6. The cut is 98 − 2 + 16 = 112 in:
// 12 cuts are 37 1/3 yd, up to the eighth 37 3/8; 6 cuts 18 2/3, up to 18 3/4.
const LIST: NonNullable<SheetGiven['rows']> = [
  ['Room', 'Type', 'Width', 'Ext L', 'Ext R', 'Height', 'Style', 'Fabric', 'Fabric W', 'Lining', 'Qty'],
  [401, 'King', 72, 11, 11, 98, 'pinch', 'Ostrel linen', 54, 'lined', 2],
  [402, 'King', 72, 11, 11, 98, 'pinch', 'Ostrel linen', 54, 'lined', 1],
  [501, 'Suite', 72, 11, 11, 98, 'pinch', 'Fen voile', 54, null, 1],
  [502, 'Suite', 'wide', 11, 11, 98, 'pinch', 'Fen voile', 54, null, 1],
  ['Total', null, null, null, null, null, null, null, null, null, 5],
];

async function opened() {
  const book = engineBook({
    Floor: { rows: LIST },
    Fabrics: {
      rows: [
        ['fabric', 'price a yd'],
        ['Ostrel linen', 38],
      ],
    },
  }).withTable('Fabrics', areaAt('Fabrics', 0, 0, 2, 2));
  const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
  return { book, read, floor: readFloor(read, RULES) };
}

const works = (floor: Floor) => floor.windows.map(({ work }) => work);

describe('a floor', () => {
  it('is read window by window; a row that cannot be worked out is told, and a total is no window', async () => {
    const { floor } = await opened();
    expect(floor.windows.map(({ work, type, floor: on }) => [work.window.room, type, on])).toEqual([
      ['401', 'King', '4'],
      ['402', 'King', '4'],
      ['501', 'Suite', '5'],
    ]);
    expect(floor.unread).toEqual([{ row: 4, sentence: expect.stringContaining('“wide”') as string }]);
  });

  it('takes a quantity typed as 0 for no window, and tells it', async () => {
    const rows = LIST.map((row, at) => (at === 2 ? [...row.slice(0, -1), 0] : row));
    const book = engineBook({ Floor: { rows } });
    const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
    const floor = readFloor(read, RULES);
    expect(floor.windows.map(({ work }) => work.window.room)).toEqual(['401', '501']);
    expect(floor.unread[0]).toEqual({
      row: 2,
      sentence: expect.stringMatching(/^Qty reads 0, so the row is no window\./) as string,
    });
  });

  it.each([
    ['King, floor 4', 'King', '4'],
    ['Rooms 11 to 16', 'not said', 'not said'],
    ['1204', 'not said', '12'],
    ['B207', 'not said', '2'],
  ])('takes “%s” for type %s on floor %s', (room, type, floor) => {
    expect(placeOf(room)).toEqual({ type, floor });
  });

  it('adds up by fabric, lining, room type and floor, every sum the same', async () => {
    const { floor } = await opened();
    const yards = Object.values(GROUPS).map((groupOf) =>
      totalsBy(floor.windows, groupOf).map(({ name, windows, cuts, yardage }) => [
        name,
        windows,
        cuts,
        toUnit(yardage, 'yd'),
      ]),
    );
    expect(yards[0]).toEqual([
      ['Ostrel linen', 3, 18, 56.125],
      ['Fen voile', 1, 6, 18.75],
    ]);
    const sums = yards.map((rows) => rows.reduce((sum, row) => sum + Number(row[3]), 0));
    expect(new Set(sums)).toEqual(new Set([74.875]));
    expect(rodTotals(floor.windows)).toEqual([expect.objectContaining({ rod: inches(94), rods: 4 })]);
  });

  it('asks its rolls for every cut and for spares, and its price for the same', async () => {
    const { floor, read } = await opened();
    const asked = readFloor(read, RULES, money('0.05'));
    const ruled = readFloor(read, { rows: [...RULES.rows, ['spare windows', '5 %']] });
    const prices = new Map([['Ostrel linen', { breaks: [{ from: 0, price: money(10) }] }]]);
    for (const one of [asked, ruled]) {
      const [linen] = clothsOf(works(one));
      const job = clothJob(linen!, { ordered: fromUnit(60, 'yd') }, INCHES);
      expect(job.cuts.reduce((sum, { count }) => sum + count, 0)).toBe(18 + 1);
      // By hand: 56⅛ yd and a cut of 112 in are 59.236, up to 59¼.
      const { lines } = priceFloor(one, prices).whole;
      expect(lines.find(({ what }) => what === 'Ostrel linen')?.quantity).toBe(59.25);
    }
    const [linen] = clothsOf(works(floor));
    expect(() => clothJob(linen!, { ordered: fromUnit(2, 'yd') }, INCHES)).toThrow('112 in');
  });

  it('is written as a cutter’s list that gives every cut, and totals that check it, in one step', async () => {
    const { book, floor } = await opened();
    const plans = clothsOf(works(floor)).map((cloth) => {
      const job = clothJob(cloth, { ordered: fromUnit(30, 'yd') }, INCHES);
      return { cloth, plan: cutPlan(job, floor.house.rules).value };
    });
    const steps = book.undoable.length;
    await writeFloor(book, floor, plans);
    expect(book.undoable).toHaveLength(steps + 1);
    const { tables, names } = await book.contents();
    const list = tables.find(({ name }) => name === 'Cutting_list')!;
    const [block] = await book.read([list.area]);
    const rows = block!.values.slice(1);
    const at = (heading: string) => list.columns.findIndex((one) => one.startsWith(heading));
    expect(rows.reduce((sum, row) => sum + Number(row[at('cuts')]), 0)).toBe(24 + 18);
    // What is cut and what is left make up each roll.
    const last = rows.filter(
      (row, i) => row[at('roll')] !== rows[i + 1]?.[at('roll')] || row[0] !== rows[i + 1]?.[0],
    );
    for (const row of last) {
      const same = rows.filter((one) => one[0] === row[0] && one[at('roll')] === row[at('roll')]);
      const cut = same.reduce((sum, one) => sum + Number(one[at('cut length')]) * Number(one[at('cuts')]), 0);
      expect(cut + Number(row[at('left after it')])).toBe(30 * 36);
    }
    const [check] = await book.read([
      { ...list.area, sheet: 'Floor totals', row: 0, column: 0, rows: 40, columns: 2 },
    ]);
    const said = new Map(check!.values.map(([label, value]) => [label, value]));
    expect([said.get('cuts wanted'), said.get('cuts in the list')]).toEqual([42, 42]);
    expect(names.some(({ name }) => name === 'Cutting_cuts')).toBe(true);
    const cloths = tables.find(({ name }) => name === 'Floor_cloths')!;
    const [each] = await book.read([cloths.area]);
    // By hand: 9 cuts of 112 in a roll of 30 yd, 10 linings of 103.
    expect(each!.values.slice(1).map(([name, rolls, bound]) => [name, rolls, bound])).toEqual([
      ['Ostrel linen', 2, 2],
      ['Fen voile', 1, 1],
      ['lining', 2, 2],
    ]);
    await writeFloor(book, floor, plans);
    expect((await book.contents()).sheets.map(({ name }) => name)).toContain('Cutting list 2');
  });

  it('lists what is given up to the pattern’s start, and what the rolls do not give', async () => {
    const { book, floor } = await opened();
    const [first] = floor.windows;
    const rules = { ...floor.house.rules, patternStart: 'one repeat' as const };
    const work = new WindowWork({ ...first!.work.window, verticalRepeat: inches(28) }, rules);
    const [cloth] = clothsOf([work]);
    const received = [
      { length: fromUnit(15, 'yd'), flaws: [{ from: fromUnit(10, 'yd'), length: fromUnit(1, 'yd') }] },
    ];
    const job = clothJob(cloth!, { received }, INCHES);
    await writeFloor(book, floor, [{ cloth: cloth!, plan: cutPlan(job, rules).value }]);
    const { tables } = await book.contents();
    const areas = ['Cutting_list', 'Floor_cloths'].map(
      (name) => tables.find((one) => one.name === name)!.area,
    );
    const [list, cloths] = await book.read(areas);
    // By hand: 360 − 28 gives 2 cuts of 112 (4 repeats of 28); 144 − 28 after the flaw gives 1; 12 are wanted.
    expect(list!.values.slice(1).map((row) => row.slice(4, 9))).toEqual([
      [0, TO_START, 28, null, 332],
      [28, 401, 112, 2, 108],
      [396, TO_START, 28, null, 116],
      [424, 401, 112, 1, 4],
    ]);
    expect(cloths!.values[1]?.slice(5)).toEqual([9, 28]);
  });

  it('lists a half-drop in the order it is cut, with the start of every cut', async () => {
    const { book, floor } = await opened();
    const [first] = floor.windows;
    const patterned = { verticalRepeat: inches(25), match: 'half-drop' } as const;
    const work = new WindowWork({ ...first!.work.window, quantity: 1, ...patterned }, floor.house.rules);
    const [cloth] = clothsOf([work]);
    const plan = cutPlan(clothJob(cloth!, { ordered: fromUnit(30, 'yd') }, INCHES), floor.house.rules).value;
    await writeFloor(book, floor, [{ cloth: cloth!, plan }]);
    const list = (await book.contents()).tables.find(({ name }) => name === 'Cutting_list')!;
    expect(list.columns[6]).toBe('half-drop');
    const [block] = await book.read([list.area]);
    // By hand: two panels of A B A; 112½ before the other start, 125 before the same, the last 112.
    expect(block!.values.slice(1).map((row) => [row[4], row[6], row[7], row[8]])).toEqual([
      [0, 'A', 112.5, 1],
      [112.5, 'B', 112.5, 1],
      [225, 'A', 112.5, 1],
      [337.5, 'B', 112.5, 1],
      [450, 'A', 125, 1],
      [575, 'A', 112, 1],
    ]);
  });
});
