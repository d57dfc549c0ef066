/** How a house buys its cloth in its own way, once its orders have told it (own-cloth.ts): half widths as halves, half-drops. */
import { layerOf } from '../cloth/behind';
import { furtherCut } from '../cloth/repeat';
import { cutsOf, roundedYardage, startsOf } from '../cloth/yardage';
import { exact, type Length } from '../exact/length';
import { panelsOf } from '../cell/treatment';
import type { Rules } from '../house/rules';
import type { WindowWork } from '../window/job';
import {
  cuttingFor,
  halfDropCloths,
  linesOf,
  rounded,
  ruledHalfDrops,
  runsOf,
  type Cloth,
  type ClothOrdered,
  type HalfDropWay,
  type OwnCloth,
} from './cut-orders';

export const HALF_DROP_WAYS: Readonly<Record<HalfDropWay, string>> = {
  'as cut': 'by its cuts alone',
  'a repeat more': 'with one repeat more for the line',
  'half a repeat more': 'with half a repeat more for the line',
  'half a repeat a cut': 'with half a repeat more on every cut',
  'a repeat every other cut': 'with one repeat more on every other cut',
  'half repeats': 'with every cut up to an odd half repeat',
  'in turn': 'in the order that it is cut',
};

/** What a house does with its cloth that no rule says; a window's odd half is else bought whole. */
export interface ClothHabits {
  readonly byHalves?: true;
  /** Its half-drops, and in no other way. */
  readonly halfDrops?: readonly HalfDropWay[];
}

/** A half-drop’s cloth by each way a house may have. */
function* byWays(order: ClothOrdered, windows: number, rules: Rules, byHalves: boolean): Generator<Cloth> {
  const { widths, window } = order;
  const cutting = cuttingFor(order, rules);
  const starts = startsOf({ widths, panels: panelsOf(window.draw ?? 'pair') }, windows, rules);
  const whole = cutsOf(widths, windows, rules);
  if (!cutting.halfDrop || cutting.repeat === undefined || whole === 0) return;
  for (const cuts of new Set(byHalves ? [whole, widths * windows] : [whole])) {
    yield* halfDropCloths(cutting, starts, cuts);
    // The row’s own cut is what its yardage follows from.
    if (order.cutLength !== undefined) yield* linesOf(order.cutLength, cutting.repeat, cuts);
  }
  for (const one of ruledHalfDrops(order, windows, rules)) yield ['in turn', one];
}

/** The ways by which a half-drop takes so much; undefined of any other cloth. */
export function waysOfHalfDrop(
  order: ClothOrdered,
  rules: Rules,
  takes: (yardage: number) => boolean,
): ReadonlySet<HalfDropWay> | undefined {
  const { halfDrop, repeat } = cuttingFor(order, rules);
  if (!halfDrop || repeat === undefined) return undefined;
  const ways = new Set<HalfDropWay>();
  for (const [way, nm] of byWays(order, runsOf(order, rules).runs, rules, true))
    for (const yardage of rounded(order, nm, rules)) if (takes(yardage)) ways.add(way);
  return ways;
}

/** The lining of a half width bought as a half. */
function* liningsByHalves(works: readonly WindowWork[], quantity: number, rules: Rules): Generator<number> {
  for (const work of works) {
    for (const cloth of work.clothsBehind) {
      const lining = layerOf(cloth) === 'lining' ? work.behind(cloth) : undefined;
      if (lining === undefined) continue;
      const bought = (windows: number): Length => exact(Math.ceil(lining.cut * lining.widths * windows));
      yield roundedYardage(bought, quantity, rules);
    }
  }
}

export function ownClothBy({
  byHalves = false,
  halfDrops,
}: Omit<ClothHabits, 'byHalves'> & { readonly byHalves?: boolean }): OwnCloth {
  return {
    *clothsOf(order, windows, rules) {
      const cutting = cuttingFor(order, rules);
      if (!cutting.halfDrop && byHalves)
        yield (order.cutLength ?? furtherCut(cutting)) * order.widths * windows;
      for (const [way, cloth] of byWays(order, windows, rules, byHalves))
        if (halfDrops?.includes(way) === true) yield cloth;
    },
    isAlone: (order, rules) => halfDrops !== undefined && cuttingFor(order, rules).halfDrop,
    linings: (works, quantity, rules) => (byHalves ? liningsByHalves(works, quantity, rules) : []),
  };
}
