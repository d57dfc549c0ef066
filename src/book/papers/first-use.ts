/** What a workbook lacks for its papers: the house's own words, and whose the job is. */
import type { Unit } from '../../core/exact/unit';
import type { PaperSize } from '../../core/papers/paper';
import { underFreeNames, type Taken } from '../free-names';
import { together, roomy, type Draft } from '../sheets/draft';
import { housePapersSheet } from '../sheets/house-papers';
import { jobFactsSheet } from '../sheets/job-facts';

const has = ({ names }: Taken, like: RegExp): boolean => names.some(({ name }) => like.test(name));

/** New sheets for what nobody has typed yet; empty where all is there. */
export function firstUseDraft(taken: Taken, unit: Unit, paper: PaperSize): Draft {
  const drafts = [
    ...(has(taken, /^house_papers(_\d+)?$/i) ? [] : [housePapersSheet]),
    ...(has(taken, /^job_client(_\d+)?$/i) ? [] : [jobFactsSheet]),
  ].map((sheet) => underFreeNames(taken, { unit, paper }, sheet).draft);
  return roomy(together(...drafts));
}
