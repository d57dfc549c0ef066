/** What hardware is to be bought for a job: rods by their length, then everything that hangs on them. */
import { NO_FITTINGS, PIECE_WORDS, withMore, type Fittings } from '../heading/fittings';
import { showLength } from '../exact/unit';
import type { Length } from '../exact/length';
import { LOAD } from './cautions';
import { hungOn, orNone } from './client-words';
import { footOf } from './foot';
import { letterheadOf } from './house-lines';
import { datedOf, referenceOf, type PapersJob } from './job';
import { count, PORTRAIT, words, type Block, type Entry, type Paper, type TableRow } from './paper';

interface Rods {
  readonly length: Length;
  readonly on: 'rod' | 'track';
  readonly rods: number;
  readonly rooms: readonly string[];
  readonly pieces: string;
}

/** Rods and tracks of one length, longest first, and what hangs on them all. */
function rodsOf({ windows, unit }: PapersJob): { readonly rods: readonly Rods[]; readonly all: Fittings } {
  const found = new Map<string, Rods>();
  let all = NO_FITTINGS;
  for (const { work, room } of windows) {
    all = withMore(all, work.fittings(), work.quantity);
    if (work.window.hangOn === 'none') continue;
    const on = hungOn(work);
    const key = `${on} ${work.rod}`;
    const pieces = orNone(() => work.rodPieces().value.pieces) ?? [];
    const had = found.get(key);
    found.set(key, {
      length: work.rod,
      on,
      rods: (had?.rods ?? 0) + work.quantity,
      rooms: [...new Set([...(had?.rooms ?? []), String(room.value)])],
      pieces: pieces.map((one) => `${one.count} × ${showLength(one.stockLength, unit)}`).join(' + '),
    });
  }
  return { rods: [...found.values()].sort((one, other) => other.length - one.length), all };
}

const from = (what: string, supplier: Entry | undefined): Block => ({
  is: 'pairs',
  across: 1,
  title: what,
  pairs: [{ label: 'From', entry: supplier }],
});

export function hardwarePapers(job: PapersJob): readonly Paper[] {
  const { rods, all } = rodsOf(job);
  const pieces = PIECE_WORDS.filter(([key]) => all[key] > 0);
  if (rods.length === 0 && pieces.length === 0) return [];
  const title = 'Hardware to buy';
  const rodRows = rods.map(({ length, on, rods: many, rooms, pieces: made }): TableRow => ({
    is: 'line',
    cells: [
      count(many),
      words(`${on} ${showLength(length, job.unit)}`),
      words(made),
      words(rooms.join('; ')),
    ],
  }));
  const blocks: readonly Block[] = [
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
    ...(rods.length === 0
      ? []
      : [
          from('Rods and tracks', job.house.rodsFrom),
          {
            is: 'table' as const,
            repeated: true as const,
            columns: [
              { heading: 'Pieces', span: 1, align: 'center' as const },
              { heading: 'What', span: 3 },
              { heading: 'Made from stock', span: 3 },
              { heading: 'For', span: 5 },
            ],
            rows: rodRows,
          },
        ]),
    ...(pieces.length === 0
      ? []
      : [
          from('What hangs on them', job.house.fittingsFrom),
          {
            is: 'table' as const,
            columns: [
              { heading: 'Pieces', span: 1, align: 'center' as const },
              { heading: 'What', span: 7 },
              { heading: 'Received', span: 4 },
            ],
            rows: pieces.map(([key, what]): TableRow => ({
              is: 'line',
              cells: [count(all[key]), words(what), undefined],
            })),
          },
        ]),
    {
      is: 'notes',
      small: true,
      lines: [words(LOAD)],
    },
  ];
  return [
    {
      kind: 'hardware',
      sheet: title,
      title,
      unit: job.unit,
      page: PORTRAIT(job.size),
      foot: footOf(job, title),
      blocks,
    },
  ];
}
