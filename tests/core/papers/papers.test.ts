import { expect, it } from 'vitest';
import { MADE_KINDS, papersOf } from '../../../src/core/papers/papers';
import { PAPER_KINDS } from '../../../src/core/papers/paper';
import { jobWith, READING_ROOM, windowAs } from './invented';

it('every kind made is a kind of paper, and its papers say so', () => {
  for (const kind of MADE_KINDS) {
    expect(PAPER_KINDS).toContain(kind);
    const { papers } = papersOf(jobWith([windowAs(READING_ROOM)]), [kind]);
    expect(new Set(papers.map((one) => one.kind))).toEqual(new Set([kind]));
  }
});

it('a quote that cannot be made is told apart', () => {
  const { papers, missing } = papersOf(jobWith([]), ['quote']);
  expect(papers).toEqual([]);
  expect(missing.map(({ kind }) => kind)).toEqual(['quote']);
});
