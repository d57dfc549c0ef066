/** What each row of the windows costs and sells for: the house's own working, not the client's. */
import { laidOut, MONEY_FORMAT, tableDraft, titled, together, type Draft, type Job } from './draft';

const HEADER = 3;

export function costsSheet(job: Job): Draft {
  const sheet = job.sheet('Costs');
  const { small, large } = job.unit;
  const name = (base: string): string => job.name(base);
  const line = (of: (key: string) => string, range: string): string => `INDEX(${name(range)},${of('line')})`;
  const worked = (of: (key: string) => string, formula: string): string =>
    `=IF(${of('room')}="","",${formula})`;
  const count = (of: (key: string) => string): string => of('quantity');
  return together(
    titled(sheet, 'Costs', 'The house’s own working behind the quote: not for the client.'),
    tableDraft(job, {
      sheet,
      name: 'Costs',
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
          role: 'working',
          name: 'Cost_rooms',
          formula: (of) =>
            `=IF(${line(of, 'Window_openings')}="","",IF(${line(of, 'Window_rooms')}="","window "&${of('line')},${line(of, 'Window_rooms')}&""))`,
        },
        {
          key: 'what',
          heading: 'what',
          role: 'working',
          name: 'Cost_words',
          formula: (of) => worked(of, `${line(of, 'Window_headings')}&", "&${line(of, 'Window_fabrics')}`),
        },
        {
          key: 'quantity',
          heading: 'quantity',
          role: 'working',
          name: 'Cost_quantities',
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
          name: 'Cost_prices',
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
          name: 'Cost_exact_tax',
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
          name: 'Cost_line_tax',
          formula: (of) => worked(of, `ROUND(${of('exact')},2)`),
        },
      ],
    }),
    laidOut(job, sheet, {
      header: HEADER,
      landscape: true,
      widths: [6, 22, 30, 10, 12, 12, 12, 12, 12, 12, 12, 12, 12],
    }),
  );
}
