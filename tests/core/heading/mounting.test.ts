import { describe, expect, it } from 'vitest';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';
import { mounting } from '../../../src/core/heading/mounting';

const at = (places: readonly Length[]): readonly number[] => places.map((one) => toUnit(one, 'in'));
const pieces = (...counted: readonly (readonly [number, number])[]) => ({
  pieces: counted.map(([long, count]) => ({ stockLength: inches(long), count })),
  splices: counted.reduce((sum, [, count]) => sum + count, 0) - 1,
});

describe('where brackets stand', () => {
  it('in equal spans from end to end: 104 in with four', () => {
    const { brackets, splices } = mounting({ rodWidth: inches(104), brackets: 4, pieces: pieces([144, 1]) });
    expect(at(brackets).map((one) => Math.round(one * 100) / 100)).toEqual([0, 34.67, 69.33, 104]);
    expect(splices).toEqual([]);
  });

  it('puts a splice at the farthest bracket that its piece reaches: 200 in of 120 and 96', () => {
    const { brackets, splices, added } = mounting({
      rodWidth: inches(200),
      brackets: 6,
      pieces: pieces([120, 1], [96, 1]),
    });
    expect(at(brackets)).toEqual([0, 40, 80, 120, 160, 200]);
    expect(at(splices)).toEqual([120]);
    expect(added).toBe(0);
  });

  it('gives a splice a bracket of its own where none of them is reached by both pieces', () => {
    // Of brackets every 66 in a piece of 100 reaches the one at 66, and the other from there only 166 of 198.
    const { brackets, splices, added } = mounting({
      rodWidth: inches(198),
      brackets: 4,
      pieces: pieces([100, 2]),
    });
    expect(at(splices)).toEqual([100]);
    expect(at(brackets)).toEqual([0, 66, 100, 132, 198]);
    expect(added).toBe(1);
  });

  it('always has every splice at a bracket, and no piece longer than it is', () => {
    for (let rod = 97; rod < 500; rod += 13) {
      const long = 96;
      const count = Math.ceil(rod / long);
      const { brackets, splices } = mounting({
        rodWidth: inches(rod),
        brackets: Math.ceil(rod / 36) + 1,
        pieces: pieces([long, count]),
      });
      for (const splice of splices) expect(brackets).toContain(splice);
      const ends = [0, ...at(splices), rod];
      for (let one = 1; one < ends.length; one++)
        expect((ends[one] ?? 0) - (ends[one - 1] ?? 0)).toBeLessThanOrEqual(long);
    }
  });
});
