import { describe, expect, it } from 'vitest';
import {
  exact,
  fromUnit,
  inches,
  piecesToCover,
  times,
  TooLarge,
  toUnit,
  UNITS,
  upToStep,
  wholePieces,
  type Length,
  type LengthUnit,
} from '../../../src/core/exact/length';

const nm = (figure: number): Length => figure as Length;

describe('a length', () => {
  it('is exact by 64ths and thousandths of an inch and by millimetres', () => {
    expect(inches(1 / 64)).toBe(396_875);
    expect(inches(0.001)).toBe(25_400);
    expect(fromUnit(1, 'mm')).toBe(1_000_000);
    for (let at = 0; at < 64 * 300; at++) expect(inches(at / 64)).toBe(at * 396_875);
  });

  it('loses a cell’s binary residue as it is read', () => {
    expect(inches(110.00000000000001)).toBe(inches(110));
    expect(inches(109.49999999999999)).toBe(inches(109.5));
    expect(inches(0.1 + 0.2)).toBe(inches(0.3));
  });

  it.each([
    ['in', 25.4],
    ['ft', 304.8],
    ['yd', 914.4],
    ['cm', 10],
    ['m', 1000],
  ] as const)('takes 1 %s as %s mm', (unit, millimetres) => {
    expect(UNITS[unit]).toBe(Math.round(millimetres * UNITS.mm));
    expect(toUnit(fromUnit(1, unit), unit)).toBe(1);
  });

  it('comes out as it went in, in every unit', () => {
    for (const unit of Object.keys(UNITS) as LengthUnit[])
      for (const figure of [0.125, 1, 7.5, 84.25, 1200.5])
        expect(toUnit(fromUnit(figure, unit), unit)).toBe(figure);
  });

  it('refuses to be inexact', () => {
    expect(() => exact(Number.MAX_SAFE_INTEGER + 1)).toThrow(TooLarge);
    expect(() => exact(0.5)).toThrow(TooLarge);
    expect(() => exact(NaN)).toThrow(TooLarge);
    expect(() => times(inches(1_000), 1e9)).toThrow(TooLarge);
    expect(times(inches(112), 276)).toBe(inches(30_912));
  });
});

describe('steps and pieces', () => {
  it('goes up to the next whole step, and stays where it is one', () => {
    expect(upToStep(inches(84), inches(24))).toBe(inches(96));
    expect(upToStep(inches(96), inches(24))).toBe(inches(96));
    expect(upToStep(nm(inches(96) + 1), inches(24))).toBe(inches(120));
    expect(upToStep(inches(84), nm(0))).toBe(inches(84));
  });

  it('fits whole pieces only: 58 yd holds 17 cuts of 3 1/4 yd', () => {
    expect(wholePieces(fromUnit(58, 'yd'), fromUnit(3.25, 'yd'))).toBe(17);
    expect(wholePieces(inches(96), inches(48))).toBe(2);
    expect(wholePieces(nm(inches(96) - 1), inches(48))).toBe(1);
  });

  it('takes a part as a whole piece to cover', () => {
    expect(piecesToCover(inches(96), inches(48))).toBe(2);
    expect(piecesToCover(nm(inches(96) + 1), inches(48))).toBe(3);
    expect(piecesToCover(nm(1), inches(48))).toBe(1);
  });
});
