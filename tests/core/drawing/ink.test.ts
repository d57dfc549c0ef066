import { expect, it } from 'vitest';
import { alikeFill, INKS, isPattern } from '../../../src/core/drawing/ink';

it('nothing is told apart by colour: every ink and fill is black, white or a grey', () => {
  const shades = Object.values(INKS).flatMap(({ ink, fill }) => [ink ?? '000000', fill ?? 'FFFFFF']);
  for (const shade of shades.filter((one) => !isPattern(one))) expect(shade).toMatch(/^([0-9A-F]{2})\1\1$/);
});

it('cut lengths have greys of their own, light enough to write on, and begin again where they run out', () => {
  const greys = Array.from({ length: 6 }, (_, at) => alikeFill(at));
  expect(new Set(greys).size).toBe(6);
  for (const grey of greys) expect(parseInt(grey.slice(0, 2), 16)).toBeGreaterThan(0xb0);
  expect(alikeFill(6)).toBe(greys[0]);
});
