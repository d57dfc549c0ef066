import { expect, it } from 'vitest';
import { table } from '../../../src/core/findings/entry';

it('a table is given back as it stands, so that its sentences keep the words they ask for', () => {
  const given = table({ short: { weight: 'check', says: (by: string) => `Short by ${by}.` } });
  expect(given.short.says('2 yd')).toBe('Short by 2 yd.');
  // @ts-expect-error A sentence that asks for a text takes no number.
  given.short.says(2);
});

it('a finding is a stop, a check or a note', () => {
  // @ts-expect-error “warning” is no weight.
  expect(table({ one: { weight: 'warning', says: () => 'No.' } }).one.weight).toBe('warning');
});
