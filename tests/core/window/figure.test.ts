import { describe, expect, it } from 'vitest';
import { numberFigure, moneyFigure, textFigure } from '../../../src/core/cell/answer';
import { COUNT } from '../../../src/core/cell/figure-kinds';
import { money } from '../../../src/core/exact/money';
import { noAnswer, refuse } from '../../../src/core/cell/answer';
import { quantityOf, workedOut, workedOutNumber, type WindowFigure } from '../../../src/core/window/figure';

const NO_WINDOW = undefined as never;
const figureOf = (more: Partial<WindowFigure>): WindowFigure => ({
  key: 'one',
  group: 'Cloth',
  heading: 'one',
  also: [],
  says: 'words',
  kind: COUNT,
  from: 'WIDTHS',
  needs: [],
  work: () => numberFigure(7),
  ...more,
});

describe('a figure of a window', () => {
  it('is of its kind’s quantity', () => {
    expect(quantityOf(figureOf({}))).toBe(COUNT.quantity);
  });

  it('is a plain number to compare with: an amount too, a text never', () => {
    expect(workedOutNumber(figureOf({}), NO_WINDOW)).toBe(7);
    expect(workedOutNumber(figureOf({ work: () => moneyFigure(money('12.5')) }), NO_WINDOW)).toBe(12.5);
    expect(workedOutNumber(figureOf({ work: () => textFigure('7') }), NO_WINDOW)).toBeUndefined();
    expect(workedOutNumber(figureOf({ work: () => undefined }), NO_WINDOW)).toBeUndefined();
  });

  it('that has a quicker way is asked that way', () => {
    expect(workedOutNumber(figureOf({ quickly: () => 8 }), NO_WINDOW)).toBe(8);
  });

  it('may be lacking only where its declaration says so', () => {
    const lacks = () => noAnswer('priceNotSet', 'rules', 'labor pinch');
    expect(workedOut(figureOf({ mayLack: true, work: lacks }), NO_WINDOW)).toBeUndefined();
    expect(() => workedOut(figureOf({ work: lacks }), NO_WINDOW)).toThrow(/labor pinch/);
  });

  it('whose input is wrong is refused, lacking or not', () => {
    const wrong = () => refuse('noStockRods', 'stockLengths');
    expect(() => workedOut(figureOf({ mayLack: true, work: wrong }), NO_WINDOW)).toThrow(/is blank/);
  });
});
