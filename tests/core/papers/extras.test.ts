import { describe, expect, it } from 'vitest';
import { extrasOf, forTheJob, madeWith } from '../../../src/core/papers/extras';
import type { JobExtra } from '../../../src/core/papers/job';
import { orderPapers } from '../../../src/core/papers/order';
import { amount, count, words, type Paper } from '../../../src/core/papers/paper';
import { isMade, quotePaper } from '../../../src/core/papers/quote';
import { workPaper } from '../../../src/core/papers/work';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

const TIEBACKS: JobExtra = {
  line: 1,
  what: words('tiebacks'),
  words: words('pair of shaped tiebacks, Garden print'),
  quantity: { as: 'yardage', value: 2, unit: 'pair' },
  supplier: words('Fen Row Mill'),
  each: amount(12),
  price: amount(96, 'Extras!M5'),
};
const TRIM: JobExtra = {
  line: 1,
  what: words('trim'),
  quantity: { as: 'yardage', value: 5.5, unit: 'yd' },
  along: words('leading edges'),
  price: amount(70),
};
const TRAVEL: JobExtra = { what: words('travel'), quantity: count(1), price: amount(0) };
const ALL = [TIEBACKS, TRIM, TRAVEL];

const rowsOf = ({ blocks }: Paper): string[] =>
  blocks.flatMap((block) =>
    block.is === 'table'
      ? block.rows.map(({ is, cells }) => `${is}: ${cells.map((one) => one?.value ?? '').join(' | ')}`)
      : [],
  );
const job = jobWith([windowAs(READING_ROOM)], { extras: ALL });

it('belong to their line; of a line the job has not, or of none, to the whole job', () => {
  expect(extrasOf(ALL, { line: 1 })).toEqual([TIEBACKS, TRIM]);
  expect(forTheJob([...ALL, { ...TRIM, line: 9 }], [{ line: 1 }])).toEqual([TRAVEL, { ...TRIM, line: 9 }]);
});

describe('on the quote', () => {
  it('stand under their window in its room, those for the whole job at the end', () => {
    const paper = quotePaper(job);
    if (!isMade(paper)) throw new Error('not made');
    const rows = rowsOf(paper);
    expect(rows[0]).toBe('group: Reading room');
    expect(rows).toContain('line: Pair of shaped tiebacks, Garden print | 2 | 96');
    expect(rows.slice(-2)).toEqual(['group: For the whole job', 'line: Travel | 1 | 0']);
    expect(JSON.stringify(paper.blocks)).toContain('"label":"Draperies"');
    // What it costs the house is no client’s business.
    expect(JSON.stringify(paper)).not.toContain('"value":12,');
  });
  it('are refused without a price, by name', () => {
    const { price: _none, ...unpriced } = TRIM;
    const paper = quotePaper(jobWith([windowAs(READING_ROOM)], { extras: [unpriced] }));
    expect(isMade(paper) ? '' : paper.missing.join()).toMatch(/The extra “trim” has no price/);
  });
});

it('are ordered of their supplier, with what one costs', () => {
  const papers = orderPapers(job);
  expect(papers.map(({ sheet }) => sheet)).toEqual(['Fabric order', 'Order Fen Row Mill']);
  expect(rowsOf(papers[1]!)).toEqual(['line: tiebacks: pair of shaped tiebacks, Garden print | 2 | 12']);
});

it('stand on the work order of their line, a trim with its edges', () => {
  expect(rowsOf(workPaper(job))).toContain('line: trim | 5.5 | leading edges');
  expect(madeWith([], windowAs(READING_ROOM))).toEqual([]);
});

// Two leading edges of 96 in with 1½ in turned under at both ends are 198 in. Cloth of 54 in gives 52 in to each
// strip beside its seams of 1 in: 198 − 2 = 196 ÷ 52 are 4 strips.
it('a band cut from cloth says its strips', () => {
  const band = { ...TRIM, what: words('band'), strips: { cut: inches(6), cloth: inches(54) } };
  const strips = 'detail: 4 strips cut 6 in wide across cloth of 54 in, sewn end to end';
  const rows = (extra: JobExtra): string[] =>
    rowsOf(workPaper(jobWith([windowAs(READING_ROOM)], { extras: [extra] })));
  expect(rows(band)).toContain(strips);
  expect(rows({ ...band, along: undefined }).filter((one) => one.includes('strips'))).toEqual([]);
});
