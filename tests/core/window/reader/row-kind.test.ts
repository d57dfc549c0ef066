import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../../src/core/window/reader/cells';
import { RowKinds } from '../../../../src/core/window/reader/row-kind';
import { planOf, slot } from './slots';

const WINDOWS = planOf(
  [
    slot(0, ['room']),
    slot(1, ['rodWidth']),
    slot(2, ['finishedDrop']),
    slot(3, ['heading']),
    slot(4, ['draw']),
    slot(5, ['yardage']),
  ],
  { usual: new Set(['rodWidth', 'finishedDrop', 'heading', 'draw']) },
);
const kindOf = (...cells: Cell[]): string => new RowKinds(WINDOWS).kindOf(cells);

describe('a row of windows', () => {
  it('is one where what was measured stands, a part of it missing or not', () => {
    expect(kindOf('Den', 94, 96, 'pinch', 'pair', 12)).toBe('window');
    expect(kindOf('Den', 94, 96, null, null, null)).toBe('window');
    expect(kindOf('Den', '”', '”', 'pinch', 'pair', null)).toBe('window');
  });

  it('is one that is badly written where its cells cannot be read', () => {
    expect(kindOf('Den', '9x4x', '96x', 'pinchh pl?', 'pair', 12)).toBe('window');
  });

  it('is a note once it is cancelled', () => {
    expect(kindOf('Den, cancelled', 94, 96, 'pinch', 'pair', 12)).toBe('note');
  });

  it('is none where it is blank, headed anew, or words alone', () => {
    expect(kindOf(null, null, null, null, null, null)).toBe('blank');
    expect(kindOf('room', 'rodWidth', 'finishedDrop', 'heading', 'draw', null)).toBe('repeat header');
    expect(kindOf('First floor', null, null, null, null, null)).toBe('words');
  });
});

describe('a row of figures without a window', () => {
  it('is a total by its word, or where only sums stand in it', () => {
    expect(kindOf('Total', null, null, null, null, 48)).toBe('total');
    expect(kindOf(null, null, null, null, null, 48)).toBe('total');
  });

  it('is a payment, told as a note', () => {
    expect(kindOf('Chq 14 March', null, null, null, null, 48)).toBe('note');
  });

  it('is goods of another kind where its words name them', () => {
    expect(kindOf('Scatter cushions', null, null, null, null, 4)).toBe('other goods');
    expect(kindOf('Valance', 94, 18, null, null, 2)).toBe('other goods');
  });
});

it('orders that say nothing of the window are rows by their prices and yardages', () => {
  const orders = planOf([slot(0, ['room']), slot(1, ['fabric']), slot(2, ['yardage']), slot(3, ['amount'])]);
  const kinds = new RowKinds(orders);
  expect(kinds.kindOf(['Den', 'Linen', 12, 480])).toBe('window');
  expect(kinds.kindOf(['Total', null, 12, 480])).toBe('total');
  expect(kinds.hasWindowFacts(['Den', 'Linen', 12, 480])).toBe(false);
});
