/** The rolls of each cloth as they are cut, drawn to scale and said in words: the last page of the work order. */
import { cutLengths, rollDrawing, rollTitle } from '../drawing/roll';
import { showLength, type Unit } from '../exact/unit';
import { clothsOf, type Cloth } from '../floor/floor-cuts';
import type { CutPlan, PlannedRoll } from '../rolls/plan';
import { letterheadOf } from './house-lines';
import { datedOf, namedAs, referenceOf, type PapersJob } from './job';
import { planOf } from './order';
import { words, type Block } from './paper';

/** Whose a cut is: its room as the plan has it, else what its row calls it, and what is spare. */
type Whose = (cut: PlannedRoll['stretches'][number]['cuts'][number]) => string | undefined;

const whoseOf =
  ({ windows }: PapersJob, { askedBy }: Cloth): Whose =>
  ({ line, room, label }) => {
    const row = windows[askedBy[line] ?? -1]?.room.value;
    return label ?? room ?? (row === undefined ? undefined : String(row));
  };

/** “6 × 126 1/4 in Library”, of a half-drop “6 A × 125 in Library”; cuts alike that follow each other are one. */
function cutsInWords({ stretches }: PlannedRoll, whose: Whose, unit: Unit): string {
  const runs: { count: number; what: string; start: string }[] = [];
  for (const cut of stretches.flatMap((one) => one.cuts)) {
    const what = [showLength(cut.length, unit), whose(cut)].filter((one) => one !== undefined).join(' ');
    const start = cut.start ?? '';
    const last = runs.at(-1);
    if (last !== undefined && last.what === what && last.start === start) last.count += cut.count;
    else runs.push({ count: cut.count, what, start });
  }
  return runs
    .map(({ count, what, start }) => `${count}${start === '' ? '' : ` ${start}`} × ${what}`)
    .join(' · ');
}

const COLUMNS = [5, 6, 1].map((span) => ({ heading: '', span }));

/** Every roll in words, and drawn below them. */
function planBlocks(job: PapersJob, cloth: Cloth, { rolls }: CutPlan): readonly Block[] {
  const { unit } = job;
  const lengths = cutLengths(rolls, unit);
  const whose = whoseOf(job, cloth);
  const named = [cloth.name, 'Cuts from its start', 'Done'];
  return rolls.flatMap((roll, at): readonly Block[] => [
    {
      is: 'table',
      // The headings stand over the first roll of a cloth.
      columns: at > 0 ? COLUMNS : COLUMNS.map((one, column) => ({ ...one, heading: named[column] ?? '' })),
      rows: [
        {
          is: 'line',
          cells: [
            words(`${cloth.name} · ${rollTitle(roll, unit)}`),
            words(cutsInWords(roll, whose, unit)),
            undefined,
          ],
        },
      ],
      keep: true,
    },
    { is: 'drawing', drawing: rollDrawing(roll, { flaws: [], lengths, unit }), high: 26 },
  ]);
}

/** Nothing where no cloth’s put-up is known: then its pieces are what the supplier sends. */
export function cutSheet(job: PapersJob): readonly Block[] {
  const planned = clothsOf(job.windows.map(({ work }) => work)).flatMap((cloth) => {
    const plan = planOf(job, cloth, namedAs(job.cloths, cloth.name));
    return plan === undefined ? [] : [{ cloth, plan }];
  });
  if (planned.length === 0) return [];
  return [
    { is: 'page' },
    {
      is: 'letterhead',
      house: letterheadOf(job.house).slice(0, 1),
      title: 'Cutting of the rolls',
      facts: [...referenceOf(job), datedOf(job)],
    },
    ...planned.flatMap(({ cloth, plan }) => planBlocks(job, cloth, plan)),
    {
      is: 'notes',
      small: true,
      lines: [
        words(
          'Planned on rolls of the stated put-up without flaws: measure every roll, and plan anew where one is shorter or flawed.',
        ),
      ],
    },
  ];
}
