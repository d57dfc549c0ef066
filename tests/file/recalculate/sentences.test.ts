import { describe, expect, it } from 'vitest';
import { finding } from '../../../src/core/cell/answer';
import type { Given } from '../../../src/engine/workbook';
import { findingsOf, show, table, whyError } from '../../../src/file/recalculate/sentences';

const refused = finding('missing', 'rod_width', 'rod_width', 'a length');
const given = (value: Given['value']): Given => ({
  value,
  calls: [{ cellFunction: {} as never, outcome: { error: '#VALUE!', finding: refused } }],
});

describe('a value as a cell shows it', () => {
  it.each([
    [0.1 + 0.2, '0.3'],
    [1e21, '1e+21'],
    [true, 'TRUE'],
    ['84 1/2', '84 1/2'],
    [null, ''],
  ])('%j: %s', (value, text) => {
    expect(show(value)).toBe(text);
  });

  it('rows stand in columns, numbers to the right', () => {
    expect(
      table([
        ['roll', 'yards'],
        [1, 8.5],
        [12, true],
      ]),
    ).toEqual(['roll  yards', '   1    8.5', '  12  TRUE']);
  });
});

describe('why an error', () => {
  it('the refusal of ours where the cell shows it', () => {
    expect(whyError(given('#VALUE!'))).toBe(refused.sentence);
    expect(findingsOf(given('#VALUE!'))).toEqual([refused]);
  });

  it('the error’s own sentence where it is another, or ours was caught by the formula', () => {
    expect(whyError(given('#DIV/0!'))).toMatch(/^It divides by zero/);
    expect(whyError(given(0))).toBeUndefined();
    expect(findingsOf(given(0))).toEqual([]);
  });
});
