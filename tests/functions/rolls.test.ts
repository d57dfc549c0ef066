import { describe, expect, it } from 'vitest';
import { CUTPLAN } from '../../functions/rolls';
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
