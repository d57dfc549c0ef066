/** Where the heading is marked: pleats and spaces, grommets, snaps, rings, the rod pocket. */
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  refuse,
  step,
  type Answer,
  type Finding,
} from '../cell/answer';
import { exact, type Length } from '../exact/length';
import { unitOf, type Rules } from '../house/rules';
import { panelsOf, type Heading } from '../cell/treatment';
import { showLength, type Unit } from '../exact/unit';
import { finishedInAll, flatInAll, perPanel, usableWidth, type Clothed, type Hung } from '../cloth/widths';

/** Nanometres shared in equal parts: a mark, not a cut, so it need not be whole. */
type Share = number;
const whole = (of: Share): Length => exact(Math.round(of));
const showShare = (of: Share, unit: Unit): string => showLength(whole(of), unit);

const PLEATED: ReadonlySet<Heading> = new Set<Heading>(['pinch', 'goblet', 'cartridge', 'box', 'inverted']);
const BOXED: ReadonlySet<Heading> = new Set<Heading>(['box', 'inverted']);

export interface Pleats {
  /** On one panel. */
  readonly pleats: number;
  readonly spaces: number;
  readonly space: Share;
  readonly takeUp: Share;
}

/** A panel's cloth before and after pleating, and the part that is pleated. */
interface Panel {
  readonly flat: Length;
  readonly finished: Length;
  readonly zone: Length;
}

function panelOf(of: Clothed & { widths: number }, rules: Rules): Panel {
  const panels = panelsOf(of.draw ?? 'pair');
  const flat = Math.floor(flatInAll(of.widths, panels, usableWidth(of, rules)) / panels);
  const finished = perPanel(finishedInAll(of, rules), panels);
  if (flat <= finished) {
    const unit = unitOf(rules);
    return refuse(
      'nothingToPleat',
      'widths',
      showLength(exact(Math.max(0, flat)), unit),
      showLength(finished, unit),
    );
  }
  return { flat: exact(flat), finished, zone: perPanel(of.rodWidth, panels) };
}

/** The whole number between two bounds that stands nearest to a wish. */
const within = (wish: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, Math.round(wish)));

/**
 * Pleats = (flat − finished) ÷ take-up, as a whole number: the one nearest to the house's take-up
 * that keeps both the take-up and the space in their bands, else the one that keeps the space.
 */
function countPleats(excess: number, zone: number, face: number, rules: Rules): number {
  const wish = excess / rules.takeUp;
  // With pleats p the spaces are (zone − p × face) ÷ (p − 1).
  const mostSpaces = Math.floor((zone + rules.spaceLow) / (face + rules.spaceLow));
  const fewestSpaces = Math.ceil((zone + rules.spaceHigh) / (face + rules.spaceHigh));
  const mostCloth = Math.floor(excess / rules.takeUpLow);
  const fewestCloth = Math.ceil(excess / rules.takeUpHigh);
  const low = Math.max(2, fewestSpaces, fewestCloth);
  const high = Math.min(mostSpaces, mostCloth);
  if (low <= high) return within(wish, low, high);
  if (fewestSpaces <= mostSpaces) return Math.max(2, within(wish, fewestSpaces, mostSpaces));
  // Never so many that their faces alone outgrow the rod.
  const mostFaces = face === 0 ? Infinity : Math.ceil(zone / face) - 1;
  return Math.max(2, Math.min(fewestSpaces, mostFaces));
}

export function workPleats(of: Clothed & { widths: number }, rules: Rules): Pleats & { panel: Panel } {
  const panel = panelOf(of, rules);
  const excess = panel.flat - panel.finished;
  const face = BOXED.has(of.heading) ? rules.boxFace : 0;
  if (panel.zone <= 2 * face)
    return refuse('rodTooNarrowForPanels', 'rod_width', showLength(of.rodWidth, unitOf(rules)));
  const pleats = countPleats(excess, panel.zone, face, rules);
  const spaces = pleats - 1;
  return {
    pleats,
    spaces,
    space: Math.max(0, panel.zone - pleats * face) / spaces,
    takeUp: excess / pleats,
    panel,
  };
}

export const isPleated = (heading: Heading): boolean => PLEATED.has(heading);

/** Pleats of one panel, their spaces and take-up; for a wave, its snaps. */
export function pleats(of: Clothed & { widths: number }, rules: Rules): Answer<Pleats> {
  if (of.heading === 'wave') return wave(of, rules);
  if (!isPleated(of.heading)) return refuse('notPleated', 'heading', of.heading);
  const { panel, ...set } = workPleats(of, rules);
  const unit = unitOf(rules);
  const findings: Finding[] = [];
  if (set.takeUp < rules.takeUpLow || set.takeUp > rules.takeUpHigh)
    findings.push(
      finding(
        'takeUpOutside',
        'widths',
        showShare(set.takeUp, unit),
        showLength(rules.takeUpLow, unit),
        showLength(rules.takeUpHigh, unit),
      ),
    );
  if (set.space < rules.spaceLow || set.space > rules.spaceHigh)
    findings.push(
      finding(
        'spaceOutside',
        'rod_width',
        showShare(set.space, unit),
        showLength(rules.spaceLow, unit),
        showLength(rules.spaceHigh, unit),
      ),
    );
  const underfold = set.takeUp / 4;
  const boxed = BOXED.has(of.heading);
  if (boxed && Math.abs(underfold - rules.underfold) * 8 > rules.underfold)
    findings.push(
      finding('underfoldOutside', 'widths', showShare(underfold, unit), showLength(rules.underfold, unit)),
    );
  return answer(
    set,
    () => [
      step(
        'taken up in all',
        '{} flat − {} finished',
        [lengthFigure(panel.flat), lengthFigure(panel.finished)],
        lengthFigure(exact(panel.flat - panel.finished)),
      ),
      step(
        'pleats a panel',
        '{} ÷ {} each',
        [lengthFigure(exact(panel.flat - panel.finished)), lengthFigure(whole(set.takeUp))],
        numberFigure(set.pleats),
      ),
      step(
        'space',
        `{}${boxed ? ' less the pleats’ faces' : ''} ÷ {} spaces`,
        [lengthFigure(panel.zone), numberFigure(set.spaces)],
        lengthFigure(whole(set.space)),
      ),
      ...(boxed
        ? [
            step(
              'each underfold',
              '{} ÷ 4',
              [lengthFigure(whole(set.takeUp))],
              lengthFigure(whole(underfold)),
            ),
          ]
        : []),
    ],
    findings,
  );
}

/** Fullness a row of box pleats takes: each unit is a face, a space and two underfolds of double depth. */
export const boxFullness = (face: Length, space: Length, underfold: Length): number =>
  (face + space + 4 * underfold) / (face + space);

/** Snaps of one panel: an even count at the tape's spacing, so that both edges turn to the wall. */
function wave(of: Clothed & { widths: number }, rules: Rules): Answer<Pleats> {
  const panel = panelOf(of, rules);
  const snaps = Math.max(2, Math.floor(panel.flat / rules.snapSpacing / 2) * 2);
  const set: Pleats = {
    pleats: snaps,
    spaces: snaps - 1,
    space: panel.zone / (snaps - 1),
    takeUp: rules.snapSpacing,
  };
  return answer(set, () => [
    step(
      'snaps a panel',
      '{} flat at {}, down to an even count',
      [lengthFigure(panel.flat), lengthFigure(rules.snapSpacing)],
      numberFigure(snaps),
    ),
    step(
      'carriers apart when closed',
      '{} ÷ {}',
      [lengthFigure(panel.zone), numberFigure(set.spaces)],
      lengthFigure(whole(set.space)),
    ),
  ]);
}

export interface Grommets {
  readonly count: number;
  readonly spacing: Share;
  readonly firstCentre: Share;
}

/** An even count of grommets, so that both edges turn to the wall. */
export function grommets(of: { flatWidth: Length }, rules: Rules): Answer<Grommets> {
  const edge = rules.grommetEdge;
  const between = edge === undefined ? of.flatWidth : of.flatWidth - 2 * edge;
  if (between <= 0)
    return refuse('rodTooNarrowForPanels', 'flat_width', showLength(of.flatWidth, unitOf(rules)));
  const spaces = Math.ceil(between / rules.grommetSpacing);
  const least = edge === undefined ? spaces : spaces + 1;
  const count = Math.max(2, least + (least % 2));
  const spacing = between / (edge === undefined ? count : count - 1);
  const firstCentre = edge ?? of.flatWidth / (2 * count);
  return answer({ count, spacing, firstCentre }, () => [
    step(
      'grommets',
      '{} at {} or less, up to an even count',
      [lengthFigure(of.flatWidth), lengthFigure(rules.grommetSpacing)],
      numberFigure(count),
    ),
    step('centre to centre', '', [], lengthFigure(whole(spacing))),
    step(
      'first centre from the edge',
      edge === undefined ? 'half the spacing' : 'house rule',
      [],
      lengthFigure(whole(firstCentre)),
    ),
  ]);
}

export type Ringed = Hung & { readonly widths: number; readonly fabricWidth: Length | undefined };

/** Rings or carriers of one panel. */
function ringsOfPanel(of: Ringed, rules: Rules): readonly [number, string] {
  const clothed = {
    rodWidth: of.rodWidth,
    heading: of.heading,
    draw: of.draw,
    return: of.return,
    overlap: of.overlap,
    fabricWidth: of.fabricWidth ?? rules.usualFabricWidth,
    widths: of.widths,
  };
  const finished = perPanel(finishedInAll(of, rules), panelsOf(of.draw ?? 'pair'));
  switch (of.heading) {
    case 'grommet':
    case 'rod pocket':
    case 'tab top':
      return [0, `${of.heading}: the rod runs through the heading`];
    case 'wave':
      return [wave(clothed, rules).value.pleats, 'a carrier at each snap'];
    case 'pencil':
      return [Math.ceil(finished / rules.hookSpacing) + 1, 'a hook at each end and at each spacing'];
    case 'flat':
      return [Math.ceil(finished / rules.ringSpacing) + 1, 'a ring at each end and at each spacing'];
    default: {
      const { pleats } = workPleats(clothed, rules);
      return [pleats + 2, `${pleats} pleats and 2 ends`];
    }
  }
}

/** Rings or carriers in all: by pleats and ends. */
export function rings(of: Ringed, rules: Rules): Answer<number> {
  const panels = panelsOf(of.draw ?? 'pair');
  const [each, why] = ringsOfPanel(of, rules);
  return answer(panels * each, () => [
    step(
      'rings or carriers',
      `{} ${panels === 1 ? 'panel' : 'panels'} × {} (${why})`,
      [numberFigure(panels), numberFigure(each)],
      numberFigure(panels * each),
    ),
  ]);
}

/** Flat depth of a rod pocket between its stitching lines: half of the rod's round and the ease. */
export function pocket(of: { rodAround: Length | undefined }, rules: Rules): Answer<Length> {
  const around = of.rodAround ?? rules.rodAround;
  const value = exact(Math.ceil((around + rules.pocketEase) / 2));
  return answer(value, () => [
    step(
      'pocket',
      '({} round + {} ease) ÷ 2',
      [lengthFigure(around), lengthFigure(rules.pocketEase)],
      lengthFigure(value),
    ),
  ]);
}
