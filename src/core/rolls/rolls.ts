/** Cuts from rolls: how many they give, and which roll gives which. */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  ratioFigure,
  refuse,
  step,
  yardageFigure,
} from '../cell/answer';
import type { Answer, Finding, Step } from '../cell/answer';
import { bareOfLine, cleanStretches, cutLengthOf, type CutLine, type CuttingJob } from './cutting';
import { lotsMatter, quickLayout, toPlan, type CutPlan, type PlannedCut } from './plan';
import { exact, NO_LENGTH, times, wholePieces, type Length } from '../exact/length';
import { unitOf, type Rules } from '../house/rules';
import { showLength, showYardage, type Unit } from '../exact/unit';

/** Lines of working shown roll by roll; beyond them only the sum. */
const SHOWN = 60;

/** Whole cuts from each roll by itself: cloth left on two rolls never makes one cut. */
export function rollCuts(
  of: { readonly rollLengths: readonly Length[]; readonly cutLength: Length },
  _rules?: Rules,
): Answer<number> {
  const { rollLengths, cutLength } = of;
  const each = rollLengths.map((roll) => wholePieces(roll, cutLength));
  const all = each.reduce((sum, cuts) => sum + cuts, 0);
  const steps: Step[] = rollLengths
    .slice(0, SHOWN)
    .map((roll, at) =>
      step(
        `roll ${at + 1}, whole cuts`,
        '{} ÷ {}, down',
        [yardageFigure(roll), lengthFigure(cutLength)],
        numberFigure(each[at] ?? 0),
      ),
    );
  steps.push(
    step(
      `cuts from ${rollLengths.length === 1 ? 'the roll' : `${rollLengths.length} rolls`}`,
      '',
      [],
      numberFigure(all),
    ),
  );
  const pooled = wholePieces(
    rollLengths.reduce((sum, roll) => exact(sum + roll), NO_LENGTH),
    cutLength,
  );
  if (pooled > all) {
    steps.push(
      step(
        'not to be counted on',
        `the yards added up would say ${pooled}, but no cut crosses from one roll to the next`,
        [],
        numberFigure(pooled),
      ),
    );
  }
  return answer(all, steps);
}

/** More than a cell plans at once: a sentence, not a sheet that hangs. */
export const MOST_CUTS = 50_000;
export const MOST_ROLLS = 5_000;

/** Refuses a job no plan can be made for: the first thing wrong with it, in one sentence. */
export function checkJob(job: CuttingJob, unit: Unit): void {
  const cuts = job.cuts.reduce((sum, { count }) => sum + count, 0);
  if (cuts === 0) refuse('noCuts', parameter('counts'));
  if (cuts > MOST_CUTS) refuse('tooManyCuts', parameter('counts'), cuts, MOST_CUTS);
  if (job.rolls.length > MOST_ROLLS)
    refuse('tooManyRolls', parameter('rollLengths'), job.rolls.length, MOST_ROLLS);
  job.rolls.forEach((roll, at) => {
    for (const { from, length } of roll.flaws ?? []) {
      if (from < 0 || length < 0 || from + length > roll.length)
        refuse('flawOffRoll', 'flaws', at + 1, showYardage(from, unit), showYardage(roll.length, unit));
    }
  });
  const named = job.rolls.filter(({ lot }) => lot !== undefined).length;
  if (named > 0 && named < job.rolls.length)
    refuse('lotMissing', parameter('lots'), job.rolls.length - named, job.rolls.length);
  const longest = job.rolls
    .flatMap((roll, at) => cleanStretches(roll, at))
    .reduce((most, { length }) => (length > most ? length : most), NO_LENGTH);
  const tooLong = job.cuts.find((line) => line.count > 0 && bareOfLine(line) > longest);
  if (tooLong !== undefined) {
    const [cut, piece] = [showLength(bareOfLine(tooLong), unit), showYardage(longest, unit)];
    const toStart = job.rolls.reduce((most, roll) => Math.max(most, roll.toStart ?? 0), 0) as Length;
    if (toStart > 0) refuse('noStretchLeft', parameter('cutLengths'), cut, piece, showLength(toStart, unit));
    refuse('cutTooLong', parameter('cutLengths'), cut, piece);
  }
}

const cutsInWords = (cuts: readonly PlannedCut[], unit: Unit): string => {
  const byLength = new Map<Length, number>();
  for (const { length, count } of cuts) byLength.set(length, (byLength.get(length) ?? 0) + count);
  const words = [...byLength].map(([length, count]) => `${count} of ${showLength(length, unit)}`);
  return words.length > 6
    ? `${words.slice(0, 6).join(', ')} and ${words.length - 6} more lengths`
    : words.join(', ');
};

/** What a reader of the plan must know besides the plan. */
export function planFindings(job: CuttingJob, plan: CutPlan, unit: Unit): Finding[] {
  const findings: Finding[] = [];
  if (plan.short.length > 0) {
    const cloth = showYardage(cutLengthOf(plan.short), unit);
    findings.push(
      finding('rollsShort', parameter('rollLengths'), cutsInWords(plan.short, unit), cloth, plan.surelyShort),
    );
  } else if (!plan.proven) {
    findings.push(finding('planNotProven', parameter('rollLengths'), plan.rolls.length, plan.lowerBound));
  }
  const rooms = new Set(job.cuts.flatMap(({ room }) => (room === undefined ? [] : [room])));
  if (rooms.size > 0 && job.supply === 'in hand' && !lotsMatter(job) && job.rolls[0]?.lot === undefined)
    findings.push(finding('roomsWithoutLots', parameter('rooms')));
  return findings;
}

export function planSteps(job: CuttingJob, plan: CutPlan): Step[] {
  const asked = job.cuts.filter(({ count }) => count > 0);
  const steps = asked
    .slice(0, SHOWN)
    .map((line: CutLine) =>
      step(
        line.room === undefined ? 'cuts' : `cuts for room ${line.room}`,
        '{} × {}',
        [numberFigure(line.count), lengthFigure(line.length)],
        yardageFigure(times(line.length, line.count)),
      ),
    );
  steps.push(step('cloth to be cut', '', [], yardageFigure(cutLengthOf(asked))));
  for (const roll of plan.rolls.slice(0, SHOWN)) {
    const cuts = roll.stretches.flatMap((stretch) => stretch.cuts);
    const figures = cuts.flatMap(({ count, length }) => [numberFigure(count), lengthFigure(length)]);
    steps.push(
      step(
        `roll ${roll.number}${roll.lot === undefined ? '' : `, lot ${roll.lot}`}, remnant`,
        `{} − ${cuts.map(() => '{} × {}').join(' − ')}`,
        [yardageFigure(roll.length), ...figures],
        lengthFigure(exact(roll.length - cutLengthOf(cuts))),
      ),
    );
  }
  steps.push(step('rolls used', '', [], numberFigure(plan.rolls.length)));
  steps.push(
    step(
      'lower bound',
      plan.proven ? 'no plan can do with fewer: this one is best' : 'fewer than this no plan can do with',
      [],
      numberFigure(plan.lowerBound),
    ),
  );
  steps.push(
    step(
      'utilisation',
      '{} cut ÷ {} opened',
      [yardageFigure(plan.cut), yardageFigure(plan.opened)],
      ratioFigure(plan.utilisation),
    ),
  );
  return steps;
}

/**
 * Which roll gives which cuts: as few rolls as can be, then as little cloth opened, then long remnants.
 * Quick and always the same; the bound says how far from the best it can be at most.
 */
export function cutPlan(job: CuttingJob, rules: Rules): Answer<CutPlan> {
  const unit = unitOf(rules);
  checkJob(job, unit);
  const plan = toPlan(job, quickLayout(job));
  return answer(plan, planSteps(job, plan), planFindings(job, plan, unit));
}
