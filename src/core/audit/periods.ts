/** House rules by the day they began. */
import { refuse } from '../cell/answer';
import type { Period } from './audit';
import { showDay } from '../cell/day';
import type { House } from '../house/house';

/** Every set of rules from its own day on, the oldest first; all in one unit. */
export function periodsOf(...houses: readonly House[]): readonly Period[] {
  return inOrder(
    houses
      .flatMap((house) => [...house.earlier, house])
      .map((house) => ({ from: house.rules.inForceFrom, house })),
  );
}

/** The oldest first. Two of one day, or of two units, are refused. */
export function inOrder<P extends Period>(periods: readonly P[]): readonly P[] {
  const sorted = [...periods].sort((one, other) => (one.from ?? -1) - (other.from ?? -1));
  for (const [at, { from, house }] of sorted.entries()) {
    const next = sorted[at + 1];
    if (next === undefined) break;
    if (next.house.unit !== house.unit)
      refuse('rulesInTwoUnits', 'rules', house.unit.name, next.house.unit.name);
    if (next.from === from)
      refuse('rulesOfOneDay', 'rules', from === undefined ? 'for every day' : `from ${showDay(from)} on`);
  }
  return sorted;
}
