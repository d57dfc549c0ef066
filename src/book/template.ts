/** A new job's sheets, as data and then in the workbook, beside whatever is there already. */
import { CENTIMETRES, INCHES, type UnitName } from '../core/exact/unit';
import { apply, show, type Watch } from './apply';
import type { Book, Changes, Contents } from './book';
import { underFreeNames } from './free-names';
import { checksSheet } from './sheets/checks';
import { costsSheet } from './sheets/costs';
import { extrasSheet } from './sheets/extras';
import { roomy, together, type Draft, type Job } from './sheets/draft';
import { fabricsSheet, rollsSheet } from './sheets/fabrics';
import { housePapersSheet } from './sheets/house-papers';
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

const draftOf = (job: Job): Draft =>
  roomy(
    together(
      jobSheet(job),
      fabricsSheet(job),
      windowsSheet(job),
      extrasSheet(job),
      rollsSheet(job),
      pricesSheet(job),
      houseRulesSheet(job),
      costsSheet(job),
      quoteSheet(job),
      checksSheet(job),
      housePapersSheet(job),
    ),
  );

/** The job's changes under names the workbook has not taken, and the number they bear. */
export function jobChanges(
  { unit, paper, windows }: NewJob,
  contents: Contents,
): { changes: Changes; number: number } {
  const job = {
    unit: unit === 'inches' ? INCHES : CENTIMETRES,
    paper,
    windows: Math.min(MOST_WINDOWS, Math.max(1, Math.floor(windows))),
  };
  const { draft: changes, number } = underFreeNames(contents, job, draftOf);
  return { changes, number };
}

/** Adds a job's sheets in one undo step and shows the first; tells which number the job has. */
export async function newJob(book: Book, job: NewJob = USUAL_JOB, watch: Watch = {}): Promise<number> {
  const { changes, number } = jobChanges(job, await book.contents());
  await apply(book, 'Add a new job', changes, watch);
  const first = changes.newSheets?.[0]?.name;
  if (first !== undefined) await show(book, areaAt(first, 3, 1));
  return number;
}
