import { describe, expect, it } from 'vitest';
import { liningOfASheer } from '../../../src/core/audit/sheers';
import { checked, findsBy } from './row';

const SHEER = {
  layer: 'sheer',
  'rod width': 104,
  'finished drop': 96,
  heading: 'pinch',
  'fabric width': 118,
};

describe('the lining of a sheer', () => {
  it('is never ordered: its yardage is named once, and not compared', () => {
    const row = { ...SHEER, lining: 'lined', 'lining yardage': 20 };
    expect(findsBy(liningOfASheer, row)).toEqual(['liningOfASheer at lining yardage']);
    expect([...checked(row).explained()]).toEqual(['liningYardage']);
    const [found] = checked(row).foundBy(liningOfASheer);
    expect(found?.sentence).toBe(
      'lining yardage reads 20 yd, and the row is a sheer, which is never lined. Take it off the order, or give the drapery a row of its own.',
    );
  });

  it('is told of the word too, where no yardage is ordered', () => {
    expect(findsBy(liningOfASheer, { ...SHEER, lining: 'lined' })).toEqual(['sheerIsNotLined at lining']);
    expect(findsBy(liningOfASheer, { ...SHEER, lining: 'unlined', 'lining yardage': 0 })).toEqual([]);
  });

  it('is no matter of a drapery', () => {
    const drapery = { ...SHEER, layer: 'drapery', lining: 'lined', 'lining yardage': 20 };
    expect(findsBy(liningOfASheer, drapery)).toEqual([]);
  });
});
