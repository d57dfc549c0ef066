import { expect, it } from 'vitest';
import { dated, ditto, joined, once, onTape, short } from '../../../src/make/houses/cells';
import { exact } from '../../../src/make/houses/exact';
import type { Line } from '../../../src/make/houses/line';

it('writes a date in each house’s own way', () => {
  expect(['m/d/yy', 'dd-mmm-yy', 'd/mm/yyyy'].map((form) => dated('2024-02-07', form))).toEqual([
    '2/7/24',
    '07-Feb-24',
    '7/02/2024',
  ]);
});

it('says once what the order says, and repeats by a mark', () => {
  const line: Line = { room: 'Den', fabric: 'Fennick', 'rod width': exact('84.5'), draw: 'pair' };
  const order = { no: '1', customer: 'Pilcrow', date: '2024-02-07', lines: [line] };
  const first = { order, first: true, above: undefined };
  const second = { order, first: false, above: line };
  const room = once((one) => one.room ?? null);
  expect([room(line, first), room(line, second)]).toEqual(['Den', null]);
  const cloth = ditto('fabric', '"');
  expect([cloth(line, first), cloth(line, second)]).toEqual(['Fennick', '"']);
  expect(joined(' x ', onTape('rod width'), short('draw', { pair: 'pr' }))(line, first)).toBe('84 1/2 x pr');
});
