/** A sample of `npm run exact`, with a seed of its own. */
import { describe, expect, it } from 'vitest';
import { compare } from '../../../src/make/exact/compare';

const SAMPLE = { houses: 6, times: 1, cloths: 1, seed: 1959 };

describe('a sample of the exact comparison', () => {
  const { counts, differing, shown } = compare(SAMPLE);

  it('differs nowhere but where the data file says that the rules are still to change', () => {
    expect(shown).toEqual([]);
    expect(differing).toBe(0);
  });

  it('holds answers of every kind', () => {
    expect(Object.keys(counts).sort()).toEqual([
      'advice',
      'bay',
      'brackets',
      'break price',
      'cut',
      'delivered',
      'drop',
      'extension',
      'finished',
      'grommets',
      'hardware cost',
      'lining',
      'lining cut',
      'making',
      'panels',
      'pleats',
      'pocket',
      'railroaded',
      'rings',
      'rod height',
      'rod pieces',
      'rod width',
      'roll cuts',
      'row',
      'sales tax',
      'saved',
      'sell price',
      'sheer',
      'snaps',
      'stack',
      'weight',
      'widths',
      'yardage',
    ]);
    expect(Object.values(counts).reduce((sum, one) => sum + one)).toBeGreaterThan(12_000);
  });
});
