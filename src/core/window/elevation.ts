/**
 * A window's elevation and plan as data, to scale: boxes, lines and dimensions in nanometres.
 * x runs to the right from the rod's left end, y up from the floor. Who draws it adds nothing to it.
 */
import { Refusal } from '../cell/answer';
import type { WindowWork } from './job';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import { panelsOf, type Heading } from '../cell/treatment';

export type Part = 'opening' | 'rod' | 'cloth' | 'seam' | 'stack' | 'floor' | 'wall' | 'return';

export interface Box {
  readonly part: Part;
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
  /** Its edge that is only assumed, not known from the sheet. */
  readonly assumed?: 'top and bottom';
}
export interface Line {
  readonly part: Part;
  readonly from: readonly [x: Length, y: Length];
  readonly to: readonly [x: Length, y: Length];
}
export interface Dimension {
  readonly what: string;
  readonly of: Length;
  /** across: between two x; up: between two y. */
  readonly runs: 'across' | 'up';
  readonly from: Length;
  readonly to: Length;
  /** Where its line stands: below the floor, above the plan, or beside; 1 is the nearest row. */
  readonly side: 'below' | 'above' | 'left' | 'right';
  readonly row: number;
  /** The x or y of what is measured, where the extension lines begin. */
  readonly at: Length;
}
export interface Elevation {
  readonly left: Length;
  readonly right: Length;
  readonly bottom: Length;
  readonly top: Length;
  readonly boxes: readonly Box[];
  readonly lines: readonly Line[];
  readonly dimensions: readonly Dimension[];
  /** What was assumed, where the sheet does not say. */
  readonly notes: readonly string[];
}

const at = (nm: number): Length => exact(Math.round(nm));

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

/** How far the cloth's bottom edge hangs above the floor; below nothing where it lies on it. */
function aboveFloor({ window, rules }: WindowWork): number {
  const added = {
    clear: rules.floorClear,
    kiss: rules.floorKiss,
    break: rules.floorBreak,
    puddle: rules.floorPuddle,
  }[window.floorFinish ?? 'clear'];
  return rules.floorClearance - added;
}

interface Heights {
  readonly hem: Length;
  readonly head: Length;
  readonly rod: Length;
}

function heights(work: WindowWork, drop: Length): Heights {
  const hem = aboveFloor(work);
  const head = hem + drop;
  return {
    hem: at(Math.max(0, hem)),
    head: at(head),
    rod: at(head + rodAboveCloth(work.window.heading ?? 'pinch', work)),
  };
}

/** The drawing of one window; refused where the rod or the drop cannot be worked out. */
export function elevation(work: WindowWork): Elevation {
  const { window, rules } = work;
  const rod = window.rodWidth ?? work.rodWidth().value;
  const drop = window.finishedDrop ?? work.finishedDrop().value;
  const { hem, head, rod: middle } = heights(work, drop);
  const side = work.returnDepth;
  const stack = orNone(() => work.stack().value);
  const opening = openingOf(work, rod);
  const openingTop = at(Math.max(hem, middle - rules.rodAboveOpening));
  const thick = at(rules.rodDiameter);
  const planAt = at(Math.max(head, middle) + drop * 0.12);
  const notes: string[] = [];

  const boxes: Box[] = [];
  if (opening !== undefined) {
    boxes.push({
      part: 'opening',
      x: opening.left,
      y: NO_LENGTH,
      width: opening.width,
      height: openingTop,
      assumed: 'top and bottom',
    });
    notes.push('The opening’s top and sill are not in the sheet: its top is drawn by the house rule.');
  }
  const hung = panelsHung(work, rod);
  for (const { x, width } of hung) boxes.push({ part: 'cloth', x, y: hem, width, height: at(head - hem) });
  for (const x of stackedAt(window.draw, stack, rod))
    boxes.push({ part: 'stack', x, y: hem, width: stack ?? NO_LENGTH, height: at(head - hem) });
  boxes.push({ part: 'rod', x: NO_LENGTH, y: at(middle - thick / 2), width: rod, height: thick });

  const margin = at(Math.max(rod, drop) * 0.04);
  const seams = hung.flatMap((panel) => seamsOf(work, panel));
  const lines: Line[] = [
    ...seams.map((x): Line => ({ part: 'seam', from: [x, hem], to: [x, head] })),
    { part: 'floor', from: [at(-margin), NO_LENGTH], to: [at(rod + margin), NO_LENGTH] },
    // The plan: the wall, the rod before it, and the cloth that turns the corner.
    { part: 'wall', from: [at(-margin), at(planAt + side)], to: [at(rod + margin), at(planAt + side)] },
    { part: 'rod', from: [NO_LENGTH, planAt], to: [rod, planAt] },
  ];
  if (side > 0) {
    lines.push(
      { part: 'return', from: [NO_LENGTH, planAt], to: [NO_LENGTH, at(planAt + side)] },
      { part: 'return', from: [rod, planAt], to: [rod, at(planAt + side)] },
    );
  }

  const across = (what: string, from: number, to: number, row: number): Dimension => ({
    what,
    of: at(to - from),
    runs: 'across',
    from: at(from),
    to: at(to),
    side: 'below',
    row,
    at: NO_LENGTH,
  });
  const dimensions: Dimension[] = [];
  if (opening !== undefined) {
    const end = opening.left + opening.width;
    if (opening.left > 0) dimensions.push(across('left extension', 0, opening.left, 1));
    dimensions.push(across('opening', opening.left, end, 1));
    if (rod > end) dimensions.push(across('right extension', end, rod, 1));
  }
  dimensions.push(across('rod width', 0, rod, 2));
  const up = (
    what: string,
    from: Length,
    to: Length,
    where: 'left' | 'right',
    of = to - from,
  ): Dimension => ({
    what,
    of: at(of),
    runs: 'up',
    from,
    to,
    side: where,
    row: 1,
    at: where === 'left' ? NO_LENGTH : rod,
  });
  dimensions.push(up('finished drop', hem, head, 'right', drop));
  dimensions.push(up('floor to rod', NO_LENGTH, middle, 'left'));
  if (hem > 0) dimensions.push(up('clear of the floor', NO_LENGTH, hem, 'right'));
  const lies = drop - (head - hem);
  if (lies > 0) notes.push('The cloth is longer than it hangs: the rest lies on the floor.');
  if (side > 0) dimensions.push(up('return', planAt, at(planAt + side), 'right'));
  const [stacked] = stackedAt(window.draw, stack, rod);
  if (stack !== undefined && stacked !== undefined)
    dimensions.push({
      ...across('stack', stacked, stacked + stack, 1),
      side: 'above',
      at: at(planAt + side),
    });
  return {
    left: at(-margin),
    right: at(rod + margin),
    bottom: NO_LENGTH,
    top: at(planAt + side),
    boxes,
    lines,
    dimensions,
    notes,
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
  const width = at(Math.min(rod, work.coveredByPanel()));
  const left: PanelHung = { x: NO_LENGTH, width, leads: 'right' };
  if (panelsOf(draw) === 1) return [{ ...left, leads: draw === 'one-way right' ? 'left' : 'right' }];
  return [left, { x: at(rod - width), width, leads: 'left' }];
}

/** Seams between the widths of a panel, as far as they are known: whole widths lead, a half stands at the return. */
function seamsOf(work: WindowWork, { x, width, leads }: PanelHung): readonly Length[] {
  const { draw = 'pair', fabricWidth } = work.window;
  const each = fabricWidth === undefined ? undefined : orNone(() => work.widths() / panelsOf(draw));
  if (each === undefined) return [];
  return Array.from({ length: Math.ceil(each) - 1 }, (_, seam) => {
    const from = ((seam + 1) / each) * width;
    return at(leads === 'left' ? x + from : x + width - from);
  });
}

/** Where the opening stands behind the rod: between the extensions as given, or in the middle. */
function openingOf(work: WindowWork, rod: Length): { left: Length; width: Length } | undefined {
  const { openingWidth, leftExtension, rightExtension } = work.window;
  if (openingWidth === undefined || openingWidth > rod) return undefined;
  const spare = rod - openingWidth;
  const left =
    leftExtension ?? (rightExtension === undefined ? spare / 2 : Math.max(0, spare - rightExtension));
  return { left: at(Math.min(left, spare)), width: openingWidth };
}

function stackedAt(
  draw: WindowWork['window']['draw'],
  stack: Length | undefined,
  rod: Length,
): readonly Length[] {
  if (stack === undefined) return [];
  const right = at(rod - stack);
  if (draw === 'one-way left') return [NO_LENGTH];
  return draw === 'one-way right' ? [right] : [NO_LENGTH, right];
}
