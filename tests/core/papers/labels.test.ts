import { describe, expect, it } from 'vitest';
import { labelsPaper } from '../../../src/core/papers/labels';
import { entryText, words } from '../../../src/core/papers/paper';
import { houseWords } from '../../../src/core/papers/house-lines';
import { jobWith, READING_ROOM, windowAs } from './invented';

const labelsIn = (paper: ReturnType<typeof labelsPaper>): readonly (readonly string[])[] =>
  paper.blocks.flatMap((block) =>
    block.is === 'labels' ? block.labels.map((lines) => lines.map(entryText)) : [],
  );

describe('labels', () => {
  it('are one for each panel: its room from the job’s cell, left or right, which of how many', () => {
    const paper = labelsPaper(
      jobWith(
        [windowAs({ ...READING_ROOM, quantity: 2 }), windowAs({ ...READING_ROOM, draw: 'one-way left' }, 2)],
        {
          reference: words('2611-04', 'Job!B5'),
        },
      ),
    );
    expect(labelsIn(paper)).toEqual([
      ['Reading room', 'left, 1 of 4', 'line 1 · window 1 · 2611-04'],
      ['Reading room', 'right, 2 of 4', 'line 1 · window 1 · 2611-04'],
      ['Reading room', 'left, 3 of 4', 'line 1 · window 2 · 2611-04'],
      ['Reading room', 'right, 4 of 4', 'line 1 · window 2 · 2611-04'],
      ['Reading room', 'panel, 1 of 1', 'line 2 · 2611-04'],
    ]);
    const [block] = paper.blocks;
    expect(block?.is === 'labels' && block.labels[0]?.[0]?.at).toBe('Windows!A5');
  });

  it.each([
    ['letter', 30, 8.5, 11],
    ['a4', 24, 210 / 25.4, 297 / 25.4],
  ] as const)('stand on %s, %i a sheet, within its edges', (size, count, wide, high) => {
    const paper = labelsPaper(
      jobWith([windowAs(READING_ROOM)], { size, house: houseWords(new Map(), size) }),
    );
    const [block] = paper.blocks;
    if (block?.is !== 'labels') throw new Error('no labels');
    expect(block.across * block.down).toBe(count);
    const { widths = [], margins } = paper.page;
    const across = widths.reduce((sum, one) => sum + one, 0) / 72 + margins[0];
    const down = (block.down * block.high + (block.down - 1) * block.gapDown) / 72 + margins[1];
    expect(across).toBeLessThanOrEqual(wide + 1e-6);
    expect(across).toBeGreaterThan(wide - 0.25);
    expect(down).toBeLessThanOrEqual(high + 1e-6);
    expect(down).toBeGreaterThan(high - 0.6);
  });
});
