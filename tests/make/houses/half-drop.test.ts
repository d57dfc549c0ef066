import { describe, expect, it } from 'vitest';
import { exact } from '../../../src/make/houses/exact';
import { halfDrop, lettersOf } from '../../../src/make/houses/half-drop';

describe('half-drop (common practice, no source; figures worked by hand)', () => {
  it('cuts all of one letter before the other where a change costs more: 4 × 120 + 130 + 120 = 730', () => {
    expect(lettersOf({ panels: 2, widths: exact(3) })).toEqual({ a: 4, b: 2 });
    expect(halfDrop(exact(112), exact(20), { panels: 2, widths: exact(3) }).toString()).toBe('730');
  });

  it('cuts in turn where a change costs less: 3 × 253 + 276 = 1035', () => {
    expect(halfDrop(exact(252), exact(46), { panels: 2, widths: exact(2) }).toString()).toBe('1035');
  });

  it('gives the two halves of a shared width one letter: A, B and half an A twice are 3 A and 2 B', () => {
    expect(lettersOf({ panels: 2, widths: exact('2.5') })).toEqual({ a: 3, b: 2 });
    expect(lettersOf({ panels: 2, widths: exact('1.5') })).toEqual({ a: 2, b: 1 });
  });

  it('has one letter only in panels of one width', () => {
    expect(lettersOf({ panels: 2, widths: exact(1) })).toEqual({ a: 2, b: 0 });
    expect(halfDrop(exact(112), exact(20), { panels: 2, widths: exact(1) }).toString()).toBe('240');
  });
});
