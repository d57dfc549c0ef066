import { describe, expect, it } from 'vitest';
import type { CellIn } from '../../../src/core/cell/fields';
import { Auditor } from '../../../src/core/audit/audit';
import { saidOnce } from '../../../src/core/audit/table-wide';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { OrderRows } from '../../../src/core/window/reader/order-rows';
import { tableUnder } from '../window/ordered';

/** Words that nobody knows, but of the heading and the lining. */
const HEADINGS = [
  'order no',
  'heading',
  'lining',
  'rod width',
  'finished drop',
  'Zub',
  'Prell',
  'Quim',
  'Vorn $',
];
const ORDERS = 60;

/** Prell is 18 more than the drop, Quim is Zub × Prell ÷ 36 up to ½, Vorn $ a rate by lining × Quim. */
function order(at: number): CellIn[] {
  const drop = 80 + ((at * 7) % 31) * 1.25;
  const zub = 2 + ((at * 5) % 7);
  const prell = drop + 18;
  const quim = Math.ceil((zub * prell) / 18) / 2;
  const [lining, rate] = ([['lined', 4.85], ['blackout', 7.95]] as const)[at % 2] ?? ['', 0]; // prettier-ignore
  return [`K${at}`, 'pinch', lining, 60 + at, drop, zub, prell, quim, Math.round(rate * quim * 100) / 100];
}
const orders = (): CellIn[][] => Array.from({ length: ORDERS }, (_, at) => order(at));

function found(rows: readonly (readonly CellIn[])[], headings: readonly string[] = HEADINGS): string[] {
  const house = DEFAULT_HOUSE;
  const table = tableUnder(headings, rows, house.unit);
  const reader = new OrderRows(table);
  const lines = [...rows.flatMap((cells, at) => reader.push(at + 2, cells)), ...reader.end()];
  const auditor = new Auditor(table, saidOnce(table, { periods: [{ from: undefined, house }] }, lines));
  return [...rows.flatMap((cells, at) => auditor.row(at + 2, cells)), ...auditor.end()]
    .filter(({ code }) => code === 'notItsOwnSum')
    .map(({ row, sentence }) => `${row}: ${sentence}`);
}

const slipped = (row: number, column: number, to: (was: number) => number): CellIn[][] => {
  const rows = orders();
  const cells = rows[row] as CellIn[];
  cells[column] = to(Number(cells[column]));
  return rows;
};

describe('a table whose columns nobody knows', () => {
  it('is as it is, and nothing is doubted', () => {
    expect(found(orders())).toEqual([]);
  });

  it('a rate by the kind of lining: the other kind’s rate is doubted', () => {
    expect(found(slipped(9, 8, (was) => Math.round((was / 7.95) * 4.85 * 100) / 100))).toEqual([
      expect.stringMatching(
        /^11: Vorn \$ reads .*in 59 of the first 60 orders it is Quim × 7\.95 for “blackout”/,
      ),
    ]);
  });

  it('so much more than another column', () => {
    expect(found(slipped(12, 6, (was) => was - 8))).toEqual([
      expect.stringMatching(/^14: Prell reads .*it is finished drop \+ 18, here/),
    ]);
  });

  it('a product up to a step', () => {
    expect(found(slipped(20, 7, (was) => was / 2))).toEqual([
      expect.stringMatching(/^22: Quim reads .*it is Zub × Prell × 0\.027778, up to 0\.5, here/),
    ]);
  });
});

it('a share more that comes again, and a least charge that comes again, are no slips', () => {
  const headings = ['order no', 'heading', 'finished drop', 'rod width', 'Zub', 'Vorn $'];
  const rows = (): CellIn[][] =>
    Array.from({ length: ORDERS }, (_, at) => {
      const [drop, zub] = [80 + at, 2 + ((at * 5) % 11)];
      const charge = zub * 26 * (drop > 130 ? 1.15 : 1);
      return [`K${at}`, 'pinch', drop, 60 + at, zub, Math.max(77, Math.round(charge * 100) / 100)];
    });
  expect(found(rows(), headings)).toEqual([]);
  const wrong = rows();
  (wrong[30] as CellIn[])[5] = 26;
  expect(found(wrong, headings)).toHaveLength(1);
});

it('a price that breaks at a quantity: less off than its quantity gives is doubted', () => {
  const headings = ['order no', 'heading', 'finished drop', 'rod width', 'Zub', 'Prell', 'Vorn $'];
  const rows = (): CellIn[][] =>
    Array.from({ length: ORDERS }, (_, at) => {
      const [zub, prell] = [40 + ((at * 37) % 800), 11.3 + ((at * 7) % 23)];
      const less = zub >= 600 ? 0.9 : zub >= 250 ? 0.94 : 1;
      return [`K${at}`, 'pinch', 80 + ((at * 11) % 29), 60 + at, zub, prell, Math.round(zub * prell * less * 100) / 100];
    }); // prettier-ignore
  expect(found(rows(), headings)).toEqual([]);
  const wrong = rows();
  const at = wrong.findIndex((cells) => Number(cells[4]) > 650);
  const cells = wrong[at] as CellIn[];
  cells[6] = Math.round(Number(cells[4]) * Number(cells[5]) * 100) / 100;
  expect(found(wrong, headings)).toEqual([
    expect.stringMatching(/Vorn \$ reads .* it is Zub × Prell × 0\.9 from about \d+ Zub on, here/),
  ]);
});

it('a way that fails in one order of eight is none', () => {
  const rows = orders().map((cells, at) => (at % 8 === 3 ? [...cells.slice(0, 8), 500 + at * 3.1] : cells));
  expect(found(rows)).toEqual([]);
});

it('so much a window: a few figures tell it where both are often more than usual', () => {
  const headings = ['order no', 'heading', 'lining', 'finished drop', 'rod width', 'Zub', 'Vorn $'];
  const rows = (): CellIn[][] =>
    Array.from({ length: ORDERS }, (_, at) => {
      const zub = [1, 1, 1, 2, 1, 3][at % 6] ?? 1;
      return [`K${at}`, 'pinch', at % 2 === 0 ? 'lined' : 'unlined', 80 + at, 60 + at, zub, 48 * zub];
    });
  expect(found(rows(), headings)).toEqual([]);
  const wrong = rows();
  (wrong[3] as CellIn[])[6] = 48;
  expect(found(wrong, headings)).toEqual([
    expect.stringMatching(/^5: Vorn \$ reads 48; .*Zub × 48, here 96/),
  ]);
});
