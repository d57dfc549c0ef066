import { describe, expect, it } from 'vitest';
import { codesIn, spelledOut } from '../../../../src/core/window/reader/codes';
import { headerAt } from '../../../../src/core/window/reader/header';

const header = headerAt([['Room', 'Hdg', 'Lin', 'Drop']], [0], []);

describe('code numbers that a line above explains', () => {
  it.each([
    ['Hdg 1 pencil  2 pinch  3 eyelet', ['pencil', 'pinch', 'eyelet']],
    ['HDG: 1 = pencil, 2 = pinch, 3 = eyelet.', ['pencil', 'pinch', 'eyelet']],
    ['Hdg 1) pencil 2) pinch', ['pencil', 'pinch']],
  ])('are read in “%s”', (line, words) => {
    expect([
      ...(codesIn(header, [[line]])
        .get(1)
        ?.values() ?? []),
    ]).toEqual(words);
  });

  it('begin with 0 as well', () => {
    const codes = codesIn(header, [['Lin 0 none  1 lined  2 blackout']]);
    expect(spelledOut(['Hall', 2, 0, 238], codes)).toEqual(['Hall', 2, 'none', 238]);
    expect(spelledOut(['Hall', 2, '2', 238], codes)).toEqual(['Hall', 2, 'blackout', 238]);
    expect(spelledOut(['Hall', 2, 7, 238], codes)).toEqual(['Hall', 2, 7, 238]);
  });

  it.each([
    'Hdg 2 pinch', // one only
    'Drop 240 to the floor 260 to the ceiling',
    'Hdg 1 pencil 3 pinch', // not in turn
    'Call at 4 pm 5 Mill Lane',
    '1 pencil 2 pinch', // of no column
    'Hdg 1 pencil pleat with a deep frill at the very top 2 pinch',
  ])('are none in “%s”', (line) => {
    expect(codesIn(header, [[line]]).size).toBe(0);
  });
});
