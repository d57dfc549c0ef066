import { expect, it } from 'vitest';
import { plain } from '../../src/make/for-people.mjs';

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
