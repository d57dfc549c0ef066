/** What a public job asks to be sent for approval: a list to keep, of no claim. */
import { clientWords } from './client-words';
import type { PapersJob } from './job';
import { words, type Block, type TableRow } from './paper';

/** Source of the four kinds: UFGS 12 22 00, submittals, in our own words. */
const KINDS = [
  ['Product data', 'each cloth, lining, rod or track and its hardware; certificates by lot'],
  ['Drawings', 'each window with its seams, its hardware and its anchorage'],
  ['Samples', 'each cloth and lining with its pattern; heading, hem and seam made up'],
  ['Maintenance', 'how to clean, take down and hang again; spare parts'],
] as const;

const row = (kind: string, what: string): TableRow => ({
  is: 'line',
  cells: [words(kind), words(what)],
});

export function submittals(job: PapersJob): readonly Block[] {
  if (!job.publicBuilding) return [];
  const fabrics = [...new Set(job.windows.flatMap(({ work }) => work.window.fabric ?? []))];
  return [
    { is: 'page' },
    {
      is: 'notes',
      title: 'Submittals',
      lines: [
        words('A public job: sent to and approved by who is named in its own specification.'),
        ...(fabrics.length === 0 ? [] : [words(`Cloths: ${fabrics.join(', ')}.`)]),
        words(
          `Windows: ${[...new Set(job.windows.map(({ work }) => clientWords(work, false)))].join('; ')}.`,
        ),
      ],
    },
    {
      is: 'table',
      columns: [
        { heading: 'Submittal', span: 2 },
        { heading: 'Holds', span: 6 },
        { heading: 'Sent', span: 2 },
        { heading: 'Approved', span: 2 },
      ],
      rows: KINDS.map(([kind, what]) => row(kind, what)),
    },
  ];
}
