import { expect, it } from 'vitest';
import { addMoney, moneyText } from '../../../src/core/audit/over-under';

const NONE = { over: 0, under: 0 };

it('money over and money under do not make up for each other', () => {
  const sum = [60, -12.5, 0.1, 0.2, ''].reduce(addMoney, NONE);
  expect(sum).toEqual({ over: 60.3, under: 12.5 });
  expect(moneyText(sum)).toBe('60.30 over, 12.50 under');
});

it('only the side that has money is said', () => {
  expect(moneyText(addMoney(NONE, -3))).toBe('3.00 under');
  expect(moneyText(NONE)).toBe('');
});
