import { describe, expect, it } from 'vitest';
import { withoutPlaces, type PapersJob } from '../../../src/core/papers/job';
import { amount, count, words, type TableRow } from '../../../src/core/papers/paper';
import { isMade, quotePaper } from '../../../src/core/papers/quote';
import { optionsTable, unlikeIn } from '../../../src/core/papers/quote-options';
import { ratio } from '../../../src/core/exact/ratio';
import { jobWith, READING_ROOM, windowAs } from './invented';

const total = (value: number, at?: string): PapersJob['sums'] => [
  { label: 'Total', is: 'total', entry: amount(value, at) },
];
const LANDING = { ...READING_ROOM, room: 'Landing' };
const A = jobWith([windowAs(READING_ROOM), windowAs(LANDING, 2)], { sums: total(2481, 'Quote!B10') });
const B = withoutPlaces(
  jobWith(
    [
      windowAs({ ...READING_ROOM, fabric: 'Marsh silk' }, 1, { price: amount(1900, 'Quote!E17') }),
      windowAs({ ...LANDING, fullness: ratio(3) }, 2, { price: amount(1500, 'Quote!E18') }),
    ],
    { sums: total(3400, 'Quote!B10') },
  ),
);
const shown = ({ is, cells }: TableRow): string =>
  `${is}: ${cells.map((one) => one?.value ?? '').join(' | ')}`;
const rows = (job: PapersJob, other: PapersJob): string[] => {
  const table = optionsTable(job, other);
  return table.is === 'table' ? table.rows.map(shown) : [];
};

describe('two options beside each other', () => {
  it('have both prices on each line, and both totals', () => {
    const text = rows(A, B);
    expect(text[0]).toMatch(/^line: Reading room: pair of lined.*Garden print.* \| 1 \| 1240.5 \| 1900$/);
    expect(text.at(-1)).toBe('total: Total |  | 2481 | 3400');
  });
  it('say what differs: the cloth, or the fullness delivered', () => {
    const text = rows(A, B);
    // The room stands in the line above; what is specified alike is said once.
    const [silk] = text.filter((one) => one.includes('Marsh silk'));
    expect(silk).toMatch(/^detail: Option B: pair of /);
    expect(text.filter((one) => /Option A: .*times full/.test(one))).toHaveLength(1);
    expect(text.at(-2)).toMatch(/^detail: Option B: .*3\.\d+ times full/);
  });
  it('say once what they have alike', () => {
    expect(rows(A, withoutPlaces(A)).filter((one) => one.includes('Option'))).toEqual([]);
  });
  it('point at cells of the job alone, since the other is of another workbook', () => {
    expect(JSON.stringify(optionsTable(A, B)).match(/"at":"[^"]+"/g)).toEqual([
      '"at":"Quote!E17"',
      '"at":"Quote!E18"',
      '"at":"Quote!B10"',
    ]);
  });
  it('are accepted by which', () => {
    const paper = quotePaper({ ...A, beside: B });
    expect(isMade(paper) && JSON.stringify(paper.blocks)).toContain('option ____');
  });
  it('have a sum of which only one has it before the total', () => {
    const freight = { label: 'Freight', is: 'part', entry: amount(40) } as const;
    expect(rows(A, { ...B, sums: [freight, ...B.sums] }).slice(-2)).toEqual([
      'sum: Freight |  |  | 40',
      'total: Total |  | 2481 | 3400',
    ]);
  });
});

describe('two options are refused', () => {
  it('where their windows are not the same, by the line', () => {
    expect(unlikeIn(A, jobWith([windowAs(READING_ROOM)]))[0]).toMatch(/2 rows of windows and option B 1/);
    const other = jobWith([windowAs(READING_ROOM), windowAs({ ...LANDING, room: 'Hall' }, 2)]);
    expect(unlikeIn(A, other)).toEqual([
      expect.stringMatching(/^Line 2 is Landing, 1 in option A and Hall, 1/),
    ]);
  });
  it('where one has a further line more', () => {
    const travel = { what: words('travel'), quantity: count(1), price: amount(45) };
    expect(unlikeIn(A, { ...B, extras: [travel] })[0]).toContain('the same extras');
  });
  it('where one is not priced, saying which', () => {
    const unpriced = jobWith([windowAs(READING_ROOM, 1, { price: undefined }), windowAs(LANDING, 2)]);
    const paper = quotePaper({ ...A, beside: unpriced });
    expect(isMade(paper) ? [] : paper.missing).toEqual([
      expect.stringMatching(/^Option B: Reading room \(line 1\) has no price/),
    ]);
  });
});
