import { describe, expect, it } from 'vitest';
import {
  cutsAlike,
  figure,
  halves,
  madeUp,
  numbersInWords,
  panelName,
  widthName,
} from '../../../src/core/papers/made';
import { INCHES } from '../../../src/core/exact/unit';
import { inches, READING_ROOM, windowAs } from './invented';

const cut = (number: number, long: number, start?: 'A' | 'B') => ({
  number,
  length: inches(long),
  ...(start && { start }),
});

describe('a row as it is made', () => {
  it('says cuts alike as they follow each other', () => {
    const cuts = [cut(1, 120, 'A'), cut(2, 120, 'A'), cut(3, 130, 'A'), cut(4, 120, 'B')];
    expect(cutsAlike(cuts).map(({ numbers, start }) => [numbers, start])).toEqual([
      [[1, 2], 'A'],
      [[3], 'A'],
      [[4], 'B'],
    ]);
  });

  it('says them by kind where they change too often for a page', () => {
    const cuts = Array.from({ length: 40 }, (_, at) => cut(at + 1, 100, at % 2 === 0 ? 'A' : 'B'));
    expect(cutsAlike(cuts).map(({ numbers }) => numbersInWords(numbers))).toEqual(['1, 3 … 39', '2, 4 … 40']);
  });

  it('writes numbers so that none is lost', () => {
    expect(numbersInWords([4])).toBe('4');
    expect(numbersInWords([4, 5])).toBe('4, 5');
    expect(numbersInWords([4, 5, 6])).toBe('4 to 6');
    expect(numbersInWords([1, 2, 4, 5, 9, 10])).toBe('1, 2, 4, 5, 9, 10');
  });

  it('counts widths in whole ones and halves, and reads lengths as a tape does', () => {
    expect([halves(0.5), halves(2), halves(2.5)]).toEqual(['1/2', '2', '2 1/2']);
    expect(figure(inches(15.51), INCHES)).toBe('≈ 15 1/2 in');
  });

  it('turns the cloth only where the row says so and it fits', () => {
    const wide = { ...READING_ROOM, fabricWidth: inches(118) };
    expect(madeUp(windowAs({ ...READING_ROOM, railroaded: 'railroaded' }, 1)).turned).toBe(false);
    expect(madeUp(windowAs({ ...wide, railroaded: 'railroaded' }, 1)).turned).toBe(true);
    expect(madeUp(windowAs(wide)).turned).toBe(false);
  });

  it('names panels and the halves of cuts', () => {
    const one = windowAs(READING_ROOM);
    expect(panelName(one, { side: 'left' })).toBe('left panel');
    expect(panelName(windowAs({ ...READING_ROOM, draw: 'one-way left' }), { side: 'left' })).toBe('panel');
    expect(widthName({ cut: cut(5, 112, 'A'), half: 'left', flat: 0 })).toBe('5A (left half)');
  });
});
