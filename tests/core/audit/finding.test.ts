import { expect, it } from 'vitest';
import { kindOf, told } from '../../../src/core/audit/finding';
import { finding } from '../../../src/core/cell/answer';

it('a finding at its row has its difference and money as plain figures', () => {
  const about = finding('totalRowDiffers', 'total', 'total', '0.3', '0.1');
  expect(told(4, about, { found: 0.3, expected: 0.1, money: 1.005 })).toMatchObject({
    row: 4,
    column: 'total',
    sure: 'sure',
    difference: 0.2,
    money: 1,
  });
  expect(told(4, about)).toMatchObject({ found: '', expected: '', difference: '', money: '' });
  // A difference is only of figures.
  expect(told(4, about, { found: 'cord', expected: 2 }).difference).toBe('');
});

it('its kind is its code in words', () => {
  expect(kindOf(told(1, finding('returnLeftOut', 'yardage', 'Likely', 'the return is', 'a', 'b', 'c')))).toBe(
    'return left out',
  );
});
