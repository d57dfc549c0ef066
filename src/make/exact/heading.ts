/** Grommets, snaps, hooks, rings and carriers, and the rod's pocket. */
import { ONE, TWO, type Exact } from './figures';
import type { House } from './house';
import { pleatsOf, laid, type Panel } from './pleats';
import { panelsOf } from './panel';
import { PLEATED } from './words';

const upToEven = (count: Exact): Exact => count.div(2).ceil().mul(2);
const downToEven = (count: Exact): Exact => count.div(2).floor().mul(2);

export interface Grommets {
  readonly count: Exact;
  readonly spacing: Exact;
  readonly first: Exact;
}

/** An even count, no farther apart than the house's spacing; first centre half the spacing in, or by rule. */
export function grommetsOf(flat: Exact, house: House): Grommets | undefined {
  const most = house.lengths['grommet spacing'];
  const edge = house.grommetEdge;
  if (edge === undefined) {
    const count = upToEven(flat.div(most));
    const spacing = flat.div(count);
    return { count, spacing, first: spacing.div(2) };
  }
  const between = flat.sub(edge.mul(2));
  if (between.compare(0) <= 0) return undefined;
  const count = upToEven(between.div(most).ceil().add(ONE));
  return { count, spacing: between.div(count.sub(ONE)), first: edge };
}

export interface Snaps {
  readonly count: Exact;
  /** Carriers from each other when closed. */
  readonly apart: Exact;
  readonly along: Exact;
}

/** An even count of snaps that the flat cloth gives. */
export function snapsOf(panel: Panel, house: House): Snaps {
  const { flat, spaced } = laid(panel, { ...house, pleatEdge: undefined });
  const along = house.lengths['snap spacing'];
  const count = downToEven(flat.div(along).floor());
  return { count, apart: spaced.div(count.sub(ONE)), along };
}

/** In all: a ring at each pleat and at both ends; none where the rod runs through the heading. */
export function ringsOf(panel: Panel, house: House): Exact {
  const { heading, draw } = panel;
  const { finished } = laid(panel, house);
  const panels = panelsOf(draw);
  const each = (): Exact => {
    if (PLEATED.includes(heading)) return TWO.add(pleatsOf(panel, house).count);
    if (heading === 'wave') return snapsOf(panel, house).count;
    if (heading === 'pencil') return finished.div(house.lengths['hook spacing']).ceil().add(ONE);
    if (heading === 'flat') return finished.div(house.lengths['ring spacing']).ceil().add(ONE);
    return ONE.mul(0);
  };
  return each().mul(panels);
}

/** Half of the rod's round and of its ease: the depth between two lines of stitches. */
export const pocketOf = (around: Exact, house: House): Exact =>
  around.add(house.lengths['pocket ease']).div(2);
