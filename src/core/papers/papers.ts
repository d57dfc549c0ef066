/** Every paper of a job, in the order they are written; what cannot be made says what it lacks. */
import { findingsPaper } from './findings';
import { hardwarePapers } from './hardware';
import { installPaper } from './install';
import type { PapersJob } from './job';
import { labelsPaper } from './labels';
import { orderPapers } from './order';
import { PAPER_KINDS, type Paper, type PaperKind } from './paper';
import { isMade, quotePaper, type Made } from './quote';
import { workPaper } from './work';

const MAKERS: Readonly<Record<PaperKind, (job: PapersJob) => readonly Made[]>> = {
  quote: (job) => [quotePaper(job)],
  order: orderPapers,
  hardware: hardwarePapers,
  work: (job) => [workPaper(job)],
  labels: (job) => [labelsPaper(job)],
  install: (job) => [installPaper(job)],
  findings: (job) => [findingsPaper(job)],
};

export interface PapersMade {
  readonly papers: readonly Paper[];
  /** What is missing, by the kind of paper that could not be made. */
  readonly missing: readonly { readonly kind: PaperKind; readonly sentences: readonly string[] }[];
}

export function papersOf(job: PapersJob, only: readonly PaperKind[] = PAPER_KINDS): PapersMade {
  const papers: Paper[] = [];
  const missing: { kind: PaperKind; sentences: readonly string[] }[] = [];
  for (const kind of only)
    for (const made of MAKERS[kind](job))
      if (isMade(made)) papers.push(made);
      else missing.push({ kind, sentences: made.missing });
  return { papers, missing };
}
