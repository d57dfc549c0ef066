import { describe, expect, it } from 'vitest';
import { breaksOf, paperDraft, roomOn } from '../../../src/book/papers/sheet';
import type { Band } from '../../../src/book/papers/bands';
import { freeName } from '../../../src/book/papers/write';
import { PORTRAIT } from '../../../src/core/papers/paper';
import { isMade, quotePaper } from '../../../src/core/papers/quote';
import { jobWith, READING_ROOM, windowAs } from '../../core/papers/invented';

const band = (height: number, more: Partial<Band> = {}): Band => ({ height, cells: [], ...more });

describe('where pages begin', () => {
  it('is where the next row has no room', () => {
    expect(breaksOf([band(60), band(60), band(60)], 100)).toEqual([1, 2]);
    expect(breaksOf([band(60), band(40), band(60)], 100)).toEqual([2]);
  });
  it('is before a row that must stand with the next', () => {
    expect(breaksOf([band(60), band(20, { keep: true }), band(40)], 100)).toEqual([1]);
  });
  it('counts the repeated headings on every further page', () => {
    const rows = [band(20, { repeated: true }), band(40), band(40), band(50), band(40)];
    expect(breaksOf(rows, 100)).toEqual([3, 4]);
  });
  it('is where the paper asks for it', () => {
    expect(breaksOf([band(10), band(10, { newPage: true })], 100)).toEqual([1]);
  });
});

// Sizes by ISO 216 and, for Letter, ANSI/ASME Y14.1: 210 × 297 mm, 8½ × 11 in.
it.each([
  ['letter', 8.5 * 72, 11 * 72],
  ['a4', (210 / 25.4) * 72, (297 / 25.4) * 72],
] as const)('%s has room between its margins', (size, wide, high) => {
  const page = { ...PORTRAIT(size), margins: [0, 0, 0, 0] as const };
  expect(Math.abs(roomOn(page).wide - wide)).toBeLessThan(0.5);
  expect(Math.abs(roomOn(page).high - high)).toBeLessThan(0.5);
});

describe('a paper’s sheet', () => {
  const paper = quotePaper(jobWith([windowAs(READING_ROOM)]));
  if (!isMade(paper)) throw new Error('not made');
  const draft = paperDraft(paper, 'Client quote', { sign: '$' });
  const formulas = (draft.puts ?? []).flatMap(({ cells = [] }) =>
    cells.flatMap((row) =>
      row.flatMap((put) => (typeof put === 'object' && put !== null ? [put.formula] : [])),
    ),
  );

  it('points at the job’s cells and asks no function of ours', () => {
    expect(formulas).toContain('=IF(LEN(Quote!E17)=0,"",Quote!E17)');
    expect(formulas.filter((one) => /hem/i.test(one))).toEqual([]);
  });
  it('prints what is the paper’s, not the mark beside it', () => {
    const [layout] = draft.layouts ?? [];
    expect(layout?.print?.area?.columns).toBe(paper.page.columns);
    const beside = (draft.puts ?? []).filter(({ area }) => area.column >= paper.page.columns);
    expect(beside).toHaveLength(1);
  });
  it('shows amounts with the house’s sign', () => {
    expect((draft.dress ?? []).some(({ format }) => format === '"$"#,##0.00')).toBe(true);
  });
  it('of values alone has neither formula nor mark', () => {
    const alone = JSON.stringify(paperDraft(paper, 'Client quote', { values: true }));
    expect(alone).not.toMatch(/"formula"|made anew/);
    expect(alone).toContain('1240.5');
  });
});

it('a sheet’s name is one a workbook takes', () => {
  expect(freeName('Order Quill / Sedge: [north]', new Set())).toBe('Order Quill Sedge north');
  expect(freeName('Client quote', new Set(['client quote']))).toBe('Client quote 2');
  const long = freeName('Order The very long-named mill of the upper valley', new Set());
  expect(long.length).toBeLessThanOrEqual(31);
});
