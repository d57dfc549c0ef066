import { expect, it } from 'vitest';
import { DEVELOPMENT, place, servedAt } from '../../src/make/served.mjs';

it.each([
  ['https://addins.example.org', 'https://addins.example.org'],
  ['https://example.org/drapery/', 'https://example.org/drapery'],
  ['https://example.org:8443/a/b_c/1.3.0', 'https://example.org:8443/a/b_c/1.3.0'],
])('%s is a place to serve from', (asked, where) => {
  expect(place(asked)).toBe(where);
});

it.each([
  'http://example.org',
  'example.org',
  'https://',
  'https://example.org/?v=1',
  'https://example.org/#a',
  'https://example.org/a b',
  'https://example.org/"><script>',
  'https://user@example.org',
  '',
])('“%s” is refused in a sentence', (asked) => {
  expect(() => place(asked)).toThrow(
    `HEMLEDGER_ORIGIN reads “${asked}”. Office loads add-ins over https only`,
  );
});

it('a file names the new place everywhere, and a domain without its path', () => {
  const file = `<AppDomain>${DEVELOPMENT}</AppDomain><a href="${DEVELOPMENT}/help.html"/>`;
  expect(servedAt('https://example.org/drapery')(file)).toBe(
    '<AppDomain>https://example.org</AppDomain><a href="https://example.org/drapery/help.html"/>',
  );
});
