/** A paper as pages to be shown and printed: which rows stand on each, with what every page repeats. */
import { entryText, type Entry, type Paper } from '../../core/papers/paper';
import type { Band } from './bands';
import { INCHES, layPaper } from './sheet';

export interface PageView {
  readonly bands: readonly Band[];
  /** “page 2 of 3”; empty where the paper's pages bear no number. */
  readonly number: string;
}

export interface PaperView {
  readonly paper: Paper;
  /** Of the sheet of paper, in inches. */
  readonly wide: number;
  readonly high: number;
  /** Of its columns, in points. */
  readonly across: readonly number[];
  readonly pages: readonly PageView[];
}

export function viewOf(paper: Paper): PaperView {
  const { across, bands, breaks, header } = layPaper(paper);
  const starts = [0, ...breaks];
  const last = bands.findLastIndex(({ ofRepeated }) => ofRepeated === true);
  const repeated = bands[header];
  const pages = starts.map((from, at): PageView => {
    const own = bands.slice(from, starts[at + 1]);
    const again = repeated !== undefined && from > header && from <= last;
    return {
      bands: again ? [repeated, ...own] : own,
      number: paper.foot === '' ? '' : `page ${at + 1} of ${starts.length}`,
    };
  });
  const { size, landscape } = paper.page;
  const [short, long] = INCHES[size];
  return { paper, wide: landscape ? long : short, high: landscape ? short : long, across, pages };
}

/** An entry with the house's sign before an amount. */
export const shownEntry = (entry: Entry, sign: string): string =>
  entry.as === 'money' && typeof entry.value === 'number' && !(entry.value === 0 && entry.zero !== undefined)
    ? `${sign}${entryText(entry)}`
    : entryText(entry);
