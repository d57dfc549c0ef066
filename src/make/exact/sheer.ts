/** A sheer is a layer of its own: its fullness, its double hem, and never a lining. */
import type { Exact } from './figures';
import type { House } from './house';
import type { Treatment } from './panel';

/** The house as a sheer is made up under it. */
export const sheerHouse = (house: House): House => ({
  ...house,
  lengths: { ...house.lengths, 'bottom allowance': house.lengths['sheer bottom allowance'] },
});

/** A sheer whose row says no fullness has the sheers'. */
export const asSheer = (treatment: Treatment, given: boolean, house: House): Treatment =>
  given ? treatment : { ...treatment, fullness: house.ratios['sheer fullness'] };

/** Under a drapery it ends above it. */
export const underDrapery = (drop: Exact, house: House): Exact => drop.sub(house.lengths['sheer shorter']);
