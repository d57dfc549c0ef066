import { expect, it } from 'vitest';
import { circular } from '../../src/engine/circle';

const found = (...links: readonly (readonly [number, ...number[]])[]): number[] =>
  [...circular(links.map(([id, ...next]) => ({ id, next })))].sort((one, other) => one - other);

it('a chain has no circle, whatever hangs on it', () => {
  expect(found([1, 2], [2, 3], [3], [4, 3])).toEqual([]);
});
it('a circle is found without what leads to it or from it', () => {
  expect(found([1, 2], [2, 3], [3, 2, 4], [4])).toEqual([2, 3]);
});
it('a cell that points at itself is a circle', () => {
  expect(found([1, 1], [2, 1])).toEqual([1]);
});
it('links to what is not there are nothing', () => {
  expect(found([1, 9])).toEqual([]);
});
