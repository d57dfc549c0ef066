/** The lining of an ordered window: as many widths as the face where it is as wide, else by the face's flat cloth. */
import type Fraction from 'fraction.js';
import {
  bareCutOf,
  deliveredFlat,
  dropOf,
  isLined,
  isTurned,
  panelsOf,
  widthsHolding,
  widthsOf,
} from './cloth';
import { exact, HALF, ONE, upTo } from './exact';
import type { House } from './house';
import type { Line } from './line';

export function liningCutOf(line: Line, house: House): Fraction {
  const { lining } = house;
  return lining.cut === 'less than face'
    ? bareCutOf(line, house).sub(exact(lining.less))
    : dropOf(line, house).sub(exact(lining.shorter)).add(exact(lining.top)).add(exact(lining.bottom));
}

/**
 * Widths of the lining; undefined where the texts part: whether hems and margins come off the cloth to be
 * covered, and selvages off the lining, decides the count. Such a window is not ordered by an invented house.
 */
export function liningWidthsOf(line: Line, house: House): Fraction | undefined {
  const face = widthsOf(line, house);
  const bolt = exact(house.lining.width);
  if ((line['fabric width'] ?? exact(house.fabricWidth)).equals(bolt)) return face;
  const margins = exact(house.lining.marginLeading).add(exact(house.lining.marginOuter)).mul(2);
  const hems = exact(house.sideHem).mul(2);
  const delivered = deliveredFlat(line, house);
  const step = house.rounding === 'whole per panel' ? ONE : HALF;
  const flats = [
    { flat: delivered.add(hems), rules: house },
    { flat: delivered.sub(hems).sub(margins), rules: { ...house, selvage: 0 } },
  ];
  const counts = flats.map(({ flat, rules }) =>
    widthsHolding(flat, bolt, step, rules).mul(panelsOf(line.draw)).ceil(),
  );
  const [most, fewest] = counts;
  return most !== undefined && fewest !== undefined && most.equals(fewest) ? most : undefined;
}

/** Undefined where the line is not lined, or the texts part. */
export function liningYardageOf(line: Line, house: House): Fraction | undefined {
  if (!isLined(line) || isTurned(line)) return undefined;
  // Whether it is the cut with its repeat that the lining is shorter than, the texts do not say.
  if (house.lining.cut === 'less than face' && line['vertical repeat'] !== undefined) return undefined;
  const widths = liningWidthsOf(line, house);
  if (widths === undefined) return undefined;
  const quantity = line.quantity ?? ONE;
  const large = exact(house.unit === 'inches' ? 36 : 100);
  const step = exact(house.yardStep);
  const length = liningCutOf(line, house).mul(widths.ceil());
  return house.yardageBy === 'window'
    ? upTo(length.div(large), step).mul(quantity)
    : upTo(length.mul(quantity).div(large), step);
}
