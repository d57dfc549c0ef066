import { expect, it } from 'vitest';
import { submittals } from '../../../src/core/papers/submittals';
import { jobWith, READING_ROOM, windowAs } from './invented';

it('a public job lists what it sends for approval, on a page of its own', () => {
  const blocks = submittals(jobWith([windowAs(READING_ROOM)], { publicBuilding: true }));
  expect(blocks[0]).toEqual({ is: 'page' });
  const text = JSON.stringify(blocks);
  // The four kinds that UFGS 12 22 00 asks for.
  for (const kind of ['Product data', 'Drawings', 'Samples', 'Maintenance']) expect(text).toContain(kind);
  expect(text).toContain('Garden print');
});

it('any other job lists none', () => {
  expect(submittals(jobWith([windowAs(READING_ROOM)]))).toEqual([]);
});
