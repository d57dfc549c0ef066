/** From the finished drop to the cut: allowances by layer, shrinkage, then the pattern's repeat. */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  ratioFigure,
  refuse,
  step,
  type Answer,
  type Step,
} from '../cell/answer';
import { exact, times, upToStep, type Length } from '../exact/length';
import { beforeLosing } from '../exact/ratio';
import { unitOf, type Rules } from '../house/rules';
import type { LiningCut, RepeatRule } from '../cell/ways';
import type { Heading, Layer, Match } from '../cell/treatment';
import { showLength } from '../exact/unit';

export interface Dropped {
  readonly finishedDrop: Length;
  readonly heading: Heading;
}

/** Cut length of the face before any repeat: drop ÷ (1 − shrinkage) + top + bottom. */
export function plainCut(of: Dropped, rules: Rules, shrinkage = rules.shrinkage): Length {
  const drop = shrinkage === 0 ? of.finishedDrop : beforeLosing(of.finishedDrop, shrinkage);
  return exact(drop + rules.topAllowance[of.heading] + rules.bottomAllowance);
}

type CutBehind = 'lining' | 'interlining';

/** An interlining has a rule of its own: the face's length, the lining's, or its own allowances. */
function wayOfCutting(layer: CutBehind, rules: Rules): LiningCut | 'as the face' {
  if (layer === 'lining' || rules.interliningCut === 'as the lining') return rules.liningCut;
  return rules.interliningCut;
}

const ownAllowances = (layer: CutBehind, rules: Rules): readonly [Length, Length, Length] =>
  layer === 'lining' || rules.interliningCut === 'as the lining'
    ? [rules.liningShorter, rules.liningTop, rules.liningBottom]
    : [rules.interliningShorter, rules.interliningTop, rules.interliningBottom];

/** A lining loses its own share in the wash, whatever the face loses. */
const beforeLiningShrinks = (hangs: Length, layer: CutBehind, rules: Rules): Length =>
  layer === 'lining' && rules.liningShrinkage !== 0 && hangs > 0
    ? beforeLosing(hangs, rules.liningShrinkage)
    : hangs;

/** Cut length of a lining or interlining, which has no repeat. */
export function liningCut(of: Dropped, layer: CutBehind, rules: Rules): Length {
  let cut: number;
  switch (wayOfCutting(layer, rules)) {
    case 'as the face':
      cut = plainCut(of, rules);
      break;
    case 'less than face':
      cut = plainCut(of, rules) - rules.liningLess;
      break;
    case 'own allowances': {
      const [shorter, top, bottom] = ownAllowances(layer, rules);
      cut = beforeLiningShrinks(exact(of.finishedDrop - shorter), layer, rules) + top + bottom;
    }
  }
  if (cut <= 0)
    return refuse(
      'dropTooShortToCut',
      parameter('finishedDrop'),
      showLength(of.finishedDrop, unitOf(rules)),
      layer,
    );
  return exact(cut);
}

/** A half-drop's pattern decides by itself; else the house rule, which may take every pattern so. */
export function repeatRuleFor(match: Match | undefined, rules: Rules): RepeatRule {
  if (match === 'half-drop') return 'half-drop alternating';
  return match === 'straight' && rules.repeatRule === 'half-drop alternating'
    ? 'every cut up'
    : rules.repeatRule;
}

/**
 * Twice the way from one half-drop start to the next: an odd number of half repeats, so that each
 * cut begins half a repeat from the last. Doubled because half a repeat may be half a nanometre.
 */
function twiceAlternating(cut: Length, repeat: Length): number {
  const halves = Math.ceil((2 * cut) / repeat);
  return (halves % 2 === 0 ? halves + 1 : halves) * repeat;
}

/** What one further cut takes off the bolt. */
export function furtherCut(cut: Length, repeat: Length | undefined, rule: RepeatRule): Length {
  if (repeat === undefined || repeat === 0) return cut;
  if (rule === 'one repeat each') return exact(cut + repeat);
  if (rule === 'half-drop alternating') return exact(Math.ceil(twiceAlternating(cut, repeat) / 2));
  return upToStep(cut, repeat);
}

/** Cloth for so many cuts in one run: cut × count, with what the repeat adds by the rule. */
export function clothForCuts(
  cuts: number,
  cut: Length,
  repeat: Length | undefined,
  rule: RepeatRule,
): Length {
  if (cuts === 0) return exact(0);
  if (repeat === undefined || repeat === 0) return times(cut, cuts);
  switch (rule) {
    case 'every cut up':
      return times(upToStep(cut, repeat), cuts);
    case 'first cut exact':
      return exact(cut + times(upToStep(cut, repeat), cuts - 1));
    case 'one repeat each':
      return exact(times(cut, cuts) + times(repeat, cuts - 1));
    case 'half-drop alternating':
      return exact(Math.ceil(exact(twiceAlternating(cut, repeat) * cuts) / 2));
  }
}

/** Cuts of one length. */
export interface CutsAlike {
  readonly length: Length;
  readonly count: number;
}

/** The cuts of one run by their real lengths: together they are `clothForCuts` to the nanometre. */
export function runOfCuts(
  cuts: number,
  cut: Length,
  repeat: Length | undefined,
  rule: RepeatRule,
): readonly CutsAlike[] {
  if (cuts === 0) return [];
  const further = furtherCut(cut, repeat, rule);
  const [first, others] =
    repeat === undefined || repeat === 0 || rule === 'every cut up'
      ? [further, cuts - 1]
      : rule === 'half-drop alternating'
        ? // Half a repeat may be half a nanometre: every other cut then leaves out what the last took too much.
          [exact(Math.floor(twiceAlternating(cut, repeat) / 2)), Math.ceil(cuts / 2)]
        : [cut, cuts - 1];
  return first === further
    ? [{ length: further, count: cuts }]
    : [
        { length: first, count: cuts - others },
        { length: further, count: others },
      ].filter(({ count }) => count > 0);
}

export function plainCutSteps(of: Dropped, cut: Length, rules: Rules): Step[] {
  const steps: Step[] = [];
  let drop = of.finishedDrop;
  if (rules.shrinkage !== 0) {
    drop = beforeLosing(of.finishedDrop, rules.shrinkage);
    steps.push(
      step(
        'drop before shrinking',
        '{} ÷ (1 − {})',
        [lengthFigure(of.finishedDrop), ratioFigure(rules.shrinkage)],
        lengthFigure(drop),
      ),
    );
  }
  steps.push(
    step(
      'cut length',
      '{} drop + {} top + {} bottom',
      [lengthFigure(drop), lengthFigure(rules.topAllowance[of.heading]), lengthFigure(rules.bottomAllowance)],
      lengthFigure(cut),
    ),
  );
  return steps;
}

export function repeatSteps(cut: Length, repeat: Length | undefined, rule: RepeatRule): Step[] {
  if (repeat === undefined || repeat === 0) return [];
  const further = furtherCut(cut, repeat, rule);
  const repeats =
    rule === 'one repeat each'
      ? 'one {} repeat for each further cut'
      : rule === 'half-drop alternating'
        ? 'to an odd number of half repeats of {}'
        : 'up to whole repeats of {}';
  return [
    step(
      rule === 'first cut exact' ? 'cut length after the first' : 'cut length with repeat',
      `{} ${repeats}`,
      [lengthFigure(cut), lengthFigure(repeat)],
      lengthFigure(further),
    ),
  ];
}

function liningSteps(of: Dropped, layer: CutBehind, cut: Length, rules: Rules): Step[] {
  const way = wayOfCutting(layer, rules);
  if (way === 'as the face')
    return [step(`${layer} cut length`, 'as the face, before its repeat', [], lengthFigure(cut))];
  if (way === 'less than face') {
    return [
      step(
        `${layer} cut length`,
        '{} face cut − {}',
        [lengthFigure(plainCut(of, rules)), lengthFigure(rules.liningLess)],
        lengthFigure(cut),
      ),
    ];
  }
  const [shorter, top, bottom] = ownAllowances(layer, rules);
  const hangs = exact(of.finishedDrop - shorter);
  const before = beforeLiningShrinks(hangs, layer, rules);
  if (before === hangs)
    return [
      step(
        `${layer} cut length`,
        '{} drop − {} + {} top + {} bottom',
        [of.finishedDrop, shorter, top, bottom].map(lengthFigure),
        lengthFigure(cut),
      ),
    ];
  return [
    step(
      `${layer} before shrinking`,
      '({} drop − {}) ÷ (1 − {})',
      [lengthFigure(of.finishedDrop), lengthFigure(shorter), ratioFigure(rules.liningShrinkage)],
      lengthFigure(before),
    ),
    step(
      `${layer} cut length`,
      '{} + {} top + {} bottom',
      [before, top, bottom].map(lengthFigure),
      lengthFigure(cut),
    ),
  ];
}

/** The cut length of a lining with its steps. */
export function liningCutWithSteps(of: Dropped, layer: CutBehind, rules: Rules): Answer<Length> {
  const cut = liningCut(of, layer, rules);
  return answer(cut, () => liningSteps(of, layer, cut, rules));
}

/** Cut length of a width, the repeat in it. */
export function cutLength(
  of: Dropped & { verticalRepeat: Length | undefined; layer: Layer | undefined },
  rules: Rules,
): Answer<Length> {
  const layer = of.layer ?? 'face';
  if (layer !== 'face') {
    const lining = liningCutWithSteps(of, layer, rules);
    return of.verticalRepeat === undefined
      ? lining
      : answer(lining.value, lining.steps, [
          finding('liningHasNoRepeat', parameter('verticalRepeat'), layer),
        ]);
  }
  const cut = plainCut(of, rules);
  const rule = repeatRuleFor(undefined, rules);
  const value = furtherCut(cut, of.verticalRepeat, rule);
  return answer(value, () => {
    const lines = [...plainCutSteps(of, cut, rules), ...repeatSteps(cut, of.verticalRepeat, rule)];
    if (
      of.verticalRepeat !== undefined &&
      of.verticalRepeat > 0 &&
      (rule === 'every cut up' || rule === 'first cut exact')
    ) {
      lines.push(step('repeats in a cut', '', [], numberFigure(value / of.verticalRepeat)));
    }
    return lines;
  });
}
