/** Mending a packing: a few stretches with waste are emptied together with some full ones, and filled anew. */
import type { Demand } from './cutting';
import { fillInTurn, leftLength, type Effort, type Packing } from './fill';
import { takes, type Load } from './takes';

/** Stretches taken up together. */
const WASTEFUL = 3;
const OTHERS = 6;
/** Rounds without any gain before it is given up. */
const PATIENCE = 40;

export function rework(
  stretches: readonly number[],
  packing: Packing,
  demand: Demand,
  holds: (stretch: number) => number,
  effort: Effort,
): Packing {
  const { lengths } = demand;
  const loads = [...packing.loads];
  let left = [...packing.left];
  let rest = leftLength(packing, lengths);
  const waste = stretches.map((stretch, at) => stretch - takes(loads[at] ?? [], demand));
  for (let round = 0, idle = 0; rest > 0 && idle < PATIENCE && effort.steps > 0; round++, idle++) {
    const chosen = choose(waste, round);
    const counts = [...left];
    for (const at of chosen)
      for (const [type, count] of loads[at] ?? []) counts[type] = (counts[type] ?? 0) + count;
    const taken = chosen.map((at) => stretches[at] as number);
    // Turn about, the short cuts are spread or the long ones are used up first.
    const refilled = fillInTurn(taken, { ...demand, counts }, { even: round % 2 === 0, holds }, effort);
    const over = leftLength(refilled, lengths);
    if (over > rest) continue;
    if (over < rest) idle = 0;
    rest = over;
    left = [...refilled.left];
    chosen.forEach((at, turn) => {
      const load: Load = refilled.loads[turn] ?? [];
      loads[at] = load;
      waste[at] = (stretches[at] as number) - takes(load, demand);
    });
  }
  return { loads, left };
}

/** The most wasteful stretches, and others in rotation; the order turns with the round. */
function choose(waste: readonly number[], round: number): number[] {
  const most: number[] = [];
  for (let at = 0; at < waste.length; at++) {
    let place = most.length;
    while (place > 0 && (waste[at] as number) > (waste[most[place - 1] as number] as number)) place--;
    if (place < WASTEFUL) most.splice(place, 0, at);
    if (most.length > WASTEFUL) most.pop();
  }
  const chosen = new Set(most);
  for (let turn = 0; turn < OTHERS; turn++) chosen.add((round * OTHERS + turn * 7) % waste.length);
  const order = [...chosen];
  return round % 3 === 0 ? order.reverse() : order;
}
