/** The rolls of each cloth as they are cut, drawn to scale and said in words: the last page of the work order. */
import { cutLengths, rollDrawing, rollTitle } from '../drawing/roll';
import { showLength, type Unit } from '../exact/unit';
import { clothsOf } from '../floor/floor-cuts';
import type { CutPlan, PlannedRoll } from '../rolls/plan';
import { letterheadOf } from './house-lines';
import { datedOf, namedAs, referenceOf, type PapersJob } from './job';
import { planOf } from './order';
import { words, type Block, type TableRow } from './paper';

/** “6 × 126 1/4 in Library”. */
function cutsInWords({ stretches }: PlannedRoll, unit: Unit): string {
  const cuts = stretches.flatMap((one) => one.cuts);
  return cuts
    .map(({ count, length, room, label }) =>
      [`${count} × ${showLength(length, unit)}`, room ?? label].filter((one) => one !== undefined).join(' '),
    )
    .join(' · ');
}

const rollRow = (roll: PlannedRoll, unit: Unit): TableRow => ({
  is: 'line',
  cells: [words(rollTitle(roll, unit)), words(cutsInWords(roll, unit)), undefined],
});

function planBlocks(cloth: string, { rolls }: CutPlan, unit: Unit): readonly Block[] {
  const lengths = cutLengths(rolls, unit);
  return [
    {
      is: 'table',
      columns: [
        { heading: cloth, span: 4 },
        { heading: 'Cuts from its start', span: 7 },
        { heading: 'Done', span: 1 },
      ],
      rows: rolls.map((roll) => rollRow(roll, unit)),
    },
    ...rolls.map((roll): Block => ({
      is: 'drawing',
      drawing: rollDrawing(roll, { flaws: [], lengths, unit }),
      high: 26,
    })),
  ];
}

/** Nothing where no cloth’s put-up is known: then its pieces are what the supplier sends. */
export function cutSheet(job: PapersJob): readonly Block[] {
  const { unit } = job;
  const planned = clothsOf(job.windows.map(({ work }) => work)).flatMap((cloth) => {
    const plan = planOf(job, cloth, namedAs(job.cloths, cloth.name));
    return plan === undefined ? [] : [{ name: cloth.name, plan }];
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
    ...planned.flatMap(({ name, plan }) => planBlocks(name, plan, unit)),
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
