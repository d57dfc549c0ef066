import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutLine, CuttingJob, Roll } from '../../../src/core/rolls/cutting';
import { fromUnit, inches, UNITS, type Length } from '../../../src/core/exact/length';
import { Refusal } from '../../../src/core/cell/answer';
import { cutPlan, rollCuts, type RollsCut } from '../../../src/core/rolls/rolls';
import { DEFAULT_RULES, readHouse } from '../../../src/core/house/house';
import { writeStep } from '../../../src/core/cell/steps';
import { INCHES } from '../../../src/core/exact/unit';
import { faultsOf } from './plan-faults';

const yards = (figure: number): Length => fromUnit(figure, 'yd');
const cutsFrom = (given: RollsCut) => rollCuts(given, DEFAULT_RULES);
const planOf = (job: CuttingJob) => cutPlan(job, DEFAULT_RULES).value;

describe('whole cuts from rolls', () => {
  it('rolls of 58, 61½, 47 and 52¼ yd give 65 cuts of 3¼ yd, not the 67 of the yards added up', () => {
    const { value, steps } = cutsFrom({
      rollLengths: [58, 61.5, 47, 52.25].map(yards),
      cutLength: yards(3.25),
    });
    expect(value).toBe(65);
    expect(steps.map((one) => writeStep(one, INCHES))).toEqual([
      'roll 1, whole cuts: 58 yd ÷ 117 in, down = 17',
      'roll 2, whole cuts: 61 1/2 yd ÷ 117 in, down = 18',
      'roll 3, whole cuts: 47 yd ÷ 117 in, down = 14',
      'roll 4, whole cuts: 52 1/4 yd ÷ 117 in, down = 16',
      'cuts from 4 rolls: 65',
      'not to be counted on: the yards added up would say 67, but no cut crosses from one roll to the next = 67',
    ]);
  });

  it('52¼ yd and cuts of 112 up to 135 are 14, not 13: the last needs 112 (common practice, no source)', () => {
    const given = { rollLengths: [yards(52.25)], cutLength: inches(112), verticalRepeat: inches(27) };
    const { value, steps } = cutsFrom(given);
    expect(value).toBe(14);
    expect(steps.map((one) => writeStep(one, INCHES))).toEqual([
      'cut length with repeat: 112 in up to whole repeats of 27 in = 135 in',
      'roll 1, whole cuts: (52 1/4 yd − 112 in for the last) ÷ 135 in, down, and the last = 14',
      'cuts from the roll: 14',
    ]);
    // One repeat given up at the roll’s start: 1,881 − 27 − 112 = 1,742, 12 times 135 and the last.
    const { rules } = readHouse([['pattern start', 'one repeat']]);
    expect(rollCuts(given, rules).value).toBe(13);
  });

  it('a half-drop gives as many A as B, each roll in the order that takes least', () => {
    // By hand: 112 with a repeat of 20 takes 120 before its like and 130 before the other; 10 a roll are
    // 4 × 120 + 130 + 4 × 120 + 112 = 1,202 in, and 33 yd are 1,188: nine, 3 × 120 + 130 + 4 × 120 + 112.
    const given = { cutLength: inches(112), verticalRepeat: inches(20), match: 'half-drop' } as const;
    expect(cutsFrom({ ...given, rollLengths: [inches(1202)] }).value).toBe(10);
    expect(cutsFrom({ ...given, rollLengths: [yards(33)] }).value).toBe(9);
    // 112 with a repeat of 25 takes 125 before its like and 112½ before the other: in turn, nine are 8 × 112½ + 112.
    const turn = { ...given, verticalRepeat: inches(25) };
    expect(cutsFrom({ ...turn, rollLengths: [inches(1012)] }).value).toBe(9);
    expect(cutsFrom({ ...turn, rollLengths: [inches(1011.5)] }).value).toBe(8);
  });

  it('28 strips at 3 a roll take 10 rolls (arithmetic text, Google Books id 0k1GxFGxhoYC, p. 229)', () => {
    const strip = inches(144);
    const roll: Roll = { length: yards(12) };
    expect(cutsFrom({ rollLengths: [roll.length], cutLength: strip }).value).toBe(3);
    const plan = planOf({
      cuts: [{ length: strip, count: 28 }],
      rolls: [roll],
      supply: 'as many as it takes',
    });
    expect([plan.rolls.length, plan.lowerBound, plan.proven]).toEqual([10, 10, true]);
  });

  it('a cut of exactly the roll’s length is one cut, one nanometre more is none', () => {
    const roll = yards(58);
    expect(cutsFrom({ rollLengths: [roll], cutLength: roll }).value).toBe(1);
    expect(cutsFrom({ rollLengths: [roll], cutLength: (roll + 1) as Length }).value).toBe(0);
  });
});

/** Longest first, one by one, each into the first roll that takes it: the plain way, by another hand. */
function plainFirstFit(
  cuts: readonly CutLine[],
  rolls: readonly Length[],
  endless: boolean,
): { rolls: number; left: number } {
  const free: number[] = endless ? [] : [...rolls].sort((one, other) => other - one);
  const whole = [...free];
  let left = 0;
  const pieces = cuts.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
  for (const piece of pieces.sort((one, other) => other - one)) {
    let at = free.findIndex((one) => one >= piece);
    if (at < 0 && endless) {
      free.push(rolls[0] as number);
      whole.push(rolls[0] as number);
      at = free.length - 1;
    }
    if (at < 0) left += piece;
    else free[at] = (free[at] as number) - piece;
  }
  return { rolls: free.filter((one, at) => one < (whole[at] as number)).length, left };
}

const cutLength = fc.integer({ min: 240, max: 2_100 }).map((eighths) => inches(eighths / 8 + 60));
const lines = fc.array(fc.record({ length: cutLength, count: fc.integer({ min: 0, max: 40 }) }), {
  minLength: 1,
  maxLength: 12,
});
const rollLength = fc.integer({ min: 40, max: 260 }).map((quarters) => yards(quarters / 4));
const some = (cuts: readonly CutLine[], rolls: readonly Roll[]): boolean =>
  cuts.some(({ count }) => count > 0) &&
  cuts.every(({ length }) =>
    rolls.some((roll) => roll.length - (roll.flaws ?? []).length * yards(9) >= length),
  );

describe('random floors', { timeout: 60_000 }, () => {
  it('on order: every cut once, no roll overfilled, not below the bound, no worse than the plain first fit', () => {
    fc.assert(
      fc.property(lines, rollLength, (cuts, length) => {
        const job: CuttingJob = { cuts, rolls: [{ length }], supply: 'as many as it takes' };
        fc.pre(some(cuts, job.rolls));
        const plan = planOf(job);
        const plain = plainFirstFit(cuts, [length], true);
        expect(faultsOf(job, plan)).toEqual([]);
        expect(plan.short).toEqual([]);
        expect(plan.rolls.length).toBeGreaterThanOrEqual(plan.lowerBound);
        expect(plan.rolls.length).toBeLessThanOrEqual(plain.rolls);
        expect(plan.lowerBound).toBeLessThanOrEqual(plain.rolls);
      }),
      { numRuns: 150, seed: 4 },
    );
  });

  it('in hand: the same, and nothing left uncut that the plain first fit gives', () => {
    fc.assert(
      fc.property(lines, fc.array(rollLength, { minLength: 2, maxLength: 40 }), (cuts, lengths) => {
        const rolls = lengths.map((length) => ({ length }));
        fc.pre(some(cuts, rolls));
        const job: CuttingJob = { cuts, rolls, supply: 'in hand' };
        const plan = planOf(job);
        const plain = plainFirstFit(cuts, lengths, false);
        const left = plan.short.reduce((sum, { length, count }) => sum + length * count, 0);
        expect(faultsOf(job, plan)).toEqual([]);
        expect(left).toBeLessThanOrEqual(plain.left);
        if (plain.left === 0) {
          expect(plan.rolls.length).toBeLessThanOrEqual(plain.rolls);
          expect(plan.surelyShort).toBe(false);
          expect(plan.lowerBound).toBeLessThanOrEqual(plain.rolls);
        }
      }),
      { numRuns: 150, seed: 4 },
    );
  });

  const flaws = fc.option(
    fc.record({
      from: fc.integer({ min: 0, max: 9 }).map(yards),
      length: fc.integer({ min: 0, max: 36 }).map(inches),
    }),
    { nil: undefined },
  );
  const lotRolls = fc.array(
    fc.record({
      length: fc.integer({ min: 80, max: 260 }).map((q) => yards(q / 4)),
      lot: fc.constantFrom('A', 'B', 'C'),
      flaw: flaws,
    }),
    { minLength: 2, maxLength: 12 },
  );
  const roomLines = fc.array(
    fc.record({
      length: fc.integer({ min: 480, max: 880 }).map((eighths) => inches(eighths / 8)),
      count: fc.integer({ min: 1, max: 6 }),
      room: fc.option(fc.integer({ min: 401, max: 412 }).map(String), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 24 },
  );

  it('rooms, lots and flaws: no room in two lots or cut in part, nothing across a flaw', () => {
    fc.assert(
      fc.property(roomLines, lotRolls, (cuts, given) => {
        const rolls = given.map(({ length, lot, flaw }): Roll => ({ length, lot, flaws: flaw && [flaw] }));
        fc.pre(some(cuts, rolls));
        const job: CuttingJob = { cuts, rolls, supply: 'in hand' };
        expect(faultsOf(job, planOf(job))).toEqual([]);
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  it('the same cuts and rolls always give the same plan', () => {
    fc.assert(
      fc.property(lines, rollLength, (cuts, length) => {
        const job: CuttingJob = { cuts, rolls: [{ length }], supply: 'as many as it takes' };
        fc.pre(some(cuts, job.rolls));
        expect(planOf(job)).toEqual(planOf(job));
      }),
      { numRuns: 20, seed: 4 },
    );
  });
});

describe('identical windows', { timeout: 60_000 }, () => {
  it('agree with floor(roll ÷ cut), on order and in hand', () => {
    fc.assert(
      fc.property(
        cutLength,
        fc.integer({ min: 1, max: 400 }),
        fc.array(rollLength, { minLength: 2, maxLength: 20 }),
        (length, count, lengths) => {
          const each = lengths.map((roll) => Math.floor(roll / length));
          const first = lengths[0] as Length;
          fc.pre(each.some((cuts) => cuts > 0));
          if ((each[0] ?? 0) > 0) {
            const onOrder = planOf({
              cuts: [{ length, count }],
              rolls: [{ length: first }],
              supply: 'as many as it takes',
            });
            expect([onOrder.rolls.length, onOrder.proven]).toEqual([Math.ceil(count / (each[0] ?? 1)), true]);
          }
          const inHand = planOf({
            cuts: [{ length, count }],
            rolls: lengths.map((roll) => ({ length: roll })),
            supply: 'in hand',
          });
          const all = cutsFrom({ rollLengths: lengths, cutLength: length }).value;
          expect(inHand.short.reduce((sum, one) => sum + one.count, 0)).toBe(Math.max(0, count - all));
          expect(inHand.surelyShort).toBe(count > all);
          if (count > all) return;
          const most = [...each].sort((one, other) => other - one);
          let rolls = 0;
          for (let given = 0; given < count; rolls++) given += most[rolls] ?? 0;
          expect([inHand.rolls.length, inHand.proven]).toEqual([rolls, true]);
        },
      ),
      { numRuns: 200, seed: 4 },
    );
  });
});

describe('a plan', () => {
  it('opens the shorter roll where fewest rolls leave the choice', () => {
    const plan = planOf({
      cuts: [{ length: yards(3), count: 13 }],
      rolls: [60, 40, 50].map((length) => ({ length: yards(length) })),
      supply: 'in hand',
    });
    expect(plan.rolls.map(({ number }) => number)).toEqual([2]);
    expect(plan.utilisation).toBe(9_750);
  });

  it('leaves out a room whole where its lot does not suffice, and says so', () => {
    const { value, findings } = cutPlan(
      {
        cuts: [
          { length: yards(3), count: 10, room: '401' },
          { length: yards(3), count: 10, room: '402' },
        ],
        rolls: [
          { length: yards(40), lot: 'A' },
          { length: yards(22), lot: 'B' },
        ],
        supply: 'in hand',
      },
      DEFAULT_RULES,
    );
    expect(value.short).toMatchObject([{ room: '402', count: 10 }]);
    expect(findings).toMatchObject([
      { code: 'rollsShort', sentence: expect.stringContaining('10 of 108 in: 30 yd') },
    ]);
  });

  it('puts a room’s cuts and their labels on the roll, for the cutter', () => {
    const plan = planOf({
      cuts: [
        { length: yards(3), count: 4, room: '401', label: 'panels' },
        { length: yards(2), count: 3, room: '402', label: 'lining' },
      ],
      rolls: [{ length: yards(30) }],
      supply: 'as many as it takes',
    });
    expect(plan.rolls[0]?.stretches[0]).toMatchObject({
      remnant: yards(12),
      cuts: [
        { line: 0, count: 4, room: '401', label: 'panels' },
        { line: 1, count: 3, room: '402', label: 'lining' },
      ],
    });
  });

  it('cuts around a flaw: 20 yd with a flaw at 10 give three cuts of 5 yd on each side less', () => {
    const cut = (count: number) =>
      planOf({
        cuts: [{ length: yards(5), count }],
        rolls: [{ length: yards(20), flaws: [{ from: yards(9), length: inches(12) }] }, { length: yards(4) }],
        supply: 'in hand',
      });
    // 9 yd before the flaw and 10⅔ yd after it: 1 and 2 cuts, where the whole roll would give 4.
    expect(cut(3).short).toEqual([]);
    expect(cut(4)).toMatchObject({ short: [{ count: 1 }], surelyShort: true });
  });

  it('10,000 cuts of twelve lengths are planned, and proven the best by their bound', () => {
    const cuts = Array.from({ length: 12 }, (_, at) => ({
      length: inches(61.5 + at * 8.125),
      count: 833 + (at < 4 ? 1 : 0),
    }));
    const job: CuttingJob = { cuts, rolls: [{ length: yards(60) }], supply: 'as many as it takes' };
    const plan = planOf(job);
    expect(faultsOf(job, plan)).toEqual([]);
    expect(plan.proven).toBe(true);
  });
});

describe('a job no plan can be made for', () => {
  const job = (change: Partial<CuttingJob>): CuttingJob => ({
    cuts: [{ length: yards(3), count: 4 }],
    rolls: [{ length: yards(30) }, { length: yards(20) }],
    supply: 'in hand',
    ...change,
  });
  const sentences: readonly (readonly [string, CuttingJob, RegExp])[] = [
    [
      'a cut longer than every roll',
      job({ cuts: [{ length: yards(31), count: 1 }] }),
      /a cut of 1116 in.*30 yd/,
    ],
    [
      'a cut longer than every clean stretch',
      job({
        cuts: [{ length: yards(21), count: 1 }],
        rolls: [
          { length: yards(30), flaws: [{ from: yards(15), length: inches(1) }] },
          { length: yards(20) },
        ],
      }),
      /a cut of 756 in.*is 20 yd/,
    ],
    ['no cuts', job({ cuts: [{ length: yards(3), count: 0 }] }), /0 cuts/],
    ['100,000 cuts', job({ cuts: [{ length: yards(3), count: 100_000 }] }), /100000 cuts.*50000/],
    [
      '6,000 rolls',
      job({ rolls: Array.from({ length: 6_000 }, () => ({ length: yards(30) })) }),
      /6000 rolls.*5000/,
    ],
    [
      'a flaw beyond the roll',
      job({ rolls: [{ length: yards(30), flaws: [{ from: yards(31), length: inches(1) }] }] }),
      /flaw at 31 yd.*roll 1.*30 yd/,
    ],
    [
      'a lot for some rolls only',
      job({ rolls: [{ length: yards(30), lot: 'A' }, { length: yards(20) }] }),
      /blank for 1 of 2 rolls/,
    ],
  ];
  it.each(sentences)('%s: one sentence', (_, cuttingJob, sentence) => {
    let thrown: unknown;
    try {
      planOf(cuttingJob);
    } catch (refusal) {
      thrown = refusal;
    }
    expect(thrown).toBeInstanceOf(Refusal);
    expect((thrown as Refusal).message).toMatch(sentence);
  });

  it('rolls too short in all give a plan of what they can, with what is short', () => {
    const { value, findings } = cutPlan(job({ cuts: [{ length: yards(3), count: 20 }] }), DEFAULT_RULES);
    expect(value.short).toMatchObject([{ count: 4 }]);
    expect(value.surelyShort).toBe(true);
    expect(findings.map(({ code }) => code)).toEqual(['rollsShort']);
  });
});

it('lengths are whole nanometres: a third of a yard is cut as often as it goes', () => {
  expect(cutsFrom({ rollLengths: [yards(10)], cutLength: (UNITS.yd / 3) as Length }).value).toBe(30);
});
