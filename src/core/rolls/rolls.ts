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
  textFigure,
  yardageFigure,
} from '../cell/answer';
import type { Answer, Finding, Step } from '../cell/answer';
import {
  bareOfLine,
  cleanStretches,
  cutLengthOf,
  cutLines,
  demandOf,
  type CutLine,
  type CuttingJob,
} from './cutting';
import { takes } from './takes';
import type { Match } from '../cell/treatment';
import {
  cuttingOf,
  furtherCut,
  patternStart,
  repeatFindings,
  repeatSteps,
  type Cutting,
} from '../cloth/repeat';
import { lotsMatter, quickLayout, toPlan, type CutPlan, type PlannedCut, type PlannedRoll } from './plan';
import { exact, NO_LENGTH, times, wholePieces, type Length } from '../exact/length';
import { unitOf, type Rules } from '../house/rules';
import { showLength, showYardage, type Unit } from '../exact/unit';

/** Lines of working shown roll by roll; beyond them only the sum. */
const SHOWN = 60;

export interface RollsCut {
  readonly rollLengths: readonly Length[];
  /** Of one cut, before its repeat. */
  readonly cutLength: Length;
  readonly verticalRepeat?: Length | undefined;
  readonly match?: Match | undefined;
}

/** Most cuts of a half-drop from one stretch, A and B as near alike in number as can be. */
function cutsOfHalfDrop(stretch: number, cutting: Cutting): number {
  const fits = (count: number): boolean => {
    const starts = { a: Math.ceil(count / 2), b: Math.floor(count / 2), shared: 0 };
    const demand = demandOf(cutLines(cutting, starts));
    return (
      takes(
        demand.counts.map((many, type) => [type, many] as const),
        demand,
      ) <= stretch
    );
  };
  let cuts = 0;
  let none = 1;
  while (fits(none)) [cuts, none] = [none, 2 * none];
  while (none - cuts > 1) {
    const middle = (cuts + none) >> 1;
    if (fits(middle)) cuts = middle;
    else none = middle;
  }
  return cuts;
}

/** Whole cuts from one roll: the last needs only its own length. */
function cutsOfRoll(roll: number, cutting: Cutting, toStart: Length): number {
  const stretch = roll - toStart;
  if (stretch < cutting.cut) return 0;
  if (cutting.halfDrop) return cutsOfHalfDrop(stretch, cutting);
  return 1 + wholePieces(exact(stretch - cutting.cut), furtherCut(cutting));
}

function rollStep(roll: Length, at: number, cuts: number, cutting: Cutting, toStart: Length): Step {
  const further = furtherCut(cutting);
  const label = `roll ${at + 1}, whole cuts`;
  const start = toStart > 0 ? [lengthFigure(toStart)] : [];
  const before = toStart > 0 ? ' − {} to the pattern’s start' : '';
  if (cutting.halfDrop)
    return step(label, `{}${before}, A and B`, [yardageFigure(roll), ...start], numberFigure(cuts));
  if (toStart === 0 && further === cutting.cut)
    return step(label, '{} ÷ {}, down', [yardageFigure(roll), lengthFigure(further)], numberFigure(cuts));
  return step(
    label,
    `({}${before} − {} for the last) ÷ {}, down, and the last`,
    [yardageFigure(roll), ...start, lengthFigure(cutting.cut), lengthFigure(further)],
    numberFigure(cuts),
  );
}

/** Whole cuts from each roll by itself: cloth left on two rolls never makes one cut. */
export function rollCuts(given: RollsCut, rules: Rules): Answer<number> {
  const { rollLengths, cutLength, verticalRepeat, match } = given;
  const cutting = cuttingOf(cutLength, verticalRepeat, match, rules);
  const toStart = patternStart(verticalRepeat, rules);
  const each = rollLengths.map((roll) => cutsOfRoll(roll, cutting, toStart));
  const all = each.reduce((sum, cuts) => sum + cuts, 0);
  const steps: Step[] = [
    ...repeatSteps(cutting),
    ...rollLengths.slice(0, SHOWN).map((roll, at) => rollStep(roll, at, each[at] ?? 0, cutting, toStart)),
    step(
      `cuts from ${rollLengths.length === 1 ? 'the roll' : `${rollLengths.length} rolls`}`,
      '',
      [],
      numberFigure(all),
    ),
  ];
  const cloth = rollLengths.reduce((sum, roll) => exact(sum + roll), NO_LENGTH);
  const pooled = cutsOfRoll(cloth, cutting, toStart);
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
  return answer(all, steps, repeatFindings(cutLength, verticalRepeat, match, rules));
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
  const words = together(cuts).map(({ length, count }) => `${count} of ${showLength(length, unit)}`);
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

/** Cuts of one length once, as they first appear. */
function together(
  cuts: readonly PlannedCut[],
): readonly { readonly length: Length; readonly count: number }[] {
  const byLength = new Map<Length, number>();
  for (const { length, count } of cuts) byLength.set(length, (byLength.get(length) ?? 0) + count);
  return [...byLength].map(([length, count]) => ({ length, count }));
}

/** A half-drop's order on a roll, its stretches parted by a bar: “A B A B 3 A”. */
export function orderOf({ stretches }: PlannedRoll): string | undefined {
  if (stretches.every(({ cuts }) => cuts.every(({ start }) => start === undefined))) return undefined;
  const words = stretches
    .filter(({ cuts }) => cuts.length > 0)
    .map(({ cuts }) => {
      const runs: { start: string; count: number }[] = [];
      for (const { start = 'A', count } of cuts) {
        const before = runs.at(-1);
        if (before?.start === start) before.count += count;
        else runs.push({ start, count });
      }
      return runs.map(({ start, count }) => (count === 1 ? start : `${count} ${start}`)).join(' ');
    });
  return words.join(' | ');
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
    const cuts = together(roll.stretches.flatMap((stretch) => stretch.cuts));
    const order = orderOf(roll);
    if (order !== undefined)
      steps.push(step(`roll ${roll.number}, order of cutting`, '', [], textFigure(order)));
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
