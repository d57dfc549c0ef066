import { describe, expect, it } from 'vitest';
import { inches, TooLarge, type Length } from '../../../src/core/exact/length';
import {
  beforeLosing,
  byRatio,
  ONE,
  ratio,
  scaled,
  toFigure,
  unscaled,
  upToNanometre,
} from '../../../src/core/exact/ratio';

describe('a ratio', () => {
  it('is whole ten-thousandths', () => {
    expect(ratio(2.5)).toBe(25_000);
    expect(ratio(2.3333)).toBe(23_333);
    expect(ratio(0.1 + 0.2)).toBe(3_000);
    expect(toFigure(ratio(2.7))).toBe(2.7);
  });

  it('multiplies exactly where floats do not: 180 × 2.7 is 9 × 54, and 180 × 2.2 is 11 × 36', () => {
    expect(Math.ceil((180 * 2.7) / 54)).toBe(10);
    expect(byRatio(inches(180), ratio(2.7))).toBe(unscaled(inches(9 * 54)));
    expect(Math.ceil((180 * 2.2) / 36)).toBe(12);
    expect(byRatio(inches(180), ratio(2.2))).toBe(unscaled(inches(11 * 36)));
  });

  it('rounds to the nanometre only by name, up', () => {
    expect(upToNanometre(scaled(ONE + 1))).toBe(2);
    expect(upToNanometre(unscaled(7 as Length))).toBe(7);
  });

  it('refuses a product it could not hold exactly', () => {
    expect(() => byRatio(inches(1e8), ratio(6))).toThrow(TooLarge);
  });
});

describe('before losing a share', () => {
  it('96 ÷ (1 − 0.04) is exactly 100', () => {
    expect(beforeLosing(inches(96), ratio(0.04))).toBe(inches(100));
  });

  it('is less than a nanometre short of what leaves exactly what was wanted', () => {
    for (const drop of [84, 96, 101.015625, 63.777]) {
      for (const share of [0.03, 0.0125, 0.5]) {
        const cut = beforeLosing(inches(drop), ratio(share));
        const kept = BigInt(ONE - ratio(share));
        const wanted = BigInt(inches(drop)) * BigInt(ONE);
        expect(BigInt(cut) * kept <= wanted).toBe(true);
        expect(BigInt(cut + 1) * kept > wanted).toBe(true);
      }
    }
  });

  it('is itself where nothing is lost', () => {
    expect(beforeLosing(inches(96), ratio(0))).toBe(inches(96));
  });
});
