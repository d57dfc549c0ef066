import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PassingText } from '../../../src/file/xlsx/passing-text';

it('however it is cut, it is passed on as edited', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ maxLength: 5 })), fc.nat(20), fc.nat(9), (pieces, from, long) => {
      const whole = pieces.join('');
      const to = Math.min(from + long, whole.length);
      if (from > to) return;
      const text = new PassingText(pieces);
      expect(text.slice(from, to)).toBe(whole.slice(from, to));
      const parts = [...text.upTo(from)];
      text.skip(to);
      expect([...parts, '·', ...text.rest()].join('')).toBe(`${whole.slice(0, from)}·${whole.slice(to)}`);
    }),
  );
});

it('edits that overlap are a bug, not a broken file', () => {
  const text = new PassingText(['abcdef']);
  text.skip(4);
  expect(() => [...text.upTo(2)]).toThrow(/overlap/);
});
