/** From the opening to the finished drop: side extension, rod width, mounting height, drop. */
import { parameter, type ParameterKey } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  refuse,
  step,
  type Answer,
  type Finding,
  type Step,
} from '../cell/answer';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import { unitOf, type Rules } from '../house/rules';
import {
  isEdge,
  measuredFrom,
  type Edge,
  type FloorFinish,
  type Heading,
  type MeasuredTo,
} from '../cell/treatment';
import { showLength } from '../exact/unit';
import { clearExtension, stackOverGlass, type Stacking } from './stack';

export type End = 'low' | 'high' | 'clear';

interface Band {
  readonly low: Length;
  readonly high: Length;
  readonly size: 'small' | 'medium' | 'large';
}

function extensionBand(openingWidth: Length, rules: Rules): Band {
  if (openingWidth <= rules.extensionSmallUpTo) {
    return { low: rules.extensionSmallLow, high: rules.extensionSmallHigh, size: 'small' };
  }
  if (openingWidth <= rules.extensionMediumUpTo) {
    return { low: rules.extensionMediumLow, high: rules.extensionMediumHigh, size: 'medium' };
  }
  return { low: rules.extensionLargeLow, high: rules.extensionLargeHigh, size: 'large' };
}

/** What stacks where a cell does not say. */
const USUAL: Stacking = { heading: 'pinch', draw: 'pair', lining: 'unlined' };

/** What is known of the drapery that an extension or a rod is for. */
type MayStack = { readonly [K in keyof Stacking]?: Stacking[K] | undefined };

const stackingOf = ({ heading, draw, lining }: MayStack): Stacking => ({
  heading: heading ?? USUAL.heading,
  draw: draw ?? USUAL.draw,
  lining: lining ?? USUAL.lining,
});

export interface Extended extends MayStack {
  readonly openingWidth: Length;
  readonly end: End | undefined;
}

/** Side extension on one side: by the size of the opening, or what clears the stack. */
export function extension(extended: Extended, rules: Rules): Answer<Length> {
  const { openingWidth, end = 'low' } = extended;
  const stacking = stackingOf(extended);
  if (end === 'clear') return clearExtension(openingWidth, stacking, rules);
  const band = extensionBand(openingWidth, rules);
  const value = band[end];
  return answer(value, () => [
    ...stackOverGlass({ ...stacking, rodWidth: exact(openingWidth + 2 * value) }, value, rules),
    step(
      `${end} end of the band for a ${band.size} opening`,
      '',
      [lengthFigure(openingWidth)],
      lengthFigure(value),
    ),
  ]);
}

export interface Opening extends MayStack {
  readonly openingWidth: Length;
  /** Its straight parts from left to right, where it was written in parts. */
  readonly parts?: readonly Length[] | undefined;
  readonly leftExtension: Length | undefined;
  readonly rightExtension: Length | undefined;
}

const isOutside = (given: Length | undefined, { low, high }: Band): given is Length =>
  given !== undefined && (given < low || given > high);

function outsideBand(key: ParameterKey, given: Length, openingWidth: Length, rules: Rules): Finding {
  const { low, high } = extensionBand(openingWidth, rules);
  const unit = unitOf(rules);
  return finding(
    'extensionOutsideBand',
    parameter(key),
    parameter(key),
    showLength(given, unit),
    showLength(openingWidth, unit),
    showLength(low, unit),
    showLength(high, unit),
  );
}

/** The house's extension where none is given, against the stack on the side or sides where there is one. */
function usualAgainstStack(opening: Opening, rod: Length, usual: Length, rules: Rules): readonly Step[] {
  const stacking = stackingOf(opening);
  const leftBlank = opening.leftExtension === undefined && stacking.draw !== 'one-way right';
  const rightBlank = opening.rightExtension === undefined && stacking.draw !== 'one-way left';
  return leftBlank || rightBlank ? stackOverGlass({ ...stacking, rodWidth: rod }, usual, rules) : [];
}

export const bendsInWords = (bends: number): string => `${bends} ${bends === 1 ? 'bend' : 'bends'}`;

function partsFindings(parts: readonly Length[] | undefined): readonly Finding[] {
  if (parts === undefined) return [];
  if (parts.length === 1) return [finding('bayOfOnePart', parameter('openingWidth'))];
  return [finding('bayOfParts', parameter('openingWidth'), parts.length, bendsInWords(parts.length - 1))];
}

/** The inside width of a bay: the sum of its straight parts. */
function partsSteps({ openingWidth, parts = [] }: Opening): readonly Step[] {
  if (parts.length < 2) return [];
  return [
    step(
      `inside width of ${parts.length} straight parts, ${bendsInWords(parts.length - 1)}`,
      parts.map(() => '{}').join(' + '),
      parts.map(lengthFigure),
      lengthFigure(openingWidth),
    ),
  ];
}

/** Rod width = inside width + left extension + right extension; returns are not in it. */
export function rodWidth(opening: Opening, rules: Rules): Answer<Length> {
  const band = extensionBand(opening.openingWidth, rules);
  const left = opening.leftExtension ?? band.low;
  const right = opening.rightExtension ?? band.low;
  const findings: Finding[] = [...partsFindings(opening.parts)];
  if (isOutside(opening.leftExtension, band))
    findings.push(outsideBand('leftExtension', opening.leftExtension, opening.openingWidth, rules));
  if (isOutside(opening.rightExtension, band))
    findings.push(outsideBand('rightExtension', opening.rightExtension, opening.openingWidth, rules));
  const rod = exact(opening.openingWidth + left + right);
  return answer(
    rod,
    () => [
      ...partsSteps(opening),
      ...usualAgainstStack(opening, rod, band.low, rules),
      step(
        'rod width',
        '{} inside width + {} left + {} right',
        [lengthFigure(opening.openingWidth), lengthFigure(left), lengthFigure(right)],
        lengthFigure(rod),
      ),
    ],
    findings,
  );
}

/** Floor to the middle of the rod, kept below the ceiling's clearance. */
export function rodHeight(
  given: { openingTop: Length; ceiling: Length | undefined; heading: Heading | undefined },
  rules: Rules,
): Answer<Length> {
  const above = exact(given.openingTop + rules.rodAboveOpening);
  const steps = [
    step(
      'above the opening',
      '{} + {}',
      [lengthFigure(given.openingTop), lengthFigure(rules.rodAboveOpening)],
      lengthFigure(above),
    ),
  ];
  if (given.ceiling === undefined) return answer(above, steps);
  const unit = unitOf(rules);
  if (given.ceiling <= given.openingTop) {
    return refuse(
      'ceilingBelowOpening',
      parameter('ceiling'),
      showLength(given.ceiling, unit),
      showLength(given.openingTop, unit),
    );
  }
  const clearance = given.heading === 'grommet' ? rules.ceilingClearanceGrommet : rules.ceilingClearance;
  const most = exact(given.ceiling - clearance);
  steps.push(
    step(
      'below the ceiling, at most',
      '{} − {}',
      [lengthFigure(given.ceiling), lengthFigure(clearance)],
      lengthFigure(most),
    ),
  );
  if (above <= most) return answer(above, steps);
  const findings = [
    most < given.openingTop
      ? finding(
          'rodBelowOpening',
          parameter('ceiling'),
          showLength(most, unit),
          showLength(given.openingTop, unit),
        )
      : finding(
          'rodLowered',
          parameter('ceiling'),
          showLength(most, unit),
          showLength(exact(above - most), unit),
        ),
  ];
  return answer(most, steps, findings);
}

/** Headings that hang from rings by their top edge. */
const onRings: ReadonlySet<Heading> = new Set<Heading>(['pinch', 'goblet', 'cartridge', 'flat']);
/** Pleated or gathered headings that hook onto rings or carriers alike. */
const onHooks: ReadonlySet<Heading> = new Set<Heading>(['box', 'inverted', 'pencil']);

type Hanging = 'rings' | 'track' | 'grommet' | 'rod pocket' | 'tab top';

function hangingOf(heading: Heading, measuredTo: MeasuredTo | undefined, rules: Rules): Hanging {
  if (heading === 'wave') return 'track';
  if (heading === 'grommet' || heading === 'rod pocket' || heading === 'tab top') return heading;
  if (onHooks.has(heading)) return measuredTo === 'track' ? 'track' : 'rings';
  return onRings.has(heading) && rules.hangOn === 'track' ? 'track' : 'rings';
}

/** What is added to a measurement taken to the middle of a rod, by what hangs from it. */
function fromRod(hanging: Exclude<Hanging, 'track'>, hung: boolean, rules: Rules): readonly [Length, string] {
  switch (hanging) {
    case 'rings':
      return [rules.dropNewRodRings, 'rings below the middle of the rod, and the clearance'];
    case 'grommet':
      return hung
        ? [rules.dropHungRodGrommet, 'grommet heading above the middle of a hung rod, less the clearance']
        : [rules.dropNewRodGrommet, 'grommet heading above the middle of a rod still to be hung'];
    case 'rod pocket':
      return [
        exact(Math.floor(rules.rodDiameter / 2) + rules.pocketHeader - rules.floorClearance),
        'half the rod and the header above its middle, less the clearance',
      ];
    case 'tab top':
      return [
        exact(-rules.tabDrop - rules.floorClearance),
        'tabs below the middle of the rod, and the clearance',
      ];
  }
}

/** Where the cloth's top edge stands against the point measured, less the clearance at the floor. */
function fromPoint(
  heading: Heading,
  measuredTo: MeasuredTo | undefined,
  rules: Rules,
): readonly [Length, string] {
  const hanging = hangingOf(heading, measuredTo, rules);
  const point = measuredTo ?? (hanging === 'track' ? 'track' : 'new rod');
  const track = exact(-rules.trackToTop - rules.floorClearance);
  if (hanging === 'track') {
    if (point === 'track') return [track, 'top edge below the track, and the clearance'];
    if (point === 'ceiling')
      return [exact(track - rules.trackHeight), 'track and top edge below the ceiling, and the clearance'];
    return refuse(
      'pointMakesNoSense',
      parameter('measuredTo'),
      heading,
      point,
      'it hangs from a track. Measure to the track’s underside (track) or to the ceiling (ceiling)',
    );
  }
  if (point === 'track') {
    const why =
      hanging === 'rings'
        ? 'the house hangs it on rings. Set the house rule “hang on” to track, or measure to the rod'
        : 'its rod runs through the cloth. Measure to the middle of the rod';
    return refuse('pointMakesNoSense', parameter('measuredTo'), heading, point, why);
  }
  if (point === 'hung ring') {
    if (hanging !== 'rings')
      return refuse(
        'pointMakesNoSense',
        parameter('measuredTo'),
        heading,
        point,
        'it has no rings. Measure to the middle of the rod (new rod or hung rod)',
      );
    return [rules.dropHungRing, 'clearance below the ring'];
  }
  const [shift, why] = fromRod(hanging, point === 'hung rod', rules);
  if (point !== 'ceiling') return [shift, why];
  const clearance = hanging === 'grommet' ? rules.ceilingClearanceGrommet : rules.ceilingClearance;
  return [exact(shift - clearance), `rod below the ceiling, then ${why}`];
}

export interface Measured {
  /** Floor to the point measured, once or at the left, the centre and the right. */
  readonly measured: readonly Length[];
  readonly heading: Heading;
  readonly measuredTo: MeasuredTo | undefined;
  readonly floorFinish: FloorFinish | undefined;
}

const signOf = (by: Length): string => (by < NO_LENGTH ? '−' : '+');
const sizeOf = (by: Length): Length => exact(Math.abs(by));

/** The same in figures and in words. */
function atTheBottom(finish: FloorFinish, rules: Rules): readonly [Length, string] {
  const instead = (clearance: Length): Length => exact(rules.floorClearance - clearance);
  switch (finish) {
    case 'clear':
      return [rules.floorClear, `floor finish: ${finish}`];
    case 'kiss':
      return [rules.floorKiss, `floor finish: ${finish}`];
    case 'break':
      return [rules.floorBreak, `floor finish: ${finish}`];
    case 'puddle':
      return [rules.floorPuddle, `floor finish: ${finish}`];
    case 'sill':
      return [instead(rules.sillClearance), 'the sill’s clearance in place of the floor’s'];
    case 'apron':
      return [
        exact(rules.floorClearance + rules.apronBelowSill),
        'below the sill, in place of the floor’s clearance',
      ];
    case 'counter':
      return [instead(rules.counterClearance), 'the counter’s clearance in place of the floor’s'];
    case 'radiator': {
      const { radiatorClearance } = rules;
      if (radiatorClearance === undefined) return refuse('radiatorClearanceNotSet', parameter('floorFinish'));
      return [instead(radiatorClearance), 'the radiator’s clearance in place of the floor’s'];
    }
  }
}

/** What a finish adds to a drop that hangs clear of the floor. */
export const addedAtBottom = (finish: FloorFinish, rules: Rules): Length => atTheBottom(finish, rules)[0];

/** What to look at where the drop ends at an edge above the floor. */
const LOOK_AT: Readonly<Record<Edge, string>> = {
  sill: 'A sill deeper than the return pushes the cloth out.',
  apron: 'Check that nothing stands below the sill.',
  counter:
    'Keep it from cookers, basins and lamps by their makers’ clearances; local codes and licensed practice decide.',
  radiator: 'Check where the returns hang.',
};

function finishFindings(finish: FloorFinish): readonly Finding[] {
  if (finish === 'clear') return [];
  if (!isEdge(finish)) return [finding('touchesFloor', parameter('floorFinish'), finish)];
  const found = finding(
    'measuredFromEdge',
    parameter('measured'),
    finish === 'radiator' || finish === 'counter' ? `top of the ${finish}` : measuredFrom(finish),
    LOOK_AT[finish],
  );
  return finish === 'radiator' ? [finding('nearHeat', parameter('floorFinish')), found] : [found];
}

/** Finished drop: top edge to bottom edge. Of several floor readings the shortest rules. */
export function drop(measured: Measured, rules: Rules): Answer<Length> {
  const unit = unitOf(rules);
  const shortest = Math.min(...measured.measured) as Length;
  const spread = exact(Math.max(...measured.measured) - shortest);
  const finish = measured.floorFinish ?? 'clear';
  const [added, ending] = atTheBottom(finish, rules);
  const [shift, why] = fromPoint(measured.heading, measured.measuredTo, rules);
  const finished = exact(shortest + shift + added);
  if (finished <= NO_LENGTH) return refuse('dropTooShort', parameter('measured'), showLength(shortest, unit));
  const findings: Finding[] = [];
  if (spread > rules.readingSpread)
    findings.push(
      finding('floorUneven', parameter('measured'), showLength(spread, unit), showLength(shortest, unit)),
    );
  findings.push(...finishFindings(finish));
  return answer(
    finished,
    () => {
      const lines: Step[] = [];
      if (measured.measured.length > 1)
        lines.push(
          step(`shortest of ${measured.measured.length} floor readings`, '', [], lengthFigure(shortest)),
        );
      lines.push(
        step(
          'finished drop',
          `{} measured ${signOf(shift)} {} (${why}) ${signOf(added)} {} (${ending})`,
          [lengthFigure(shortest), lengthFigure(sizeOf(shift)), lengthFigure(sizeOf(added))],
          lengthFigure(finished),
        ),
      );
      return lines;
    },
    findings,
  );
}
