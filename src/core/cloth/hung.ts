/**
 * What hangs on the rod, and its finished width: the rod's share with returns and overlaps, or, of
 * side panels that do not meet, what their widths of cloth come to.
 */
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
  type Finding,
  type Step,
} from '../cell/answer';
import { panelsOf, isSidePanels, type Draw, type Heading } from '../cell/treatment';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import { ONE, type Ratio } from '../exact/ratio';
import { digits, showLength } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import { flatInAll, usableWidth } from './bolt';

export interface Hung {
  readonly rodWidth: Length;
  readonly heading: Heading;
  readonly draw: Draw | undefined;
  readonly return?: Length | undefined;
  readonly overlap?: Length | undefined;
  /** Widths of each side panel; undefined takes the house's. */
  readonly widthsEach?: number | undefined;
  /** Widths in all where they are known: the finished width of side panels follows them. */
  readonly widths?: number | undefined;
  readonly fabricWidth?: Length | undefined;
  readonly horizontalRepeat?: Length | undefined;
  readonly fullness?: Ratio | undefined;
}

const drawOf = (hung: Hung): Draw => hung.draw ?? 'pair';
export const fullnessOf = (hung: Hung, rules: Rules): Ratio => hung.fullness ?? rules.fullness[hung.heading];

/** Rod to wall at each outer side: the rod's projection and a little more where the house knows it. */
export const returnOf = (hung: Pick<Hung, 'return'>, rules: Rules): Length =>
  hung.return ??
  (rules.rodProjection === undefined
    ? rules.return
    : exact(rules.rodProjection + rules.returnPastProjection));

/** The rod runs through the cloth, so that nothing carries one leading edge past the other. */
const ON_THE_ROD: ReadonlySet<Heading> = new Set<Heading>(['grommet', 'rod pocket', 'tab top']);

/** The rule that a pair's overlap goes by; none where the rod runs through the cloth. */
export function overlapRuleFor(heading: Heading, rules: Rules): 'overlap' | 'overlapOnRings' | undefined {
  if (ON_THE_ROD.has(heading)) return undefined;
  return heading === 'wave' || rules.hangOn === 'track' ? 'overlap' : 'overlapOnRings';
}

/** What each leading edge is carried past the centre: only where leading carriers cross. */
export function overlapOf(hung: Omit<Hung, 'rodWidth'>, rules: Rules): Length {
  if ((hung.draw ?? 'pair') !== 'pair') return NO_LENGTH;
  if (hung.overlap !== undefined) return hung.overlap;
  const rule = overlapRuleFor(hung.heading, rules);
  return rule === undefined ? NO_LENGTH : rules[rule];
}

/** Returns and overlaps of the whole treatment, which are flat cloth. */
export function flatParts(hung: Hung, rules: Rules): Length {
  const side = returnOf(hung, rules);
  switch (drawOf(hung)) {
    case 'pair':
      return exact(2 * (side + overlapOf(hung, rules)));
    case 'one-way left':
    case 'one-way right':
      return rules.oneWayReturns === 'one end' ? side : exact(2 * side);
    case 'stationary':
    case 'stationary cover':
      return exact(2 * side);
    case 'one stationary panel':
      return side;
  }
}

/** Widths of all side panels: as known, as ordered, or as the house orders them. */
export const sideWidths = (hung: Hung, rules: Rules): number =>
  hung.widths ?? panelsOf(drawOf(hung)) * (hung.widthsEach ?? rules.stationaryWidths);

/** Flat cloth of all side panels, hems and seams off. */
export function sideFlat(hung: Hung, rules: Rules): number {
  const bolt = {
    fabricWidth: hung.fabricWidth ?? rules.usualFabricWidth,
    horizontalRepeat: hung.horizontalRepeat,
  };
  const widths = sideWidths(hung, rules);
  const flat = flatInAll(widths, panelsOf(drawOf(hung)), usableWidth(bolt, rules));
  if (flat <= flatParts(hung, rules))
    return refuse('widthsTooFew', parameter('widths'), digits(widths), 'hems, seams, returns and overlaps');
  return flat;
}

/** Finished width of all side panels: their flat width ÷ fullness, the returns in it. */
function sideFinished(hung: Hung, rules: Rules): Length {
  const flat = sideFlat(hung, rules);
  const fullness = fullnessOf(hung, rules);
  const parts = rules.fullnessBasis === 'finished width' ? 0 : flatParts(hung, rules);
  return exact(Math.floor(((flat - parts) * ONE) / fullness) + parts);
}

/** Finished width of all panels together: the rod, the returns and the overlaps. */
export const finishedInAll = (hung: Hung, rules: Rules): Length =>
  isSidePanels(hung.draw) ? sideFinished(hung, rules) : exact(hung.rodWidth + flatParts(hung, rules));

/** A treatment's share for one panel; half a nanometre goes up. */
export const perPanel = (inAll: Length, panels: 1 | 2): Length => exact(Math.ceil(inAll / panels));

/** What one panel covers of the rod, without its returns and overlap. */
export function coveredByPanel(hung: Hung, rules: Rules): Length {
  const panels = panelsOf(drawOf(hung));
  if (!isSidePanels(hung.draw)) return perPanel(hung.rodWidth, panels);
  return perPanel(exact(Math.max(0, sideFinished(hung, rules) - flatParts(hung, rules))), panels);
}

/** Side panels that cover the whole rod are no side panels. */
export function sidePanelsMeet(hung: Hung, rules: Rules): readonly Finding[] {
  if (!isSidePanels(hung.draw)) return [];
  const covered = sideFinished(hung, rules) - flatParts(hung, rules);
  if (covered < hung.rodWidth) return [];
  const unit = unitOf(rules);
  return [
    finding(
      'sidePanelsMeet',
      parameter('draw'),
      showLength(exact(covered), unit),
      showLength(hung.rodWidth, unit),
    ),
  ];
}

function finishedSteps(hung: Hung, finished: Length, rules: Rules): Step[] {
  const side = returnOf(hung, rules);
  const panels = panelsOf(drawOf(hung));
  if (isSidePanels(hung.draw)) {
    const usual = hung.fabricWidth === undefined ? ', the house’s usual fabric width' : '';
    const flat = exact(Math.floor(sideFlat(hung, rules) / panels));
    const each = sideWidths(hung, rules) / panels;
    return [
      step(
        'flat width of each side panel',
        `{} ${each === 1 ? 'width' : 'widths'} of {}${usual}, hems and seams off`,
        [numberFigure(each), lengthFigure(hung.fabricWidth ?? rules.usualFabricWidth)],
        lengthFigure(flat),
      ),
      rules.fullnessBasis === 'finished width'
        ? step(
            'finished width of each panel',
            '{} ÷ {} fullness, {} return in it',
            [lengthFigure(flat), ratioFigure(fullnessOf(hung, rules)), lengthFigure(side)],
            lengthFigure(finished),
          )
        : step(
            'finished width of each panel',
            '({} − {} return) ÷ {} fullness + {}',
            [
              lengthFigure(flat),
              lengthFigure(side),
              ratioFigure(fullnessOf(hung, rules)),
              lengthFigure(side),
            ],
            lengthFigure(finished),
          ),
    ];
  }
  return [
    drawOf(hung) === 'pair'
      ? step(
          'finished width of each panel',
          '{} ÷ 2 + {} return + {} overlap',
          [lengthFigure(hung.rodWidth), lengthFigure(side), lengthFigure(overlapOf(hung, rules))],
          lengthFigure(finished),
        )
      : step(
          'finished width of the panel',
          '{} + {} returns',
          [lengthFigure(hung.rodWidth), lengthFigure(flatParts(hung, rules))],
          lengthFigure(finished),
        ),
  ];
}

/** Finished width of one panel: rod share + return + overlap, after pleating. */
export function finishedWidth(hung: Hung, rules: Rules): Answer<Length> {
  const draw = drawOf(hung);
  const finished = perPanel(finishedInAll(hung, rules), panelsOf(draw));
  const findings: Finding[] = [...sidePanelsMeet(hung, rules)];
  if (draw !== 'pair' && hung.overlap !== undefined && hung.overlap > 0)
    findings.push(finding('overlapUnused', parameter('overlap'), draw));
  if (draw === 'pair' && hung.overlap !== undefined && hung.overlap > 0 && ON_THE_ROD.has(hung.heading))
    findings.push(finding('overlapOnTheRod', parameter('overlap'), hung.heading));
  if (hung.widthsEach !== undefined && !isSidePanels(draw))
    findings.push(finding('widthsEachUnused', parameter('widthsEach'), draw));
  if (hung.return === 0) findings.push(finding('noReturn', parameter('return')));
  return answer(finished, () => finishedSteps(hung, finished, rules), findings);
}
