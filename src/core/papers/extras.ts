/** A job's further lines as its papers list them: by the line they belong to, the rest for the whole job. */
import type { JobExtra, JobWindow } from './job';
import { words, type Block, type TableRow } from './paper';

/** Those of one line. */
export const extrasOf = (
  extras: readonly JobExtra[],
  { line }: Pick<JobWindow, 'line'>,
): readonly JobExtra[] => extras.filter((one) => one.line === line);

/** Those of no line that the job has. */
export const forTheJob = (
  extras: readonly JobExtra[],
  windows: readonly Pick<JobWindow, 'line'>[],
): readonly JobExtra[] => extras.filter(({ line }) => !windows.some((one) => one.line === line));

/** “tiebacks, 2 pair”: what is made or hung with a window, for the workroom. */
export function madeWith(extras: readonly JobExtra[]): readonly Block[] {
  if (extras.length === 0) return [];
  return [
    {
      is: 'table',
      columns: [
        { heading: 'With it', span: 5 },
        { heading: 'Quantity', span: 2, align: 'center' },
        { heading: 'Along', span: 4 },
        { heading: 'Done', span: 1 },
      ],
      rows: extras.map(({ what, words: said, quantity, along }): TableRow => ({
        is: 'line',
        cells: [said === undefined ? what : words(`${what.value}: ${said.value}`), quantity, along],
      })),
    },
  ];
}
