/** What the house says on its papers, typed once, and the suppliers it orders from. */
import { HOUSE_LINES, standardOf } from '../../core/papers/house-lines';
import { areaAt } from '../address';
import { laidOut, tableDraft, titled, together, type Draft, type Job } from './draft';

const HEADER = 3;
const SUPPLIER_ROWS = 12;
const SUPPLIERS = HEADER + HOUSE_LINES.length + 3;

/** Of the table of suppliers: its headings, by which papers read it too. */
export const SUPPLIER_HEADINGS = {
  name: 'supplier',
  account: 'our account',
  address: 'their address',
  shipBy: 'ship by',
} as const;

export function housePapersSheet(job: Job): Draft {
  const sheet = job.sheet('House');
  return together(
    titled(
      sheet,
      'House',
      'What your papers say: typed once, for every job. Left blank, what stands under “else” is printed; write none to print nothing.',
    ),
    tableDraft(job, {
      sheet,
      name: 'House_lines',
      row: HEADER,
      rows: HOUSE_LINES.length,
      columns: [
        { key: 'line', heading: 'on the papers', role: 'note', cells: HOUSE_LINES.map(({ label }) => label) },
        { key: 'own', heading: 'your words', role: 'input' },
        {
          key: 'standard',
          heading: 'else',
          role: 'note',
          cells: HOUSE_LINES.map((line) => standardOf(line, job.paper)),
        },
        { key: 'says', heading: 'what it is', role: 'note', cells: HOUSE_LINES.map(({ says }) => says) },
      ],
    }),
    tableDraft(job, {
      sheet,
      name: 'Suppliers',
      row: SUPPLIERS,
      rows: SUPPLIER_ROWS,
      columns: [
        { key: 'supplier', heading: SUPPLIER_HEADINGS.name, role: 'input' },
        { key: 'account', heading: SUPPLIER_HEADINGS.account, role: 'input' },
        { key: 'address', heading: SUPPLIER_HEADINGS.address, role: 'input' },
        { key: 'shipBy', heading: SUPPLIER_HEADINGS.shipBy, role: 'input' },
      ],
    }),
    {
      newNames: [
        {
          name: job.name('House_papers'),
          area: areaAt(sheet, HEADER + 1, 0, HOUSE_LINES.length, 2),
        },
      ],
    },
    laidOut(job, sheet, { header: HEADER, landscape: true, widths: [34, 44, 60, 50] }),
  );
}
