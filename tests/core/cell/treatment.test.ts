import { describe, expect, it } from 'vitest';
import {
  bare,
  choices,
  DRAWS,
  HEADINGS,
  LININGS,
  MATCHES,
  MEASURED_TO,
  panelsOf,
} from '../../../src/core/cell/treatment';

describe('a word of a choice', () => {
  it('is found in any case, spacing and plural', () => {
    expect(bare('Rod-Pockets')).toBe(bare('rod pocket'));
    expect(HEADINGS.find(' PINCH  pleat ')).toBe('pinch');
    expect(DRAWS.find('Pairs')).toBe('pair');
    expect(LININGS.find('pinch')).toBeUndefined();
  });

  it('means one thing in its list', () => {
    for (const { list } of [HEADINGS, DRAWS, LININGS, MATCHES, MEASURED_TO] as const) {
      const words = (list as readonly { word: string; also?: readonly string[] }[]).flatMap(
        ({ word, also = [] }) =>
          [...new Set([word, ...also].map(bare))].map((spelled) => [spelled, word] as const),
      );
      for (const [spelled, word] of words)
        expect(words.filter(([other]) => other === spelled).map(([, owner]) => owner)).toEqual([word]);
    }
  });

  it('is itself before it is another’s other word', () => {
    const list = choices<'a' | 'b'>({ word: 'a', says: 'a', also: ['x'] }, { word: 'b', says: 'b' });
    expect([list.find('x'), list.find('B')]).toEqual(['a', 'b']);
  });
});

it('a pair has two panels, and so have side panels; every other draw has one', () => {
  expect(DRAWS.list.map(({ word }) => [word, panelsOf(word)])).toEqual([
    ['pair', 2],
    ['one-way left', 1],
    ['one-way right', 1],
    ['stationary', 2],
    ['stationary cover', 1],
    ['one stationary panel', 1],
  ]);
});
