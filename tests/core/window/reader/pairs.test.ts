import { describe, expect, it } from 'vitest';
import { readHeading } from '../../../../src/core/window/reader/heading';
import { countsPairs } from '../../../../src/core/window/reader/pairs';

describe('a column counts pairs', () => {
  it.each(['Pairs', 'Prs', 'No. of prs'])('%s', (heading) => {
    expect(countsPairs({ heading: readHeading(heading) })).toBe(true);
  });
  it.each(['Pair', 'Price per pair', 'Pairs of rods'])('not %s', (heading) => {
    expect(countsPairs({ heading: readHeading(heading) })).toBe(false);
  });
});
