import { describe, expect, it } from 'vitest';
import { clothWeightOf, freightOf } from '../../../src/core/floor/freight';
import { tally } from '../../../src/core/floor/tally';
import { worksOf } from '../quote/priced';

const HEADERS = ['qty', 'rod width', 'finished drop', 'heading', 'fabric', 'fabric width', 'cloth weight'];
const job = (rules: readonly (readonly unknown[])[]) => {
  const { works, house } = worksOf([HEADERS, [10, 105, 96, 'pinch', 'Ostrel', 54, 12]], rules);
  return [tally(works, house.rules), house.rules] as const;
};
const quantities = (rules: readonly (readonly unknown[])[]) =>
  freightOf(...job(rules)).freight.map(({ what, quantity, cost }) => [what, quantity, cost.toString()]);

describe('freight', () => {
  it('is nothing where the house sets none', () => {
    expect(freightOf(...job([]))).toEqual({ freight: [], findings: [] });
  });
  it('of attic stock travels with the windows: 3 cuts of 60 are a twentieth more', () => {
    // 60 × 112 in = 186 3/4 yd; 3 × 112 in = 9 1/3, up to 9 3/8 yd: 196.125 × 1.5 × 12 ÷ 16.
    expect(clothWeightOf(job([['attic stock', '5 %']])[0]).weight).toBe(220.640625);
    expect(clothWeightOf(job([['spare windows', '5 %']])[0]).weight).toBe(210.09375);
  });
  it('a carton that is just full is one carton', () => {
    const cartons = (holds: number) =>
      quantities([
        ['carton holds', holds],
        ['freight per carton', 18],
      ]);
    expect(cartons(210.09375)).toEqual([['freight by the carton', 1, '18']]);
    expect(cartons(210)).toEqual([['freight by the carton', 2, '36']]);
  });
});
