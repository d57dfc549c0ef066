import { expect, it } from 'vitest';
import { arealOf, behindOf, layerOf, standsIn } from '../../../src/core/cloth/behind';
import { readHouse } from '../../../src/core/house/house';

it('what hangs behind the face, the lining first', () => {
  expect(behindOf('interlined')).toEqual(['lining', 'interlining']);
  expect(behindOf('blackout')).toEqual(['blackout lining']);
  expect(behindOf('lined')).toEqual(['lining']);
  for (const none of ['unlined', undefined] as const) expect(behindOf(none)).toEqual([]);
});

it('a blackout is cut as a lining and has its weight where it has none of its own', () => {
  expect([layerOf('blackout lining'), layerOf('interlining')]).toEqual(['lining', 'interlining']);
  expect([standsIn('blackout lining'), standsIn('interlining')]).toEqual(['lining', undefined]);
  const lined = readHouse([['lining weight', 4]]).rules;
  expect(arealOf('blackout lining', lined)).toBe(4);
  expect(arealOf('interlining', lined)).toBeUndefined();
  const both = readHouse([
    ['lining weight', 4],
    ['blackout lining weight', 9],
  ]).rules;
  expect(arealOf('blackout lining', both)).toBe(9);
});
