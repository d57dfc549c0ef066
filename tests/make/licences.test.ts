import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { entryOf, isAgreed, packageOf, written } from '../../src/make/licences.mjs';

const top = mkdtempSync(join(tmpdir(), 'hemledger-'));
afterAll(() => {
  rmSync(top, { recursive: true });
});

function bring(name: string, about: object, files: Readonly<Record<string, string>> = {}): string {
  const folder = join(top, 'node_modules', name);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name, version: '1.0.0', ...about }));
  for (const [file, text] of Object.entries(files)) writeFileSync(join(folder, file), text);
  return folder;
}

// The terms are SPDX's: https://spdx.dev/ids.
it.each([
  ['MIT', true],
  ['(MIT OR GPL-3.0-only)', true],
  ['MIT AND ISC', true],
  ['MIT AND GPL-2.0-only', false],
  ['GPL-3.0-or-later', false],
  ['LGPL-2.1-only', false],
  ['MPL-2.0', false],
  ['UNLICENSED', false],
])('a package under %s may ship: %s', (expression, may) => {
  expect(isAgreed(expression)).toBe(may);
});

it('a file belongs to the innermost package', () => {
  expect(packageOf('/a/node_modules/@b/c/lib/d.js')).toBe('/a/node_modules/@b/c');
  expect(packageOf('/a/node_modules/e/node_modules/f/g.js')).toBe('/a/node_modules/e/node_modules/f');
  expect(packageOf('/a/src/g.ts')).toBeUndefined();
});

describe('the entry of a package', () => {
  it('is its licence in its own words, notices too', () => {
    const folder = bring(
      'loom',
      { license: 'MIT' },
      { 'LICENSE.md': 'May be used.\n', NOTICE: 'Made by hand.' },
    );
    expect(entryOf(folder)).toEqual({
      name: 'loom',
      version: '1.0.0',
      license: 'MIT',
      text: 'May be used.\n\nMade by hand.',
    });
  });

  it('is the standard text with its author where it brings none', () => {
    const { text } = entryOf(bring('reed', { license: 'ISC', author: { name: 'A. Weaver' } }));
    expect(text).toMatch(/^Copyright \(c\) A\. Weaver\n\nPermission to use, copy/);
  });

  it('is found in its text where the package names none', () => {
    const folder = bring('warp', {}, { LICENSE: 'Apache License\nVersion 2.0, January 2004' });
    expect(entryOf(folder).license).toBe('Apache-2.0');
  });

  it('is refused where it is not agreed, or cannot be told', () => {
    expect(() => entryOf(bring('weft', { license: 'GPL-3.0' }))).toThrow('weft 1.0.0 is under “GPL-3.0”');
    expect(() => entryOf(bring('selvage', {}))).toThrow('selvage 1.0.0 is under “no licence”');
    expect(() => entryOf(bring('heddle', { license: 'BSD-3-Clause' }))).toThrow('brings no text');
  });
});

it('the list is in order of names, whatever the order they came in', () => {
  const entry = (name: string) => ({ name, version: '1.0.0', license: 'MIT', text: name });
  expect(written([entry('b'), entry('a')])).toBe(written([entry('a'), entry('b')]));
});
