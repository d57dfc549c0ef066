/** The client's quote: lines in the client's words, the sums after them, what is and is not included. */
import { CORDS } from './cautions';
import { footOf } from './foot';
import { letterheadOf, linesOf } from './house-lines';
import { datedOf, referenceOf, type PapersJob } from './job';
import { day, PORTRAIT, words, type Block, type Entry, type Pair, type Paper } from './paper';
import { optionsTable, unlikeIn } from './quote-options';
import { quoteLines } from './quote-lines';
import { printed } from './quote-sums';

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
        job.beside === undefined
          ? 'Accepted by the client, name and date'
          : 'Accepted by the client, option ____, name and date',
      ],
    },
  ];
}

/** Draperies, prices and sums; of one way they are made, or of two beside each other. */
function priced(job: PapersJob): readonly Block[] {
  if (job.beside !== undefined) return [optionsTable(job, job.beside)];
  return [
    {
      is: 'table',
      repeated: true,
      columns: [
        { heading: 'What we make for you', span: 8 },
        { heading: 'Quantity', span: 2, align: 'center' },
        { heading: 'Price', span: 2, align: 'right' },
      ],
      rows: quoteLines(job),
    },
    {
      is: 'totals',
      pairs: printed(job).map(({ label, is, entry }): Pair => ({
        label,
        entry,
        ...(is === 'total' && { strong: true as const }),
      })),
    },
  ];
}

/** What either option lacks, or where the two are not the same job. */
function missingOfBoth(job: PapersJob): readonly string[] {
  const { beside } = job;
  if (beside === undefined) return missingOf(job);
  const missing = [
    ...missingOf(job).map((one) => `Option A: ${one}`),
    ...missingOf(beside).map((one) => `Option B: ${one}`),
  ];
  return missing.length > 0 ? missing : unlikeIn(job, beside);
}

export function quotePaper(job: PapersJob): Made {
  const missing = missingOfBoth(job);
  if (missing.length > 0) return { missing };
  return {
    kind: 'quote',
    sheet: 'Client quote',
    title: 'Quote',
    page: PORTRAIT(job.size),
    unit: job.unit,
    foot: footOf(job, 'Quote'),
    blocks: [...head(job), ...priced(job), ...conditions(job)],
  };
}
