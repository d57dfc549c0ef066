import { expect, it } from 'vitest';
import { svgOf } from '../../../src/book/papers/svg';
import type { LaidOut } from '../../../src/core/drawing/laid-out';

const DRAWN: LaidOut = {
  wide: 200,
  high: 80,
  boxes: [
    { look: 'cut', x: 0, y: 10, width: 50, height: 20, alike: 1 },
    { look: 'spare', x: 50, y: 10, width: 20, height: 20 },
  ],
  lines: [{ look: 'seam', from: [10, 0], to: [10, 40] }],
  rounds: [{ look: 'mark', x: 5, y: 5, radius: 2 }],
  words: [{ words: 'A < B & “C”', x: 20, y: 30, anchor: 'middle', turned: true }],
  says: 'Roll 1: 60 yd, 3 yd left.',
};

it('shows every mark, told apart without a colour, with its words as text and in words', () => {
  const svg = svgOf(DRAWN, 8);
  expect(svg).toMatch(/^<svg [^>]*width="200pt" height="80pt" viewBox="0 0 200 80"/);
  expect(svg).toContain('<title>Roll 1: 60 yd, 3 yd left.</title>');
  expect(svg).toContain('A &lt; B &amp; “C”');
  expect(svg).toContain('rotate(-90)');
  for (const colour of svg.match(/#[0-9A-F]{6}/g) ?? []) {
    const [red, green, blue] = [1, 3, 5].map((at) => colour.slice(at, at + 2));
    expect([red, green]).toEqual([green, blue]);
  }
  // What is left over is hatched, and the pattern is in the picture.
  expect(svg).toContain('fill="url(#rising)"');
  expect(svg.match(/<pattern /g)).toHaveLength(1);
});
