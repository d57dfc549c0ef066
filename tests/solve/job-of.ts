/** An instance as the planner is given it. */
import type { CuttingJob } from '../../src/core/rolls/cutting';
import { fromUnit, inches } from '../../src/core/exact/length';
import type { Instance } from './programme';

export const jobOf = ({ cuts, rolls, supply }: Instance): CuttingJob => ({
  cuts: cuts.map(({ inches: length, bareInches = length, unlikeInches, start, count, room }) => ({
    length: inches(length),
    bare: inches(bareInches),
    ...(start !== undefined && { start, unlikeTwice: 2 * inches(unlikeInches ?? length) }),
    count,
    room,
  })),
  rolls: rolls.map(({ yards, lot, flaws, toStartInches }) => ({
    length: fromUnit(yards, 'yd'),
    lot,
    flaws: flaws?.map((flaw) => ({ from: fromUnit(flaw.fromYards, 'yd'), length: inches(flaw.inches) })),
    ...(toStartInches !== undefined && { toStart: inches(toStartInches) }),
  })),
  supply,
});
