/** Yardage of the face, up the roll or railroaded, and the weight of a made-up layer. */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  noAnswer,
  numberFigure,
  step,
  textFigure,
  yardageFigure,
  type Answer,
  type Finding,
  type Step,
} from '../cell/answer';
import { clothForCuts, plainCut, plainCutSteps, repeatRuleFor, repeatSteps } from './cuts';
import { exact, times, toUnit, upToStep, type Length } from '../exact/length';
import { ONE, scaled, type Ratio } from '../exact/ratio';
import { unitOf, type Rules } from '../house/rules';
import { panelsOf, type Match } from '../cell/treatment';
import { digits, showLength, showYardage } from '../exact/unit';
import {
  flatWanted,
  toOneLess,
  widthsFindings,
  widthsStep,
  widthsSteps,
  workWidths,
  type Gathered,
  type WidthsWork,
} from './widths';

export interface Covered extends Gathered {
  readonly finishedDrop: Length;
  readonly quantity: number | undefined;
  readonly verticalRepeat?: Length | undefined;
  readonly match?: Match | undefined;
}

/** Whether windows may share a width; not where each window's cloth is bought by itself. */
export const sharesHalfWidths = (rules: Rules): boolean =>
  rules.shareHalfWidths === 'yes' && rules.yardageRoundedBy === 'order';

/** Half widths off the bolt: an odd one is bought whole unless the house lets windows share it. */
export const halvesOf = (widths: number, quantity: number, rules: Rules): number =>
  2 * (sharesHalfWidths(rules) ? widths * quantity : Math.ceil(widths) * quantity);

/** Cuts off the bolt for the windows of one line. */
export const cutsOf = (widths: number, quantity: number, rules: Rules): number =>
  Math.ceil(halvesOf(widths, quantity, rules) / 2);

/** Yardage up to the house's step, once over the order or window by window. */
export function roundedYardage(cloth: (windows: number) => Length, quantity: number, rules: Rules): Length {
  if (rules.yardageRoundedBy === 'window') return times(upToStep(cloth(1), rules.yardageStep), quantity);
  return upToStep(cloth(quantity), rules.yardageStep);
}

export function yardageSteps(cuts: number, cloth: Length, yards: Length, rules: Rules): Step[] {
  return [
    step(
      'cloth',
      `{} cuts${rules.yardageRoundedBy === 'window' ? ' in all, window by window' : ''}`,
      [numberFigure(cuts)],
      lengthFigure(cloth),
    ),
    step(
      'yardage',
      '{} up to the next {} ({})',
      [
        yardageFigure(cloth),
        textFigure(
          rules.yardageStep === 0 ? 'nothing: left exact' : showYardage(rules.yardageStep, unitOf(rules)),
        ),
        textFigure(`by ${rules.yardageRoundedBy}`),
      ],
      yardageFigure(yards),
    ),
  ];
}

export interface YardageWork {
  readonly work: WidthsWork;
  readonly cut: Length;
  readonly cuts: number;
  readonly yardage: Length;
}

/** Face yardage with what it came from. */
export function workYardage(of: Covered, rules: Rules): YardageWork {
  const quantity = of.quantity ?? 1;
  const work = workWidths(of, rules);
  const cut = plainCut(of, rules);
  const rule = repeatRuleFor(of.match, rules);
  const yardage = roundedYardage(
    (windows) => clothForCuts(cutsOf(work.widths, windows, rules), cut, of.verticalRepeat, rule),
    quantity,
    rules,
  );
  return { work, cut, cuts: cutsOf(work.widths, quantity, rules), yardage };
}

/** What would save cloth: the other direction, and the distance to one width less. */
function advice(of: Covered, { work, yardage }: YardageWork, rules: Rules): Finding[] {
  const unit = unitOf(rules);
  const found: Finding[] = [];
  const turned = turnedYardage(of, rules);
  if (turned !== undefined && turned < yardage)
    found.push(
      finding(
        'turningSaves',
        parameter('fabricWidth'),
        showYardage(turned, unit),
        showYardage(yardage, unit),
      ),
    );
  const narrower = toOneLess(of, work, rules);
  if (narrower !== undefined && narrower < of.rodWidth / 10) {
    const fewer = work.widths - widthsStep(work.panels, rules);
    found.push(finding('narrowerSaves', parameter('rodWidth'), showLength(narrower, unit), digits(fewer)));
  }
  return found;
}

/** Yardage of the face fabric for all the windows of a line. */
export function yardage(of: Covered, rules: Rules): Answer<Length> {
  const work = workYardage(of, rules);
  const rule = repeatRuleFor(of.match, rules);
  const findings = widthsFindings(of, work.work, rules);
  if (of.match === 'half-drop' && of.verticalRepeat === undefined)
    findings.push(finding('matchWithoutRepeat', parameter('match')));
  const quantity = of.quantity ?? 1;
  const cloth =
    rules.yardageRoundedBy === 'window'
      ? times(clothForCuts(cutsOf(work.work.widths, 1, rules), work.cut, of.verticalRepeat, rule), quantity)
      : clothForCuts(work.cuts, work.cut, of.verticalRepeat, rule);
  return answer(
    work.yardage,
    () => [
      ...widthsSteps(of, work.work, rules),
      ...plainCutSteps(of, work.cut, rules),
      ...repeatSteps(work.cut, of.verticalRepeat, rule),
      ...yardageSteps(work.cuts, cloth, work.yardage, rules),
    ],
    [...findings, ...advice(of, work, rules)],
  );
}

const NO_SHRINKAGE = 0 as Ratio;

/** Cut across the turned cloth; its shrinkage then runs along the flat width. */
const turnedCut = (of: Covered, rules: Rules): Length => plainCut(of, rules, NO_SHRINKAGE);

/** One panel's length along the turned bolt: flat width and hems, no seams, before shrinking; rounded once. */
function turnedPanel(of: Covered, rules: Rules): Length {
  const panels = panelsOf(of.draw ?? 'pair');
  const inAll = scaled(flatWanted(of, rules) + panels * 2 * rules.sideHem * ONE);
  const kept = panels * (ONE - rules.shrinkage);
  const over = inAll % kept;
  return exact((inAll - over) / kept + (over > 0 ? 1 : 0));
}

/** The turned cloth by the panel, each in one piece; undefined where it is too narrow to be turned. */
export function workTurned(of: Covered, rules: Rules): Omit<YardageWork, 'work'> | undefined {
  if (turnedCut(of, rules) > of.fabricWidth - 2 * rules.selvage) return undefined;
  const panels = panelsOf(of.draw ?? 'pair');
  const cut = turnedPanel(of, rules);
  const rule = repeatRuleFor(undefined, rules);
  const quantity = of.quantity ?? 1;
  const yardage = roundedYardage(
    (windows) => clothForCuts(panels * windows, cut, of.verticalRepeat, rule),
    quantity,
    rules,
  );
  return { cut, cuts: panels * quantity, yardage };
}

export const turnedYardage = (of: Covered, rules: Rules): Length | undefined =>
  workTurned(of, rules)?.yardage;

/** Yardage with the cloth turned so that its width runs up the drop. */
export function railroaded(of: Covered, rules: Rules): Answer<Length> {
  const unit = unitOf(rules);
  const cut = turnedCut(of, rules);
  const usable = exact(of.fabricWidth - 2 * rules.selvage);
  const turned = turnedYardage(of, rules);
  if (turned === undefined)
    return noAnswer(
      'tooNarrowToTurn',
      parameter('fabricWidth'),
      showLength(cut, unit),
      showLength(usable, unit),
      showLength(exact(cut - usable), unit),
    );
  const panels = panelsOf(of.draw ?? 'pair') * (of.quantity ?? 1);
  const panel = turnedPanel(of, rules);
  const rule = repeatRuleFor(undefined, rules);
  const findings = [finding('mayNotTurn', parameter('fabricWidth'))];
  const upright = workYardage(of, rules).yardage;
  if (upright < turned)
    findings.push(
      finding(
        'uprightSaves',
        parameter('fabricWidth'),
        showYardage(turned, unit),
        showYardage(upright, unit),
      ),
    );
  return answer(
    turned,
    () => [
      step(
        'fits',
        '{} cut within {} usable width',
        [lengthFigure(cut), lengthFigure(usable)],
        textFigure('yes'),
      ),
      step('along the bolt, each panel', 'flat width and side hems, no seams', [], lengthFigure(panel)),
      ...repeatSteps(panel, of.verticalRepeat, rule),
      ...yardageSteps(panels, clothForCuts(panels, panel, of.verticalRepeat, rule), turned, rules),
    ],
    findings,
  );
}

export type Weighed = Omit<Covered, 'quantity'> & { readonly arealWeight: number };

/** Weight of the cloth in one made-up treatment: pounds from oz/yd², kilograms from g/m². */
export function clothWeight(of: Weighed, rules: Rules): Answer<number> {
  const unit = unitOf(rules);
  const work = workYardage({ ...of, quantity: 1 }, rules);
  const high = toUnit(work.cut, unit.large);
  const wide = work.work.widths * toUnit(of.fabricWidth, unit.large);
  // Without a float's tail, so that a drapery of 20 lb is heavy from 20 lb.
  const weight = Number(digits((high * wide * of.arealWeight) / (unit.areal === 'oz/yd²' ? 16 : 1000)));
  return answer(weight, () => [
    step(
      'cloth',
      '{} widths of {} × {} cut',
      [numberFigure(work.work.widths), lengthFigure(of.fabricWidth), lengthFigure(work.cut)],
      textFigure(`${digits(high * wide)} ${unit.large === 'yd' ? 'yd²' : 'm²'}`),
    ),
    step(
      'weight',
      `× {} ${unit.areal}`,
      [numberFigure(of.arealWeight)],
      textFigure(`${digits(weight)} ${unit.weight}`),
    ),
  ]);
}
