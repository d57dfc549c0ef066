import { expect, it } from 'vitest';
import { HEADING_FINDINGS as TABLE } from '../../../src/core/findings/heading';
import { faulty } from './sentences';

it('every sentence ends, and says every word it is given', () => {
  expect(faulty(TABLE)).toEqual([]);
});

it('other widths are named only where there are some', () => {
  const says = (beside: string): string => TABLE.noPleatsSuit.says('2.1×', '5 in', '8 in', beside);
  expect(says('6 suit')).toContain(' Of other widths, 6 suit. Change the widths');
  expect(says('')).toContain('take up 8 in each. Change the widths');
});

it('load and ladders are left to whoever hangs the rod', () => {
  expect(TABLE.loadCaution.says()).toMatch(/installer’s judgement; local codes and licensed practice decide/);
});
