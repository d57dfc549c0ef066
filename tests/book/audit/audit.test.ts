import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import {
  auditOrders,
  markFindings,
  marksOf,
  ORDERS_OF_FINDINGS,
  surveyOrders,
  unmarkFindings,
} from '../../../src/book/audit/audit';
import { writeAudit } from '../../../src/book/audit/sheets';
import type { CellValue } from '../../../src/book/book';
import { MemoryBook } from '../../../src/book/memory';
import { readHouse } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';

const HEADINGS = [
  'Client',
  'Room',
  'Rod W',
  'Fin Drop',
  'Style',
  'Fab width',
  'Widths',
  'Yds',
  'Price',
  'Grommets',
];
const good = (room: string): CellValue[] => ['Ames', room, 94, 96, 'pinch', 54, 6, 18.75, 20, null];
const ORDERS: CellValue[][] = [
  ['Orders of the spring'],
  [],
  HEADINGS,
  good('101'),
  ['Ames', '102', 94, 96, 'pinch', 54, 6, 21.75, 20, null],
  ['Total', null, null, null, null, null, null, 40.5, null, null],
  ['Ames', '103', 60, 84, 'grommet', 54, 4, 11.25, 40, 17],
  ['Ames', '104', 94, 960, 'pinch', 54, 6, 18.75, 20, null],
];
/** As the orders were made: whole widths in each panel, an overlap on rings too. */
const HOUSE = readHouse([
  ['widths rounding', 'whole per panel'],
  ['overlap on rings', 3],
]);
const BY = { periods: [{ from: undefined, house: HOUSE }] };
const bookOf = (rows: CellValue[][] = ORDERS) => new MemoryBook({ 'Past orders': { rows } });

async function auditedIn(book: MemoryBook) {
  const { read } = await surveyOrders(book, INCHES, areaAt('Past orders', 3, 0));
  return { read, audited: await auditOrders(read, BY) };
}

describe('auditing orders in a workbook', () => {
  it('finds the orders below titles, and every finding’s cell', async () => {
    const { read, audited } = await auditedIn(bookOf());
    expect(read.columns.map(({ key }) => key)).toEqual([
      'customer',
      'room',
      'rodWidth',
      'finishedDrop',
      'heading',
      'fabricWidth',
      'widths',
      'yardage',
      'unitPrice',
      'marks',
    ]);
    expect(audited.orders).toBe(4);
    expect(
      audited.findings.map(({ finding, area }) => [finding.row, finding.code, area.row, area.column]),
    ).toEqual([
      [5, 'figureDiffers', 4, 7],
      [7, 'oddGrommets', 6, 9],
      [8, 'decimalSlip', 7, 3],
    ]);
  });

  it('reads numbers, prices and far guesses among the headings as a bookkeeper means them', async () => {
    const heads = ['No.', 'Ord #', 'Rm #', 'Win #', '$/yd', 'Fabric $', 'Ext. price', 'Line', 'Rod', 'Qty', 'Widths'];
    const row = [1, 1001, '12', 'north', 40, 45, 750, 1, 94, 2, 6];
    const book = bookOf([heads, row, row.with(0, 2).with(1, 1002).with(7, 2)]);
    const { read } = await surveyOrders(book, INCHES, areaAt('Past orders', 1, 0));
    expect(read.columns.map(({ heading, key }) => [heading, key ?? ''])).toEqual([
      ['No.', ''], ['Ord #', 'order'], ['Rm #', 'room'], ['Win #', ''], ['$/yd', 'unitPrice'], ['Fabric $', ''],
      ['Ext. price', 'amount'], ['Line', ''], ['Rod', 'rodWidth'], ['Qty', 'quantity'], ['Widths', 'widths'],
    ]);
  }); // prettier-ignore

  it('takes what the user says of a column before its heading', async () => {
    const book = bookOf();
    const { read } = await surveyOrders(book, INCHES, areaAt('Past orders', 3, 0), { yds: null });
    const { findings } = await auditOrders(read, BY);
    expect(findings.map(({ finding }) => finding.code)).not.toContain('figureDiffers');
  });

  it('tells how far it is, and stops without a trace', async () => {
    const rows = [HEADINGS, ...Array.from({ length: 1_000 }, (_, at) => good(String(at)))];
    const book = bookOf(rows);
    const { read } = await surveyOrders(book, INCHES, areaAt('Past orders', 1, 0));
    const seen: number[] = [];
    const whole = await auditOrders(read, BY, { progress: (done) => seen.push(done) });
    expect(whole.orders).toBe(1_000);
    expect(seen).toEqual([0, 250, 500, 750, 1_000]);
    const stop = new AbortController();
    const before = book.picture();
    const stopped = auditOrders(read, BY, {
      signal: stop.signal,
      progress: (done) => {
        if (done >= 500) stop.abort();
      },
    });
    await expect(stopped).rejects.toThrow('Stopped.');
    expect(book.picture()).toBe(before);
  });

  it('marks cells and takes the marks away again', async () => {
    const book = bookOf();
    const before = book.picture();
    const { audited } = await auditedIn(book);
    await markFindings(book, audited);
    expect(book.picture()).not.toBe(before);
    expect(marksOf(audited.findings)).toHaveLength(3);
    await markFindings(book, audited);
    await unmarkFindings(book, 'Past orders');
    expect(book.picture()).toBe(before);
  });

  it('gives a cell with two findings one mark, as heavy as the heavier', () => {
    const finding = {
      row: 5,
      order: '',
      customer: '',
      room: '',
      column: 'Yds',
      measure: 'yardage',
      sure: 'sure',
      found: 1,
      expected: 2,
      difference: -1,
      money: '',
    } as const;
    const area = areaAt('Past orders', 4, 7);
    const marks = marksOf([
      { area, finding: { ...finding, code: 'figureDiffers', weight: 'check', sentence: 'One.' } },
      { area, finding: { ...finding, code: 'decimalSlip', weight: 'stop', sentence: 'Other.' } },
    ]);
    expect(marks).toEqual([{ area, weight: 'stop', sentence: 'Other.\nOne.' }]);
  });

  it('lists findings by weight, money and kind', async () => {
    const { audited } = await auditedIn(bookOf());
    const codes = (by: keyof typeof ORDERS_OF_FINDINGS) =>
      [...audited.findings].sort(ORDERS_OF_FINDINGS[by]).map(({ finding }) => finding.code);
    expect(codes('money')[0]).toBe('figureDiffers');
    expect(codes('weight').at(-1)).toBe('figureDiffers');
    expect(codes('kind')).toEqual([...codes('kind')].sort());
  });

  it('writes a summary sheet with a chart as one undo step, beside an earlier one', async () => {
    const book = bookOf();
    const { audited } = await auditedIn(book);
    const before = book.picture();
    expect(await writeAudit(book, audited, INCHES)).toBe('Audit');
    expect(await writeAudit(book, audited, INCHES)).toBe('Audit 2');
    const { sheets, tables } = await book.contents();
    expect(sheets.map(({ name }) => name)).toEqual(['Past orders', 'Audit', 'Audit 2']);
    const list = tables.find(({ name }) => name === 'Audit_findings');
    expect(list?.area.rows).toBe(4);
    expect(book.picture()).toContain('Findings by kind');
    book.undo();
    book.undo();
    expect(book.picture()).toBe(before);
  });
});
