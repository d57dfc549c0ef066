import { expect, it } from 'vitest';
import { shownEntry, viewOf } from '../../../src/book/papers/page-view';
import { amount, count, words, type Paper } from '../../../src/core/papers/paper';
import { installPaper } from '../../../src/core/papers/install';
import { workPaper } from '../../../src/core/papers/work';
import { isMade, quotePaper } from '../../../src/core/papers/quote';
import { jobWith, READING_ROOM, windowAs } from '../../core/papers/invented';

const quote = (windows: number) => {
  const paper = quotePaper(
    jobWith(
      Array.from({ length: windows }, (_, at) => windowAs({ ...READING_ROOM, room: `Room ${at}` }, at + 1)),
    ),
  );
  if (!isMade(paper)) throw new Error('not made');
  return viewOf(paper);
};

it('each page bears its number of how many, and the headings stand on each that goes on with the lines', () => {
  const { pages, wide, high } = quote(40);
  expect([wide, high]).toEqual([8.5, 11]);
  expect(pages.length).toBeGreaterThan(2);
  expect(pages.map(({ number }) => number)).toEqual(
    pages.map((_, at) => `page ${at + 1} of ${pages.length}`),
  );
  const headed = pages.map(({ bands }) => bands.filter(({ repeated }) => repeated === true).length);
  expect(headed[0]).toBe(1);
  expect(headed[1]).toBe(1);
  expect(Math.max(...headed)).toBe(1);
});

it('no page is fuller than its sheet', () => {
  const { pages, high, paper } = quote(40);
  const [, top, , bottom] = paper.page.margins;
  for (const { bands } of pages)
    expect(bands.reduce((sum, { height }) => sum + height, 0)).toBeLessThanOrEqual(
      (high - top - bottom) * 72,
    );
});

/** Points that each page of a paper is filled. */
const filled = (paper: Paper): readonly number[] =>
  viewOf(paper).pages.map(({ bands }) => bands.reduce((sum, { height }) => sum + height, 0));

it.each(['letter', 'a4'] as const)('a public room is installed by one page of %s', (size) => {
  const job = jobWith([windowAs({ ...READING_ROOM, quantity: 18 })], { size, publicBuilding: true });
  expect(filled(installPaper({ ...job, reference: words('WL-7'), place: words('Wharf Lane') }))).toHaveLength(
    1,
  );
});

it('a room of more windows has what is looked at on site on one page with the signatures', () => {
  const windows = [1, 2].map((line) => windowAs({ ...READING_ROOM, quantity: 18 }, line));
  const { pages } = viewOf(installPaper(jobWith(windows)));
  expect(pages).toHaveLength(2);
  const last = pages[1]?.bands.flatMap(({ cells }) => cells.flatMap(({ entry }) => entry?.value ?? []));
  expect(last?.[0]).toBe('Looked at on site');
  expect(last?.at(-1)).toBe('Received by, name and date');
});

it('a table of panels that goes on is one page’s, with its headings', () => {
  const { pages } = viewOf(workPaper(jobWith([windowAs({ ...READING_ROOM, quantity: 18 })])));
  const second = pages[1]?.bands[0]?.cells.map(({ entry }) => entry?.value);
  expect(second?.[0]).toBe('Window');
});

it.each([
  [amount(1240.5), '$1,240.50'],
  [count(3), '3'],
  [words('Library'), 'Library'],
])('%j is shown as %s', (entry, shown) => {
  expect(shownEntry(entry, '$')).toBe(shown);
});
