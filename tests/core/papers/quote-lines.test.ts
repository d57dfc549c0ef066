import { expect, it } from 'vitest';
import { amount, count, entryText, words } from '../../../src/core/papers/paper';
import { quoteLines } from '../../../src/core/papers/quote-lines';
import { jobWith, READING_ROOM, windowAs } from './invented';

const job = jobWith([windowAs(READING_ROOM, 1, { remarks: words('hem to be set on site') })]);
const first = (given: typeof job): string => String(quoteLines(given)[0]?.cells[0]?.value);

it('a line says that it is hung only where hanging is charged', () => {
  expect(first(job)).not.toContain('installed');
  const hung = { label: 'Installation', is: 'part', entry: amount(65) } as const;
  expect(first({ ...job, sums: [hung, ...job.sums] })).toMatch(/, installed$/);
});

it('what the row remarks stands below its line', () => {
  expect(quoteLines(job).map(({ is }) => is)).toEqual(['line', 'detail', 'detail']);
  expect(quoteLines(job)[2]?.cells[0]?.value).toBe('hem to be set on site');
});

it('lines of the whole job come last, under their own head', () => {
  const travel = { what: words('travel'), quantity: count(1), price: amount(45) };
  expect(
    quoteLines({ ...job, extras: [travel] })
      .slice(-2)
      .map(({ cells }) => cells[0]?.value),
  ).toEqual(['For the whole job', 'Travel']);
});

it('says “no charge” of what costs nothing', () => {
  const removal = { what: words('taking down'), quantity: count(1), price: amount(0) };
  const price = quoteLines({ ...job, extras: [removal] }).at(-1)?.cells[2];
  expect(price === undefined ? '' : entryText(price)).toBe('no charge');
});
