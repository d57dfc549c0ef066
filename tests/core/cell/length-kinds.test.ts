import { describe, expect, it } from 'vitest';
import { ALLOWANCE, REPEAT, SHIFT, SIZE, YARDS } from '../../../src/core/cell/length-kinds';
import { inches } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';
import { read } from './read-kind';

describe('a length', () => {
  it('of 0 is blank where it makes no sense, and a figure where it does', () => {
    expect(read(SIZE, 0)).toBeUndefined();
    expect(read(REPEAT, '0')).toBeUndefined();
    expect(read(ALLOWANCE, 0)).toBe(0);
    expect(read(SHIFT, 0)).toBe(0);
  });

  it('below nothing is refused, save as a shift', () => {
    expect(read(SIZE, -3)).toBe('rod_width reads -3. It must be above 0.');
    expect(read(ALLOWANCE, -3)).toBe('rod_width reads -3. It must be 0 or more.');
    expect(read(SHIFT, '-1/2')).toBe(inches(-0.5));
  });

  it('that is absurdly large, no number or infinite is refused', () => {
    for (const raw of [1e6, 1e300, Infinity, NaN])
      expect(read(SIZE, raw)).toContain('more than the most taken here');
  });

  it('is in the house’s unit where it is bare, and in its own where it says so', () => {
    expect(read(SIZE, 100, CENTIMETRES)).toBe(1_000_000_000);
    expect(read(SIZE, '100 cm', INCHES)).toBe(1_000_000_000);
    expect(read(YARDS, 10)).toBe(inches(360));
    expect(read(YARDS, 10, CENTIMETRES)).toBe(10_000_000_000);
  });

  it('that reads in two ways is refused with both', () => {
    expect(read(SIZE, '1,234')).toBe(
      'rod_width reads “1,234”, which could be 1.234 or 1234. Write the one you mean.',
    );
  });

  it('TRUE is no length', () => {
    expect(read(SIZE, true)).toContain('reads TRUE, which is not a length');
  });
});
