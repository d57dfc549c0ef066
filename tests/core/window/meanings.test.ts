import { expect, it } from 'vitest';
import { COLUMN_KEYS } from '../../../src/core/window/columns';
import { FACTS } from '../../../src/core/window/facts';
import { FIGURES } from '../../../src/core/window/figures';
import { FIGURE_KEYS, MEANINGS, orderedFigure, usualHeading } from '../../../src/core/window/meanings';

it('a column may mean each thing once: measured, ordered, or a fact beside them', () => {
  const keys = MEANINGS.map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  expect(new Set(keys)).toEqual(new Set([...COLUMN_KEYS, ...FIGURE_KEYS, ...Object.keys(FACTS)]));
});

it('the ordered figures are those declared so, and each is found by its key', () => {
  expect(FIGURE_KEYS).toEqual(FIGURES.filter(({ ordered }) => ordered === true).map(({ key }) => key));
  for (const key of FIGURE_KEYS) expect(orderedFigure(key).key).toBe(key);
  // A figure that may be given as well is a window column of the same heading.
  expect(usualHeading('rodWidth')).toBe(orderedFigure('rodWidth').heading);
});
