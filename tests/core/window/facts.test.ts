import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../src/core/exact/unit';
import { FACTS } from '../../../src/core/window/facts';

const read = (key: keyof typeof FACTS, cell: string | number | null): unknown =>
  FACTS[key].kind.read(cell, { name: key, unit: INCHES });

describe('what an order says beside its figures', () => {
  it('is found under one heading alone: no word stands for two facts', () => {
    const taken = new Map<string, string>();
    for (const [key, { heading, also }] of Object.entries(FACTS))
      for (const words of [heading, ...also]) {
        expect(taken.get(words), `${words} stands for ${key} too`).toBeUndefined();
        taken.set(words, key);
      }
  });

  it.each([
    ['children', 'x', 'yes'],
    ['children', 'ja', 'yes'],
    ['children', 'none', 'no'],
    ['drawnBy', 'bead chain', 'cord'],
    ['drawnBy', 'baton', 'wand'],
    ['drawnBy', 'motorised', 'motor'],
    ['drawnBy', 'cordless', 'hand'],
  ] as const)('%s: “%s” is read as %s', (key, cell, wanted) => {
    expect(read(key, cell)).toBe(wanted);
  });

  it('a blank says nothing, whether it comes as nothing or as an empty text', () => {
    for (const key of ['children', 'drawnBy', 'customer', 'date'] as const)
      for (const blank of [null, '', '  ']) expect(read(key, blank), key).toBeUndefined();
  });
});
