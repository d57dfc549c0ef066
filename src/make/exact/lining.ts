/** Lining and interlining: they line the cloth that hangs there. */
import type { Exact } from './figures';
import { bareCut, bought, boughtAs, cutsOf, shrunk, type Cloth } from './cloth';
import type { House } from './house';
import type { Heading } from './words';
import { boltOf, fewestWidths, panelsOf, seamed, widthsOf, type Treatment } from './panel';

export type Layer = 'lining' | 'interlining';

/** A lining by its own allowances and shrinkage, without a repeat; or so much less than the face's cut. */
function liningCut(drop: Exact, heading: Heading, house: House): Exact {
  const { lengths } = house;
  if (house.words['lining cut'] === 'less than face')
    return bareCut(drop, heading, house).sub(lengths['lining less']);
  return shrunk(drop.sub(lengths['lining shorter']), house.ratios['lining shrinkage'])
    .add(lengths['lining top'])
    .add(lengths['lining bottom']);
}

/** An interlining has the face's length, or the lining's, or allowances of its own. */
export function layerCut(drop: Exact, heading: Heading, layer: Layer, house: House): Exact {
  const { lengths } = house;
  const rule = house.words['interlining cut'];
  if (layer === 'lining' || rule === 'as the lining') return liningCut(drop, heading, house);
  if (rule === 'as the face') return bareCut(drop, heading, house);
  return drop
    .sub(lengths['interlining shorter'])
    .add(lengths['interlining top'])
    .add(lengths['interlining bottom']);
}

/** The face is turned over the lining by the two margins at each of them, its own turnings in it. */
export const marginsOf = (house: House): Exact =>
  house.lengths['lining margin leading'].add(house.lengths['lining margin outer']).mul(2);

/** What the lining of one panel must have, as seamed. */
export function layerWanted(faceSeamed: Exact, layer: Layer, house: House): Exact {
  const full = layer === 'interlining' && house.words['interlining cut'] !== 'as the lining';
  return full ? faceSeamed : faceSeamed.sub(marginsOf(house));
}

/**
 * Widths of a lining of its own bolt width behind a face of so many widths. Of the face's bolt width: as many
 * widths as the face, its seams in line. Of another: by what the face delivers, by the house’s step, and never less.
 */
export function layerWidths(treatment: Treatment, liningFabric: Exact, layer: Layer, house: House): Exact {
  const face = widthsOf(treatment, house);
  if (liningFabric.equals(treatment.fabric)) return face;
  const panels = panelsOf(treatment.draw);
  const faceBolt = boltOf(treatment.fabric, treatment.horizontalRepeat, house);
  const wanted = layerWanted(seamed(face.div(panels), faceBolt), layer, house);
  return fewestWidths(wanted, treatment.draw, boltOf(liningFabric, undefined, house), house);
}

export function layerYardage(
  treatment: Treatment,
  cloth: Pick<Cloth, 'drop' | 'quantity'>,
  liningFabric: Exact,
  layer: Layer,
  house: House,
): Exact {
  const widths = layerWidths(treatment, liningFabric, layer, house);
  const order = boughtAs(cloth.quantity, house);
  const cut = layerCut(cloth.drop, treatment.heading, layer, house);
  return bought(cut.mul(cutsOf(widths, order.windows, house)), order, house);
}
