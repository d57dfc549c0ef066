/** Further priced lines: what is sold beside the draperies, by the line of its window or for the whole job. */
import { TRIM_EDGES } from '../../core/window/trims';
import { ifKnown, NOT_YET, ruleCell, soldAt } from './costs';
import {
  atLeast,
  laidOut,
  MONEY_FORMAT,
  oneOf,
  tableDraft,
  titled,
  together,
  type CellOfRow,
  type ColumnDraft,
  type Draft,
  type Job,
} from './draft';
import { partOf } from './price-terms';

const HEADER = 3;
const ROWS = 24;

/** Its headings, by which papers read it too. */
export const EXTRA_HEADINGS = {
  line: 'for line',
  what: 'what',
  words: 'in the client’s words',
  quantity: 'quantity',
  unit: 'counted in',
  edges: 'along',
  strip: 'strips cut',
  bolt: 'of cloth wide',
  counted: 'counted',
  supplier: 'supplier',
  each: 'what one costs',
  making: 'making charge (the line)',
  own: 'your price (the line)',
  cost: 'cost',
  price: 'price',
  tax: 'tax, exact',
} as const;
export type ExtraKey = keyof typeof EXTRA_HEADINGS;

const KINDS = [
  'sheer',
  'valance',
  'cornice',
  'tiebacks',
  'trim',
  'band',
  'cushion',
  'motor',
  'travel',
  'take-down',
] as const;

const moneyAtLeast0 = (says: string) => atLeast(0, says, { otherwise: 'warn' });

/** Up to an eighth of a yard or a tenth of a metre. */
function upToPart({ unit }: Job, yards: string): string {
  const parts = unit.large === 'yd' ? 8 : 10;
  return `ROUNDUP(ROUND((${yards})*${parts},6),0)/${parts}`;
}

/** The length of a trim’s edges, to be bought or as it is. */
function trimmed(job: Job, cell: CellOfRow, bought = true): string {
  const along = (range: string, otherThan: string): string =>
    `IF(${cell('edges')}="${otherThan}",0,INDEX(${job.name(range)},${cell('line')}))`;
  const [leading, bottom] = TRIM_EDGES;
  const long = `${along('Window_leading_trims', bottom)}+${along('Window_bottom_trims', leading)}`;
  return bought ? upToPart(job, long) : long;
}

/** A band’s cloth: strips from edge to edge, each but the last giving a seam to the next (as core’s bandOf). */
function banded(job: Job, cell: CellOfRow): string {
  const { small, large } = job.unit;
  const seams = `2*${ruleCell(job, 'seam')}`;
  const long = `CONVERT(${trimmed(job, cell, false)},"${large}","${small}")`;
  const strips = `MAX(1,ROUNDUP(ROUND((${long}-${seams})/(${cell('bolt')}-${seams}),6),0))`;
  return upToPart(job, `CONVERT(${strips}*${cell('strip')},"${small}","${large}")`);
}

const worked = (cell: CellOfRow, formula: string): string => `=IF(${cell('what')}="","",${formula})`;
const goods = (cell: CellOfRow): string => `${cell('counted')}*N(${cell('each')})`;
const heading = (key: ExtraKey) => ({ key, heading: EXTRA_HEADINGS[key] });

/** For which line, what, and how many. */
const asked = (job: Job): readonly ColumnDraft[] => [
  {
    ...heading('line'),
    role: 'input',
    name: 'Extra_lines',
    choice: atLeast(1, 'The line of its window on the quote; blank is for the whole job.', {
      whole: true,
      otherwise: 'warn',
    }),
  },
  {
    ...heading('what'),
    role: 'input',
    name: 'Extra_whats',
    choice: oneOf(KINDS, 'Choose what it is, or write it in your own words.'),
  },
  { ...heading('words'), role: 'input', note: 'as the quote says it; blank takes the word before' },
  {
    ...heading('quantity'),
    role: 'input',
    note: 'blank is 1, or what a trim’s edges come to',
    choice: moneyAtLeast0('How many.'),
  },
  {
    ...heading('unit'),
    role: 'input',
    choice: oneOf(['each', 'pair', job.unit.large, 'hour', 'trip'], 'Choose what is counted.'),
  },
  {
    ...heading('edges'),
    role: 'input',
    note: 'of a trim or a band: the edges it follows, on every panel of its line',
    choice: oneOf(TRIM_EDGES, 'Choose the edges it follows.'),
  },
  {
    ...heading('strip'),
    role: 'input',
    note: `of a band cut from cloth: how wide each strip is cut, in ${job.unit.small}; its cloth is then counted`,
    choice: atLeast(0, `How wide each strip is cut, in ${job.unit.small}.`),
  },
  {
    ...heading('bolt'),
    role: 'input',
    note: `the usable width of that cloth, in ${job.unit.small}; strips run across it and are sewn end to end`,
    choice: atLeast(0, `The cloth’s usable width, in ${job.unit.small}.`),
  },
];

const counted = (job: Job): ColumnDraft => ({
  ...heading('counted'),
  role: 'working',
  format: '0.###',
  formula: (cell) =>
    worked(
      cell,
      `IF(${cell('quantity')}<>"",${cell('quantity')},IF(OR(${cell('edges')}="",${cell('line')}=""),1,IFERROR(IF(OR(N(${cell('strip')})=0,N(${cell('bolt')})=0),${trimmed(job, cell)},${banded(job, cell)}),"${NOT_YET}")))`,
    ),
});

/** What it is bought for, and sold for where that does not follow. */
const bought: readonly ColumnDraft[] = [
  { ...heading('supplier'), role: 'input', note: 'from whom it is ordered; blank orders nothing' },
  {
    ...heading('each'),
    role: 'input',
    format: MONEY_FORMAT,
    choice: moneyAtLeast0('What one, or a yard of it, costs the house.'),
  },
  {
    ...heading('making'),
    role: 'input',
    format: MONEY_FORMAT,
    choice: moneyAtLeast0('What making or doing it costs, for the whole line.'),
  },
  {
    ...heading('own'),
    role: 'input',
    format: MONEY_FORMAT,
    note: 'where it is not to follow from the cost',
    choice: moneyAtLeast0('What the client pays for the whole line.'),
  },
];

const sold = (job: Job): readonly ColumnDraft[] => [
  {
    ...heading('cost'),
    role: 'working',
    format: MONEY_FORMAT,
    formula: (cell) => worked(cell, ifKnown(cell('counted'), `${goods(cell)}+N(${cell('making')})`)),
  },
  {
    ...heading('price'),
    role: 'output',
    format: MONEY_FORMAT,
    name: 'Extra_prices',
    note: 'after markup or margin, and discount; nothing is made up where no cost is known',
    formula: (cell) =>
      worked(
        cell,
        `IF(${cell('own')}<>"",${cell('own')},IF(N(${cell('cost')})=0,"${NOT_YET}",ROUND(${soldAt(job, cell('cost'))}*(1-${partOf(job, 'Sell_discount')}),2)))`,
      ),
  },
  {
    ...heading('tax'),
    role: 'working',
    format: '0.0000',
    name: 'Extra_taxes',
    formula: (cell) =>
      worked(
        cell,
        ifKnown(
          cell('price'),
          `IF(N(${cell('cost')})=0,${cell('price')}*${partOf(job, 'Tax_goods')},${cell('price')}*(${goods(cell)}*${partOf(job, 'Tax_goods')}+N(${cell('making')})*${partOf(job, 'Tax_work')})/${cell('cost')})`,
        ),
      ),
  },
];

export function extrasSheet(job: Job): Draft {
  const sheet = job.sheet('Extras');
  return together(
    titled(
      sheet,
      'Extras',
      'What is sold beside the draperies: valances, tiebacks, trims, motors, travel. The line is the number of its row on the quote; blank is for the whole job.',
    ),
    tableDraft(job, {
      sheet,
      name: 'Extras',
      row: HEADER,
      rows: ROWS,
      columns: [...asked(job), counted(job), ...bought, ...sold(job)],
    }),
    laidOut(job, sheet, {
      header: HEADER,
      landscape: true,
      widths: [8, 14, 40, 10, 10, 22, 10, 10, 12, 20, 12, 14, 14, 12, 12, 12],
    }),
  );
}
