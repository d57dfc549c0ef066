/** The client's quote: a line for each row of windows, and the totals above it. */
import { areaAt, cellText } from '../address';
import { ifKnown, NOT_YET, soldAt } from './costs';
import {
  laidOut,
  MONEY_FORMAT,
  pairs,
  tableDraft,
  titled,
  together,
  type CellOfRow,
  type Draft,
  type Job,
} from './draft';
import { partOf } from './price-terms';

const TOTALS = 3;
const HEADER = 16;

/** Before and with the tax: subtotal, further lines, what stands beside them, tax. */
const addedUp = (total: (at: number) => string): string =>
  `${total(1)}+${total(2)}+SUM(${total(3)}:${total(5)})+${total(6)}`;

/** All the further lines of the sheet of extras, where each has a price. */
const furtherLines = (job: Job): string =>
  `=IF(SUMPRODUCT((${job.name('Extra_whats')}<>"")*NOT(ISNUMBER(${job.name('Extra_prices')})))>0,"${NOT_YET}",SUM(${job.name('Extra_prices')}))`;

/** What the client pays in all, above the lines. */
function totals(job: Job, sheet: string): Draft {
  const name = (base: string): string => job.name(base);
  const total = (at: number): string => cellText(TOTALS + at, 1);
  // Beside the windows' lines: to the cent, the discount off them as off the lines.
  const extra = { role: 'output', format: MONEY_FORMAT } as const;
  const kept = (amount: string): string => `=ROUND(${amount}*(1-${partOf(job, 'Sell_discount')}),2)`;
  const [goods, work] = [`${total(3)}*${partOf(job, 'Tax_goods')}`, `${total(4)}*${partOf(job, 'Tax_work')}`];
  return pairs(job, sheet, TOTALS, [
    { label: 'client', role: 'output', formula: `=IF(${name('Job_client')}="","",${name('Job_client')})` },
    {
      label: 'subtotal',
      role: 'output',
      format: MONEY_FORMAT,
      formula: `=IF(SUMPRODUCT((${name('Quote_rooms')}<>"")*NOT(ISNUMBER(${name('Quote_prices')})))>0,"${NOT_YET}",SUM(${name('Quote_prices')}))`,
      name: 'Quote_subtotal',
    },
    { label: 'extra lines', ...extra, formula: furtherLines(job) },
    { label: 'attic stock', ...extra, formula: kept(soldAt(job, `SUM(${name('Fabric_attic_costs')})`)) },
    { label: 'installation', ...extra, formula: kept(`SUM(${name('Cost_installations')})`) },
    { label: 'freight', ...extra, formula: kept(name('Freight_charge')) },
    {
      label: 'tax',
      role: 'output',
      format: MONEY_FORMAT,
      name: 'Quote_tax',
      formula: `=${ifKnown(total(1), `IFERROR(IF(${name('Tax_basis')}="invoice",ROUND(SUM(${name('Cost_exact_tax')})+SUM(${name('Extra_taxes')})+${goods}+${work},2),SUM(${name('Quote_taxes')})+ROUND(SUM(${name('Extra_taxes')}),2)+ROUND(${goods},2)+ROUND(${work},2)),"${NOT_YET}")`)}`,
    },
    {
      label: 'total',
      role: 'output',
      format: MONEY_FORMAT,
      name: 'Quote_total',
      formula: `=${ifKnown(addedUp(total), addedUp(total))}`,
    },
    {
      label: 'deposit',
      role: 'output',
      format: MONEY_FORMAT,
      formula: `=${ifKnown(total(7), `ROUND(${total(7)}*${partOf(job, 'Deposit_in_force')},2)`)}`,
    },
    {
      label: 'balance',
      role: 'output',
      format: MONEY_FORMAT,
      formula: `=${ifKnown(total(7), `${total(7)}-${total(8)}`)}`,
    },
    {
      label: 'caution',
      role: 'note',
      formula: `=IF(${name('Job_children')}="yes","Operating cords and loops are a strangulation hazard for children: choose cordless or wand draw. Local codes and licensed practice decide.","")`,
    },
    {
      label: 'check',
      role: 'check',
      formula: `=${name('Checks_all')}&IF(${name('Cost_note')}="","",": see the note on the sheet of costs")`,
    },
  ]);
}

/** A line for each row of windows. */
function lines(job: Job, sheet: string): Draft {
  const line = (cell: CellOfRow, range: string): string =>
    `IF(${cell('line')}="","",INDEX(${job.name(range)},${cell('line')}))`;
  return tableDraft(job, {
    sheet,
    name: 'Quote',
    row: HEADER,
    rows: job.windows,
    columns: [
      {
        key: 'line',
        heading: 'line',
        role: 'note',
        formula: () => {
          const at = `ROW()-ROW(${cellText(HEADER, 0, { row: true, column: true })})`;
          return `=IF(INDEX(${job.name('Cost_rooms')},${at})="","",${at})`;
        },
      },
      {
        key: 'room',
        heading: 'room',
        role: 'output',
        name: 'Quote_rooms',
        formula: (cell) => `=${line(cell, 'Cost_rooms')}`,
      },
      { key: 'what', heading: 'what', role: 'output', formula: (cell) => `=${line(cell, 'Cost_words')}` },
      {
        key: 'quantity',
        heading: 'quantity',
        role: 'output',
        formula: (cell) => `=${line(cell, 'Cost_quantities')}`,
      },
      {
        key: 'price',
        heading: 'price',
        role: 'output',
        format: MONEY_FORMAT,
        name: 'Quote_prices',
        formula: (cell) => `=${line(cell, 'Cost_prices')}`,
      },
      {
        key: 'tax',
        heading: 'tax',
        role: 'output',
        format: MONEY_FORMAT,
        name: 'Quote_taxes',
        formula: (cell) => `=${line(cell, 'Cost_line_tax')}`,
      },
    ],
  });
}

export function quoteSheet(job: Job): Draft {
  const sheet = job.sheet('Quote');
  return together(
    titled(sheet, 'Quote', 'One line for each row of the windows. Prices hold while the cloth is in stock.'),
    totals(job, sheet),
    { newNames: [{ name: job.name('Quote_extras'), area: areaAt(sheet, TOTALS + 2, 1, 4, 1) }] },
    lines(job, sheet),
    laidOut(job, sheet, { header: HEADER, widths: [12, 24, 34, 10, 14, 12] }),
  );
}
