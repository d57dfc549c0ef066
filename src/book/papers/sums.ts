/** What stands under a job's lines: of our own quote by its names, of another table by the rows below it. */
import type { Sum } from '../../core/papers/job';
import type { Entry } from '../../core/papers/paper';
import { sumSaid } from '../../core/window/reader/money-words';
import type { Cells } from './cells';
import type { WindowsSeen } from './windows';

/** Our own quote's rows, by the word beside each. */
const OWN: readonly (readonly [word: string, label: string, is: Sum['is']])[] = [
  ['subtotal', 'Subtotal', 'subtotal'],
  ['extra lines', 'Extras, as listed', 'part'],
  ['attic stock', 'Cloth kept for repairs', 'part'],
  ['installation', 'Installation', 'part'],
  ['freight', 'Freight', 'part'],
  ['tax', 'Tax', 'tax'],
  ['total', 'Total', 'total'],
  ['deposit', 'Deposit with the order', 'deposit'],
  ['balance', 'Balance when hung', 'balance'],
];

/** Off every line of our own quote; a client who was promised one reads it. */
function discountIn(cells: Cells, job: string): readonly Sum[] {
  const at = cells.named(`Sell_discount${job}`);
  const entry = at && cells.figure(at.sheet, at.row, at.column, 'share');
  return entry === undefined || entry.value === 0
    ? []
    : [{ label: 'Draperies priced after a discount of', is: 'discount', entry }];
}

function ownSums(cells: Cells, job: string): readonly Sum[] {
  const first = cells.named(`Quote_subtotal${job}`);
  if (first === undefined) return [];
  const found = new Map<string, Entry>();
  for (let row = first.row - 3; row < first.row + 12; row++) {
    const word = cells.at(first.sheet, row, first.column - 1);
    const entry = cells.figure(first.sheet, row, first.column, 'money');
    if (typeof word === 'string' && entry !== undefined) found.set(word.trim().toLowerCase(), entry);
  }
  return [
    ...discountIn(cells, job),
    ...OWN.flatMap(([word, label, is]) => {
      const entry = found.get(word);
      return entry === undefined ? [] : [{ label, is, entry }];
    }),
  ];
}

/** What no client is told. */
const INTERNAL = /\b(?:cost|margin|profit|markup|mark-up|check)\b/i;

/** The nearest words at the left of a cell. */
function wordsLeftOf(cells: Cells, sheet: string, row: number, column: number): string | undefined {
  for (let at = column - 1; at >= 0; at--) {
    const shown = cells.at(sheet, row, at);
    if (typeof shown === 'string' && shown.trim() !== '') return shown.trim();
    if (typeof shown === 'number') return undefined;
  }
  return undefined;
}

/** The rows below the windows with an amount in the column of prices, up to twenty rows on. */
function sumsBelow(cells: Cells, { sheet, priceColumn, lastRow }: WindowsSeen): readonly Sum[] {
  if (priceColumn === undefined) return [];
  const sums: Sum[] = [];
  for (let row = lastRow + 1; row < lastRow + 20; row++) {
    const entry = cells.figure(sheet, row, priceColumn, 'money');
    const label = wordsLeftOf(cells, sheet, row, priceColumn);
    if (entry === undefined || label === undefined || INTERNAL.test(label)) continue;
    const is = sumSaid(label) ?? 'part';
    sums.push({ label, is, entry });
    if (is === 'balance') break;
  }
  return withBalance(sums);
}

/** Total less deposit, where the table does not say it. */
function withBalance(sums: readonly Sum[]): readonly Sum[] {
  const sumOf = (is: Sum['is']): Entry | undefined => sums.find((one) => one.is === is)?.entry;
  const [total, deposit] = [sumOf('total'), sumOf('deposit')];
  if (total === undefined || deposit === undefined || sumOf('balance') !== undefined) return sums;
  const value = Math.round((Number(total.value) - Number(deposit.value)) * 100) / 100;
  const at = `${total.at ?? ''}-${deposit.at ?? ''}`;
  return [...sums, { label: 'Balance', is: 'balance', entry: { as: 'money', value, at } }];
}

export function sumsOf(cells: Cells, seen: WindowsSeen): readonly Sum[] {
  const own = ownSums(cells, seen.job);
  return own.length > 0 ? own : sumsBelow(cells, seen);
}

/** Of our own quote, the price of each window by the row it stands in. */
export function ownPrices(cells: Cells, { job, windows }: WindowsSeen): ReadonlyMap<number, Entry> {
  const [prices, openings] = [cells.named(`Quote_prices${job}`), cells.named(`Window_openings${job}`)];
  if (prices === undefined || openings === undefined) return new Map();
  return new Map(
    windows.flatMap(({ row }) => {
      const down = row - openings.row;
      const entry = cells.figure(prices.sheet, prices.row + down, prices.column, 'money');
      return down < 0 || down >= prices.rows || entry === undefined ? [] : [[row, entry] as const];
    }),
  );
}
