/**
 * From the finished width to the widths of cloth: flat width, widths, delivered fullness, and how
 * far it is to one width less.
 *
 * Everything is reckoned over the whole treatment (both panels of a pair together), in whole
 * nanometres or ten-thousandths of one, so that half a rod is as exact as a whole one.
 */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  noAnswer,
  numberFigure,
  ratioFigure,
  refuse,
  step,
  textFigure,
  type Answer,
  type Finding,
  type Step,
} from '../cell/answer';
import { exact, type Length } from '../exact/length';
import { byRatio, ONE, scaled, toFigure, unscaled, type Ratio, type Scaled } from '../exact/ratio';
import { unitOf, type Rules } from '../house/rules';
import { isSidePanels, panelsOf } from '../cell/treatment';
import { digits, showLength } from '../exact/unit';
import { flatInAll, flatOfPanel, usableWidth, type Usable } from './bolt';
import {
  finishedInAll,
  flatParts,
  fullnessOf,
  sideFlat,
  sidePanelsMeet,
  sideWidths,
  type Hung,
} from './hung';

export interface Clothed extends Hung {
  readonly fabricWidth: Length;
}

export interface Gathered extends Clothed {
  readonly fullness: Ratio | undefined;
}

/** Flat width wanted before pleating, over the whole treatment. */
export function flatWanted(hung: Hung, rules: Rules): Scaled {
  if (isSidePanels(hung.draw)) return scaled(sideFlat(hung, rules) * ONE);
  const fullness = fullnessOf(hung, rules);
  if (rules.fullnessBasis === 'finished width') return byRatio(finishedInAll(hung, rules), fullness);
  return scaled(byRatio(hung.rodWidth, fullness) + unscaled(flatParts(hung, rules)));
}

/** How many widths a treatment goes up by. */
export function widthsStep(panels: 1 | 2, rules: Rules): number {
  const { widthsRounding } = rules;
  if (widthsRounding === 'whole per panel' || widthsRounding === 'nearest per panel') return panels;
  return widthsRounding === 'half per panel' ? panels / 2 : 1;
}

/** The flat width so many widths serve: their own, or to the nearest what lies less than half a width above it. */
export function served(widths: number, panels: 1 | 2, usable: Usable, rules: Rules): Scaled {
  const flat = flatInAll(widths, panels, usable) * ONE;
  const half = (usable.each * ONE) / 2;
  switch (rules.widthsRounding) {
    // Half a width goes up, so it stays a hair below.
    case 'nearest':
      return scaled(flat + half - 1);
    case 'nearest half down':
      return scaled(flat + half);
    case 'nearest per panel':
      return scaled(flat + panels * half - 1);
    default:
      return scaled(flat);
  }
}

const serves = (widths: number, panels: 1 | 2, usable: Usable, wanted: Scaled, rules: Rules): boolean =>
  served(widths, panels, usable, rules) >= wanted;

/** The widths a flat width takes: rounded by the house rule, seams and hems in them. */
export function countWidths(panels: 1 | 2, usable: Usable, wanted: Scaled, rules: Rules): number {
  const hems = panels * 2 * usable.hem;
  const each = widthsStep(panels, rules);
  // Seams change the count: begin without them and go up until it holds.
  let widths = Math.max(each, Math.ceil((wanted / ONE + hems) / (usable.each * each) - 1e-9) * each);
  while (widths > each && serves(widths - each, panels, usable, wanted, rules)) widths -= each;
  while (!serves(widths, panels, usable, wanted, rules)) widths += each;
  return widths;
}

/** The fullness so much flat cloth delivers, as a plain figure. */
function delivered(hung: Hung, flat: number, rules: Rules): number {
  // Side panels are finished as wide as their cloth gives at the fullness asked.
  if (isSidePanels(hung.draw)) return toFigure(fullnessOf(hung, rules));
  if (rules.fullnessBasis === 'finished width') return flat / finishedInAll(hung, rules);
  return (flat - flatParts(hung, rules)) / hung.rodWidth;
}

function deliveredStep(hung: Hung, flat: number, value: number, rules: Rules): Step {
  const cloth = lengthFigure(exact(Math.floor(flat)));
  const result = numberFigure(Number(value.toFixed(4)));
  return rules.fullnessBasis === 'finished width'
    ? step('delivered fullness', '{} ÷ {}', [cloth, lengthFigure(finishedInAll(hung, rules))], result)
    : step(
        'delivered fullness',
        '({} − {} returns and overlaps) ÷ {} rod',
        [cloth, lengthFigure(flatParts(hung, rules)), lengthFigure(hung.rodWidth)],
        result,
      );
}

export interface WidthsWork {
  readonly widths: number;
  readonly panels: 1 | 2;
  readonly usable: Usable;
  /** Finished width of all panels. */
  readonly finished: Length;
  /** Flat cloth of all panels, hems and seams off. */
  readonly flat: number;
  readonly wanted: Scaled;
  readonly delivered: number;
}

/** The widths with all that later steps need of them. */
export function workWidths(gathered: Gathered, rules: Rules): WidthsWork {
  const panels = panelsOf(gathered.draw ?? 'pair');
  const usable = usableWidth(gathered, rules);
  const wanted = flatWanted(gathered, rules);
  const widths = isSidePanels(gathered.draw)
    ? sideWidths(gathered, rules)
    : countWidths(panels, usable, wanted, rules);
  const flat = flatInAll(widths, panels, usable);
  return {
    widths,
    panels,
    usable,
    finished: finishedInAll(gathered, rules),
    flat,
    wanted,
    delivered: delivered(gathered, flat, rules),
  };
}

function flatCutStep(work: WidthsWork): Step {
  const each = work.widths / work.panels;
  const half = each % 1 === 0 ? '' : ', the half at the return edge';
  return step(
    'flat width cut',
    `{} ${work.panels === 1 ? 'panel' : 'panels'} of {} ${each === 1 ? 'width' : 'widths'}${half}, hems and seams off`,
    [numberFigure(work.panels), numberFigure(each)],
    lengthFigure(exact(Math.floor(work.flat))),
  );
}

function sideSteps(gathered: Gathered, work: WidthsWork, rules: Rules): Step[] {
  return [
    step(
      'widths',
      `{} side ${work.panels === 1 ? 'panel' : 'panels'}, {} each: ordered, not counted from the rod`,
      [numberFigure(work.panels), numberFigure(work.widths / work.panels)],
      numberFigure(work.widths),
    ),
    flatCutStep(work),
    step(
      'finished width of all panels',
      rules.fullnessBasis === 'finished width'
        ? '{} ÷ {} fullness, the returns in it'
        : '{} ÷ {} fullness, its returns flat',
      [lengthFigure(exact(Math.floor(work.flat))), ratioFigure(fullnessOf(gathered, rules))],
      lengthFigure(work.finished),
    ),
  ];
}

export function widthsSteps(gathered: Gathered, work: WidthsWork, rules: Rules): Step[] {
  if (isSidePanels(gathered.draw)) return sideSteps(gathered, work, rules);
  const fullness = fullnessOf(gathered, rules);
  const flat = exact(Math.ceil(work.wanted / ONE));
  const usable = work.usable;
  return [
    step(
      'finished width of all panels',
      '{} rod + {} returns and overlaps',
      [lengthFigure(gathered.rodWidth), lengthFigure(exact(work.finished - gathered.rodWidth))],
      lengthFigure(work.finished),
    ),
    rules.fullnessBasis === 'finished width'
      ? step(
          'flat width wanted',
          '{} × {} fullness',
          [lengthFigure(work.finished), ratioFigure(fullness)],
          lengthFigure(flat),
        )
      : step(
          'flat width wanted',
          '{} rod × {} fullness + {}',
          [
            lengthFigure(gathered.rodWidth),
            ratioFigure(fullness),
            lengthFigure(exact(work.finished - gathered.rodWidth)),
          ],
          lengthFigure(flat),
        ),
    step(
      'widths',
      '{} a width, {} a seam, {} hems in all ({})',
      [
        lengthFigure(usable.each),
        lengthFigure(usable.seam),
        lengthFigure(exact(work.panels * 2 * rules.sideHem)),
        textFigure(rules.widthsRounding),
      ],
      numberFigure(work.widths),
    ),
    flatCutStep(work),
    deliveredStep(gathered, work.flat, work.delivered, rules),
  ];
}

/** Widths as the making charge counts them: a panel's half as it is, or as a whole. */
export const chargedWidths = (widths: number, panels: 1 | 2, rules: Rules): number =>
  rules.halfWidthCharged === 'as a whole' ? panels * Math.ceil(widths / panels) : widths;

/** Cloth half as wide again as the house's billable width is wide goods. */
const isWide = (fabricWidth: Length, billable: Length): boolean => 2 * fabricWidth >= 3 * billable;

/** Widths charged, of wide goods by so much flat cloth where the house does so: two of 118 are five of 54. */
export function billedWidths(
  charged: number,
  fabricWidth: Length,
  { billableWidth }: Pick<Rules, 'billableWidth'>,
): number {
  if (billableWidth === undefined || !isWide(fabricWidth, billableWidth)) return charged;
  return Math.ceil((charged * fabricWidth) / billableWidth);
}

/** Turned cloth has no widths: so much of it along the bolt, or undefined where the house does not charge so. */
export const billedTurned = (
  along: Length,
  { billableWidth }: Pick<Rules, 'billableWidth'>,
): number | undefined => (billableWidth === undefined ? undefined : Math.ceil(along / billableWidth));

/** Findings on the widths themselves. */
export function widthsFindings(gathered: Gathered, work: WidthsWork, rules: Rules): Finding[] {
  const findings = [...work.usable.findings, ...sidePanelsMeet(gathered, rules)];
  const asked = fullnessOf(gathered, rules);
  if (work.flat * ONE < work.wanted)
    findings.push(
      finding('lessFullness', parameter('fullness'), digits(toFigure(asked)), work.delivered.toFixed(2)),
    );
  if (gathered.heading === 'wave' && (asked < rules.waveRatioLow || asked > rules.waveRatioHigh)) {
    findings.push(
      finding(
        'waveRatio',
        parameter('fullness'),
        digits(toFigure(asked)),
        digits(toFigure(rules.waveRatioLow)),
        digits(toFigure(rules.waveRatioHigh)),
      ),
    );
  }
  return findings;
}

/** Widths of cloth for the whole treatment. */
export function widths(gathered: Gathered, rules: Rules): Answer<number> {
  const work = workWidths(gathered, rules);
  return answer(work.widths, () => widthsSteps(gathered, work, rules), widthsFindings(gathered, work, rules));
}

/** Panels of so many widths each that cover the rod; a pair rounds to an even count. */
export function panels(
  gathered: Gathered & { widthsEach: number | undefined },
  rules: Rules,
): Answer<number> {
  const sides = panelsOf(gathered.draw ?? 'pair');
  if (isSidePanels(gathered.draw))
    return answer(
      sides,
      [step('panels', 'side panels that do not meet, whatever the rod', [], numberFigure(sides))],
      sidePanelsMeet(gathered, rules),
    );
  const usable = usableWidth(gathered, rules);
  const wanted = flatWanted(gathered, rules);
  const each = gathered.widthsEach ?? 1;
  const flat = flatOfPanel(each, usable);
  if (flat <= 0)
    return refuse(
      'fabricTooNarrow',
      parameter('fabricWidth'),
      showLength(gathered.fabricWidth, unitOf(rules)),
      showLength(exact(2 * rules.sideHem), unitOf(rules)),
    );
  const flatScaled = scaled(flat * ONE);
  const over = wanted % flatScaled;
  const count = (wanted - over) / flatScaled + (over > 0 ? 1 : 0);
  const value = Math.max(1, Math.ceil(count / sides)) * sides;
  return answer(
    value,
    [
      step('flat width wanted', '', [], lengthFigure(exact(Math.ceil(wanted / ONE)))),
      step(
        'panels',
        'of {} widths, {} flat each{}',
        [
          numberFigure(each),
          lengthFigure(exact(Math.floor(flat))),
          textFigure(sides === 2 ? ', up to an even count' : ''),
        ],
        numberFigure(value),
      ),
    ],
    usable.findings,
  );
}

/** The fullness that so many widths deliver: flat ÷ finished, hems and seams off. */
export function fullness(clothed: Clothed & { widths: number }, rules: Rules): Answer<number> {
  const sides = panelsOf(clothed.draw ?? 'pair');
  const usable = usableWidth(clothed, rules);
  const flat = flatInAll(clothed.widths, sides, usable);
  if (flat <= 0) return refuse('widthsTooFew', parameter('widths'), digits(clothed.widths), 'hems and seams');
  const finished = finishedInAll(clothed, rules);
  const value = delivered(clothed, flat, rules);
  // On the rod alone, cloth that returns and overlaps use up leaves none for the rod.
  if (value <= 0)
    return refuse(
      'widthsTooFew',
      parameter('widths'),
      digits(clothed.widths),
      'hems, seams, returns and overlaps',
    );
  const findings = [...usable.findings];
  if (flat < finished)
    findings.push(
      finding(
        'doesNotCover',
        parameter('widths'),
        digits(clothed.widths),
        showLength(exact(Math.ceil(finished - flat)), unitOf(rules)),
      ),
    );
  return answer(
    value,
    [
      step(
        'flat width',
        '{} × {}, less hems and seams',
        [numberFigure(clothed.widths), lengthFigure(usable.each)],
        lengthFigure(exact(Math.floor(flat))),
      ),
      deliveredStep(clothed, flat, value, rules),
    ],
    findings,
  );
}

/** How much narrower the rod must be to need one step of widths less; undefined at the least there is. */
export function toOneLess(gathered: Gathered, work: WidthsWork, rules: Rules): Length | undefined {
  const fewer = work.widths - widthsStep(work.panels, rules);
  if (fewer <= 0 || isSidePanels(gathered.draw)) return undefined;
  const asked = fullnessOf(gathered, rules);
  const parts = exact(work.finished - gathered.rodWidth);
  const capacity = served(fewer, work.panels, work.usable, rules);
  const most =
    rules.fullnessBasis === 'finished width'
      ? Math.floor(capacity / asked) - parts
      : Math.floor((capacity - parts * ONE) / asked);
  return most > 0 ? exact(gathered.rodWidth - most) : undefined;
}

/** How much narrower the rod must be to need fewer widths. */
export function saveWidth(gathered: Gathered, rules: Rules): Answer<Length> {
  const work = workWidths(gathered, rules);
  const narrower = toOneLess(gathered, work, rules);
  if (isSidePanels(gathered.draw)) return noAnswer('widthsAreOrdered', parameter('draw'));
  if (narrower === undefined) return noAnswer('fewestWidths', parameter('rodWidth'), digits(work.widths));
  const rod = exact(gathered.rodWidth - narrower);
  return answer(
    narrower,
    [
      ...widthsSteps(gathered, work, rules),
      step(
        `rod for ${digits(work.widths - widthsStep(work.panels, rules))} widths`,
        '{} − {}',
        [lengthFigure(gathered.rodWidth), lengthFigure(narrower)],
        lengthFigure(rod),
      ),
    ],
    widthsFindings(gathered, work, rules),
  );
}
