/** Lining and interlining: they line the cloth that hangs there. */
import type { Exact } from './figures';
import { bareCut, boughtAs, bought, cutsOf, type Cloth } from './cloth';
import type { House } from './house';
import { boltOf, fewestWidths, panelsOf, seamed, widthsOf, type Treatment } from './panel';

export type Layer = 'lining' | 'interlining';

/** Own allowances, no repeat; or so much less than the face's cut. */
export function layerCut(
  drop: Exact,
  treatment: Pick<Treatment, 'heading'>,
  layer: Layer,
  house: House,
): Exact {
  const { lengths } = house;
  if (layer === 'interlining')
    return drop
      .sub(lengths['interlining shorter'])
      .add(lengths['interlining top'])
      .add(lengths['interlining bottom']);
  if (house.words['lining cut'] === 'less than face')
    return bareCut(drop, treatment.heading, house).sub(lengths['lining less']);
  return drop.sub(lengths['lining shorter']).add(lengths['lining top']).add(lengths['lining bottom']);
}

/** The face is turned over the lining by the two margins at each of them, its own turnings in it. */
export const marginsOf = (house: House): Exact =>
  house.lengths['lining margin leading'].add(house.lengths['lining margin outer']).mul(2);

/** What the lining of one panel must have, as seamed. */
export function layerWanted(faceSeamed: Exact, layer: Layer, house: House): Exact {
  return layer === 'interlining' ? faceSeamed : faceSeamed.sub(marginsOf(house));
}

/**
 * Widths of a lining of its own bolt width behind a face of so many widths. Of the face's bolt width: as many
 * widths as the face, its seams in line. Of another: by what the face delivers, as the house rounds.
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
  const { orders, windows } = boughtAs(cloth.quantity, house);
  const cut = layerCut(cloth.drop, treatment, layer, house);
  return bought(cut.mul(cutsOf(widths, windows, house)), orders, house);
}
