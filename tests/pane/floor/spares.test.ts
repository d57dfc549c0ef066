import { describe, expect, it } from 'vitest';
import { readSpares } from '../../../src/pane/floor/spares';

describe('spares as typed', () => {
  it.each([
    ['5 %', '0.05'],
    ['0.05', '0.05'],
    ['none', '0'],
    ['0', '0'],
  ])('“%s” is %s of the cuts', (typed, share) => {
    expect(readSpares(typed).asked?.toString()).toBe(share);
  });

  it('a blank asks for nothing, and a share that is none is a sentence', () => {
    expect(readSpares(' ')).toEqual({});
    expect(readSpares('many').fault).toContain('spares reads “many”');
    expect(readSpares('5').fault).toContain('5 %');
  });
});
