import { expect, it } from 'vitest';
import { letters } from '../../../src/core/cell/letters';

it('columns are named as a spreadsheet names them, to its last, XFD', () => {
  expect([0, 25, 26, 51, 52, 701, 702, 16_383].map(letters)).toEqual([
    'A',
    'Z',
    'AA',
    'AZ',
    'BA',
    'ZZ',
    'AAA',
    'XFD',
  ]);
});
