/** The client's quote: a line for each row of windows, and the totals above it. */
import { cellText } from '../address';
import { laidOut, MONEY_FORMAT, pairs, tableDraft, titled, together, type Draft, type Job } from './draft';

const TOTALS = 3;
const HEADER = 12;

export function quoteSheet(job: Job): Draft {
  const sheet = job.sheet('Quote');
  const { small, large } = job.unit;
  const name = (base: string): string => job.name(base);
  const line = (of: (key: string) => string, range: string): string => `INDEX(${name(range)},${of('line')})`;
  const total = (at: number): string => cellText(TOTALS + at, 1);
  const worked = (of: (key: string) => string, formula: string): string =>
    `=IF(${of('room')}="","",${formula})`;
  const count = (of: (key: string) => string): string => of('quantity');
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
        formula: `=IF(${name('Tax_basis')}="invoice",ROUND(SUM(${name('Quote_exact_tax')}),2),SUM(${name('Quote_line_tax')}))`,
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
          formula: (of) =>
            `=IF(${line(of, 'Window_openings')}="","",IF(${line(of, 'Window_rooms')}="","window "&${of('line')},${line(of, 'Window_rooms')}&""))`,
        },
        {
          key: 'what',
          heading: 'what',
          role: 'output',
          formula: (of) => worked(of, `${line(of, 'Window_headings')}&", "&${line(of, 'Window_fabrics')}`),
        },
        {
          key: 'quantity',
          heading: 'quantity',
          role: 'working',
          formula: (of) =>
            worked(of, `IF(${line(of, 'Window_quantities')}="",1,${line(of, 'Window_quantities')})`),
        },
        {
          key: 'fabric',
          heading: 'fabric',
          role: 'working',
          format: MONEY_FORMAT,
          formula: (of) =>
            worked(
              of,
              `${line(of, 'Window_yardage')}*INDEX(${name('Fabric_prices')},MATCH(${line(of, 'Window_fabrics')},${name('Fabric_names')},0))`,
            ),
        },
        {
          key: 'lining',
          heading: 'lining',
          role: 'working',
          format: MONEY_FORMAT,
          formula: (of) => worked(of, `${line(of, 'Window_lining_yardage')}*N(${name('Price_lining')})`),
        },
        {
          key: 'making',
          heading: 'making',
          role: 'working',
          format: MONEY_FORMAT,
          formula: (of) => worked(of, `${line(of, 'Window_labor')}+0`),
        },
        {
          key: 'hardware',
          heading: 'hardware',
          role: 'working',
          format: MONEY_FORMAT,
          formula: (of) =>
            worked(
              of,
              `${count(of)}*(CONVERT(${line(of, 'Window_rods')},"${small}","${large}")*N(${name('Price_rod')})+${line(of, 'Window_rings')}*N(${name('Price_ring')})+${line(of, 'Window_brackets')}*N(${name('Price_bracket')})+N(${name('Price_finials')}))`,
            ),
        },
        {
          key: 'installation',
          heading: 'installation',
          role: 'working',
          format: MONEY_FORMAT,
          formula: (of) => worked(of, `${count(of)}*N(${name('Price_installation')})`),
        },
        {
          key: 'cost',
          heading: 'cost',
          role: 'working',
          format: MONEY_FORMAT,
          name: 'Quote_costs',
          formula: (of) =>
            worked(
              of,
              `${of('fabric')}+${of('lining')}+${of('making')}+${of('hardware')}+${of('installation')}`,
            ),
        },
        {
          key: 'price',
          heading: 'price',
          role: 'output',
          format: MONEY_FORMAT,
          name: 'Quote_prices',
          note: 'after markup or margin, and discount',
          formula: (of) =>
            worked(
              of,
              `ROUND(IF(${name('Sell_basis')}="margin on selling price",${of('cost')}/(1-N(${name('Sell_rate')})),${of('cost')}*(1+N(${name('Sell_rate')})))*(1-N(${name('Sell_discount')})),2)`,
            ),
        },
        {
          key: 'exact',
          heading: 'tax, exact',
          role: 'working',
          format: '0.0000',
          name: 'Quote_exact_tax',
          formula: (of) =>
            worked(
              of,
              `IF(${of('cost')}=0,0,${of('price')}*((${of('fabric')}+${of('lining')}+${of('hardware')})*N(${name('Tax_goods')})+(${of('making')}+${of('installation')})*N(${name('Tax_work')}))/${of('cost')})`,
            ),
        },
        {
          key: 'tax',
          heading: 'tax',
          role: 'output',
          format: MONEY_FORMAT,
          name: 'Quote_line_tax',
          formula: (of) => worked(of, `ROUND(${of('exact')},2)`),
        },
      ],
    }),
    laidOut(job, sheet, {
      header: HEADER,
      landscape: true,
      widths: [10, 22, 30, 10, 12, 12, 12, 12, 12, 12, 12, 12, 12],
    }),
  );
}
