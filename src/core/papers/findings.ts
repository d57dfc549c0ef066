/** What is worth a second look in a job, for the file; on a public job also what is to be handed in. */
import type { Weight } from '../cell/answer';
import { FIGURES } from '../window/figures';
import type { WindowWork } from '../window/job';
import { footOf } from './foot';
import { letterheadOf } from './house-lines';
import { byRoom, datedOf, referenceOf, type PapersJob } from './job';
import { PORTRAIT, words, type Paper, type TableRow } from './paper';
import { submittals } from './submittals';

const ORDER: readonly Weight[] = ['stop', 'check', 'note'];

/** Everything that CHECK would say of a window. */
function findingsOf(work: WindowWork): readonly { readonly weight: Weight; readonly sentence: string }[] {
  FIGURES.find(({ key }) => key === 'findings')?.work(work);
  return [...work.findings()].sort((one, other) => ORDER.indexOf(one.weight) - ORDER.indexOf(other.weight));
}

function rows(job: PapersJob): readonly TableRow[] {
  const seen = [...job.unread, ...(job.noWindows ?? [])].map((sentence): TableRow => ({
    is: 'line',
    cells: [words('stop'), words(sentence), undefined],
  }));
  const found = byRoom(job.windows).flatMap(({ room, windows }): TableRow[] => {
    const all = windows.flatMap(({ work }) => findingsOf(work));
    const once = all.filter((one, at) => all.findIndex(({ sentence }) => sentence === one.sentence) === at);
    return once.length === 0
      ? []
      : [
          { is: 'group', cells: [room] },
          ...once.map(({ weight, sentence }): TableRow => ({
            is: 'line',
            cells: [words(weight), words(sentence), undefined],
          })),
        ];
  });
  return [...seen, ...found];
}

export function findingsPaper(job: PapersJob): Paper {
  const title = 'Statement of findings';
  const found = rows(job);
  return {
    kind: 'findings',
    sheet: 'Findings',
    title,
    unit: job.unit,
    page: PORTRAIT(job.size),
    foot: footOf(job, title),
    blocks: [
      {
        is: 'letterhead',
        house: letterheadOf(job.house),
        title,
        facts: [
          datedOf(job),
          ...referenceOf(job),
          ...(job.client === undefined ? [] : [{ label: 'Client', entry: job.client }]),
        ],
      },
      {
        is: 'notes',
        small: true,
        lines: [
          words(
            'stop: cannot go on so. check: look before you cut. note: good to know. What was worked out from the measures, not an inspection of the place.',
          ),
        ],
      },
      ...(found.length === 0
        ? [{ is: 'notes' as const, lines: [words('Nothing was found that wants a second look.')] }]
        : [
            {
              is: 'table' as const,
              repeated: true as const,
              columns: [
                { heading: 'Weight', span: 1 },
                { heading: 'What was found', span: 8 },
                { heading: 'Seen by, what was done', span: 3 },
              ],
              rows: found,
            },
          ]),
      ...submittals(job),
    ],
  };
}
