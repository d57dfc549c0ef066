import { describe, expect, it } from 'vitest';
import { DATE, showDay } from '../../../src/core/cell/day';
import { INCHES } from '../../../src/core/exact/unit';

const place = { name: 'date', unit: INCHES };
const days = (text: unknown): string[] => {
  const day = DATE.read(text, place);
  return day === undefined ? [] : [...new Set([showDay(day.early), showDay(day.late)])];
};

describe('dates as sheets write them', () => {
  it('a date in one way of writing is one day', () => {
    for (const text of [
      '2025-03-09',
      '2025-03-09T10:00:00',
      45_725,
      '45725',
      '9 Mar 2025',
      'March 9, 2025',
      '9. March 2025',
    ])
      expect(days(text), String(text)).toEqual(['2025-03-09']);
    expect(days('31/12/2024')).toEqual(['2024-12-31']);
  });

  it('a date that reads two ways keeps both', () => {
    expect(days('03/09/2025')).toEqual(['2025-03-09', '2025-09-03']);
  });

  it('what is no date is refused with a sentence', () => {
    for (const text of ['soon', '2025-02-30', '31/31/2025', true])
      expect(() => days(text), String(text)).toThrow('a date');
  });
});
