import { describe, expect, it } from 'vitest';
import {
  lengthFigure,
  moneyFigure,
  numberFigure,
  ratioFigure,
  step,
  textFigure,
  yardageFigure,
} from '../../../src/core/cell/answer';
import { cellFigure, showFigure, writeStep } from '../../../src/core/cell/steps';
import { exact, inches, UNITS } from '../../../src/core/exact/length';
import { money } from '../../../src/core/exact/money';
import { ratio } from '../../../src/core/exact/ratio';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';

const rod = lengthFigure(inches(66.5));

describe('a step', () => {
  it('is a line: what it is, how it is worked out with its figures, and what comes of it', () => {
    const figures = [lengthFigure(inches(60)), lengthFigure(inches(3.5)), lengthFigure(inches(3))];
    expect(writeStep(step('finished width', '{} + {} + {}', figures, rod), INCHES)).toBe(
      'finished width: 60 in + 3 1/2 in + 3 in = 66 1/2 in',
    );
    expect(writeStep(step('widths', '', [], numberFigure(6)), INCHES)).toBe('widths: 6');
  });

  it('leaves blank what no figure fills', () => {
    expect(writeStep(step('sum', '{} + {}', [numberFigure(1)], numberFigure(1)), INCHES)).toBe(
      'sum: 1 +  = 1',
    );
  });
});

it('a figure is shown with its unit and written without', () => {
  const yards = yardageFigure(exact(Math.round(18.75 * UNITS.yd)));
  expect([showFigure(rod, INCHES), cellFigure(rod, INCHES)]).toEqual(['66 1/2 in', 66.5]);
  // 1 in = 2.54 cm exactly: 66.5 in are 168.91 cm.
  expect(cellFigure(rod, CENTIMETRES)).toBe(168.91);
  expect([showFigure(yards, INCHES), cellFigure(yards, INCHES)]).toEqual(['18 3/4 yd', 18.75]);
  expect([showFigure(ratioFigure(ratio(2.5)), INCHES), cellFigure(ratioFigure(ratio(2.5)), INCHES)]).toEqual([
    '2.5',
    2.5,
  ]);
  expect([
    showFigure(moneyFigure(money(12.5)), INCHES),
    cellFigure(moneyFigure(money(12.5)), INCHES),
  ]).toEqual(['12.50', 12.5]);
  expect(showFigure(textFigure('as ordered'), INCHES)).toBe('as ordered');
});
