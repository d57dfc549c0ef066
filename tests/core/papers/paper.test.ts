import { describe, expect, it } from 'vitest';
import { amount, dayInWords, entryText, PORTRAIT, words } from '../../../src/core/papers/paper';

describe('an entry of a paper', () => {
  it.each([
    [amount(1_000_000), '1,000,000.00'],
    [amount(0), '0.00'],
    [amount(-45.5), '-45.50'],
    [words('Café Zoë'), 'Café Zoë'],
    [{ as: 'share', value: 0.0725 } as const, '7.25%'],
    [{ as: 'yardage', value: 18.75 } as const, '18.75'],
    [{ as: 'day', value: 46_353 } as const, '27 November 2026'],
  ])('%j is shown as %s', (entry, text) => {
    expect(entryText(entry)).toBe(text);
  });

  it('36526 is 1 January 2000, as in every spreadsheet with the calendar of 1900', () => {
    expect(dayInWords(36_526)).toBe('1 January 2000');
  });
});

it('a page has twelve columns on either paper', () => {
  expect(PORTRAIT('a4').columns).toBe(PORTRAIT('letter').columns);
});
