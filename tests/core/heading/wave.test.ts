import { describe, expect, it } from 'vitest';
import { snaps } from '../../../src/core/heading/wave';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { inches, UNITS } from '../../../src/core/exact/length';

describe('the snaps of a wave', () => {
  it('are an even count, so that both edges turn to the wall', () => {
    const given = { widths: 4, heading: 'wave', draw: 'pair', fabricWidth: inches(54) } as const;
    const { value } = snaps({ ...given, rodWidth: inches(105) }, DEFAULT_RULES);
    // Each panel has 108 − 1 − 6 = 101 in: 23 snaps at 4¼, so 22; 52½ ÷ 21 is 2½.
    expect(value.snaps).toBe(22);
    expect(value.apart / UNITS.in).toBe(2.5);
  });
});
