import { expect, it } from 'vitest';
import { EACH_SIDE, multiply } from '../../../../src/core/window/reader/for-several';
import type { Per } from '../../../../src/core/window/reader/heading';
import type { OrderKey } from '../../../../src/core/window/meanings';
import type { Values } from '../../../../src/core/window/reader/slots';

function multiplied(values: Values, key: OrderKey, per: Per, panels?: number): Values {
  const own = { ...values };
  multiply(own, [[key, per]], panels);
  return own;
}

it('widths of a panel are those of the window', () => {
  expect(multiplied({ widths: 2.5, draw: 'pair', quantity: 4 }, 'widths', 'panel').widths).toBe(5);
  expect(multiplied({ widths: 2.5, draw: 'pair' }, 'widths', 'window').widths).toBe(2.5);
});

it('yardage of one is that of the row’s', () => {
  const row = { yardage: 6, widths: 3, draw: 'pair', quantity: 2 };
  const yardage = (per: Per) => multiplied(row, 'yardage', per).yardage;
  expect([yardage('window'), yardage('pair'), yardage('panel'), yardage('width')]).toEqual([12, 12, 24, 36]);
  expect(yardage('yard')).toBe(6);
});

it('a count of panels may be of all windows of the row', () => {
  const row = { yardage: 6, quantity: 4 };
  expect(multiplied({ ...row, draw: 'pair' }, 'yardage', 'panel', 8).yardage).toBe(48);
  expect(multiplied(row, 'yardage', 'panel', 4).yardage).toBe(24);
});

it('nothing is known of all where nobody says how many there are', () => {
  expect(multiplied({ widths: 2.5 }, 'widths', 'panel').widths).toBeUndefined();
  expect(multiplied({ yardage: 6 }, 'yardage', 'width').yardage).toBeUndefined();
});

it('“2½ ea side” is for one of the panels', () => {
  expect(['2½ ea side', '3 each', '½ per'].every((text) => EACH_SIDE.test(text))).toBe(true);
  expect(EACH_SIDE.test('5 widths')).toBe(false);
});
