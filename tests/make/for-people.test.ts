import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { FINDINGS } from '../../src/core/findings/table';
import { findings, plain } from '../../src/make/for-people.mjs';
import { packed } from './pack';

const squeezed = (text: string): string => plain(text).replace(/\s+/g, ' ').trim();

it('a declaration loses its examples and what it says, and nothing else', () => {
  const source = `export const of = {
    name: 'DROP',
    says: 'Finished drop.',
    width: optional(LENGTH, 'the width' , 3),
    rule: rule(SIZE, inches(54), 'the fabric width', HOUSE),
    choices: [{ word: 'pair', says: 'two panels' }],
    examples: [{ formula: 'DROP(98)', gives: 96, because: 'less 2' }],
    work: (text: string): string => says(text, 'said'),
  } as const;`;
  expect(squeezed(source)).toBe(
    "export const of = { name: 'DROP', width: optional(LENGTH, \"\", 3), rule: rule(SIZE, inches(54), \"\", HOUSE), choices: [{ word: 'pair' }], work: (text) => says(text, 'said') };",
  );
});

it('words that are worked out stay', () => {
  expect(squeezed('rule(SIZE, 1, `of ${name}`, HOUSE);')).toBe('rule(SIZE, 1, `of ${name}`, HOUSE);');
});

it('a finding that no cell function says is left out, and the others stay as they are', () => {
  const source =
    "export const T = table({ a: { weight: 'check', says: () => 'A' }, b: { elsewhere: true, weight: 'note', says: () => 'B' } });";
  expect(findings(source).replace(/\s+/g, ' ').trim()).toBe(
    "export const T = table({ a: { weight: 'check', says: () => 'A' } });",
  );
});

const LEFT_OUT = Object.entries(FINDINGS).flatMap(([code, entry]) => ('elsewhere' in entry ? [code] : []));

it('no file of the functions bundle names a finding that is left out of it', async () => {
  expect(LEFT_OUT.length).toBeGreaterThan(20);
  const { files } = await packed('functions');
  const own = files.filter((file) => file.endsWith('.ts') && !file.includes('core/findings/'));
  expect(own).toContain('src/core/window/reader/order-rows.ts');
  for (const file of own) {
    const text = readFileSync(fileURLToPath(new URL(`../../${file}`, import.meta.url)), 'utf8');
    expect(
      LEFT_OUT.filter((code) => new RegExp(`\\b${code}\\b`).test(text)),
      file,
    ).toEqual([]);
  }
});
