/** A new job's sheets, as data and then in the workbook, beside whatever is there already. */
import { CENTIMETRES, INCHES, type UnitName } from '../core/unit';
import { apply, type Watch } from './apply';
import type { Book, Changes, Contents } from './book';
import { checksSheet } from './sheets/checks';
import { costsSheet } from './sheets/costs';
import { together, type Draft, type Job } from './sheets/draft';
import { fabricsSheet, rollsSheet } from './sheets/fabrics';
import { houseRulesSheet } from './sheets/house-rules';
import { jobSheet } from './sheets/job-facts';
import { pricesSheet } from './sheets/prices';
import { quoteSheet } from './sheets/quote';
import { windowsSheet } from './sheets/windows';
import { areaAt } from './address';

export interface NewJob {
  readonly unit: UnitName;
  readonly paper: 'letter' | 'a4';
  /** Rows made ready for windows; more can be added in the workbook. */
  readonly windows: number;
}

export const USUAL_JOB: NewJob = { unit: 'inches', paper: 'letter', windows: 24 };
export const MOST_WINDOWS = 5_000;

function jobOf(of: NewJob, number: number): Job {
  return {
    unit: of.unit === 'inches' ? INCHES : CENTIMETRES,
    paper: of.paper,
    windows: Math.min(MOST_WINDOWS, Math.max(1, Math.floor(of.windows))),
    sheet: (base) => (number === 1 ? base : `${base} ${number}`),
    name: (base) => (number === 1 ? base : `${base}_${number}`),
  };
}

const draftOf = (job: Job): Draft =>
  together(
    jobSheet(job),
    windowsSheet(job),
    fabricsSheet(job),
    rollsSheet(job),
    pricesSheet(job),
    houseRulesSheet(job),
    costsSheet(job),
    quoteSheet(job),
    checksSheet(job),
  );

/** The job's changes under the first number none of whose names is taken. */
export function jobChanges(of: NewJob, contents: Contents): { changes: Changes; number: number } {
  const taken = new Set(
    [...contents.sheets, ...contents.tables, ...contents.names].map((one) => one.name.toLowerCase()),
  );
  for (let number = 1; ; number++) {
    const draft = draftOf(jobOf(of, number));
    const ours = [...(draft.newSheets ?? []), ...(draft.newTables ?? []), ...(draft.newNames ?? [])];
    if (!ours.some((one) => taken.has(one.name.toLowerCase()))) return { changes: draft, number };
  }
}

/** Adds a job's sheets in one undo step and shows the first; tells which number the job has. */
export async function newJob(book: Book, of: NewJob = USUAL_JOB, watch: Watch = {}): Promise<number> {
  const { changes, number } = jobChanges(of, await book.contents());
  await apply(book, 'Add a new job', changes, watch);
  const first = changes.newSheets?.[0]?.name;
  if (first !== undefined) await book.goTo(areaAt(first, 3, 1));
  return number;
}
