/** All papers of a job as sheets of its workbook, under names the workbook has not taken. */
import type { PapersJob } from '../../core/papers/job';
import type { Paper } from '../../core/papers/paper';
import { together, type Draft } from '../sheets/draft';
import { paperDraft } from './sheet';

const LONGEST_NAME = 31;

/** A sheet's name may not hold these, nor be longer, nor begin or end with an apostrophe. */
const tidy = (name: string): string =>
  name
    .replace(/[:\\/?*[\]]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^'+|'+$/g, '')
    .trim();

const cut = (name: string, room: number): string => [...name].slice(0, room).join('').trim();

/** “Client quote”, or “Client quote 2” where that is taken; cut so that its number has room. */
export function freeName(wanted: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number++) {
    const ending = number === 1 ? '' : ` ${number}`;
    const name = cut(tidy(wanted), LONGEST_NAME - ending.length) + ending;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

export interface PapersWish {
  /** Values alone, for who has not the job. */
  readonly values?: boolean;
  /** Sheets whose names are taken. */
  readonly sheets: readonly string[];
}

/** The papers as new sheets; `values` alone say nothing of the job's cells. */
export function papersDraft(
  papers: readonly Paper[],
  { house }: Pick<PapersJob, 'house'>,
  { values = false, sheets }: PapersWish,
): Draft {
  const taken = new Set(sheets.map((name) => name.toLowerCase()));
  const sign = String(house.sign?.value ?? '');
  return together(
    ...papers.map((paper) => {
      const name = freeName(paper.sheet, taken);
      taken.add(name.toLowerCase());
      return paperDraft(paper, name, { sign, values });
    }),
  );
}
