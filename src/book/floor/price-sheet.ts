/** What a floor costs, as a new sheet: every line of its price, and the totals as formulas over them. */
import type { JobPrice } from '../../core/quote/mock-up';
import type { Rounding } from '../../core/exact/money';
import type { Quote, QuoteLine } from '../../core/quote/quote';
import type { Rules } from '../../core/house/rules';
import { areaAt, cellText, type Area } from '../address';
import { applySheets, type Watch } from '../apply';
import type { Book, CellPut } from '../book';
import type { Floor } from './floor';
import { underFreeNames, type Taken } from '../free-names';
import {
  laidOut,
  MONEY_FORMAT,
  pairs,
  SHARE_FORMAT,
  tableDraft,
  titled,
  together,
  type ColumnDraft,
  type Draft,
  type Job,
  type Pair,
} from '../sheets/draft';

const SHEET = 'Floor price';
const HEADER = 3;

/** The orders a floor is priced in, by name: one, or a mock-up and the rest. */
export function ordersOf({ whole, mockUp }: JobPrice): readonly (readonly [string, Quote])[] {
  return mockUp === undefined
    ? [['the floor', whole]]
    : [
        ['mock-up', mockUp.first],
        ['the rest', mockUp.rest],
      ];
}

/** Half even has no plain formula: there the amount is written as it was worked out. */
const ROUNDED: Readonly<Record<Rounding, string | undefined>> = {
  'half up': 'ROUND',
  'half even': undefined,
  up: 'ROUNDUP',
  down: 'ROUNDDOWN',
};

function linesTable(job: Job, sheet: string, orders: readonly (readonly [string, Quote])[]): Draft {
  const lines = orders.flatMap(([order, { lines }]) => lines.map((line) => ({ order, line })));
  const column = (
    key: string,
    heading: string,
    cellOf: (line: QuoteLine, order: string) => CellPut,
    more: Partial<ColumnDraft> = {},
  ): ColumnDraft => ({
    key,
    heading,
    role: 'output',
    cells: lines.map(({ order, line }) => cellOf(line, order)),
    ...more,
  });
  return tableDraft(job, {
    sheet,
    name: 'Floor_price',
    row: HEADER,
    rows: lines.length,
    columns: [
      column('order', 'order', (_, order) => order, { role: 'working', name: 'Floor_price_orders' }),
      column('kind', 'kind', ({ kind }) => kind, { role: 'working' }),
      column('what', 'what', ({ what }) => what, { role: 'working' }),
      column('quantity', 'quantity', ({ quantity }) => Number(quantity.toFixed(4)), { role: 'working' }),
      column('unit', 'unit', ({ unit }) => unit, { role: 'working' }),
      column('cost', 'cost', ({ cost }) => (cost === undefined ? null : cost.toNumber()), {
        role: 'working',
        format: MONEY_FORMAT,
        note: 'what it costs the house; not for the client',
      }),
      column('price', 'price', ({ price }) => price.toNumber(), {
        format: MONEY_FORMAT,
        name: 'Floor_prices',
      }),
      column('taxed', 'taxed', ({ taxed }) => (taxed ? 'yes' : 'no'), {
        role: 'working',
        name: 'Floor_price_taxed',
      }),
      column('says', 'how', ({ says }) => says ?? '', { role: 'note' }),
    ],
  });
}

/** Sum to balance of one order, from its lines; the last row compares it with what was worked out. */
function totalsOf(job: Job, row: number, order: string, quote: Quote, rules: Rules): readonly Pair[] {
  const [orders, prices, taxed] = ['Floor_price_orders', 'Floor_prices', 'Floor_price_taxed'].map((base) =>
    job.name(base),
  );
  const at = (line: number): string => cellText(row + line, 1);
  const round = ROUNDED[rules.centRounding];
  const amount = (label: string, worked: CellPut, formula: string | undefined, says?: string): Pair => ({
    label,
    role: 'output',
    format: MONEY_FORMAT,
    ...(formula === undefined ? { value: worked } : { formula }),
    ...(says !== undefined && { says }),
  });
  const rounded = (amount: string): string | undefined => round && `=${round}(${amount},2)`;
  const line = `(${orders}=${at(0)})*(${taxed}="yes")*${prices}*(1-${at(2)})*${at(4)}`;
  const tax =
    round &&
    (rules.taxBasis === 'line' ? `=SUMPRODUCT(${round}(${line},2))` : `=${round}(SUMPRODUCT(${line}),2)`);
  return [
    { label: 'order', role: 'note', value: order },
    amount('sum', quote.sum.toNumber(), `=SUMIFS(${prices},${orders},${at(0)})`),
    { label: 'discount', role: 'input', format: SHARE_FORMAT, value: rules.discount.toNumber() },
    amount('taken off', quote.discount.toNumber(), rounded(`${at(1)}*${at(2)}`)),
    { label: 'tax rate', role: 'input', format: SHARE_FORMAT, value: rules.taxRate.toNumber() },
    amount('tax', quote.tax.toNumber(), tax, `by ${rules.taxBasis}, of the lines that are taxed`),
    amount('total', quote.total.toNumber(), `=${at(1)}-${at(3)}+${at(5)}`),
    { label: 'deposit', role: 'input', format: SHARE_FORMAT, value: rules.deposit.toNumber() },
    amount('due with the order', quote.deposit.toNumber(), rounded(`${at(6)}*${at(7)}`)),
    amount('balance', quote.total.minus(quote.deposit).toNumber(), `=${at(6)}-${at(8)}`),
    {
      label: 'check',
      role: 'check',
      formula: `=IF(ROUND(${at(6)}-${quote.total.toFixed(2)},2)=0,"ok","look")`,
      says: `the total was worked out as ${quote.total.toFixed(2)}; look: a line or a rate was changed since`,
    },
  ];
}

function priceSheet(job: Job, floor: Pick<Floor, 'sheet' | 'house'>, priced: JobPrice): Draft {
  const sheet = job.sheet(SHEET);
  const { rules } = floor.house;
  const orders = ordersOf(priced);
  let row = HEADER + orders.reduce((sum, [, { lines }]) => sum + lines.length, 0) + 3;
  const totals = orders.map(([order, quote]): Draft => {
    const list = totalsOf(job, row, order, quote, rules);
    const draft = pairs(job, sheet, row, list);
    row += list.length + 1;
    return draft;
  });
  const { mockUp, findings } = priced;
  const notes = [
    ...(mockUp === undefined
      ? []
      : [
          `The mock-up, ${mockUp.says}, is an order of its own: both come to ${mockUp.total.toFixed(2)}, ${mockUp.adds.toFixed(2)} more than in one order.`,
        ]),
    ...findings.map(({ sentence }) => sentence),
  ];
  return together(
    titled(
      sheet,
      'Floor price',
      `Worked out from the windows of “${floor.sheet}” as they stood. Costs are the house’s own: not for the client.`,
    ),
    linesTable(job, sheet, orders),
    ...totals,
    {
      puts: notes.map((note, at) => ({ area: areaAt(sheet, row + at, 0), cells: [[note]] })),
      dress: notes.map((_, at) => ({ area: areaAt(sheet, row + at, 0), role: 'note' as const })),
    },
    laidOut(job, sheet, { header: HEADER, landscape: true, widths: [18, 14, 26, 11, 9, 13, 13, 8, 44] }),
  );
}

/** The sheet as it would be written, under names the workbook has not taken. */
export const floorPriceDraft = (
  contents: Taken,
  floor: Pick<Floor, 'sheet' | 'house'>,
  priced: JobPrice,
): Draft => underFreeNames(contents, floor.house, (job) => priceSheet(job, floor, priced)).draft;

/** Writes the price in one undo step and shows it; gives its first cell. */
export async function writeFloorPrice(
  book: Book,
  floor: Floor,
  priced: JobPrice,
  watch: Watch = {},
): Promise<Area> {
  return applySheets(book, 'Write the price', floorPriceDraft(await book.contents(), floor, priced), watch);
}
