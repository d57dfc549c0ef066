import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { windowUnder } from '../window/ordered';
import { cuttingOf, runOfCuts } from '../../../src/core/cloth/repeat';
import type { CutLine } from '../../../src/core/rolls/cutting';
import type { Behind } from '../../../src/core/cloth/behind';
import { faceTotals } from '../../../src/core/floor/tally';
import { clothFindings, clothJob, clothsOf, type Cloth } from '../../../src/core/floor/floor-cuts';
import { readHouse } from '../../../src/core/house/house';
import { WindowWork } from '../../../src/core/window/job';
import { fromUnit, inches, toUnit } from '../../../src/core/exact/length';
import { cutPlan } from '../../../src/core/rolls/rolls';
import { INCHES } from '../../../src/core/exact/unit';
import { house, quantity, rangeOf, sixtyFourths, type HouseWords } from '../../properties/given';
import { faultsOf } from '../rolls/plan-faults';

const HEADINGS = [
  'room',
  'rod width',
  'finished drop',
  'heading',
  'draw',
  'fabric',
  'fabric width',
  'vertical repeat',
  'match',
  'lining',
  'lining width',
  'quantity',
];
type Row = Partial<Record<(typeof HEADINGS)[number], string | number | undefined>>;

const floorOf = (rows: readonly Row[], rules: HouseWords & Record<string, unknown> = {}) => {
  const house = readHouse(rangeOf(rules)).rules;
  return rows.map((row) => {
    const cells = HEADINGS.map((heading) => row[heading] ?? null);
    return new WindowWork(windowUnder(HEADINGS, cells, INCHES).window, house);
  });
};

const KING: Row = {
  room: '401',
  'rod width': 104,
  'finished drop': 96,
  heading: 'pinch',
  draw: 'pair',
  fabric: 'Ostrel linen',
  'fabric width': 54,
};
/** One panel: (40 + 7) × 2.5 = 117½ flat; 2 widths give 108 − 1 − 6 = 101, 2½ give 135 − 2 − 6 = 127. */
const HALVES: Row = { ...KING, draw: 'one-way left', 'rod width': 40 };
const HALF = { 'widths rounding': 'half per panel' } as const;
const SHARED = { ...HALF, 'share half widths': 'yes' } as const;

const shown = (cuts: readonly CutLine[]) => cuts.map(({ length, count }) => [toUnit(length, 'in'), count]);
const named = (cloths: readonly Cloth[], name: string): Cloth => {
  const cloth = cloths.find((one) => one.name === name);
  if (cloth === undefined) throw new Error(`no cloth “${name}”`);
  return cloth;
};
const count = (cuts: readonly CutLine[]): number => cuts.reduce((sum, one) => sum + one.count, 0);

describe('the cloths of a floor', () => {
  it('are its face fabrics as they appear, then linings and interlinings, each by itself', () => {
    const cloths = clothsOf(
      floorOf([
        { ...KING, lining: 'interlined' },
        { ...KING, fabric: 'Fen voile' },
        { ...KING, lining: 'blackout' },
        { ...KING, lining: 'lined' },
      ]),
    );
    expect(cloths.map(({ name, layer }) => [name, layer])).toEqual([
      ['Ostrel linen', 'face'],
      ['Fen voile', 'face'],
      ['lining', 'lining'],
      ['blackout lining', 'lining'],
      ['interlining', 'interlining'],
    ]);
    // By hand: face 96 + 16; lining 95 + 8; interlining 96 + 4. Pairs on 104: 6 widths of 54 each.
    expect(cloths.map(({ cuts }) => shown(cuts))).toEqual([
      [
        [112, 6],
        [112, 6],
        [112, 6],
      ],
      [[112, 6]],
      [
        [103, 6],
        [103, 6],
      ],
      [[103, 6]],
      [[112, 6]],
    ]);
  });

  it('linings of two widths come on rolls of two widths', () => {
    const rows = [54, 118].map((width) => ({ ...KING, lining: 'lined', 'lining width': width }));
    expect(clothsOf(floorOf(rows)).map(({ name }) => name)).toEqual([
      'Ostrel linen',
      'lining, 54 in wide',
      'lining, 118 in wide',
    ]);
  });
});

describe('half widths', () => {
  it('take a whole cut each without the house rule: 3 cuts for 2½ widths', () => {
    const [cloth] = clothsOf(floorOf([HALVES, HALVES], HALF));
    expect(shown(cloth!.cuts)).toEqual([
      [112, 3],
      [112, 3],
    ]);
    expect(cloth?.paired).toBe(0);
  });

  it('are paired across two windows of a room with the rule: 5 cuts for 2 × 2½ widths, and the plan says so', () => {
    const [cloth] = clothsOf(floorOf([HALVES, HALVES], SHARED));
    expect(shown(cloth!.cuts)).toEqual([
      [112, 3],
      [112, 2],
    ]);
    const job = clothJob(cloth!, { ordered: fromUnit(60, 'yd') }, INCHES);
    const plan = cutPlan(job, readHouse(null).rules).value;
    expect(clothFindings(cloth!, job, plan, INCHES).map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('1 cut fewer') as string,
    ]);
  });

  it('are never paired across two rooms, nor two lengths', () => {
    for (const other of [{ room: '402' }, { 'finished drop': 90 }]) {
      const [cloth] = clothsOf(floorOf([HALVES, { ...HALVES, ...other }], SHARED));
      expect([count(cloth!.cuts), cloth?.paired]).toEqual([6, 0]);
    }
  });

  it('are not shared where every window’s cloth is bought by itself', () => {
    const works = floorOf([{ ...HALVES, quantity: 2 }], { ...SHARED, 'yardage rounded by': 'window' });
    expect(count(clothsOf(works)[0]!.cuts)).toBe(6);
    expect(works[0]?.cloth().cuts).toBe(6);
  });

  it('of the lining are paired as those of the face', () => {
    const lined = { ...HALVES, lining: 'lined' };
    const cloths = clothsOf(floorOf([lined, lined], SHARED));
    const rows = floorOf([lined], SHARED);
    expect(rows[0]?.behind('lining')?.widths).toBe(2.5);
    expect(count(named(cloths, 'lining').cuts)).toBe(5);
  });
});

describe('repeats in the plan', () => {
  const patterned = { ...KING, 'vertical repeat': 25 };
  const drawn = (cloth: Cloth) => [
    cloth.cuts.map(({ length, bare, count: many }) => [
      toUnit(length, 'in'),
      toUnit(bare ?? length, 'in'),
      many,
    ]),
    toUnit(cloth.cloth, 'in'),
  ];

  it.each([
    ['every cut up', [[125, 112, 12]], 12 * 125],
    ['first cut exact', [[125, 112, 12]], 112 + 11 * 125],
    ['one repeat each', [[137, 112, 12]], 112 + 11 * 137],
    // A B A in each of 4 panels, 8 A and 4 B: 112 is 8.96 half repeats of 12½, so 9 before an unlike start,
    // 10 before a like one. A and B in turn, 4 of each, then 4 A: 8 times 112½, 4 times 125.
    [
      'half-drop alternating',
      [
        [125, 112, 8],
        [125, 112, 4],
      ],
      8 * 112.5 + 4 * 125,
    ],
  ] as const)(
    '“%s”: 112 with a repeat of 25, two windows, and what they come to off one bolt',
    (rule, cuts, cloth) => {
      const works = floorOf([{ ...patterned, quantity: 2 }], { 'repeat rule': rule });
      expect(drawn(clothsOf(works)[0]!)).toEqual([cuts, cloth]);
    },
  );

  it('a half-drop’s cuts say their start and what they take before the other one', () => {
    const [cloth] = clothsOf(floorOf([patterned], { 'repeat rule': 'half-drop alternating' }));
    expect(cloth!.cuts.map(({ start, unlikeTwice }) => [start, toUnit(unlikeTwice ?? 0, 'in')])).toEqual([
      ['A', 225],
      ['B', 225],
    ]);
  });

  it('a first cut is exact at every window where each is bought by itself', () => {
    const rules = { 'repeat rule': 'first cut exact', 'yardage rounded by': 'window' } as const;
    const works = floorOf([{ ...patterned, quantity: 2 }], rules);
    expect(drawn(clothsOf(works)[0]!)).toEqual([[[125, 112, 12]], 2 * 112 + 10 * 125]);
  });

  it('half a nanometre is made up at every other cut: 9 half repeats of 25 1/64', () => {
    const cutting = cuttingOf(inches(112), inches(25 + 1 / 64), 'half-drop', readHouse(null).rules);
    // A B A B: three times 9 half repeats, and the last up to 5 repeats.
    const run = runOfCuts(cutting, { a: 2, b: 2, shared: 0 });
    const half = ((25 + 1 / 64) * 25_400_000 * 9) / 2;
    const lengths = run.flatMap(({ length, count: many }) => Array.from({ length: many }, () => length));
    expect(lengths.sort((a, b) => a - b)).toEqual([half - 0.5, half + 0.5, half + 0.5, inches(125 + 5 / 64)]);
  });
});

describe('the pattern’s start', () => {
  const patterned = { ...KING, 'vertical repeat': 25, quantity: 3 };
  const roll = fromUnit(20, 'yd');
  const flaws = [{ from: fromUnit(10, 'yd'), length: fromUnit(0, 'yd') }];
  const planOf = (rules: Record<string, string>, row: Row = patterned) => {
    const works = floorOf([row], rules);
    const job = clothJob(
      clothsOf(works)[0]!,
      { received: [{ length: roll, flaws }, { length: roll }] },
      INCHES,
    );
    const plan = cutPlan(job, works[0]!.rules).value;
    expect(faultsOf(job, plan)).toEqual([]);
    return plan;
  };
  const begins = (plan: ReturnType<typeof planOf>) =>
    plan.rolls.map(({ stretches }) =>
      stretches.map(({ from, length }) => [from, length].map((length) => toUnit(length, 'in'))),
    );

  it('takes one repeat off every stretch, after a flaw too', () => {
    expect(begins(planOf({ 'pattern start': 'one repeat' }))).toEqual([
      [
        [25, 335],
        [385, 335],
      ],
      [[25, 695]],
    ]);
  });

  it('takes nothing where the house gives none up, nor where the cloth has no repeat', () => {
    const whole = [
      [
        [0, 360],
        [360, 360],
      ],
      [[0, 720]],
    ];
    expect(begins(planOf({}))).toEqual(whole);
    const plain = { ...KING, quantity: 2 };
    expect(planOf({ 'pattern start': 'one repeat' }, plain)).toEqual(planOf({}, plain));
  });

  it('leaves a stretch too short for it unused, and says so where a cut then fits nowhere', () => {
    const works = floorOf([patterned], { 'pattern start': 'one repeat' });
    const short = { ordered: inches(130) };
    expect(() => clothJob(clothsOf(works)[0]!, short, INCHES)).toThrow('Once 25 in is given up');
  });

  it('keeps the bound true: a plan that gives up cloth never opens fewer rolls', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 150, max: 900 }), (windows, yards) => {
        const plans = ['nothing', 'one repeat'].map((start) => {
          const works = floorOf([{ ...patterned, quantity: windows }], { 'pattern start': start });
          const supply = { ordered: fromUnit(yards / 10, 'yd') };
          const job = clothJob(clothsOf(works)[0]!, supply, INCHES);
          const plan = cutPlan(job, works[0]!.rules).value;
          expect(faultsOf(job, plan)).toEqual([]);
          // Cuts of one length: the last needs 112, every other one 125 (common practice, no source).
          const given = start === 'nothing' ? 0 : inches(25);
          const each = 1 + Math.floor((supply.ordered - given - inches(112)) / inches(125));
          expect(plan.rolls.length).toBe(Math.ceil((windows * 6) / each));
          expect([plan.proven, plan.lowerBound]).toEqual([true, plan.rolls.length]);
          return plan.rolls.length;
        });
        expect(plans[1]).toBeGreaterThanOrEqual(plans[0] ?? Infinity);
      }),
      { numRuns: 60, seed: 4 },
    );
  });
});

describe('a floor of any windows under any house', () => {
  const row: fc.Arbitrary<Row> = fc.record({
    room: fc.constantFrom('401', '402', undefined),
    'rod width': sixtyFourths(20, 200),
    'finished drop': sixtyFourths(30, 130),
    heading: fc.constantFrom('pinch', 'grommet', 'wave'),
    draw: fc.constantFrom('pair', 'one-way left', 'stationary cover'),
    fabric: fc.constantFrom('Ostrel linen', 'Fen voile'),
    'fabric width': fc.constant(54),
    'vertical repeat': fc.option(sixtyFourths(2, 40), { nil: undefined }),
    match: fc.constantFrom('straight', 'half-drop', undefined),
    lining: fc.constantFrom('unlined', 'lined', 'interlined', 'blackout', undefined),
    quantity,
  });
  const rows = fc.array(row, { minLength: 1, maxLength: 6 });
  const EXACT = { 'yardage step': '0 yd' };
  const sumOf = (cloths: readonly Cloth[], layer: Cloth['layer']): number =>
    cloths.reduce((sum, one) => sum + (one.layer === layer ? one.cloth : 0), 0);

  it('its cuts come to the yardage of each layer before it is rounded, to the nanometre', () => {
    fc.assert(
      fc.property(rows, house, (given, words) => {
        const works = floorOf(given, { ...words, ...EXACT });
        const cloths = clothsOf(works);
        const face = works.reduce((sum, work) => sum + work.cloth().yardage, 0);
        const behind = (cloth: Behind): number =>
          works.reduce((sum, work) => sum + (work.behind(cloth)?.yardage ?? 0), 0);
        const lining = works.reduce((sum, work) => sum + work.liningYardage().value, 0);
        expect(behind('lining') + behind('blackout lining')).toBe(lining);
        const sums = (['face', 'lining', 'interlining'] as const).map((layer) => sumOf(cloths, layer));
        const alone = [face, lining, behind('interlining')];
        if (cloths.every(({ paired }) => paired === 0)) expect(sums).toEqual(alone);
        else sums.forEach((sum, at) => expect(sum).toBeLessThanOrEqual(alone[at] ?? 0));
      }),
      { numRuns: 400, seed: 4 },
    );
  });

  it('pairing loses no half width: the cuts of a room are its halves, rounded up once', () => {
    fc.assert(
      fc.property(rows, (given) => {
        const works = floorOf(given, { ...SHARED, ...EXACT });
        const halves = new Map<string, number>();
        for (const work of works) {
          const { cut } = work.cloth();
          const key = `${work.window.fabric ?? ''} ${work.cutLength().value} ${work.window.room ?? ''}`;
          expect(cut).toBeGreaterThan(0);
          halves.set(key, (halves.get(key) ?? 0) + 2 * work.widths() * work.quantity);
        }
        const wanted = [...halves.values()].reduce((sum, one) => sum + Math.ceil(one / 2), 0);
        const faces = clothsOf(works).filter(({ layer }) => layer === 'face');
        expect(faces.reduce((sum, { cuts }) => sum + count(cuts), 0)).toBe(wanted);
        const rowByRow = works.reduce((sum, work) => sum + work.cloth().cuts, 0);
        expect(faces.reduce((sum, { paired }) => sum + paired, 0)).toBe(rowByRow - wanted);
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  it('spares are the same in the plan and in the totals, whatever the house', () => {
    fc.assert(
      fc.property(rows, house, fc.constantFrom('0', '5 %', '12.5 %'), (given, words, share) => {
        const works = floorOf(given, { ...words, 'spare windows': share });
        const planned = clothsOf(works).filter(({ layer }) => layer === 'face');
        const totals = faceTotals(works, works[0]!.rules, 'up the roll');
        expect(planned.map(({ spares }) => spares)).toEqual(totals.map(({ spares }) => spares));
        if (share !== '0') expect(planned.every(({ spares }) => spares.length > 0)).toBe(true);
      }),
      { numRuns: 100, seed: 4 },
    );
  });

  it('every cloth has a plan without a fault, its bound never above its rolls', () => {
    fc.assert(
      fc.property(rows, house, fc.constantFrom('nothing', 'one repeat'), (given, words, start) => {
        const works = floorOf(given, { ...words, 'pattern start': start });
        for (const cloth of clothsOf(works).filter(({ cuts }) => cuts.length > 0)) {
          const job = clothJob(cloth, { ordered: fromUnit(60, 'yd') }, INCHES);
          const plan = cutPlan(job, works[0]!.rules).value;
          expect(faultsOf(job, plan)).toEqual([]);
          expect(plan.short).toEqual([]);
          expect(plan.lowerBound).toBeLessThanOrEqual(plan.rolls.length);
        }
      }),
      { numRuns: 60, seed: 4 },
    );
  });
});
