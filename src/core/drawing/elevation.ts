/** A window's elevation, and its plan above it: x from the rod's left end, y from the floor. */
import { Refusal } from '../cell/answer';
import type { WindowWork } from '../window/job';
import { sidesOf } from '../window/panels';
import { NO_LENGTH, UNITS, type Length } from '../exact/length';
import { measuredFrom, panelsOf, type Heading } from '../cell/treatment';
import { addedAtBottom } from '../measure/measure';
import { across, EMPTY, near, place, up, type Box, type Dimension, type Drawing, type Line } from './drawing';
import { seamsBehindPleats } from './heading-marks';

/** A figure that may not exist for a sound window. */
function orNone<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

/** The middle of the rod, or a track's underside, above the cloth's top edge. */
function rodAboveCloth(heading: Heading, { rules }: WindowWork): number {
  if (heading === 'grommet') return -(rules.dropNewRodGrommet + rules.floorClearance);
  if (heading === 'rod pocket') return -(rules.rodDiameter / 2 + rules.pocketHeader);
  if (heading === 'tab top') return rules.tabDrop;
  if (heading === 'wave' || rules.hangOn === 'track') return rules.trackToTop;
  return -rules.dropNewRodRings - rules.floorClearance;
}

/** How far the cloth's bottom edge hangs above what it is measured from; below nothing where it lies on a floor. */
const aboveFloor = ({ window, rules }: WindowWork): number =>
  rules.floorClearance - addedAtBottom(window.floorFinish ?? 'clear', rules);

/** The floor, or the edge that the height is measured from. */
const groundOf = ({ window }: WindowWork): string => measuredFrom(window.floorFinish ?? 'clear');

/** Above the floor: the cloth's two edges, and the middle of its rod or the underside of its track. */
export interface Heights {
  readonly hem: Length;
  readonly head: Length;
  readonly rod: Length;
}

export function heightsOf(work: WindowWork): Heights {
  const drop = work.window.finishedDrop ?? work.finishedDrop().value;
  const hem = aboveFloor(work);
  const head = hem + drop;
  return {
    // Cloth lies on a floor, and passes a sill.
    hem: near(groundOf(work) === 'floor' ? Math.max(0, hem) : hem),
    head: near(head),
    rod: near(head + rodAboveCloth(work.window.heading ?? 'pinch', work)),
  };
}

/** As high as a bracket is drawn, whatever its make. */
const BRACKET = 5 * UNITS.in;

interface Measures {
  readonly work: WindowWork;
  readonly rod: Length;
  readonly drop: Length;
  readonly heights: Heights;
  /** Rod to wall. */
  readonly side: Length;
  readonly overlap: Length;
  readonly stack: Length | undefined;
  readonly hung: readonly PanelHung[];
  readonly opening: { readonly left: Length; readonly width: Length } | undefined;
  /** Where the rod stands in the plan. */
  readonly planAt: Length;
  readonly margin: Length;
}

function measuresOf(work: WindowWork): Measures {
  const rod = work.rod;
  const drop = work.window.finishedDrop ?? work.finishedDrop().value;
  const heights = heightsOf(work);
  return {
    work,
    rod,
    drop,
    heights,
    side: work.returnDepth,
    overlap: work.overlapEach,
    stack: orNone(() => work.stack().value),
    hung: panelsHung(work, rod),
    opening: openingOf(work, rod),
    planAt: near(Math.max(heights.head, heights.rod) + drop * 0.12),
    margin: near(Math.max(rod, drop) * 0.04),
  };
}

function boxesOf(measures: Measures): readonly Box[] {
  const { work, rod, heights, overlap, stack, hung, opening } = measures;
  const { hem, head, rod: middle } = heights;
  const thick = work.rules.rodDiameter;
  const tall = { y: hem, height: near(head - hem) };
  const boxes: Box[] = [];
  if (opening !== undefined)
    boxes.push({
      part: 'opening',
      x: opening.left,
      y: NO_LENGTH,
      width: opening.width,
      height: near(Math.max(hem, middle - work.rules.rodAboveOpening)),
      assumed: 'top and bottom',
    });
  for (const { x, width } of hung) boxes.push({ part: 'cloth', x, width, ...tall });
  if (overlap > 0 && hung.length === 2)
    boxes.push({ part: 'overlap', x: near(rod / 2 - overlap), width: near(2 * overlap), ...tall });
  for (const x of stackedAt(work.window.draw, stack, rod))
    boxes.push({ part: 'stack', x, width: stack ?? NO_LENGTH, ...tall });
  boxes.push({ part: 'rod', x: NO_LENGTH, y: near(middle - thick / 2), width: rod, height: thick });
  for (const x of bracketsOf(work))
    boxes.push({
      part: 'bracket',
      x: near(x - BRACKET / 8),
      y: near(middle - BRACKET / 2),
      width: near(BRACKET / 4),
      height: near(BRACKET),
    });
  return boxes;
}

const bracketsOf = (work: WindowWork): readonly Length[] => orNone(() => work.mounting().brackets) ?? [];

function linesOf(measures: Measures): readonly Line[] {
  const { work, rod, heights, side, overlap, hung, planAt, margin } = measures;
  const { hem, head } = heights;
  const lines: Line[] = hung
    .flatMap((panel) => seamsOf(work, panel))
    .map((x) => ({ part: 'seam', from: [x, hem], to: [x, head] }));
  const wall = planAt + side;
  lines.push(
    { part: 'floor', from: place(-margin, 0), to: place(rod + margin, 0) },
    // The plan: the wall, the rod before it, and the cloth that turns the corner.
    { part: 'wall', from: place(-margin, wall), to: place(rod + margin, wall) },
    { part: 'rod', from: place(0, planAt), to: place(rod, planAt) },
  );
  if (side > 0)
    for (const x of returnsAt(work, rod))
      lines.push({ part: 'return', from: place(x, planAt), to: place(x, wall) });
  if (overlap > 0 && hung.length === 2) {
    // Each leading edge past the centre, one before the other.
    const before = Math.max(side, margin) * 0.25;
    const from = rod / 2 - overlap * 3;
    lines.push(
      { part: 'return', from: place(from, planAt - before), to: place(rod / 2 + overlap, planAt - before) },
      {
        part: 'return',
        from: place(rod / 2 - overlap, planAt - 2 * before),
        to: place(rod - from, planAt - 2 * before),
      },
    );
  }
  return lines;
}

/** The ends of the rod at which cloth turns the corner. */
function returnsAt({ window: { draw }, rules }: WindowWork, rod: Length): readonly number[] {
  const oneWay = draw === 'one-way left' || draw === 'one-way right';
  if (draw === 'one stationary panel' || (oneWay && rules.oneWayReturns === 'one end'))
    return sidesOf(draw)[0] === 'left' ? [0] : [rod];
  return [0, rod];
}

function dimensionsOf(measures: Measures): readonly Dimension[] {
  const { work, rod, drop, heights, side, overlap, stack, hung, opening, planAt } = measures;
  const { hem, head, rod: middle } = heights;
  const below = (row: number) => ({ side: 'below', row, at: NO_LENGTH }) as const;
  const left = { side: 'left', row: 1, at: NO_LENGTH } as const;
  const right = { side: 'right', row: 1, at: rod } as const;
  const dimensions: Dimension[] = [];
  if (opening !== undefined) {
    const end = opening.left + opening.width;
    if (opening.left > 0)
      dimensions.push(
        across('left extension', [0, opening.left], { ...below(1), short: '', narrow: 'before' }),
      );
    dimensions.push(across('opening', [opening.left, end], { ...below(1), narrow: 'middle' }));
    if (rod > end)
      dimensions.push(across('right extension', [end, rod], { ...below(1), short: '', narrow: 'after' }));
  }
  dimensions.push(across('rod width', [0, rod], { ...below(2), short: 'rod', narrow: 'middle' }));
  dimensions.push(up('finished drop', [hem, head], { ...right, short: 'drop', length: drop }));
  const ground = groundOf(work);
  dimensions.push(up(`${ground} to rod`, [NO_LENGTH, middle], left));
  if (hem > 0) dimensions.push(up(`clear of the ${ground}`, [NO_LENGTH, hem], { ...right, short: 'clear' }));
  if (side > 0) dimensions.push(up('return', [planAt, planAt + side], right));
  const [stacked] = stackedAt(work.window.draw, stack, rod);
  const above = { side: 'above', row: 1, at: near(planAt + side), narrow: 'after' } as const;
  if (stack !== undefined && stacked !== undefined)
    dimensions.push(across('stack', [stacked, stacked + stack], above));
  if (overlap > 0 && hung.length === 2)
    dimensions.push(across('overlap', [rod / 2, rod / 2 + overlap], { ...above, short: 'overlap, each' }));
  return dimensions;
}

function notesOf({ work, drop, heights: { hem, head }, opening }: Measures): readonly string[] {
  const notes: string[] = [];
  const ground = groundOf(work);
  if (ground !== 'floor') notes.push(`The line below is the ${ground}, from which the heights are measured.`);
  if (opening !== undefined)
    notes.push('The opening’s top and sill are not in the sheet: its top is drawn by the house rule.');
  if (drop > head - hem) notes.push('The cloth is longer than it hangs: the rest lies on the floor.');
  return notes;
}

/** The drawing of one window; refused where the rod or the drop cannot be worked out. */
export function elevation(work: WindowWork): Drawing {
  const measures = measuresOf(work);
  return {
    ...EMPTY,
    title: 'Elevation and plan to scale',
    left: near(-measures.margin),
    right: near(measures.rod + measures.margin),
    bottom: near(Math.min(0, measures.heights.hem)),
    top: near(measures.planAt + measures.side),
    boxes: boxesOf(measures),
    lines: linesOf(measures),
    dimensions: dimensionsOf(measures),
    notes: notesOf(measures),
  };
}

interface PanelHung {
  readonly x: Length;
  readonly width: Length;
  /** Which of its edges leads; the other is at the return. */
  readonly leads: 'left' | 'right';
}

/** The panels as they hang closed: they share the rod, or stand at its ends. */
function panelsHung(work: WindowWork, rod: Length): readonly PanelHung[] {
  const { draw = 'pair' } = work.window;
  const width = near(Math.min(rod, work.coveredByPanel()));
  const left: PanelHung = { x: NO_LENGTH, width, leads: 'right' };
  if (panelsOf(draw) === 1) return [{ ...left, leads: draw === 'one-way right' ? 'left' : 'right' }];
  return [left, { x: near(rod - width), width, leads: 'left' }];
}

/**
 * Seams between the widths of a panel, as far as they are known: behind their pleats, else in even shares;
 * whole widths lead, a half stands at the return.
 */
function seamsOf(work: WindowWork, { x, width, leads }: PanelHung): readonly Length[] {
  const { draw = 'pair', fabricWidth } = work.window;
  const each = fabricWidth === undefined ? undefined : orNone(() => work.widths() / panelsOf(draw));
  if (each === undefined) return [];
  const behind = orNone(() => seamsBehindPleats(work.setOut().value)) ?? [];
  return Array.from({ length: Math.ceil(each) - 1 }, (_, seam) => {
    const pleat = behind[seam];
    const from = pleat === undefined ? ((seam + 1) / each) * width : pleat - work.overlapEach;
    return near(leads === 'left' ? x + from : x + width - from);
  });
}

/** Where the opening stands behind the rod: between the extensions as given, or in the middle. */
function openingOf(work: WindowWork, rod: Length): { left: Length; width: Length } | undefined {
  const { openingWidth, leftExtension, rightExtension } = work.window;
  if (openingWidth === undefined || openingWidth > rod) return undefined;
  const spare = rod - openingWidth;
  const left =
    leftExtension ?? (rightExtension === undefined ? spare / 2 : Math.max(0, spare - rightExtension));
  return { left: near(Math.min(left, spare)), width: openingWidth };
}

function stackedAt(
  draw: WindowWork['window']['draw'],
  stack: Length | undefined,
  rod: Length,
): readonly Length[] {
  if (stack === undefined) return [];
  const right = near(rod - stack);
  if (draw === 'one-way left') return [NO_LENGTH];
  return draw === 'one-way right' ? [right] : [NO_LENGTH, right];
}
