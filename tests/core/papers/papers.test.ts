import { expect, it } from 'vitest';
import { papersOf } from '../../../src/core/papers/papers';
import { PAPER_KINDS } from '../../../src/core/papers/paper';
import { jobWith, READING_ROOM, windowAs } from './invented';

it('of every kind a paper is made, and says of which', () => {
  for (const kind of PAPER_KINDS) {
    const { papers } = papersOf(jobWith([windowAs(READING_ROOM)]), [kind]);
    expect(new Set(papers.map((one) => one.kind))).toEqual(new Set([kind]));
  }
});

it('a quote that cannot be made is told apart', () => {
  const { papers, missing } = papersOf(jobWith([]), ['quote']);
  expect(papers).toEqual([]);
  expect(missing.map(({ kind }) => kind)).toEqual(['quote']);
});
