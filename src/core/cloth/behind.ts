/** The cloths behind the face: what each is called where it is counted, ordered, priced and cut. */
import type { Rules } from '../house/rules';
import type { LayerBehind, Lining } from '../cell/treatment';

export const BEHIND = ['lining', 'blackout lining', 'interlining'] as const;
export type Behind = (typeof BEHIND)[number];

const OF: Readonly<Record<Lining, readonly Behind[]>> = {
  unlined: [],
  lined: ['lining'],
  interlined: ['lining', 'interlining'],
  blackout: ['blackout lining'],
};

export const behindOf = (lining: Lining | undefined): readonly Behind[] => OF[lining ?? 'unlined'];

/** A blackout is cut as any lining is. */
export const layerOf = (cloth: Behind): LayerBehind => (cloth === 'interlining' ? 'interlining' : 'lining');

/** Blackout takes the lining's price and weight where it has none of its own. */
export const standsIn = (cloth: Behind): Behind | undefined =>
  cloth === 'blackout lining' ? 'lining' : undefined;

/** The house rule that says what a cloth weighs. */
export const WEIGHT_RULE = {
  lining: 'liningWeight',
  'blackout lining': 'blackoutLiningWeight',
  interlining: 'interliningWeight',
} as const satisfies Readonly<Record<Behind, keyof Rules>>;

/** Its areal weight, its stand-in's where it has none of its own; undefined where the house sets neither. */
export function arealOf(cloth: Behind, rules: Rules): number | undefined {
  const other = standsIn(cloth);
  return rules[WEIGHT_RULE[cloth]] ?? (other && rules[WEIGHT_RULE[other]]);
}
