/**
 * Pleats of one panel: counted by width, space or take-up, moved into the bands of the trade, and
 * shared out so that every seam lies behind a pleat.
 */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  refuse,
  step,
  textFigure,
  type Answer,
  type Finding,
  type Step,
} from '../cell/answer';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import { unitOf, type Rules } from '../house/rules';
import { panelsOf, type Heading } from '../cell/treatment';
import { digits, showLength } from '../exact/unit';
import { flatInAll, flatsOfPanel, usableWidth } from '../cloth/bolt';
import { finishedInAll } from '../cloth/hung';
import { fullness, widthsStep } from '../cloth/widths';
import { panelOf, showShare, wholeShare, zoneOf, type MadeUp, type Panel, type Share } from './panel';
import { snaps, type Snaps } from './wave';

const PLEATED: ReadonlySet<Heading> = new Set<Heading>(['pinch', 'goblet', 'cartridge', 'box', 'inverted']);
const BOXED: ReadonlySet<Heading> = new Set<Heading>(['box', 'inverted']);

export const isPleated = (heading: Heading): boolean => PLEATED.has(heading);

/** The pleats that one width of a panel holds, from seam to seam. */
export interface PleatsOfWidth {
  /** 1, or a half at the return edge. */
  readonly width: number;
  readonly pleats: number;
  readonly takeUp: Share;
}

/** Which bands the spaces and the take-up keep: the usual ones, the wider ones, or neither. */
type Kept = 'usual' | 'wider' | 'none';

export interface Pleats {
  /** On one panel. */
  readonly pleats: number;
  readonly spaces: number;
  readonly space: Share;
  readonly takeUp: Share;
  /** From the leading edge to the first. */
  readonly first: Share;
  /** Of a box pleat, as wide as it shows; others show none. */
  readonly face: Length;
  /** From the leading edge to the return; none where there are fewer pleats than widths. */
  readonly byWidth: readonly PleatsOfWidth[];
}

/** Bolts as wide as this, give or take, hold the house's pleats a width. */
const NOMINAL = 2_540_000; // a tenth of an inch: a bolt of 137 cm is one of 54 in

/** The count the house would make, before any band. */
function wishedPleats(madeUp: MadeUp, panel: Panel, zone: Length, rules: Rules): number {
  switch (rules.pleatsBy) {
    case 'space':
      return Math.round(zone / rules.pleatSpace) + 1;
    case 'take-up':
      return Math.round((panel.flat - panel.finished) / rules.takeUp);
    case 'width':
      // A half width takes the smaller number; other bolts go by their flat cloth.
      return Math.abs(madeUp.fabricWidth - rules.pleatsCountedOn) <= NOMINAL
        ? Math.floor(rules.pleatsAWidth * panel.widths)
        : Math.floor((panel.flat * rules.pleatsAWidth) / rules.pleatsCountedOn);
  }
}

type Band = readonly [low: Length, high: Length];
const least = (one: Length, other: Length): Length => exact(Math.min(one, other));
const most = (one: Length, other: Length): Length => exact(Math.max(one, other));

const usualBands = (rules: Rules): readonly [Band, Band] => [
  [rules.spaceLow, rules.spaceHigh],
  [rules.takeUpLow, rules.takeUpHigh],
];
const widerBands = (rules: Rules): readonly [Band, Band] => [
  [least(rules.spaceLow, rules.spaceLeast), rules.spaceHigh],
  [rules.takeUpLow, most(rules.takeUpHigh, rules.takeUpMost)],
];

/** The counts that keep both bands, fewest and most; undefined where none does. */
function countsWithin(
  zone: number,
  excess: number,
  face: number,
  [space, takeUp]: readonly [Band, Band],
): readonly [number, number] | undefined {
  // With pleats p the spaces are (zone − p × face) ÷ (p − 1).
  const low = Math.max(2, Math.ceil((zone + space[1]) / (face + space[1])), Math.ceil(excess / takeUp[1]));
  const high = Math.min(Math.floor((zone + space[0]) / (face + space[0])), Math.floor(excess / takeUp[0]));
  return low <= high ? [low, high] : undefined;
}

interface Counted {
  readonly pleats: number;
  readonly wished: number;
  readonly kept: Kept;
}

/** The count that is wished for, moved by as little as brings it into the bands. */
function countPleats(madeUp: MadeUp, panel: Panel, rules: Rules): Counted {
  const zone = zoneOf(panel);
  const excess = panel.flat - panel.finished;
  const face = BOXED.has(madeUp.heading) ? rules.boxFace : 0;
  const wished = Math.max(2, wishedPleats(madeUp, panel, zone, rules));
  for (const kept of ['usual', 'wider'] as const) {
    const bands = kept === 'usual' ? usualBands(rules) : widerBands(rules);
    const counts = countsWithin(zone, excess, face, bands);
    if (counts === undefined) continue;
    return { pleats: Math.min(counts[1], Math.max(counts[0], wished)), wished, kept };
  }
  // Never so many that their faces alone outgrow the rod.
  const faces = face === 0 ? wished : Math.max(2, Math.ceil(zone / face) - 1);
  return { pleats: Math.min(wished, faces), wished, kept: 'none' };
}

/** Pleats width by width: the seam lies behind the last pleat of each, so its space is the next one's. */
function shareByWidth(pleats: number, space: Share, face: number, panel: Panel): readonly PleatsOfWidth[] {
  const { widths, usable, lead, outer } = panel;
  const flats = flatsOfPanel(widths, usable);
  const many = flats.length;
  if (pleats < many) return [];
  return Array.from({ length: many }, (_, at) => {
    const first = at === 0;
    const last = at === many - 1;
    const width = last ? widths - at : 1;
    const upTo = (covered: number): number => Math.round((pleats * Math.min(widths, covered)) / widths);
    const own = upTo(at + 1) - upTo(at);
    const finished = own * (space + face) - (first ? space : 0) + (first ? lead : 0) + (last ? outer : 0);
    return { width, pleats: own, takeUp: ((flats[at] ?? 0) - finished) / own };
  });
}

interface SetPleats extends Counted {
  readonly set: Pleats;
  readonly panel: Panel;
}

function setPleats(madeUp: MadeUp, rules: Rules): SetPleats {
  const panel = panelOf(madeUp, rules);
  const zone = zoneOf(panel);
  const face = BOXED.has(madeUp.heading) ? rules.boxFace : 0;
  if (zone <= 2 * face)
    return refuse(
      'rodTooNarrowForPanels',
      parameter('rodWidth'),
      parameter('rodWidth'),
      showLength(madeUp.rodWidth, unitOf(rules)),
    );
  const counted = countPleats(madeUp, panel, rules);
  const { pleats } = counted;
  const spaces = pleats - 1;
  const space = Math.max(0, zone - pleats * face) / spaces;
  const set = {
    pleats,
    spaces,
    space,
    takeUp: (panel.flat - panel.finished) / pleats,
    first: panel.lead,
    face: exact(face),
    byWidth: shareByWidth(pleats, space, face, panel),
  };
  return { ...counted, set, panel };
}

/** Pleats of one panel that has them. */
export const countOfPleats = (madeUp: MadeUp, rules: Rules): number =>
  countPleats(madeUp, panelOf(madeUp, rules), rules).pleats;

/** What the widths deliver, and those beside them, for a panel that no count of pleats suits. */
function noCountSuits(madeUp: MadeUp, { set }: SetPleats, rules: Rules): Finding {
  const unit = unitOf(rules);
  const by = widthsStep(panelsOf(madeUp.draw ?? 'pair'), rules);
  const delivers = (widths: number): string => fullness({ ...madeUp, widths }, rules).value.toFixed(2);
  const beside = [madeUp.widths - by, madeUp.widths + by]
    .filter((widths) => widths > 0 && covers({ ...madeUp, widths }, rules))
    .map((widths) => `${digits(widths)} would deliver ${delivers(widths)}`);
  return finding(
    'noPleatsSuit',
    parameter('widths'),
    `${digits(madeUp.widths)} ${madeUp.widths === 1 ? 'width delivers' : 'widths deliver'} a fullness of ${delivers(madeUp.widths)}`,
    showShare(set.space, unit),
    showShare(set.takeUp, unit),
    beside.join(' and '),
  );
}

/** Whether so many widths leave anything to pleat. */
function covers(madeUp: MadeUp, rules: Rules): boolean {
  const panels = panelsOf(madeUp.draw ?? 'pair');
  return flatInAll(madeUp.widths, panels, usableWidth(madeUp, rules)) > finishedInAll(madeUp, rules);
}

function pleatFindings(madeUp: MadeUp, made: SetPleats, rules: Rules): Finding[] {
  const unit = unitOf(rules);
  const { set, kept } = made;
  const found: Finding[] = [];
  if (kept === 'none') found.push(noCountSuits(madeUp, made, rules));
  if (kept === 'wider') {
    const [[spaceLow, spaceHigh], [takeUpLow, takeUpHigh]] = usualBands(rules).map((band) =>
      band.map((length) => showLength(length, unit)),
    ) as [[string, string], [string, string]];
    found.push(
      finding(
        'pleatsOutsideUsual',
        parameter('widths'),
        showShare(set.space, unit),
        showShare(set.takeUp, unit),
        `${spaceLow} to ${spaceHigh}`,
        `${takeUpLow} to ${takeUpHigh}`,
      ),
    );
  }
  const underfold = set.takeUp / 4;
  if (BOXED.has(madeUp.heading) && Math.abs(underfold - rules.underfold) * 8 > rules.underfold)
    found.push(
      finding(
        'underfoldOutside',
        parameter('widths'),
        showShare(underfold, unit),
        showLength(rules.underfold, unit),
      ),
    );
  return found;
}

const WISHED_BY: Readonly<Record<Rules['pleatsBy'], (rules: Rules) => string>> = {
  width: ({ pleatsAWidth }) => `${digits(pleatsAWidth)} a width`,
  space: () => 'nearest to the house’s space',
  'take-up': () => 'nearest to the house’s take-up',
};

function pleatSteps(madeUp: MadeUp, { set, panel, wished, pleats: count }: SetPleats, rules: Rules): Step[] {
  const boxed = BOXED.has(madeUp.heading);
  const excess = exact(panel.flat - panel.finished);
  const unit = unitOf(rules);
  const moved =
    count === wished
      ? ''
      : `; by the rule ${digits(wished)}, moved for the space and the take-up${rules.pleatsBy === 'width' ? ', so no longer whole by the width' : ''}`;
  const steps = [
    step(
      'taken up in all',
      '{} flat − {} finished',
      [lengthFigure(panel.flat), lengthFigure(panel.finished)],
      lengthFigure(excess),
    ),
    step('pleats a panel', `${WISHED_BY[rules.pleatsBy](rules)}${moved}`, [], numberFigure(count)),
    step(
      'space',
      `{}${boxed ? ' less the pleats’ faces' : ''} ÷ {} spaces`,
      [lengthFigure(zoneOf(panel)), numberFigure(set.spaces)],
      lengthFigure(wholeShare(set.space)),
    ),
    step(
      'take-up a pleat',
      '{} ÷ {} pleats',
      [lengthFigure(excess), numberFigure(count)],
      lengthFigure(wholeShare(set.takeUp)),
    ),
  ];
  if (set.byWidth.length > 1)
    steps.push(
      step(
        'seams behind pleats, from the leading edge',
        set.byWidth.map(({ takeUp }) => showShare(takeUp, unit)).join(', ') + ' a pleat',
        [],
        textFigure(set.byWidth.map(({ pleats }) => digits(pleats)).join(' + ')),
      ),
    );
  if (boxed)
    steps.push(
      step(
        'each underfold',
        '{} ÷ 4',
        [lengthFigure(wholeShare(set.takeUp))],
        lengthFigure(wholeShare(set.takeUp / 4)),
      ),
    );
  return steps;
}

/** A wave has snaps for pleats, and carriers for what stands between them. */
function asPleats({ value, steps, findings }: Answer<Snaps>, rules: Rules): Answer<Pleats> {
  const { snaps: count, apart: space, first } = value;
  return answer(
    {
      pleats: count,
      spaces: count - 1,
      space,
      takeUp: rules.snapSpacing,
      first,
      face: NO_LENGTH,
      byWidth: [],
    },
    () => steps,
    findings,
  );
}

/** Pleats of one panel, their spaces and take-up; for a wave, its snaps. */
export function pleats(madeUp: MadeUp, rules: Rules): Answer<Pleats> {
  if (madeUp.heading === 'wave') return asPleats(snaps(madeUp, rules), rules);
  if (!isPleated(madeUp.heading)) return refuse('notPleated', parameter('heading'), madeUp.heading);
  const made = setPleats(madeUp, rules);
  return answer(made.set, () => pleatSteps(madeUp, made, rules), pleatFindings(madeUp, made, rules));
}
