import { describe, expect, it } from 'vitest';
import { exact, inches, UNITS } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES, showRemnant } from '../../../src/core/exact/unit';

describe('what is left of a roll', () => {
  it.each([
    [27.25, '27 1/4 in'],
    [36, '1 yd'],
    [1601.25, '44 yd 17 1/4 in'],
    [0, '0 in'],
  ])('of %d in is said as %s', (figure, said) => {
    expect(showRemnant(inches(figure), INCHES)).toBe(said);
  });

  it('is said in metres and centimetres in a centimetre house', () => {
    expect(showRemnant(exact(12.345 * UNITS.m), CENTIMETRES)).toBe('12 m 34.5 cm');
  });
});
