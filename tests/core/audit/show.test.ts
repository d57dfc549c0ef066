import { expect, it } from 'vitest';
import { figureCell, showDifference, showNear, showOf } from '../../../src/core/audit/show';
import { inches, UNITS } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';

it('a figure is shown and written in its own unit', () => {
  expect([showOf('cutLength', inches(112), INCHES), figureCell('cutLength', inches(112), INCHES)]).toEqual([
    '112 in',
    112,
  ]);
  expect(showOf('yardage', 18.75 * UNITS.yd, INCHES)).toBe('18 3/4 yd');
  expect(figureCell('yardage', 17 * UNITS.m, CENTIMETRES)).toBe(17);
  expect([showOf('widths', 6, INCHES), figureCell('widths', 6, INCHES)]).toEqual(['6', 6]);
  expect([
    showOf('deliveredFullness', 2.63247, INCHES),
    figureCell('deliveredFullness', 2.63247, INCHES),
  ]).toEqual(['2.63', 2.632]);
  expect([showOf('labor', 120, INCHES), figureCell('labor', 120, INCHES)]).toEqual(['120.00', 120]);
});

it('a length is shown to the nearest sixty-fourth, or the tenth of a millimetre', () => {
  expect(showNear(inches(84.5) + 1, INCHES)).toBe('84 1/2 in');
  expect(showNear(2_140_049_999, CENTIMETRES)).toBe('214 cm');
});

it('a difference says which way', () => {
  expect(showDifference('widths', 8, 6, INCHES)).toBe('2 more');
  expect(showDifference('yardage', 18 * UNITS.yd, 18.75 * UNITS.yd, INCHES)).toBe('3/4 yd less');
});
