/** What is worth a second look in a job, for the file; on a public job also what is to be handed in. */
import type { Weight } from '../cell/answer';
import { bare } from '../cell/treatment';
import { fabricOf } from '../floor/tally';
import { matchOfText } from '../window/reader/treatment-text';
import { FIGURES } from '../window/figures';
import type { WindowWork } from '../window/job';
import { footOf } from './foot';
import { letterheadOf } from './house-lines';
import { byRoom, datedOf, referenceOf, type PapersJob } from './job';
import { PORTRAIT, words, type Entry, type Paper, type TableRow } from './paper';
import { submittals } from './submittals';

const ORDER: readonly Weight[] = ['stop', 'check', 'note'];

/** Everything that CHECK would say of a window. */
function findingsOf(work: WindowWork): readonly { readonly weight: Weight; readonly sentence: string }[] {
  FIGURES.find(({ key }) => key === 'findings')?.work(work);
  return [...work.findings()].sort((one, other) => ORDER.indexOf(one.weight) - ORDER.indexOf(other.weight));
}

type Found = ReturnType<typeof findingsOf>[number];

const unlike = (all: readonly Found[]): readonly Found[] =>
  all.filter((one, at) => all.findIndex(({ sentence }) => sentence === one.sentence) === at);

const groupOf = (head: Entry, found: readonly Found[]): readonly TableRow[] =>
  found.length === 0
    ? []
    : [
        { is: 'group', cells: [head] },
        ...found.map(({ weight, sentence }): TableRow => ({
          is: 'line',
          cells: [words(weight), words(sentence), undefined],
        })),
      ];

/** What the sheet of fabrics says of a pattern, and the windows are not worked out by. */
function matchFindings({ windows, cloths }: PapersJob): readonly Found[] {
  return cloths.flatMap(({ name, match }): Found[] => {
    if (match === undefined) return [];
    const half = matchOfText(String(match.value)) === 'half-drop';
    const other = windows.filter(({ work }) => {
      const { cutting } = work.cloth();
      return bare(fabricOf(work)) === bare(name) && (cutting.repeat ?? 0) > 0 && cutting.halfDrop !== half;
    });
    return other.length === 0
      ? []
      : [
          {
            weight: 'check',
            sentence: `${name} is “${match.value}” on the sheet of fabrics, and ${other.map(({ room }) => room.value).join(', ')} ${other.length === 1 ? 'is' : 'are'} worked out as ${half ? 'straight' : 'half-drop'}: give the table of windows a column “match”, or correct the fabric.`,
          },
        ];
  });
}

/** What is so everywhere is said once, then room by room what is only there. */
function rows(job: PapersJob): readonly TableRow[] {
  const seen = [...job.unread, ...(job.noWindows ?? [])].map((sentence): TableRow => ({
    is: 'line',
    cells: [words('stop'), words(sentence), undefined],
  }));
  const rooms = byRoom(job.windows).map(({ room, windows }) => ({
    room,
    found: unlike(windows.flatMap(({ work }) => findingsOf(work))),
  }));
  const everywhere = (sentence: string): boolean =>
    rooms.length > 1 && rooms.every(({ found }) => found.some((one) => one.sentence === sentence));
  const shared = (rooms[0]?.found ?? []).filter(({ sentence }) => everywhere(sentence));
  return [
    ...seen,
    ...groupOf(words('Cloths'), matchFindings(job)),
    ...groupOf(words('Every room'), shared),
    ...rooms.flatMap(({ room, found }) =>
      groupOf(
        room,
        found.filter(({ sentence }) => !everywhere(sentence)),
      ),
    ),
  ];
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
