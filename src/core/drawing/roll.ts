/** One roll as it is cut: its length to scale, its cuts from the start, what is given up, flawed and left. */
import { NO_LENGTH, UNITS } from '../exact/length';
import { showLength, showRemnant, showYardage, type Unit } from '../exact/unit';
import type { Flaw } from '../rolls/cutting';
import type { PlannedRoll } from '../rolls/plan';
import { EMPTY, near, type Box, type Drawing } from './drawing';

/** Cut lengths as they are told apart, the longest first: as a tape reads them, those a hair apart are one. */
export function cutLengths(rolls: readonly PlannedRoll[], unit: Unit): readonly string[] {
  const cuts = rolls.flatMap(({ stretches }) => stretches.flatMap(({ cuts }) => cuts));
  const lengths = cuts.map(({ length }) => length).sort((one, other) => other - one);
  return [...new Set(lengths.map((length) => showLength(length, unit)))];
}

export function rollTitle({ number, lot, length, remnant }: PlannedRoll, unit: Unit): string {
  const named = lot === undefined ? '' : `, lot ${lot}`;
  return `Roll ${number}${named}: ${showYardage(length, unit)}, ${showRemnant(remnant, unit)} left`;
}

const TALL = { y: NO_LENGTH, height: UNITS.yd as Box['height'] };

/** `lengths`: of every roll drawn beside it, so that like cuts look alike. */
export function rollDrawing(
  roll: PlannedRoll,
  given: { readonly flaws: readonly Flaw[]; readonly lengths: readonly string[]; readonly unit: Unit },
): Drawing {
  const { unit, lengths } = given;
  const boxes: Box[] = [{ part: 'spare', x: NO_LENGTH, width: roll.length, ...TALL }];
  let cutsInAll = 0;
  for (const { from, toStart, cuts } of roll.stretches) {
    if (toStart !== undefined && cuts.length > 0)
      boxes.push({ part: 'start', x: near(from - toStart), width: toStart, ...TALL });
    let at: number = from;
    for (const { length, count, room, label } of cuts) {
      const shown = showLength(length, unit);
      const words = room ?? label ?? '';
      for (let one = 0; one < count; one++, at += length) {
        const says = words === '' ? shown : `${words}: ${shown}`;
        boxes.push({
          part: 'cut',
          x: near(at),
          width: length,
          ...TALL,
          alike: lengths.indexOf(shown),
          words,
          says,
        });
      }
      cutsInAll += count;
    }
  }
  for (const { from, length } of given.flaws)
    boxes.push({ part: 'flaw', x: from, width: length, ...TALL, says: 'flaw' });
  return {
    ...EMPTY,
    title: `${rollTitle(roll, unit)}. ${cutsInAll} cuts`,
    left: NO_LENGTH,
    right: roll.length,
    top: TALL.height,
    flattened: true,
    boxes,
  };
}
