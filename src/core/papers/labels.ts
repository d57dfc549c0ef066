/** A label for every panel, on sheets of labels as the house buys them. */
import { readCut } from './label-sheet';
import type { JobWindow, PapersJob } from './job';
import { madeUp } from './made';
import { words, type Entry, type Paper } from './paper';
import { panelsOf } from '../cell/treatment';

/** Room; left or right and which of how many; line, window and reference. */
function labelsOf(job: PapersJob, one: JobWindow): readonly (readonly Entry[])[] {
  const { panels } = madeUp(one);
  const single = panelsOf(one.work.window.draw ?? 'pair') === 1;
  const several = Number(one.quantity.value) > 1;
  return panels.map(({ side, window }, at) => [
    one.room,
    words(`${single ? 'panel' : side}, ${at + 1} of ${panels.length}`),
    words(
      [
        `line ${one.line}`,
        several ? `window ${window}` : undefined,
        job.reference === undefined ? undefined : String(job.reference.value),
      ]
        .filter((part) => part !== undefined)
        .join(' · '),
    ),
  ]);
}

export function labelsPaper(job: PapersJob): Paper {
  const sheet = readCut(job.house, job.size);
  const { across, down, wide, high, left, top, gapAcross, gapDown } = sheet;
  const widths = Array.from({ length: across * 2 - 1 }, (_, at) => (at % 2 === 0 ? wide : gapAcross));
  return {
    kind: 'labels',
    sheet: 'Labels',
    title: 'Labels',
    page: {
      size: job.size,
      landscape: false,
      columns: widths.length,
      widths,
      margins: [left / 72, top / 72, 0, 0],
    },
    unit: job.unit,
    foot: '',
    blocks: [
      {
        is: 'labels',
        across,
        down,
        high,
        gapDown,
        labels: job.windows.flatMap((one) => labelsOf(job, one)),
      },
    ],
  };
}
