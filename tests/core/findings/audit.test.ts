import { expect, it } from 'vitest';
import { AUDIT_FINDINGS as TABLE } from '../../../src/core/findings/audit';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE)).toEqual([]);
});

it('a heading that stands twice is told apart from two headings of one meaning', () => {
  expect(TABLE.secondColumn.says('Cut', 'cut length', 'Cut')).toMatch(/^Two columns are headed “Cut”/);
  expect(TABLE.secondColumn.says('Cut', 'cut length', 'Length')).toMatch(
    /^“Cut” is a second column for the cut length; “Length” is read/,
  );
});
