/** A job's further lines as its papers list them: by the line they belong to, the rest for the whole job. */
import { bandOf } from '../cloth/trims';
import { showLength } from '../exact/unit';
import { unitOf } from '../house/rules';
import { TRIM_EDGES, trimAlong } from '../window/trims';
import { orNone } from './client-words';
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

/** How the strips of a band are cut; nothing where it is no band of a line's edges, or cannot be worked out. */
function stripsInWords({ strips, along }: JobExtra, { work }: Pick<JobWindow, 'work'>): string | undefined {
  const edges = TRIM_EDGES.find((one) => one === along?.value);
  if (strips === undefined || edges === undefined) return undefined;
  const { cut: cutWidth, cloth: fabricWidth } = strips;
  const band = orNone(() => bandOf(trimAlong(work, edges), { fabricWidth, cutWidth }, work.rules));
  const unit = unitOf(work.rules);
  return band === undefined
    ? undefined
    : `${band.strips} ${band.strips === 1 ? 'strip' : 'strips'} cut ${showLength(cutWidth, unit)} wide across cloth of ${showLength(fabricWidth, unit)}, sewn end to end`;
}

/** “tiebacks, 2 pair”: what is made or hung with a window, for the workroom. */
export function madeWith(extras: readonly JobExtra[], one: Pick<JobWindow, 'work'>): readonly Block[] {
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
      rows: extras.flatMap((extra): TableRow[] => {
        const { what, words: said, quantity, along } = extra;
        const strips = stripsInWords(extra, one);
        return [
          {
            is: 'line',
            cells: [said === undefined ? what : words(`${what.value}: ${said.value}`), quantity, along],
          },
          ...(strips === undefined ? [] : [{ is: 'detail' as const, cells: [words(strips)] }]),
        ];
      }),
    },
  ];
}
