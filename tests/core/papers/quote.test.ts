import { describe, expect, it } from 'vitest';
import { amount, entryText, words, type Block, type Paper } from '../../../src/core/papers/paper';
import { isMade, quotePaper } from '../../../src/core/papers/quote';
import type { PapersJob } from '../../../src/core/papers/job';
import { jobWith, READING_ROOM, windowAs } from './invented';

function made(job: PapersJob): Paper {
  const paper = quotePaper(job);
  if (!isMade(paper)) throw new Error(paper.missing.join(' '));
  return paper;
}
const missing = (job: PapersJob): readonly string[] => {
  const paper = quotePaper(job);
  return isMade(paper) ? [] : paper.missing;
};
const block = <K extends Block['is']>(paper: Paper, is: K): Extract<Block, { is: K }> => {
  const found = paper.blocks.find((one) => one.is === is);
  if (found === undefined) throw new Error(`no ${is}`);
  return found as Extract<Block, { is: K }>;
};
const lineTexts = (paper: Paper): string[] =>
  block(paper, 'table')
    .rows.filter(({ is }) => is === 'line')
    .map(({ cells }) => entryText(cells[0]!));

describe('the client’s quote', () => {
  const paper = made(jobWith([windowAs(READING_ROOM)]));

  it('has its lines before its sums, each price at its cell of the job', () => {
    const kinds = paper.blocks.map(({ is }) => is);
    expect(kinds.indexOf('table')).toBeLessThan(kinds.indexOf('totals'));
    const [line] = block(paper, 'table').rows;
    expect(line?.cells[2]).toMatchObject(amount(1240.5, 'Quote!E17'));
    expect(lineTexts(paper)).toEqual([
      'Reading room: pair of lined pinch-pleated draperies, Garden print, floor length, on a 104 in rod',
    ]);
  });

  it('has nothing of zero, and sets the total apart', () => {
    expect(block(paper, 'totals').pairs).toEqual([
      { label: 'Subtotal', entry: amount(1240.5, 'Quote!B5') },
      { label: 'Total', entry: amount(1240.5, 'Quote!B10'), strong: true },
    ]);
  });

  it('warns of cords where children may be present', () => {
    const said = (job: PapersJob): string => JSON.stringify(made(job).blocks);
    expect(said(jobWith([windowAs(READING_ROOM)], { children: true }))).toContain('strangulation hazard');
    expect(JSON.stringify(paper.blocks)).not.toContain('strangulation');
  });

  it('keeps the layers of a room under its name', () => {
    const layers = [READING_ROOM, { ...READING_ROOM, fabric: 'Mist sheer', lining: undefined }];
    const rows = block(made(jobWith(layers.map((one, at) => windowAs(one, at + 1)))), 'table').rows;
    expect(rows.map(({ is }) => is)).toEqual(['group', 'line', 'detail', 'line', 'detail']);
    expect(rows[0]?.cells[0]?.value).toBe('Reading room');
  });

  it('names the client’s own material', () => {
    const own = jobWith([windowAs(READING_ROOM)], {
      cloths: [{ name: 'Garden Print', supplier: words('customer’s own') }],
    });
    expect(JSON.stringify(made(own).blocks)).toContain('made from your own material');
  });

  it('prints a price of 0 and one of a million beside others', () => {
    const job = jobWith(
      [0, 1_000_000].map((price, at) => windowAs(READING_ROOM, at + 1, { price: amount(price) })),
      { sums: [{ label: 'Total', is: 'total', entry: amount(1_000_000) }] },
    );
    const prices = block(made(job), 'table')
      .rows.filter(({ is }) => is === 'line')
      .map(({ cells }) => entryText(cells[2]!));
    expect(prices).toEqual(['no charge', '1,000,000.00']);
  });
});

describe('a quote is refused', () => {
  it('where nothing is priced, in one sentence', () => {
    const job = jobWith([windowAs(READING_ROOM, 1, { price: undefined })], { sums: [] });
    expect(missing(job)).toEqual([expect.stringMatching(/^No window has a price\./)]);
  });
  it('where one window has none, by its name', () => {
    const windows = [
      windowAs(READING_ROOM),
      windowAs({ ...READING_ROOM, room: 'Landing' }, 2, { price: undefined }),
    ];
    expect(missing(jobWith(windows))).toEqual([expect.stringMatching(/^Landing \(line 2\) has no price/)]);
  });
  it('where the total is 0 or not there', () => {
    const zero = [{ label: 'Total', is: 'total', entry: amount(0) }] as const;
    expect(missing(jobWith([windowAs(READING_ROOM)], { sums: zero }))[0]).toMatch(/total is 0/);
    expect(missing(jobWith([windowAs(READING_ROOM)], { sums: [] }))[0]).toMatch(/no total/);
  });
  it('where a row could not be worked out, with its sentence', () => {
    const job = jobWith([windowAs(READING_ROOM)], { unread: ['Windows, row 6: the heading is missing.'] });
    expect(missing(job)).toEqual(['Windows, row 6: the heading is missing.']);
  });
  it('where there is no window', () => {
    expect(missing(jobWith([]))[0]).toMatch(/no window/);
  });
});
