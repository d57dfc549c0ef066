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
import {
  fewerWidths,
  shorterCut,
  shorterCutInWords,
  widerBolts,
  withLessAllowance,
  type ShorterCut,
} from './advice';
import { allowancesOf, plainCut, plainCutSteps } from './cuts';
import type { Starts } from './half-drop';
import {
  allAlike,
  clothForCuts,
  clothOfCuts,
  cuttingOf,
  orderInWords,
  patternStart,
  repeatFindings,
  repeatSteps,
  runOfCuts,
  type Cutting,
  type CutsAlike,
} from './repeat';
import { exact, times, toUnit, upToStep, type Length } from '../exact/length';
import { ONE, type Ratio } from '../exact/ratio';
import { unitOf, type Rules } from '../house/rules';
import { panelsOf, type Match } from '../cell/treatment';
import { digits, showLength, showYardage } from '../exact/unit';
import {
  flatWanted,
  toOneLess,
  widthsFindings,
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
  rules.shareHalfWidths === 'yes' && rules.yardageRoundedBy === 'line';

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

/**
 * Cuts off the bolt by where a half-drop's pattern begins: A, B, A … from each panel's leading edge, so that
 * the halves of a width shared by two panels carry one letter; or on through the window's panels.
 */
export function startsOf(
  { widths, panels }: Pick<WidthsWork, 'widths' | 'panels'>,
  windows: number,
  rules: Rules,
): Starts {
  const cuts = cutsOf(widths, windows, rules);
  const whole = Math.floor(widths / panels);
  const b = panels * Math.floor(whole / 2) * windows;
  const halfCuts = cuts - panels * whole * windows;
  if (rules.halfDropStarts === 'run on' && panels === 2) {
    const each = whole * windows;
    return { a: cuts - each - halfCuts, b: each, shared: halfCuts };
  }
  // A half is the last of its panel: A after an even number of whole widths.
  const halfAtB = whole % 2 === 0 ? 0 : halfCuts;
  return { a: cuts - b - halfAtB, b: b + halfAtB, shared: 0 };
}

/** The cuts of so many windows in the order cut, one run of them for each window or for all. */
function cutsListed(run: readonly CutsAlike[], runs: number): readonly CutsAlike[] {
  return run.map((one) => ({ ...one, count: one.count * runs }));
}

const byWindow = (rules: Rules): boolean => rules.yardageRoundedBy === 'window';

function clothStep(cuts: readonly CutsAlike[], rules: Rules): Step {
  const each = cuts.map(({ start }) => (start === undefined ? '{} × {}' : `{} ${start} × {}`));
  return step(
    `cloth${byWindow(rules) ? ', window by window' : ''}`,
    each.join(' + '),
    cuts.flatMap(({ count, length }) => [numberFigure(count), lengthFigure(length)]),
    lengthFigure(clothOfCuts(cuts)),
  );
}

function roundedStep(cloth: Length, yards: Length, rules: Rules): Step {
  return step(
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
  );
}

/** A patterned cloth's cuts, their order and the pattern's start, then the yardage. */
function patternedSteps(
  { cutting, starts, yardage: yards }: Patterned,
  quantity: number,
  rules: Rules,
): Step[] {
  const runs = byWindow(rules) ? quantity : 1;
  const listed = cutsListed(runOfCuts(cutting, starts(byWindow(rules) ? 1 : quantity)), runs);
  const cloth = clothOfCuts(listed);
  const start = patternStart(cutting.repeat, rules);
  const order = orderInWords(cutting, starts(byWindow(rules) ? 1 : quantity));
  const lines = [clothStep(listed, rules)];
  if (order !== undefined) lines.unshift(step('order of cutting', '', [], textFigure(order)));
  if (start > 0 && cloth > 0)
    lines.push(
      step(
        'with the pattern’s start',
        '{} + {}, once for an order of this cloth',
        [lengthFigure(cloth), lengthFigure(start)],
        lengthFigure(exact(cloth + start)),
      ),
    );
  return [...lines, roundedStep(cloth === 0 ? cloth : exact(cloth + start), yards, rules)];
}

export function yardageSteps(cuts: number, cloth: Length, yards: Length, rules: Rules): Step[] {
  return [
    step(
      'cloth',
      `{} cuts${byWindow(rules) ? ' in all, window by window' : ''}`,
      [numberFigure(cuts)],
      lengthFigure(cloth),
    ),
    roundedStep(cloth, yards, rules),
  ];
}

/** The cuts of a cloth and what they come to. */
interface Patterned {
  readonly cutting: Cutting;
  /** Cuts of so many windows by their start. */
  readonly starts: (windows: number) => Starts;
  readonly yardage: Length;
}

export interface YardageWork extends Patterned {
  readonly work: WidthsWork;
  readonly cut: Length;
  readonly cuts: number;
  /** Without what is bought once for the order to reach the pattern's start. */
  readonly yardageOfCuts: Length;
}

/** Yardage of the cuts alone, and as a line by itself orders it, with the pattern's start. */
function yardagesOf(
  cutting: Cutting,
  starts: (windows: number) => Starts,
  quantity: number,
  rules: Rules,
): Pick<YardageWork, 'yardage' | 'yardageOfCuts'> {
  const cloth = (windows: number): Length => clothForCuts(cutting, starts(windows));
  const yardageOfCuts = roundedYardage(cloth, quantity, rules);
  const start = patternStart(cutting.repeat, rules);
  if (start === 0 || yardageOfCuts === 0) return { yardage: yardageOfCuts, yardageOfCuts };
  // Window by window the first of them has it, and the others do not.
  const [others, own] = byWindow(rules) ? [quantity - 1, 1] : [0, quantity];
  const once = upToStep(exact(cloth(own) + start), rules.yardageStep);
  const rest = others === 0 ? 0 : times(upToStep(cloth(1), rules.yardageStep), others);
  return { yardage: exact(once + rest), yardageOfCuts };
}

/** Face yardage with what it came from. */
export function workYardage(covered: Covered, rules: Rules, work = workWidths(covered, rules)): YardageWork {
  const quantity = covered.quantity ?? 1;
  const cut = plainCut(covered, rules);
  const cutting = cuttingOf(cut, covered.verticalRepeat, covered.match, rules);
  const starts = (windows: number): Starts => startsOf(work, windows, rules);
  const yardages = yardagesOf(cutting, starts, quantity, rules);
  return { work, cut, cuts: cutsOf(work.widths, quantity, rules), cutting, starts, ...yardages };
}

export interface CutSaved {
  readonly cut: ShorterCut;
  /** Before it shrinks. */
  readonly drop: Length;
  /** Over all the windows. */
  readonly saved: Length;
}

/** A little less allowance or drop that saves a repeat; undefined where the cut is not just past one. */
export function shorterCutSaves(
  covered: Covered,
  { cut, cutting, yardage }: Pick<YardageWork, 'cut' | 'cutting' | 'yardage'>,
  rules: Rules,
): CutSaved | undefined {
  const shorter = shorterCut(cutting);
  if (shorter === undefined) return undefined;
  const after = workYardage(covered, withLessAllowance(shorter.less, rules)).yardage;
  if (after >= yardage) return undefined;
  const drop = exact(cut - allowancesOf(covered.heading, rules));
  return { cut: shorter, drop, saved: exact(yardage - after) };
}

export interface BoltSaved {
  readonly fabricWidth: Length;
  readonly widths: number;
  readonly yardage: Length;
}

/** A bolt a little wider that takes least; undefined where none takes fewer widths and less cloth. */
export function widerBoltSaves(
  covered: Covered,
  { work, yardage }: YardageWork,
  rules: Rules,
): BoltSaved | undefined {
  let best: BoltSaved | undefined;
  for (const fabricWidth of widerBolts(covered.fabricWidth, rules)) {
    const other = workYardage({ ...covered, fabricWidth }, rules);
    if (other.work.widths < work.widths && other.yardage < (best?.yardage ?? yardage))
      best = { fabricWidth, widths: other.work.widths, yardage: other.yardage };
  }
  return best;
}

/** What would save cloth: the other direction, and the distance to one width less. */
function advice(covered: Covered, made: YardageWork, rules: Rules): Finding[] {
  const { work, yardage } = made;
  const unit = unitOf(rules);
  const found: Finding[] = [];
  const turned = turnedYardage(covered, rules);
  if (turned !== undefined && turned < yardage)
    found.push(
      finding(
        'turningSaves',
        parameter('fabricWidth'),
        showYardage(turned, unit),
        showYardage(yardage, unit),
      ),
    );
  const narrower = toOneLess(covered, work, rules);
  if (narrower !== undefined && narrower < covered.rodWidth / 10) {
    const after = workYardage({ ...covered, rodWidth: exact(covered.rodWidth - narrower) }, rules).yardage;
    if (after < yardage) found.push(fewerWidths(covered, work, narrower, exact(yardage - after), rules));
  }
  const shorter = shorterCutSaves(covered, made, rules);
  if (shorter !== undefined)
    found.push(
      finding(
        'shorterCutSaves',
        parameter('verticalRepeat'),
        shorterCutInWords(shorter.cut, shorter.drop, unit),
        showYardage(shorter.saved, unit),
      ),
    );
  return found;
}

/** Yardage of the face fabric for all the windows of a line. */
export function yardage(covered: Covered, rules: Rules): Answer<Length> {
  const work = workYardage(covered, rules);
  const findings = [
    ...widthsFindings(covered, work.work, rules),
    ...repeatFindings(work.cut, covered.verticalRepeat, covered.match, rules),
    ...(work.work.widths % 1 === 0 || sharesHalfWidths(rules)
      ? []
      : [finding('halfLeftOver', parameter('rodWidth'), digits(work.work.widths))]),
  ];
  return answer(
    work.yardage,
    () => [
      ...widthsSteps(covered, work.work, rules),
      ...plainCutSteps(covered, work.cut, rules),
      ...repeatSteps(work.cutting),
      ...patternedSteps(work, covered.quantity ?? 1, rules),
    ],
    [...findings, ...advice(covered, work, rules)],
  );
}

const NO_SHRINKAGE = 0 as Ratio;

/** Cut across the turned cloth, less the hem that its mill has made; its shrinkage runs along the flat width. */
const turnedCut = (covered: Covered, rules: Rules): Length =>
  exact(
    plainCut(covered, rules, NO_SHRINKAGE) - (rules.bottomEdge === 'finished' ? rules.bottomAllowance : 0),
  );

/**
 * One panel's flat width along the turned bolt before it shrinks, rounded once. Nanometres go up, but where
 * cloth shrinks down, as every cut before shrinking does.
 */
function turnedFlat(covered: Covered, rules: Rules): Length {
  const inAll = flatWanted(covered, rules);
  const kept = panelsOf(covered.draw ?? 'pair') * (ONE - rules.shrinkage);
  const over = inAll % kept;
  return exact((inAll - over) / kept + (over > 0 && rules.shrinkage === 0 ? 1 : 0));
}

/** Its length along the bolt: the two side hems are made of cloth that has shrunk, as a drop's allowances are. */
const turnedPanel = (covered: Covered, rules: Rules): Length =>
  exact(turnedFlat(covered, rules) + 2 * rules.sideHem);

export type TurnedWork = Omit<YardageWork, 'work'>;

/**
 * The turned cloth by the panel, each in one piece, so that all begin alike whatever the match;
 * undefined where it is too narrow to be turned.
 */
export function workTurned(covered: Covered, rules: Rules): TurnedWork | undefined {
  if (turnedCut(covered, rules) > covered.fabricWidth - 2 * rules.selvage) return undefined;
  const panels = panelsOf(covered.draw ?? 'pair');
  const cut = turnedPanel(covered, rules);
  const cutting = cuttingOf(cut, covered.verticalRepeat, 'straight', rules);
  const quantity = covered.quantity ?? 1;
  const starts = (windows: number): Starts => allAlike(panels * windows);
  return { cut, cuts: panels * quantity, cutting, starts, ...yardagesOf(cutting, starts, quantity, rules) };
}

export const turnedYardage = (covered: Covered, rules: Rules): Length | undefined =>
  workTurned(covered, rules)?.yardage;

/** Why cloth cannot be turned. */
export function refuseToTurn(covered: Covered, rules: Rules): never {
  const unit = unitOf(rules);
  const cut = turnedCut(covered, rules);
  const usable = exact(covered.fabricWidth - 2 * rules.selvage);
  return noAnswer(
    'tooNarrowToTurn',
    parameter('fabricWidth'),
    showLength(cut, unit),
    showLength(usable, unit),
    showLength(exact(cut - usable), unit),
  );
}

/** Yardage with the cloth turned so that its width runs up the drop. */
export function railroaded(covered: Covered, rules: Rules): Answer<Length> {
  const unit = unitOf(rules);
  const cut = turnedCut(covered, rules);
  const usable = exact(covered.fabricWidth - 2 * rules.selvage);
  const work = workTurned(covered, rules) ?? refuseToTurn(covered, rules);
  const { cut: panel, yardage: turned } = work;
  const findings = [finding('mayNotTurn', parameter('fabricWidth'))];
  const upright = workYardage(covered, rules).yardage;
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
      step(
        'along the bolt, each panel',
        rules.shrinkage === 0
          ? '{} flat + {} side hems, no seams'
          : '{} flat before shrinking + {} side hems, no seams',
        [lengthFigure(turnedFlat(covered, rules)), lengthFigure(exact(2 * rules.sideHem))],
        lengthFigure(panel),
      ),
      ...repeatSteps(work.cutting),
      ...patternedSteps(work, covered.quantity ?? 1, rules),
    ],
    findings,
  );
}

export type Weighed = Omit<Covered, 'quantity'> & { readonly arealWeight: number };

/** Weight of the cloth in one made-up treatment: pounds from oz/yd², kilograms from g/m². */
export function clothWeight(weighed: Weighed, rules: Rules): Answer<number> {
  const unit = unitOf(rules);
  const work = workYardage({ ...weighed, quantity: 1 }, rules);
  const high = toUnit(work.cut, unit.large);
  const wide = work.work.widths * toUnit(weighed.fabricWidth, unit.large);
  // Without a float's tail, so that a drapery of 20 lb is heavy from 20 lb.
  const weight = Number(digits((high * wide * weighed.arealWeight) / (unit.areal === 'oz/yd²' ? 16 : 1000)));
  return answer(weight, () => [
    step(
      'cloth',
      '{} widths of {} × {} cut',
      [numberFigure(work.work.widths), lengthFigure(weighed.fabricWidth), lengthFigure(work.cut)],
      textFigure(`${digits(high * wide)} ${unit.large === 'yd' ? 'yd²' : 'm²'}`),
    ),
    step(
      'weight',
      `× {} ${unit.areal}`,
      [numberFigure(weighed.arealWeight)],
      textFigure(`${digits(weight)} ${unit.weight}`),
    ),
  ]);
}
