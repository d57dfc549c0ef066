/** What a little less saves: a narrower rod, a shorter cut, the cloth turned. */
import { NONE, ONE, atMost, below, inches, type Exact } from './figures';
import { bareCut, railroadedOf, yardageOf, type Cloth } from './cloth';
import type { House } from './house';
import { saving, stepOf, widthsOf, type Treatment } from './panel';

export interface Saved {
  readonly cloth: Exact;
}

/** A rod at most a tenth narrower that takes a step of widths and some cloth less. */
export function narrowerSaves(
  treatment: Treatment,
  cloth: Cloth,
  house: House,
): (Saved & { readonly widths: Exact; readonly fewer: Exact }) | undefined {
  const saved = saving(treatment, house);
  if (saved === undefined) return undefined;
  const by = saved.open ? saved.rod.floor().add(ONE) : saved.rod.ceil();
  if (!below(by, treatment.rod.div(10))) return undefined;
  const after = { ...treatment, rod: treatment.rod.sub(by) };
  const less = yardageOf(treatment, cloth, house).sub(yardageOf(after, cloth, house));
  const fewer = stepOf(treatment.draw, house);
  return below(NONE, less)
    ? { cloth: less, widths: widthsOf(treatment, house).sub(fewer), fewer }
    : undefined;
}

/** At most 3 in less of hem or drop that keeps a cut within a repeat, or a half-drop's within half of one. */
export function shorterCutSaves(treatment: Treatment, cloth: Cloth, house: House): Saved | undefined {
  const { verticalRepeat: repeat, match } = cloth;
  const goesUp =
    match === 'half-drop' || ['every cut up', 'first cut exact'].includes(house.words['repeat rule']);
  if (repeat === undefined || !goesUp) return undefined;
  const cut = bareCut(cloth.drop, treatment.heading, house);
  const over = cut.mod(match === 'half-drop' ? repeat.div(2) : repeat);
  if (over.equals(NONE) || !atMost(over, inches(3)) || !below(over, cut)) return undefined;
  const hem = house.lengths['bottom allowance'].sub(over);
  const after = { ...house, lengths: { ...house.lengths, 'bottom allowance': hem } };
  const less = yardageOf(treatment, cloth, house).sub(yardageOf(treatment, cloth, after));
  return below(NONE, less) ? { cloth: less } : undefined;
}

/** The cloth turned, where that takes less. */
export function turningSaves(treatment: Treatment, cloth: Cloth, house: House): Saved | undefined {
  const turned = railroadedOf(treatment, cloth, house);
  if (turned === undefined || !below(turned, yardageOf(treatment, cloth, house))) return undefined;
  return { cloth: turned };
}
