import { describe, expect, it } from 'vitest';
import { Auditor } from '../../../src/core/audit/audit';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { OneByOne } from '../../../src/core/audit/one-by-one';
import { saidOnce } from '../../../src/core/audit/table-wide';
import type { CellIn } from '../../../src/core/cell/fields';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { OrderRows } from '../../../src/core/window/reader/order-rows';
import { tableUnder } from '../window/ordered';

const HEADINGS = ['order no', 'amount', 'labor', 'total', 'heading', 'yardage', 'unit price'];
const row = (at: number, less: number, heading = 'pinch', amount = 400): CellIn[] => [
  `K${String(at)}`, amount, 200, amount + 200 - less, heading, 20, 20,
]; // prettier-ignore

/** Without what is said of the header row. */
const OF_ROWS = new Set([
  'inMostRows',
  'wordInRows',
  'sameDifference',
  'partsDoNotAdd',
  'amountDiffers',
  'unknownChoice',
]);

function audited(rows: readonly (readonly CellIn[])[], headings = HEADINGS): OrderFinding[] {
  const table = tableUnder(headings, rows, DEFAULT_HOUSE.unit);
  const by = { periods: [{ from: undefined, house: DEFAULT_HOUSE }] };
  const reader = new OrderRows(table);
  const lines = rows.flatMap((cells, at) => reader.push(at + 2, cells)).concat(reader.end());
  const auditor = new Auditor(table, saidOnce(table, by, lines));
  const found = [...auditor.header(), ...rows.flatMap((cells, at) => auditor.row(at + 2, cells))];
  expect(lines.some((line) => new OneByOne(table, by).audited(line) !== undefined)).toBe(true);
  return [...found, ...auditor.end()].filter(({ code }) => OF_ROWS.has(code));
}
const told = (found: readonly OrderFinding[]): string[] =>
  found.map(({ row: at, code, column }) => `${String(at)} ${code} ${column}`);

describe('what most orders have alike', () => {
  const rows = Array.from({ length: 30 }, (_, at) => row(at, 35));

  it('is said once, and what else is wrong is still found', () => {
    const found = audited([...rows, row(30, 35, 'pinch', 999)]);
    expect(told(found)).toEqual(['0 inMostRows total', '32 amountDiffers amount']);
    expect(found[0]?.sentence).toBe(
      '31 of the first 31 orders that fill total have this, row 2 first: total reads 565.00, and its parts (amount 400.00, labor 200.00) add up to 600.00. Add them again. It is taken for a way of this table, or for a column that is not what it seems; it is said here once and not checked row by row.',
    );
  });

  it('is counted over those with something in the column', () => {
    const none = Array.from({ length: 60 }, (_, at) => {
      const cells = row(at + 40, 0);
      cells[3] = null;
      return cells;
    });
    expect(told(audited([...rows, ...none])).filter((one) => one.includes('inMostRows'))).toHaveLength(1);
  });

  it('is said row by row where fewer than three in ten have it, or there are few', () => {
    const some = rows.map((_one, at) => row(at, at < 8 ? 21 + 13 * at : 0));
    expect(told(audited(some)).filter((one) => one.includes('partsDoNotAdd'))).toHaveLength(8);
    expect(told(audited(rows.slice(0, 24)))).toHaveLength(24);
  });

  it('a charge without a column is said once where five orders have it, and another difference in its own row', () => {
    const charged = rows.map((_one, at) => row(at, at % 6 === 0 ? -65 : 0));
    charged[9] = row(9, -44);
    const found = audited(charged);
    expect(told(found)).toEqual(['0 sameDifference total', '11 partsDoNotAdd total']);
    expect(found[0]?.sentence).toMatch(
      /^In 5 of the first 30 orders total is 65\.00 more than it should be, row 2 first/,
    );
    expect(told(audited(charged.slice(1)))).toHaveLength(5);
  });

  it('totals that go up to the whole are sums all the same, and one that does not add up is found', () => {
    const whole = (at: number, off = 0): CellIn[] => {
      const amount = 400.35 + at * 1.1;
      return [
        `K${at}`,
        amount,
        200,
        Math.ceil(amount + 200) + off,
        'pinch',
        20,
        Math.round(amount * 5) / 100,
      ];
    };
    const kept = Array.from({ length: 30 }, (_, at) => whole(at, at === 7 ? 90 : 0));
    expect(told(audited(kept)).filter((one) => one.includes('partsDoNotAdd'))).toEqual([
      '9 partsDoNotAdd total',
    ]);
  });

  it('a share off is a reduction of the house, an amount of the row left out never', () => {
    const reduced = rows.map((_one, at) =>
      row(at, at % 6 === 0 ? (400 + 3 * at + 200) / 10 : 0, 'pinch', 400 + 3 * at),
    );
    expect(told(audited(reduced)).filter((one) => !one.includes('amountDiffers'))).toEqual([
      '0 sameDifference total',
    ]);
    const leftOut = rows.map((_one, at) => row(at, at % 6 === 0 ? 200 : 0));
    expect(told(audited(leftOut))).toHaveLength(5);
  });
});

it('a word that cannot be read is said once with its count, and another in its own row', () => {
  const headings = ['finished drop', 'heading', 'fabric width', 'rod width', 'cut length'];
  const rows = Array.from({ length: 40 }, (_, at): CellIn[] => [
    84 + (at % 9), at % 5 === 0 ? 'ruched' : 'pinch', 54, 94, 100 + (at % 9),
  ]); // prettier-ignore
  rows[7] = [84, 'smocked', 54, 94, 100];
  const found = audited(rows, headings);
  expect(told(found)).toEqual(['0 wordInRows heading', '9 unknownChoice heading']);
  expect(found[0]?.sentence).toMatch(
    /^8 of the first 40 orders have this, row 2 first: heading reads “ruched”/,
  );
});
