import { describe, expect, it } from 'vitest';
import { CUTPLAN } from '../../functions/rolls';
import { writeStep } from '../../src/core/cell/steps';
import { INCHES } from '../../src/core/exact/unit';
import badInput from './rolls.json';

const column = (cells: readonly unknown[]): unknown[][] => cells.map((cell) => [cell]);

describe('bad input gets one sentence', () => {
  for (const { title, inputs, sentence } of badInput) {
    it(title, () => {
      const outcome = CUTPLAN.call(inputs);
      expect(outcome).toMatchObject({ error: '#VALUE!', finding: { sentence } });
    });
  }
});

describe('CUTPLAN in a sheet', () => {
  it('passes over rows that are blank throughout, as a range longer than its list is', () => {
    const inputs = [column([108, 90, '', null, 0]), column([24, 12, '', null, 0]), column([60, '', 0])];
    expect(CUTPLAN.call(inputs)).toMatchObject({ findings: [] });
    expect(CUTPLAN.call(inputs)).toEqual(CUTPLAN.call([column([108, 90]), column([24, 12]), 60]));
  });

  it('says which length has no count', () => {
    expect(CUTPLAN.call([column([108, 90]), column([24, null]), 60])).toMatchObject({
      findings: [{ code: 'countMissing', sentence: expect.stringContaining('90 in') }],
    });
  });

  it('lists what the rolls in hand do not give, and says so', () => {
    const outcome = CUTPLAN.call([column([117]), column([36]), column([58, 20.5])]);
    expect(outcome).toMatchObject({
      cells: expect.arrayContaining([['short', '', 117, 13, '']]),
      findings: [
        {
          code: 'rollsShort',
          sentence:
            'The rolls in hand fall short by 13 of 117 in: 42 1/4 yd in all. No plan can give them all: order more cloth.',
        },
      ],
    });
  });

  it('takes one lot written in two ways as one lot', () => {
    const given = [column([117]), column([30]), column([58, 47]), column([401])];
    expect(CUTPLAN.call([...given, column(['Lot 7', ' lot  7'])])).toMatchObject({
      cells: [
        [1, 'Lot 7', 117, 17, expect.any(Number)],
        [2, 'Lot 7', 117, 13, expect.any(Number)],
        ...[0, 1, 2, 3].map(() => expect.any(Array)),
      ],
    });
  });

  it('says the order of cutting of a half-drop, row by row, and nothing of it elsewhere', () => {
    // By hand: 112 with a repeat of 25, 2 A and 1 B: A B A, 112½ + 112½ + 112 = 337 in, and 10 yd are 360.
    const given = [column([112, 112]), column([2, 1]), 10, null, null, null, column([25, 25])];
    const outcome = CUTPLAN.call([...given, column(['A', 'B'])]);
    expect(outcome).toMatchObject({
      cells: [
        [1, '', 112.5, 1, '', 'A'],
        [1, '', 112.5, 1, '', 'B'],
        [1, '', 112, 1, 23 / 36, 'A'],
        ['rolls used', 1, '', '', '', ''],
        ['lower bound', 1, '', '', '', ''],
        ['proven best', 'yes', '', '', '', ''],
        ['utilisation', 0.9361, '', '', '', ''],
      ],
    });
    if ('error' in outcome) throw new Error(outcome.finding.sentence);
    expect(outcome.steps.map((one) => writeStep(one, INCHES))).toContain('roll 1, order of cutting: A B A');
    // Straight: 125 + 125 + 112 = 362 in do not lie on one roll.
    const cells = expect.arrayContaining([['rolls used', 2, '', '', '']]) as unknown;
    expect(CUTPLAN.call(given)).toMatchObject({ cells });
  });

  it.each([
    [
      'a start without a repeat',
      [column(['A'])],
      undefined,
      'starts says A, but vertical_repeats has no repeat beside it. Enter the pattern’s height, or clear the start.',
    ],
    ['a start that is neither', [column(['C'])], 25, 'starts reads “C”. Use one of: A, B.'],
    [
      'starts for other rows',
      [column(['A', 'B'])],
      25,
      expect.stringContaining('Point both at the same rows') as string,
    ],
  ])('%s: one sentence', (_, [starts], repeat, sentence) => {
    for (const empty of [null, 0]) {
      const repeats = column([repeat ?? empty]);
      const outcome = CUTPLAN.call([column([112]), column([2]), 10, empty, empty, null, repeats, starts]);
      expect(outcome).toMatchObject({ error: '#VALUE!', finding: { sentence } });
    }
  });

  it('works in centimetres and metres', () => {
    const rules = [['unit', 'centimetres']];
    expect(CUTPLAN.call([column([280]), column([30]), 50, null, null, rules])).toMatchObject({
      cells: expect.arrayContaining([
        [1, '', 280, 17, 2.4],
        [2, '', 280, 13, 13.6],
      ]),
    });
  });

  it('puts each roll’s remnant in one row only, so that the column can be added up', () => {
    const outcome = CUTPLAN.call([column([108, 90]), column([24, 12]), 60]);
    const rows = 'cells' in outcome ? (outcome.cells as unknown[][]) : [];
    const remnants = rows.map((row) => row[4]).filter((cell) => typeof cell === 'number');
    expect(remnants).toEqual([0, 18]);
  });
});
