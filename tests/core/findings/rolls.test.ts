import { expect, it } from 'vitest';
import { ROLL_FINDINGS as TABLE } from '../../../src/core/findings/rolls';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE).filter((one) => !one.startsWith('rollsShort:'))).toEqual([]);
});

it('rolls that surely fall short are told apart from a plan not yet found', () => {
  expect(TABLE.rollsShort.says('2 cuts', '6 yd', true)).toBe(
    'The rolls in hand fall short by 2 cuts: 6 yd in all. No plan can give them all: order more cloth.',
  );
  expect(TABLE.rollsShort.says('2 cuts', '6 yd', false)).toMatch(/or let the full search look for a plan/);
});

it('one cut and one cell are said in the singular', () => {
  expect(TABLE.halvesPaired.says(1)).toMatch(/: 1 cut fewer/);
  expect(TABLE.halvesPaired.says(2)).toMatch(/: 2 cuts fewer/);
  expect(TABLE.columnsDiffer.says('counts', 1, 'cut lengths', 3)).toMatch(
    /^counts has 1 cell and cut lengths has 3/,
  );
});
