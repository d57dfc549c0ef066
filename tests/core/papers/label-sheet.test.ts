import { describe, expect, it } from 'vitest';
import { houseWords } from '../../../src/core/papers/house-lines';
import { readCut } from '../../../src/core/papers/label-sheet';

const none = houseWords(new Map(), 'letter');
const typed = (
  ...lines: readonly (readonly [
    Parameters<typeof houseWords>[0] extends ReadonlyMap<infer K, unknown> ? K : never,
    string | number,
  ])[]
) => houseWords(new Map(lines.map(([key, value]) => [key, { value }])), 'letter');

describe('a sheet of labels', () => {
  it('is cut in inches or in millimetres, as the house writes it', () => {
    expect(readCut(none, 'letter')).toMatchObject({ across: 3, down: 10, wide: 189, high: 72, gapDown: 0 });
    const metric = readCut(houseWords(new Map(), 'a4'), 'a4');
    expect(metric.across * metric.down).toBe(24);
    expect(metric.wide).toBeCloseTo((70 / 25.4) * 72, 6);
    expect(readCut(typed(['labelWidth', '99.1 mm'], ['labelsAcross', 2]), 'letter')).toMatchObject({
      across: 2,
      wide: (99.1 / 25.4) * 72,
    });
  });

  it('takes the standard where a line cannot be read', () => {
    expect(readCut(typed(['labelsAcross', 'many'], ['labelHeight', 'tall']), 'letter')).toMatchObject({
      across: 3,
      high: 72,
    });
  });
});
