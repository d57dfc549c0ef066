import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../functions';
import { AUDIT, CHECK } from '../../functions/check';
import badInput from './check.json';

describe('bad input gets one sentence', () => {
  for (const { title, name, inputs, sentence } of badInput) {
    it(title, () => {
      expect(functionNamed(name)?.call(inputs)).toMatchObject({ error: '#VALUE!', finding: { sentence } });
    });
  }
});

const HEADERS = [['rod width', 'drop', 'heading', 'fabric width', 'widths', 'yardage']];
const cells = (outcome: ReturnType<typeof CHECK.call>): unknown =>
  'cells' in outcome ? outcome.cells : outcome;

describe('CHECK and AUDIT in a sheet', () => {
  it('blank rows, totals and sections are no orders', () => {
    const rows = [
      [94, 96, 'pinch', 54, 5, 15.625],
      ['', null, '', '', '', ''],
      ['Second floor', '', '', '', '', ''],
      ['Total', '', '', '', '', 15.625],
    ];
    expect(cells(AUDIT.call([HEADERS, rows]))).toEqual([
      ['', '', '', '', '', '', '', 'All is well.', '', '', ''],
    ]);
    expect(cells(CHECK.call([HEADERS, rows.slice(0, 1)]))).toBe('');
  });

  it('works by the rules of each order’s day, where the range of rules holds several sets', () => {
    const headers = [['date', 'drop', 'heading', 'cut length']];
    // Drop 96 with top 8: 112 under bottom 8, 114 under bottom 10.
    const rows = [
      ['2025-11-20', 96, 'pinch', 112],
      ['2026-04-02', 96, 'pinch', 112],
    ];
    const rules = [
      ['in force from', '2026-03-01'],
      ['bottom allowance', 10],
      ['in force from', ''],
      ['bottom allowance', 8],
    ];
    expect(cells(CHECK.call([headers, rows.slice(0, 1), rules]))).toBe('');
    expect(cells(AUDIT.call([headers, rows, rules]))).toMatchObject([
      [2, 'check', 'cut length', 112, 114, -2, '', expect.stringContaining('it is 114 in'), '', '', ''],
    ]);
  });

  it('works by the rules of the house, in centimetres and metres too', () => {
    const rules = [
      ['unit', 'cm'],
      ['top allowance pinch', 20],
      ['bottom allowance', 20],
    ];
    // 2 panels of 120 + 8.89; 2.5 times 257.78 is 644.45. 2 of 2½ widths of 140, less 5.08 and 15.24 each, are 659.36;
    // 5 × 2.84 is 14.2 m.
    const row = [[240, 244, 'pinch', 140, 5, 14.2]];
    expect(cells(CHECK.call([HEADERS, row, rules]))).toBe('');
    expect(cells(CHECK.call([HEADERS, row]))).not.toBe('');
  });

  it('rounds nothing and keeps figures as numbers', () => {
    const rows = [[94, 96, 'pinch', 54, 7.5, 15.625]];
    expect(cells(AUDIT.call([HEADERS, rows]))).toMatchObject([
      [1, 'check', 'widths', 7.5, 5, 2.5, '', expect.any(String), '', '', ''],
    ]);
  });

  it('a column in another unit than the house’s is read in its own', () => {
    const headers = [['rod width (cm)', 'drop (cm)', 'heading', 'cut length (cm)']];
    expect(cells(CHECK.call([headers, [[240, 243.84, 'pinch', 284.48]]]))).toBe('');
    expect(cells(CHECK.call([headers, [[240, 243.84, 'pinch', 250]]]))).toContain('cut length (cm) reads');
  });
});
