import { describe, expect, it } from 'vitest';
import { across, EMPTY, near, up, type Drawing } from '../../../src/core/drawing/drawing';
import { drawnFigure, laidOut } from '../../../src/core/drawing/laid-out';
import { widthOf } from '../../../src/core/drawing/letters';
import { exact, inches, NO_LENGTH } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';

const PAPER = { wide: 300, high: 400, letters: 10 };
const BOX: Drawing = {
  ...EMPTY,
  title: 'A box',
  left: NO_LENGTH,
  right: inches(100),
  top: inches(50),
  boxes: [{ part: 'cloth', x: NO_LENGTH, y: NO_LENGTH, width: inches(100), height: inches(50) }],
  dimensions: [
    across('rod width', [0, inches(100)], { side: 'below', row: 1, at: NO_LENGTH, short: 'rod' }),
    across('extension', [0, inches(2)], { side: 'below', row: 2, at: NO_LENGTH, narrow: 'before' }),
    up('drop', [0, inches(50)], { side: 'right', row: 1, at: inches(100) }),
  ],
  labels: [{ words: 'a long label at the very edge', at: [NO_LENGTH, NO_LENGTH], below: 1 }],
};

describe('a drawing laid out', () => {
  it('keeps to one scale and to its paper', () => {
    const { boxes, wide, high } = laidOut(BOX, PAPER, INCHES);
    const [box] = boxes;
    expect((box?.width ?? 0) / (box?.height ?? 1)).toBeCloseTo(2, 9);
    expect(wide).toBeLessThanOrEqual(PAPER.wide + 1e-9);
    expect(high).toBeLessThanOrEqual(PAPER.high);
  });

  it('says every figure, and puts no word off the paper', () => {
    const { words, says, wide } = laidOut(BOX, PAPER, INCHES);
    expect(words.map((one) => one.words)).toContain('rod 100 in');
    expect(says).toBe('A box: rod width 100 in, extension 2 in, drop 50 in, a long label at the very edge.');
    for (const { words: text, x, anchor, turned } of words) {
      if (turned === true) continue;
      const long = widthOf(text) * PAPER.letters;
      const from = x - { start: 0, middle: long / 2, end: long }[anchor];
      expect(from).toBeGreaterThanOrEqual(-1e-9);
      expect(from + long).toBeLessThanOrEqual(wide + 1e-9);
    }
  });

  it('gives a flattened drawing a height of its own', () => {
    const { boxes } = laidOut({ ...BOX, dimensions: [], labels: [], flattened: true }, PAPER, INCHES);
    expect(boxes[0]).toMatchObject({ width: 300, height: 400 });
  });

  it('reads figures as a tape does, and marks those that are not exact', () => {
    expect(drawnFigure(inches(15.5), INCHES)).toBe('15 1/2 in');
    expect(drawnFigure(inches(15.51), INCHES)).toBe('≈ 15 1/2 in');
    // 34.8 × 16 = 556.8.
    expect(drawnFigure(inches(34.8), INCHES)).toBe('≈ 34 13/16 in');
    expect(drawnFigure(near(exact(395_123_456)), CENTIMETRES)).toBe('≈ 39.5 cm');
  });
});
