/** From the rod to the widths: finished width, flat width, widths, fullness delivered, what saves a width. */
import { HALF, NONE, ONE, TWO, atMost, below, greater, type Exact } from './figures';
import type { House } from './house';
import { ON_RINGS, ON_THE_ROD, isOneWay, type Draw, type Heading } from './words';

export interface Treatment {
  readonly rod: Exact;
  readonly heading: Heading;
  readonly draw: Draw;
  readonly fullness: Exact;
  readonly fabric: Exact;
  /** The pattern's width. */
  readonly horizontalRepeat: Exact | undefined;
}

export interface Edges {
  /** Each outer side's part that turns the corner. */
  readonly return: Exact;
  /** What the leading edge is carried past the centre. */
  readonly overlap: Exact;
}

export const panelsOf = (draw: Draw): Exact => (isOneWay(draw) ? ONE : TWO);

/** Only carriers on a traverse rod or a track cross; rings on a pole have a rule of their own. */
function overlapOf(heading: Heading, draw: Draw, { lengths, words }: House): Exact {
  if (draw !== 'pair' || ON_THE_ROD.includes(heading)) return NONE;
  const onRings = ON_RINGS.includes(heading) && words['hang on'] === 'rings';
  return lengths[onRings ? 'overlap on rings' : 'overlap'];
}

export const edgesOf = (heading: Heading, draw: Draw, house: House): Edges => ({
  return: house.lengths.return,
  overlap: overlapOf(heading, draw, house),
});

/** Returns and overlap of one panel. */
export function edging(draw: Draw, edges: Edges, house: House): Exact {
  if (draw === 'pair') return edges.return.add(edges.overlap);
  if (draw === 'stationary') return edges.return;
  return house.words['one way returns'] === 'both ends' ? edges.return.mul(2) : edges.return;
}

export const rodShare = (rod: Exact, draw: Draw): Exact => rod.div(panelsOf(draw));

/** One panel that is drawn. */
export const finishedDrawn = (rod: Exact, draw: Draw, edges: Edges, house: House): Exact =>
  rodShare(rod, draw).add(edging(draw, edges, house));

export interface Bolt {
  readonly usable: Exact;
  readonly seam: Exact;
}

/**
 * The usable width is the bolt less its selvages, and less what matching a pattern's width wastes.
 * A seam first uses the waste. A pattern wider than the cloth cannot be matched by whole repeats.
 */
export function boltOf(fabric: Exact, horizontalRepeat: Exact | undefined, house: House): Bolt {
  const usable = fabric.sub(house.lengths.selvage.mul(2));
  const { seam } = house.lengths;
  if (horizontalRepeat === undefined || below(usable, horizontalRepeat)) return { usable, seam };
  const matched = usable.div(horizontalRepeat).floor().mul(horizontalRepeat);
  return { usable: matched, seam: greater(seam.sub(usable.sub(matched)), NONE) };
}

/** A panel's cloth as seamed, before its side hems. */
export const seamed = (widths: Exact, bolt: Bolt): Exact =>
  bolt.usable.mul(widths).sub(bolt.seam.mul(widths.ceil().sub(ONE)));

/** A panel's flat width between the hems. */
export const flatOf = (widths: Exact, bolt: Bolt, house: House): Exact =>
  seamed(widths, bolt).sub(house.lengths['side hem'].mul(2));

/** What a panel must have in flat width. */
export function flatWanted(share: Exact, edges: Exact, fullness: Exact, house: House): Exact {
  return house.words['fullness basis'] === 'finished width'
    ? share.add(edges).mul(fullness)
    : share.mul(fullness).add(edges);
}

/** The step by which the widths of a whole treatment go up. */
export function stepOf(draw: Draw, house: House): Exact {
  const panels = panelsOf(draw);
  if (house.words['widths rounding'] === 'half per panel') return panels.mul(HALF);
  return house.words['widths rounding'] === 'whole per panel' ? panels : ONE;
}

/** The fewest widths of the whole treatment, by the house's step, whose panels as seamed lack at most so much. */
export function fewestWidths(
  wanted: Exact,
  draw: Draw,
  bolt: Bolt,
  house: House,
  enough = (lacking: Exact): boolean => atMost(lacking, NONE),
): Exact {
  const step = stepOf(draw, house);
  const panels = panelsOf(draw);
  // From a count that cannot be enough even without seams, each count is tried: seams change it.
  const bare = wanted.mul(panels).div(bolt.usable).div(step).floor().sub(ONE);
  let all = greater(bare, ONE).mul(step);
  while (!enough(wanted.sub(seamed(all.div(panels), bolt)))) all = all.add(step);
  return all;
}

export function widthsOf(treatment: Treatment, house: House): Exact {
  const { draw, heading, rod, fullness } = treatment;
  // Side panels that do not meet are ordered by widths each.
  if (draw === 'stationary') return house.counts['stationary widths'].mul(panelsOf(draw));
  const bolt = boltOf(treatment.fabric, treatment.horizontalRepeat, house);
  const edges = edging(draw, edgesOf(heading, draw, house), house);
  const wanted = flatWanted(rodShare(rod, draw), edges, fullness, house).add(
    house.lengths['side hem'].mul(2),
  );
  if (house.words['widths rounding'] !== 'nearest') return fewestWidths(wanted, draw, bolt, house);
  // Nearest: less than half a width is let go, for the treatment as a whole.
  const half = bolt.usable.mul(HALF).div(panelsOf(draw));
  return fewestWidths(wanted, draw, bolt, house, (lacking) => below(lacking, half));
}

/** A side panel is finished from its cloth, its return in it, on the house's basis of fullness. */
export function finishedOfCloth(flat: Exact, fullness: Exact, edges: Edges, house: House): Exact {
  return house.words['fullness basis'] === 'finished width'
    ? flat.div(fullness)
    : flat.sub(edges.return).div(fullness).add(edges.return);
}

/** Finished width of one panel, stationary ones from their cloth. */
export function finishedOf(treatment: Treatment, widths: Exact, house: House): Exact {
  const { draw, heading, rod, fullness } = treatment;
  const edges = edgesOf(heading, draw, house);
  if (draw !== 'stationary') return finishedDrawn(rod, draw, edges, house);
  const bolt = boltOf(treatment.fabric, treatment.horizontalRepeat, house);
  return finishedOfCloth(flatOf(widths.div(panelsOf(draw)), bolt, house), fullness, edges, house);
}

/** Flat to finished; where fullness is of the rod alone, without returns and overlaps on either side. */
export function delivered(treatment: Treatment, widths: Exact, house: House): Exact {
  const { draw, heading, rod } = treatment;
  // Side panels are finished from their cloth by the fullness itself.
  if (draw === 'stationary') return treatment.fullness;
  const flat = flatOf(
    widths.div(panelsOf(draw)),
    boltOf(treatment.fabric, treatment.horizontalRepeat, house),
    house,
  );
  const edges = edging(draw, edgesOf(heading, draw, house), house);
  const share = rodShare(rod, draw);
  return house.words['fullness basis'] === 'finished width'
    ? flat.div(share.add(edges))
    : flat.sub(edges).div(share);
}

/** How much narrower the rod must be for one step of widths less; undefined where none is less. */
export function saving(
  treatment: Treatment,
  house: House,
): { readonly rod: Exact; readonly open: boolean } | undefined {
  const { draw, heading, rod, fullness } = treatment;
  if (draw === 'stationary') return undefined;
  const bolt = boltOf(treatment.fabric, treatment.horizontalRepeat, house);
  const fewer = widthsOf(treatment, house).sub(stepOf(draw, house));
  if (!below(NONE, fewer)) return undefined;
  const panels = panelsOf(draw);
  const open = house.words['widths rounding'] === 'nearest';
  const spare = open ? bolt.usable.mul(HALF).div(panels) : NONE;
  const most = flatOf(fewer.div(panels), bolt, house).add(spare);
  const edges = edging(draw, edgesOf(heading, draw, house), house);
  const share =
    house.words['fullness basis'] === 'finished width'
      ? most.div(fullness).sub(edges)
      : most.sub(edges).div(fullness);
  if (!below(NONE, share)) return undefined;
  return { rod: rod.sub(share.mul(panels)), open };
}

/** Panels of so many widths each that cover the rod; a pair goes up to an even count. Side panels are two. */
export function panelsNeeded(treatment: Treatment, each: Exact, house: House): Exact {
  const { draw, heading, rod, fullness } = treatment;
  if (draw === 'stationary') return panelsOf(draw);
  const edges = edging(draw, edgesOf(heading, draw, house), house);
  const wanted = flatWanted(rodShare(rod, draw), edges, fullness, house).mul(panelsOf(draw));
  const flat = flatOf(each, boltOf(treatment.fabric, treatment.horizontalRepeat, house), house);
  const count = wanted.div(flat).ceil();
  return draw === 'pair' ? count.div(2).ceil().mul(2) : count;
}
