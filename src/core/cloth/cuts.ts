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
import { exact, NO_LENGTH, type Length } from '../exact/length';
import { beforeLosing } from '../exact/ratio';
import { unitOf, type Rules } from '../house/rules';
import type { LiningCut } from '../cell/ways';
import type { Heading, Layer, Match } from '../cell/treatment';
import { showLength } from '../exact/unit';
import { cuttingOf, longestCut, repeatFindings, repeatSteps } from './repeat';

export interface Dropped {
  readonly finishedDrop: Length;
  readonly heading: Heading;
}

/** What a gathered pocket takes up on its rod; no other heading takes any. */
const pocketTakeUp = (heading: Heading, rules: Rules): Length =>
  heading === 'rod pocket' ? rules.pocketTakeUp : NO_LENGTH;

/** What a cut has beside its drop. */
export const allowancesOf = (heading: Heading, rules: Rules): Length =>
  exact(rules.topAllowance[heading] + rules.bottomAllowance + pocketTakeUp(heading, rules));

/** Cut length of the face before any repeat: drop ÷ (1 − shrinkage) + top + bottom. */
export function plainCut(dropped: Dropped, rules: Rules, shrinkage = rules.shrinkage): Length {
  const drop = shrinkage === 0 ? dropped.finishedDrop : beforeLosing(dropped.finishedDrop, shrinkage);
  return exact(drop + allowancesOf(dropped.heading, rules));
}

/** A sheer is cut as a face is, with its own hem. */
export const forSheer = (rules: Rules): Rules => ({ ...rules, bottomAllowance: rules.sheerBottomAllowance });

type CutBehind = 'lining' | 'interlining';

/** A lining, or an interlining that the house cuts just as it cuts one. */
export const isCutAsLining = (layer: CutBehind, rules: Rules): boolean =>
  layer === 'lining' || rules.interliningCut === 'as the lining';

/** An interlining has a rule of its own: the face's length, the lining's, or its own allowances. */
const wayOfCutting = (layer: CutBehind, rules: Rules): LiningCut | 'as the face' =>
  isCutAsLining(layer, rules) ? rules.liningCut : (rules.interliningCut as LiningCut | 'as the face');

const ownAllowances = (layer: CutBehind, rules: Rules): readonly [Length, Length, Length] =>
  isCutAsLining(layer, rules)
    ? [rules.liningShorter, rules.liningTop, rules.liningBottom]
    : [rules.interliningShorter, rules.interliningTop, rules.interliningBottom];

/** A lining loses its own share in the wash, whatever the face loses. */
const beforeLiningShrinks = (hangs: Length, layer: CutBehind, rules: Rules): Length =>
  isCutAsLining(layer, rules) && rules.liningShrinkage !== 0 && hangs > 0
    ? beforeLosing(hangs, rules.liningShrinkage)
    : hangs;

/** Cut length of a lining or interlining, which has no repeat. */
export function liningCut(dropped: Dropped, layer: CutBehind, rules: Rules): Length {
  let cut: number;
  switch (wayOfCutting(layer, rules)) {
    case 'as the face':
      cut = plainCut(dropped, rules);
      break;
    case 'less than face':
      cut = plainCut(dropped, rules) - rules.liningLess;
      break;
    case 'own allowances': {
      const [shorter, top, bottom] = ownAllowances(layer, rules);
      cut = beforeLiningShrinks(exact(dropped.finishedDrop - shorter), layer, rules) + top + bottom;
    }
  }
  if (cut <= 0)
    return refuse(
      'dropTooShortToCut',
      parameter('finishedDrop'),
      showLength(dropped.finishedDrop, unitOf(rules)),
      layer,
    );
  return exact(cut);
}

export function plainCutSteps(dropped: Dropped, cut: Length, rules: Rules): Step[] {
  const steps: Step[] = [];
  const takeUp = pocketTakeUp(dropped.heading, rules);
  let drop = dropped.finishedDrop;
  if (rules.shrinkage !== 0) {
    drop = beforeLosing(dropped.finishedDrop, rules.shrinkage);
    steps.push(
      step(
        'drop before shrinking',
        '{} ÷ (1 − {})',
        [lengthFigure(dropped.finishedDrop), ratioFigure(rules.shrinkage)],
        lengthFigure(drop),
      ),
    );
  }
  steps.push(
    step(
      'cut length',
      `{} drop + {} top + {} bottom${takeUp === 0 ? '' : ' + {} pocket take-up'}`,
      [drop, rules.topAllowance[dropped.heading], rules.bottomAllowance, takeUp].map(lengthFigure),
      lengthFigure(cut),
    ),
  );
  return steps;
}

function liningSteps(dropped: Dropped, layer: CutBehind, cut: Length, rules: Rules): Step[] {
  const way = wayOfCutting(layer, rules);
  if (way === 'as the face')
    return [step(`${layer} cut length`, 'as the face, before its repeat', [], lengthFigure(cut))];
  if (way === 'less than face') {
    return [
      step(
        `${layer} cut length`,
        '{} face cut − {}',
        [lengthFigure(plainCut(dropped, rules)), lengthFigure(rules.liningLess)],
        lengthFigure(cut),
      ),
    ];
  }
  const [shorter, top, bottom] = ownAllowances(layer, rules);
  const hangs = exact(dropped.finishedDrop - shorter);
  const before = beforeLiningShrinks(hangs, layer, rules);
  if (before === hangs)
    return [
      step(
        `${layer} cut length`,
        '{} drop − {} + {} top + {} bottom',
        [dropped.finishedDrop, shorter, top, bottom].map(lengthFigure),
        lengthFigure(cut),
      ),
    ];
  return [
    step(
      `${layer} before shrinking`,
      '({} drop − {}) ÷ (1 − {})',
      [lengthFigure(dropped.finishedDrop), lengthFigure(shorter), ratioFigure(rules.liningShrinkage)],
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
export function liningCutWithSteps(dropped: Dropped, layer: CutBehind, rules: Rules): Answer<Length> {
  const cut = liningCut(dropped, layer, rules);
  return answer(cut, () => liningSteps(dropped, layer, cut, rules));
}

/** Cut length of a width, the repeat in it; the longest, where not all cuts are alike. */
export function cutLength(
  dropped: Dropped & {
    verticalRepeat: Length | undefined;
    layer: Layer | undefined;
    match?: Match | undefined;
  },
  rules: Rules,
): Answer<Length> {
  const layer = dropped.layer ?? 'face';
  if (layer === 'sheer') return cutLength({ ...dropped, layer: 'face' }, forSheer(rules));
  if (layer !== 'face') {
    const lining = liningCutWithSteps(dropped, layer, rules);
    return dropped.verticalRepeat === undefined
      ? lining
      : answer(lining.value, lining.steps, [
          finding('liningHasNoRepeat', parameter('verticalRepeat'), layer),
        ]);
  }
  const cut = plainCut(dropped, rules);
  const cutting = cuttingOf(cut, dropped.verticalRepeat, dropped.match, rules);
  const value = longestCut(cutting);
  const steps = (): Step[] => {
    const lines = [...plainCutSteps(dropped, cut, rules), ...repeatSteps(cutting)];
    const { repeat, rule, halfDrop } = cutting;
    if (halfDrop) lines.push(step('the longest of them', '', [], lengthFigure(value)));
    else if (repeat !== undefined && (rule === 'every cut up' || rule === 'first cut exact'))
      lines.push(step('repeats in a cut', '', [], numberFigure(value / repeat)));
    return lines;
  };
  return answer(value, steps, repeatFindings(cut, dropped.verticalRepeat, dropped.match, rules));
}
