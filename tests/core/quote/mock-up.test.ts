import { describe, expect, it } from 'vitest';
import { priceJob, setApart } from '../../../src/core/quote/mock-up';
import { priceOf, worksOf } from './priced';
import { INCHES } from '../../../src/core/exact/unit';

const HEADERS = ['room', 'qty', 'rod width', 'finished drop', 'heading', 'fabric', 'fabric width', 'lining'];
const ROW = [105, 96, 'pinch', 'Ostrel', 54, 'lined'];
const ROWS = [
  ['King', 6, ...ROW],
  ['Suite', 1, ...ROW],
  ['Suite', 2, ...ROW],
  ['Bar', 1, ...ROW],
];
const RULES = [
  ['labor pinch', 30],
  ['labor lined', 10],
];
const prices = new Map([
  ['Ostrel', priceOf({ price: '0 30; 100 25' }, INCHES)],
  ['lining', priceOf({ price: '8' }, INCHES)],
]);
const priced = (...rules: readonly (readonly unknown[])[]) => {
  const { works, house } = worksOf([HEADERS, ...ROWS], [...RULES, ...rules]);
  return priceJob(works, prices, house.rules, (work) => work.window.room ?? '');
};

describe('a mock-up', () => {
  it('is an order of its own at its own quantity, and what it adds is told', () => {
    // First: 18.75 × 30 + 17.25 × 8 + 6 × 40 = 940.50.
    // The rest, 9 windows in four rows: 93.375 + 18.75 + 37.375 + 18.75 = 168.25 yd × 25 = 4206.25;
    // lining by rows 85.875 + 17.25 + 34.375 + 17.25 = 154.75 × 8 = 1238; making 54 × 40 = 2160: 7604.25.
    // At once: 112 + 18.75 + 37.375 + 18.75 = 186.875 × 25 = 4671.875, to the cent 4671.88;
    // lining 103 + 17.25 + 34.375 + 17.25 = 171.875 × 8 = 1375; making 2400: 8446.88.
    const { whole, mockUp } = priced(['mock up windows', 1]);
    expect(mockUp?.says).toBe('1 window of room King');
    expect(mockUp?.first.total.toFixed(2)).toBe('940.50');
    expect(mockUp?.rest.total.toFixed(2)).toBe('7604.25');
    expect(whole.total.toFixed(2)).toBe('8446.88');
    expect(mockUp?.total.toFixed(2)).toBe('8544.75');
    expect(mockUp?.adds.toFixed(2)).toBe('97.87');
  });

  it('of each room type takes as many of every type, over its rows', () => {
    const { works, house } = worksOf(
      [HEADERS, ...ROWS],
      [
        ['mock up windows', 2],
        ['mock up of', 'each room type'],
      ],
    );
    const { first, rest, windows, groups } = setApart(works, house.rules, (work) => work.window.room ?? '');
    const seen = (list: typeof first) => list.map(({ window, quantity }) => [window.room, quantity]);
    expect(seen(first)).toEqual([
      ['King', 2],
      ['Suite', 1],
      ['Suite', 1],
      ['Bar', 1],
    ]);
    expect(seen(rest)).toEqual([
      ['King', 4],
      ['Suite', 1],
    ]);
    expect([windows, groups]).toEqual([5, 3]);
  });

  it('keeps spares and attic stock with the rest, once', () => {
    const { mockUp } = priced(['mock up windows', 1], ['attic stock', 2], ['spare windows', '5 %']);
    const attic = (one: typeof mockUp, which: 'first' | 'rest') =>
      one?.[which].lines.filter(({ kind }) => kind === 'attic stock').map(({ quantity }) => quantity);
    expect([attic(mockUp, 'first'), attic(mockUp, 'rest')]).toEqual([[], [6.25]]);
    // One window of 6 cuts without a spare: 6 × 112 in, up to 18.75 yd. Of the rest 54 cuts and 3 spare ones.
    const face = (which: 'first' | 'rest') =>
      mockUp?.[which].lines.find(({ kind }) => kind === 'face')?.quantity;
    expect(face('first')).toBe(18.75);
    expect(face('rest')).toBeGreaterThanOrEqual((57 * 112) / 36);
  });

  it('of every window there is no mock-up, and says so; of none neither', () => {
    expect(priced(['mock up windows', 50], ['mock up of', 'each room type'])).toMatchObject({
      findings: expect.arrayContaining([
        expect.objectContaining({
          sentence: 'The mock-up takes all 10 windows, so there is nothing left to price apart.',
        }),
      ]) as unknown,
    });
    expect(priced().mockUp).toBeUndefined();
  });
});
