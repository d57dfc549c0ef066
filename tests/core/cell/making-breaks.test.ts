import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAKING_BREAKS, makingReduction } from '../../../src/core/cell/making-breaks';
import { money } from '../../../src/core/exact/money';
import { INCHES } from '../../../src/core/exact/unit';

const read = (text: unknown) => MAKING_BREAKS.read(text, { name: 'making breaks', unit: INCHES });

describe('making breaks', () => {
  it.each(['100 5 %; 400 8 %', 'from 100 widths 5 %; from 400 widths 8 %', '400: 0.08; 100: 0.05'])(
    '“%s” is 5 % from 100 widths, 8 % from 400',
    (text) => {
      expect(MAKING_BREAKS.write?.(read(text) ?? [], INCHES)).toBe('100 5 %; 400 8 %');
    },
  );
  it.each([
    ['100 5', 'making breaks reads “100 5”. Write from how many widths and how much less'],
    ['5 %', 'making breaks reads “5 %”'],
    ['100 5 %; 100 8 %', '100'],
    ['many 5 %', 'making breaks reads “many”'],
    ['100 -5 %', 'making breaks reads “100 -5 %”'],
  ])('“%s” is refused in a sentence', (text, sentence) => {
    expect(() => read(text)).toThrow(sentence);
  });
  it('begin at their own figure: 99 widths bear nothing, 100 the first reduction', () => {
    const makingBreaks = read('100 5 %; 400 8 %');
    const less = (widths: number, makingBreaksOn: 'whole' | 'further widths' = 'whole') =>
      makingReduction(widths, { makingBreaks, makingBreaksOn }).toString();
    expect([99, 100, 399, 400].map((widths) => less(widths))).toEqual(['0', '0.05', '0.05', '0.08']);
    // (300 × 0.05 + 100 × 0.08) ÷ 500
    expect(less(500, 'further widths')).toBe('0.046');
  });
  it('never raise the charge, and take less off the further widths than off the whole where they rise', () => {
    const rising = fc
      .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 100 })), {
        maxLength: 4,
        selector: ([from]) => from,
      })
      .map((rows) => {
        const shares = rows.map(([, less]) => less).sort((a, b) => a - b);
        const froms = rows.map(([from]) => from).sort((a, b) => a - b);
        return froms.map((from, at) => ({ from, less: money(shares[at] ?? 0).div(100) }));
      });
    fc.assert(
      fc.property(rising, fc.integer({ min: 0, max: 2000 }), (makingBreaks, halves) => {
        const on = (makingBreaksOn: 'whole' | 'further widths') =>
          makingReduction(halves / 2, { makingBreaks, makingBreaksOn });
        for (const less of [on('whole'), on('further widths')])
          expect([less.gte(0), less.lte(1)]).toEqual([true, true]);
        expect(on('further widths').lte(on('whole'))).toBe(true);
      }),
    );
  });
});
