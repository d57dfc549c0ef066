/**
 * What hangs behind the face: it lines the cloth that hangs there, so its widths follow the face's,
 * width for width on a bolt as wide, else by the flat width that the face's widths deliver.
 */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  refuse,
  step,
  type Answer,
  type Finding,
  type Step,
} from '../cell/answer';
import { panelsOf, type LayerBehind } from '../cell/treatment';
import { exact, NO_LENGTH, times, type Length } from '../exact/length';
import { ONE, scaled } from '../exact/ratio';
import { showLength } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import { isCutAsLining, liningCut, liningCutWithSteps } from './cuts';
import { flatInAll, usableWidth, type Usable } from './bolt';
import { countWidths, workWidths } from './widths';
import { cutsOf, roundedYardage, yardageSteps, type Covered } from './yardage';

export interface Lined extends Omit<Covered, 'fabricWidth' | 'verticalRepeat' | 'match'> {
  /** The face's bolt width; undefined takes the house's usual one. */
  readonly fabricWidth: Length | undefined;
  /** The face's widths where they are known; else they are counted. */
  readonly faceWidths?: number | undefined;
  readonly liningWidth: Length;
  readonly layer: LayerBehind | undefined;
}

/** A bolt as wide takes as many widths; any other does where the house says so. */
const followsFace = ({ liningWidth }: Lined, faceBolt: Length, { liningWidths }: Rules): boolean =>
  liningWidth === faceBolt || liningWidths === 'as the face';

interface LayerWidths {
  readonly widths: number;
  readonly faceWidths: number;
  readonly faceBolt: Length;
  /** The face of all panels as seamed, before its side hems. */
  readonly seamed: Length;
  /** What the face turns over this layer, of all panels. */
  readonly margins: Length;
}

/** A layer that does not reach across the face lines nothing: “nearest” is for the face alone. */
const goingUp = (rules: Rules): Rules =>
  rules.widthsRounding.startsWith('nearest') ? { ...rules, widthsRounding: 'whole per pair' } : rules;

function layerWidths(lined: Lined, rules: Rules): LayerWidths {
  const panels = panelsOf(lined.draw ?? 'pair');
  const { seam, sideHem } = rules;
  const bolt = exact(lined.liningWidth - 2 * rules.selvage);
  if (bolt <= 2 * seam)
    return refuse('liningTooNarrow', parameter('liningWidth'), showLength(lined.liningWidth, unitOf(rules)));
  const faceBolt = lined.fabricWidth ?? rules.usualFabricWidth;
  const face = { ...lined, fabricWidth: faceBolt };
  const faceWidths = lined.faceWidths ?? workWidths(face, rules).widths;
  // Half widths may leave half a nanometre: it stays until the widths are counted.
  const seamed = flatInAll(faceWidths, panels, usableWidth(face, rules)) + 2 * panels * sideHem;
  // An interlining goes full width into the turnings, unless the house cuts it as the lining.
  const margins = isCutAsLining(lined.layer ?? 'lining', rules)
    ? 2 * panels * (rules.liningMarginLeading + rules.liningMarginOuter)
    : 0;
  // A plain cloth: no hems of its own, selvages and seams as the face has them.
  const plain: Usable = {
    plain: bolt,
    each: bolt,
    seam,
    hem: NO_LENGTH,
    findings: [],
  };
  const wanted = scaled(Math.max(0, seamed - margins) * ONE);
  return {
    widths: followsFace(lined, faceBolt, rules)
      ? faceWidths
      : countWidths(panels, plain, wanted, goingUp(rules)),
    faceWidths,
    faceBolt,
    seamed: exact(Math.ceil(seamed)),
    margins: exact(margins),
  };
}

export interface LiningWork {
  readonly widths: number;
  readonly cut: Length;
  readonly cuts: number;
  readonly yardage: Length;
}

interface WholeWork extends LiningWork {
  readonly across: LayerWidths;
}

function workLayer(lined: Lined, rules: Rules): WholeWork {
  const quantity = lined.quantity ?? 1;
  const across = layerWidths(lined, rules);
  const { widths } = across;
  const cut = liningCut(lined, lined.layer ?? 'lining', rules);
  const yardage = roundedYardage((windows) => times(cut, cutsOf(widths, windows, rules)), quantity, rules);
  return { widths, cut, cuts: cutsOf(widths, quantity, rules), yardage, across };
}

/** Widths, cut and yardage of a lining or interlining without their steps. */
export const workLining = (lined: Lined, rules: Rules): LiningWork => workLayer(lined, rules);

function widthsStepsOf(lined: Lined, { across }: WholeWork, layer: string, rules: Rules): Step[] {
  const { faceWidths, faceBolt, seamed, margins, widths } = across;
  const known = lined.faceWidths !== undefined ? 'as the face is cut' : 'counted for this rod';
  const face = step(
    'widths of the face',
    `of {}${lined.fabricWidth === undefined ? ', the house’s usual fabric width' : ''}, ${known}`,
    [lengthFigure(faceBolt)],
    numberFigure(faceWidths),
  );
  if (followsFace(lined, faceBolt, rules))
    return [
      face,
      step(
        `${layer} widths`,
        lined.liningWidth === faceBolt ? 'of {} too: as many as the face' : 'of {}: as many as the face',
        [lengthFigure(lined.liningWidth)],
        numberFigure(widths),
      ),
    ];
  return [
    face,
    step(
      `${layer} wanted in all, flat`,
      '{} face as seamed, before its side hems − {} turned over it',
      [lengthFigure(seamed), lengthFigure(margins)],
      lengthFigure(exact(Math.max(0, seamed - margins))),
    ),
    step(
      `${layer} widths`,
      rules.selvage === 0 ? 'of {}' : 'of {} within its selvages',
      [lengthFigure(exact(lined.liningWidth - 2 * rules.selvage))],
      numberFigure(widths),
    ),
  ];
}

/** Yardage of a lining or interlining. */
export function lining(lined: Lined, rules: Rules): Answer<Length> {
  const work = workLayer(lined, rules);
  const layer = lined.layer ?? 'lining';
  const findings: Finding[] = [];
  const unit = unitOf(rules);
  if (lined.liningWidth > work.cut)
    findings.push(
      finding(
        'liningWiderThanCut',
        parameter('liningWidth'),
        showLength(lined.liningWidth, unit),
        showLength(work.cut, unit),
      ),
    );
  return answer(
    work.yardage,
    () => [
      ...widthsStepsOf(lined, work, layer, rules),
      ...liningCutWithSteps(lined, layer, rules).steps,
      ...yardageSteps(work.cuts, times(work.cut, work.cuts), work.yardage, rules),
    ],
    findings,
  );
}
