/** How a house buys its cloth where its rules leave it open, told from its first orders: half widths, half-drops. */
import type { Length } from '../exact/length';
import type { Rules } from '../house/rules';
import type { FigureKey } from '../window/figures';
import type { Order } from '../window/order';
import { reckoned } from './check';
import { Compared, within } from './compared';
import { HALF_DROP_WAYS, ownClothBy, waysOfHalfDrop, type ClothHabits } from './cloth-ways';
import type { HalfDropWay } from './cut-orders';

/** So many orders tell of a way, and so many of those that can tell have it. */
const LEAST_HALVES = 5;
const LEAST_HALF_DROPS = 8;
const HOLDS = 0.85;

export interface ClothSeen {
  readonly habits: ClothHabits;
  /** In words, with the orders that have it, of so many. */
  readonly says: readonly { readonly way: string; readonly fit: number; readonly outOf: number }[];
}

const OF_CLOTH: readonly FigureKey[] = ['yardage', 'liningYardage'];

/** Orders with an odd half whose cloth agrees only by halves, and only by whole widths. */
function halvesSeen(orders: readonly Order[], rules: Rules): { fit: number; outOf: number } {
  let [fit, other] = [0, 0];
  for (const { window, ordered } of orders) {
    const widths = ordered.widths ?? 0;
    if (Number.isInteger(widths) || window.match === 'half-drop') continue;
    const right = (byHalves: boolean): number =>
      reckoned(
        () =>
          new Compared(window, ordered, rules, {
            practices: byHalves ? { cloth: ownClothBy({ byHalves }) } : undefined,
          }).compare(OF_CLOTH).right.length,
      ) ?? 0;
    const [whole, halves] = [right(false), right(true)];
    if (halves > whole) fit++;
    else if (whole > 0) other++;
  }
  return { fit, outOf: fit + other };
}

function halfDropsSeen(
  orders: readonly Order[],
  rules: Rules,
): { readonly ways: readonly HalfDropWay[]; readonly fit: number; readonly outOf: number } {
  const times = new Map<HalfDropWay, number>();
  let outOf = 0;
  for (const { window, ordered } of orders) {
    const { yardage, widths = 0, cutLength } = ordered;
    const { finishedDrop, heading } = window;
    if (yardage === undefined || finishedDrop === undefined || heading === undefined || widths < 2) continue;
    const cloth = {
      window,
      widths,
      dropped: { finishedDrop, heading },
      cutLength: cutLength as Length | undefined,
    };
    const ways = reckoned(() =>
      waysOfHalfDrop(cloth, rules, (takes) => within('yardage', yardage, takes, rules)),
    );
    if (ways === undefined) continue;
    outOf++;
    for (const way of ways) times.set(way, (times.get(way) ?? 0) + 1);
  }
  const fit = Math.max(0, ...times.values());
  return { ways: [...times].flatMap(([way, count]) => (count === fit ? [way] : [])), fit, outOf };
}

export function clothSeen(orders: readonly Order[], rules: Rules): ClothSeen {
  const says: { way: string; fit: number; outOf: number }[] = [];
  const upright = orders.filter(({ window }) => window.railroaded !== 'railroaded');
  const halves = halvesSeen(upright, rules);
  const byHalves = halves.fit >= LEAST_HALVES && halves.fit >= halves.outOf * HOLDS;
  if (byHalves) says.push({ way: 'a half width as a half', ...halves });
  const { ways, fit, outOf } = halfDropsSeen(upright, rules);
  const halfDrops = outOf >= LEAST_HALF_DROPS && fit >= outOf * HOLDS ? ways : undefined;
  const [way] = halfDrops ?? [];
  if (way !== undefined) says.push({ way: `a half-drop ${HALF_DROP_WAYS[way]}`, fit, outOf });
  return { habits: { ...(byHalves && { byHalves }), ...(halfDrops && { halfDrops }) }, says };
}
