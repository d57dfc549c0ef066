import { describe, expect, it } from 'vitest';
import { findHeader } from '../../../../src/core/window/reader/header';
import { withLegend } from '../../../../src/core/window/reader/legend';
import { saidBy } from '../../../../src/core/window/reader/meanings';

const HEADINGS = ['Room', 'W', 'R/W', 'Height', 'Hdg', 'Fabric'];
const saysOf = (heading: string, ...lines: readonly string[]): string | undefined => {
  const { header } = findHeader([HEADINGS, ['Hall', 90, 96, 84, 'pinch', 'Ash']], [])!;
  const { reads } = withLegend(
    header,
    lines.map((line) => [line]),
  );
  return [...saidBy(reads[HEADINGS.indexOf(heading)]!)].sort((a, b) => b[1] - a[1])[0]?.[0];
};

describe('a line beside a table says what its headings stand for', () => {
  it('by a sign, or by the letters and what they stand for', () => {
    expect(saysOf('W', 'W = track width, D = finished drop')).toBe('rodWidth');
    expect(saysOf('R/W', 'RW rod width, FL finished length')).toBe('rodWidth');
    expect(saysOf('W', 'W is the finished width')).toBe('finishedWidth');
  });
  it('which of two heights is meant', () => {
    expect(saysOf('Height', 'Measures in metres. Heights are finished')).toBe('finishedDrop');
    expect(saysOf('Height', 'Hall heights to be checked')).toBe('measured');
  });
  it('by a plural, and what one figure is for', () => {
    expect(saysOf('Height', 'Heights are finished drops')).toBe('finishedDrop');
    const { header } = findHeader(
      [
        ['Room', 'Cuts', 'Yds', 'Rod', 'Labor'],
        ['Hall', 5, 14, 96, 40],
      ],
      [],
    )!;
    const { reads } = withLegend(header, [
      ['yds and cuts are per window; rods are up'],
      ['labour is per pair'],
    ]);
    expect(reads.map(({ per }) => per)).toEqual([undefined, 'window', 'window', undefined, undefined]);
    expect(saidBy(reads[3]!).get('unitPrice') ?? 0).toBeLessThan(0.3);
  });
  it('but a word of its sentence is no heading', () => {
    const rows = [
      ['Room', 'No.', 'Track', 'Drop', 'Hdg'],
      ['Hall', 2, 96, 84, 'pinch'],
    ];
    const { header } = findHeader(rows, [])!;
    const { defined } = withLegend(header, [['Track is end to end; no returns in it']]);
    expect(defined[1]).toBeUndefined();
  });
  it('and a line of prices or of other things explains nothing', () => {
    expect(saysOf('W', 'W 22.50 a drop, supplied')).not.toBe('widths');
    expect(saysOf('Hdg', 'Hdg = see the board')).toBe('heading');
  });
});
