import { expect, it } from 'vitest';
import { fillNames, functionsWord, namePlace, parameter } from '../../../src/core/findings/parameters';

it('a name’s place is filled as it will be said, and nothing else in the text is touched', () => {
  const text = `${parameter('fabricWidth')} reads fabric_width; ${namePlace('anyKey')}`;
  expect(fillNames(text, functionsWord)).toBe('fabric_width reads fabric_width; any_key');
  expect(fillNames(text, (key) => `[${key}]`)).toBe('[fabricWidth] reads fabric_width; [anyKey]');
  expect(fillNames('no place at all', () => 'x')).toBe('no place at all');
});
