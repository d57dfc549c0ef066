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
const HEADER = 15;

export function quoteSheet(job: Job): Draft {
  const sheet = job.sheet('Quote');
  const name = (base: string): string => job.name(base);
  const line = (cell: CellOfRow, range: string): string =>
    `IF(${cell('line')}="","",INDEX(${name(range)},${cell('line')}))`;
  const total = (at: number): string => cellText(TOTALS + at, 1);
  // Beside the windows' lines: to the cent, the discount off them as off the lines.
  const extra = { role: 'output', format: MONEY_FORMAT } as const;
  const kept = (amount: string): string => `=ROUND(${amount}*(1-${partOf(job, 'Sell_discount')}),2)`;
  const goods = `${total(2)}*${partOf(job, 'Tax_goods')}`;
  const work = `${total(3)}*${partOf(job, 'Tax_work')}`;
  return together(
    titled(sheet, 'Quote', 'One line for each row of the windows. Prices hold while the cloth is in stock.'),
    pairs(job, sheet, TOTALS, [
      { label: 'client', role: 'output', formula: `=IF(${name('Job_client')}="","",${name('Job_client')})` },
      {
        label: 'subtotal',
        role: 'output',
        format: MONEY_FORMAT,
        formula: `=IF(SUMPRODUCT((${name('Quote_rooms')}<>"")*NOT(ISNUMBER(${name('Quote_prices')})))>0,"${NOT_YET}",SUM(${name('Quote_prices')}))`,
        name: 'Quote_subtotal',
      },
      { label: 'attic stock', ...extra, formula: kept(soldAt(job, `SUM(${name('Fabric_attic_costs')})`)) },
      { label: 'installation', ...extra, formula: kept(`SUM(${name('Cost_installations')})`) },
      { label: 'freight', ...extra, formula: kept(name('Freight_charge')) },
      {
        label: 'tax',
        role: 'output',
        format: MONEY_FORMAT,
        name: 'Quote_tax',
        formula: `=${ifKnown(total(1), `IFERROR(IF(${name('Tax_basis')}="invoice",ROUND(SUM(${name('Cost_exact_tax')})+${goods}+${work},2),SUM(${name('Quote_taxes')})+ROUND(${goods},2)+ROUND(${work},2)),"${NOT_YET}")`)}`,
      },
      {
        label: 'total',
        role: 'output',
        format: MONEY_FORMAT,
        name: 'Quote_total',
        formula: `=${ifKnown(`${total(1)}+SUM(${total(2)}:${total(4)})+${total(5)}`, `${total(1)}+SUM(${total(2)}:${total(4)})+${total(5)}`)}`,
      },
      {
        label: 'deposit',
        role: 'output',
        format: MONEY_FORMAT,
        formula: `=${ifKnown(total(6), `ROUND(${total(6)}*${partOf(job, 'Deposit_in_force')},2)`)}`,
      },
      {
        label: 'balance',
        role: 'output',
        format: MONEY_FORMAT,
        formula: `=${ifKnown(total(6), `${total(6)}-${total(7)}`)}`,
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
    ]),
    { newNames: [{ name: name('Quote_extras'), area: areaAt(sheet, TOTALS + 2, 1, 3, 1) }] },
    tableDraft(job, {
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
            return `=IF(INDEX(${name('Cost_rooms')},${at})="","",${at})`;
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
    }),
    laidOut(job, sheet, { header: HEADER, widths: [12, 24, 34, 10, 14, 12] }),
  );
}
