/** The client's quote: a line for each row of windows, and the totals above it. */
import { cellText } from '../address';
import { laidOut, MONEY_FORMAT, pairs, tableDraft, titled, together, type Draft, type Job } from './draft';

const TOTALS = 3;
const HEADER = 13;

export function quoteSheet(job: Job): Draft {
  const sheet = job.sheet('Quote');
  const name = (base: string): string => job.name(base);
  const line = (of: (key: string) => string, range: string): string => `INDEX(${name(range)},${of('line')})`;
  const total = (at: number): string => cellText(TOTALS + at, 1);
  return together(
    titled(sheet, 'Quote', 'One line for each row of the windows. Prices hold while the cloth is in stock.'),
    pairs(job, sheet, TOTALS, [
      { label: 'client', role: 'output', formula: `=IF(${name('Job_client')}="","",${name('Job_client')})` },
      {
        label: 'subtotal',
        role: 'output',
        format: MONEY_FORMAT,
        formula: `=SUM(${name('Quote_prices')})`,
        name: 'Quote_subtotal',
      },
      { label: 'freight', role: 'output', format: MONEY_FORMAT, formula: `=N(${name('Price_freight')})` },
      {
        label: 'tax',
        role: 'output',
        format: MONEY_FORMAT,
        name: 'Quote_tax',
        formula: `=IF(${name('Tax_basis')}="invoice",ROUND(SUM(${name('Cost_exact_tax')}),2),SUM(${name('Quote_taxes')}))`,
      },
      {
        label: 'total',
        role: 'output',
        format: MONEY_FORMAT,
        name: 'Quote_total',
        formula: `=${total(1)}+${total(2)}+${total(3)}`,
      },
      {
        label: 'deposit',
        role: 'output',
        format: MONEY_FORMAT,
        formula: `=ROUND(${total(4)}*N(${name('Deposit_share')}),2)`,
      },
      { label: 'balance', role: 'output', format: MONEY_FORMAT, formula: `=${total(4)}-${total(5)}` },
      {
        label: 'caution',
        role: 'note',
        formula: `=IF(${name('Job_children')}="yes","Operating cords and loops are a strangulation hazard for children: choose cordless or wand draw. Local codes and licensed practice decide.","")`,
      },
      { label: 'check', role: 'check', formula: `=${name('Checks_all')}` },
    ]),
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
          cells: Array.from({ length: job.windows }, (_, at) => at + 1),
        },
        {
          key: 'room',
          heading: 'room',
          role: 'output',
          name: 'Quote_rooms',
          formula: (of) => `=${line(of, 'Cost_rooms')}`,
        },
        { key: 'what', heading: 'what', role: 'output', formula: (of) => `=${line(of, 'Cost_words')}` },
        {
          key: 'quantity',
          heading: 'quantity',
          role: 'output',
          formula: (of) => `=${line(of, 'Cost_quantities')}`,
        },
        {
          key: 'price',
          heading: 'price',
          role: 'output',
          format: MONEY_FORMAT,
          name: 'Quote_prices',
          formula: (of) => `=${line(of, 'Cost_prices')}`,
        },
        {
          key: 'tax',
          heading: 'tax',
          role: 'output',
          format: MONEY_FORMAT,
          name: 'Quote_taxes',
          formula: (of) => `=${line(of, 'Cost_line_tax')}`,
        },
      ],
    }),
    laidOut(job, sheet, { header: HEADER, widths: [12, 24, 34, 10, 14, 12] }),
  );
}
