import { expect, it } from 'vitest';
import { inches } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';
import { AUDIT_RULES as RULES } from '../../../src/core/house/audit';
import { readBack } from './read-back';

it('every default is read from a cell as it is written there', () => {
  expect(readBack(RULES)).toBeGreaterThan(15);
});

it('a length may differ by what UFGS 12 22 00 (2010) allows, ± ¼ in', () => {
  expect(RULES.lengthTolerance.standard).toBe(inches(0.25));
});

it('NFPA 701 Method 1 ends at 21 oz/yd², or 700 g/m² where cloth is weighed so', () => {
  const { standard } = RULES.flameMethodOneUpTo;
  expect([INCHES, CENTIMETRES].map((unit) => (standard as (one: typeof unit) => number)(unit))).toEqual([
    21, 700,
  ]);
});
