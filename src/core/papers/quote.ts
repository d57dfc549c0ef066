/** The client's quote: lines in the client's words, the sums after them, what is and is not included. */
import { CORDS } from './cautions';
import { clientWords, specification } from './client-words';
import { extrasOf, forTheJob } from './extras';
import { footOf } from './foot';
import { letterheadOf, linesOf } from './house-lines';
import {
  byRoom,
  datedOf,
  isClients,
  namedAs,
  referenceOf,
  type JobExtra,
  type JobWindow,
  type PapersJob,
  type Sum,
} from './job';
import {
  day,
  PORTRAIT,
  upperFirst,
  words,
  type Block,
  type Entry,
  type Pair,
  type Paper,
  type TableRow,
} from './paper';

/** What a paper cannot be made without. */
export interface Missing {
  readonly missing: readonly string[];
}
export type Made = Paper | Missing;
export const isMade = (made: Made): made is Paper => !('missing' in made);

/** Why no price can be told to a client; nothing is made up in its place. */
function missingOf({ windows, sums, unread, extras }: PapersJob): readonly string[] {
  const unpriced = windows.filter(({ price }) => price === undefined);
  const total = sums.find(({ is }) => is === 'total');
  const missing = [...unread];
  if (windows.length === 0) missing.push('The job has no window that can be worked out.');
  else if (unpriced.length === windows.length)
    missing.push(
      'No window has a price. Set the prices and making charges on the sheet of prices; in a table of your own, say which column holds what the client pays.',
    );
  else
    for (const { room, line } of unpriced)
      missing.push(`${room.value} (line ${line}) has no price: its cell says why, or is blank.`);
  for (const { what, price } of extras)
    if (price === undefined)
      missing.push(
        `The extra “${what.value}” has no price: say on the sheet of extras what it costs or sells for.`,
      );
  if (unpriced.length === 0 && total === undefined)
    missing.push(
      'The job has no total. Set what is missing on the sheet of checks, or put a total under the prices.',
    );
  if (total !== undefined && total.entry.value === 0)
    missing.push('The total is 0: nothing is priced. Set the prices, or write the charge that is due.');
  return missing;
}

function windowRows(job: PapersJob, one: JobWindow, room: string, installed: boolean): readonly TableRow[] {
  const { work, quantity, price, facts } = one;
  const said = clientWords(work, installed);
  const spec = specification(work, {
    drawnBy: facts.drawnBy,
    ownMaterial: isClients(namedAs(job.cloths, work.window.fabric)),
  });
  return [
    { is: 'line', cells: [words(room === '' ? upperFirst(said) : `${room}: ${said}`), quantity, price] },
    ...(spec === '' ? [] : [{ is: 'detail' as const, cells: [words(upperFirst(spec))] }]),
    ...(one.remarks === undefined ? [] : [{ is: 'detail' as const, cells: [one.remarks] }]),
  ];
}

const extraRow = ({ what, words: said, quantity, price }: JobExtra): TableRow => ({
  is: 'line',
  cells: [words(upperFirst(String((said ?? what).value))), quantity, price],
});

/** Windows of one room stand together; a room of several layers or further lines has its name above them. */
function lines(job: PapersJob): readonly TableRow[] {
  const installed = job.sums.some(
    ({ label, entry }) => /install|hanging|fitting/i.test(label) && entry.value !== 0,
  );
  const rooms = byRoom(job.windows).flatMap(({ room, windows }): readonly TableRow[] => {
    const extras = windows.flatMap((one) => extrasOf(job.extras, one));
    if (windows.length === 1 && extras.length === 0)
      return windows.flatMap((one) => windowRows(job, one, String(room.value), installed));
    return [
      { is: 'group', cells: [room] },
      ...windows.flatMap((one) => [
        ...windowRows(job, one, '', installed),
        ...extrasOf(job.extras, one).map(extraRow),
      ]),
    ];
  });
  const rest = forTheJob(job.extras, job.windows);
  return rest.length === 0
    ? rooms
    : [...rooms, { is: 'group', cells: [words('For the whole job')] }, ...rest.map(extraRow)];
}

/** Nothing of zero but the total itself. */
export const printed = (sums: readonly Sum[]): readonly Sum[] => {
  const noDeposit = sums.some(({ is, entry }) => is === 'deposit' && entry.value === 0);
  return sums.filter(
    ({ is, entry }) => is === 'total' || (entry.value !== 0 && !(is === 'balance' && noDeposit)),
  );
};

function times(job: PapersJob): readonly Pair[] {
  const { house } = job;
  return [
    { label: 'Lead time from deposit', entry: house.leadDeposit },
    ...(house.leadCutting === undefined
      ? []
      : [{ label: 'from approval of the cutting', entry: house.leadCutting }]),
    ...(house.claimDays === undefined
      ? []
      : [
          {
            label: 'Claims',
            entry: words(`within ${house.claimDays.value} days of installation, in writing`),
          },
        ]),
    ...(job.measuredBy === undefined ? [] : [{ label: 'Measured by', entry: job.measuredBy }]),
    ...(job.measuredOn === undefined ? [] : [{ label: 'Measured on', entry: job.measuredOn }]),
  ];
}

const validUntil = ({ validUntil: own, today, house }: PapersJob): Entry | undefined =>
  own ?? (typeof house.validDays?.value === 'number' ? day(today + house.validDays.value) : undefined);

const listOf = (title: string, lines: readonly Entry[], keep = false): readonly Block[] =>
  lines.length === 0 ? [] : [{ is: 'notes', title, lines, small: true, ...(keep && { keep: true }) }];

/** What is said of every job, where it matters. */
const caution = (sentence: string): Block => ({
  is: 'notes',
  small: true,
  keep: true,
  lines: [words(sentence)],
});

function head(job: PapersJob): readonly Block[] {
  const valid = validUntil(job);
  return [
    {
      is: 'letterhead',
      house: letterheadOf(job.house),
      title: 'Quote',
      facts: [
        datedOf(job),
        ...(valid === undefined ? [] : [{ label: 'Valid until', entry: valid }]),
        ...referenceOf(job),
      ],
    },
    {
      is: 'pairs',
      across: 2,
      pairs: [
        { label: 'For', entry: job.client },
        { label: 'At', entry: job.place },
      ],
    },
  ];
}

function conditions(job: PapersJob): readonly Block[] {
  const { house, children } = job;
  return [
    { is: 'pairs', across: 1, title: 'Time', pairs: times(job) },
    ...listOf('Not included', linesOf(house, 'exclusion1', 'exclusion2', 'exclusion3', 'exclusion4')),
    // What is signed stands above the signatures.
    ...listOf('Terms', linesOf(house, 'term1', 'term2', 'term3', 'term4'), true),
    ...(children ? [caution(CORDS)] : []),
    {
      is: 'signatures',
      lines: [
        `For ${house.name?.value ?? 'the workroom'}, name and date`,
        'Accepted by the client, name and date',
      ],
    },
  ];
}

export function quotePaper(job: PapersJob): Made {
  const missing = missingOf(job);
  if (missing.length > 0) return { missing };
  return {
    kind: 'quote',
    sheet: 'Client quote',
    title: 'Quote',
    page: PORTRAIT(job.size),
    unit: job.unit,
    foot: footOf(job, 'Quote'),
    blocks: [
      ...head(job),
      {
        is: 'table',
        repeated: true,
        columns: [
          { heading: 'What we make for you', span: 9 },
          { heading: 'Quantity', span: 1, align: 'center' },
          { heading: 'Price', span: 2, align: 'right' },
        ],
        rows: lines(job),
      },
      {
        is: 'totals',
        pairs: printed(job.sums).map(({ label, is, entry }): Pair => ({
          // Where more than draperies is listed, this is of them alone.
          label: is === 'subtotal' && job.extras.length > 0 ? 'Draperies' : label,
          entry,
          ...(is === 'total' && { strong: true as const }),
        })),
      },
      ...conditions(job),
    ],
  };
}
