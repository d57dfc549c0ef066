/** From loads to a plan a cutter can follow: roll by roll, every cut with the line it was asked on. */
import {
  cleanStretches,
  cutLengthOf,
  demandOf,
  typeOfLine,
  typesOf,
  type CutLine,
  type CuttingJob,
  type Roll,
  type Stretch,
} from './cutting';
import { Effort } from './fill';
import { layByLots, roomGroups } from './by-room';
import { layOnRolls, rollsOnOrder } from './stretches';
import { inOrder, type Load } from './takes';
import type { Start } from '../cloth/half-drop';
import { exact, NO_LENGTH, times, type Length } from '../exact/length';
import { ONE, type Ratio } from '../exact/ratio';

export interface PlannedCut {
  /** What it takes off the roll; the last of a stretch its bare length. */
  readonly length: Length;
  readonly count: number;
  /** Of a half-drop. */
  readonly start?: Start | undefined;
  /** Which cut line, counted from 0. */
  readonly line: number;
  readonly room?: string | undefined;
  readonly label?: string | undefined;
}

export interface PlannedStretch extends Stretch {
  /** In the order they are cut, from the stretch's start. */
  readonly cuts: readonly PlannedCut[];
  readonly remnant: Length;
}

export interface PlannedRoll {
  /** As numbered by whoever gave the rolls, from 1. */
  readonly number: number;
  readonly lot?: string | undefined;
  readonly length: Length;
  readonly stretches: readonly PlannedStretch[];
  /** The longest piece left whole. */
  readonly remnant: Length;
}

/**
 * The aims, in this order: the least cloth left uncut where the rolls in hand do not suffice;
 * the fewest rolls opened; the least cloth in the rolls opened; the longest remnant.
 * The bound, and “proven best”, are about the rolls opened.
 */
export interface CutPlan {
  /** Only the rolls opened. */
  readonly rolls: readonly PlannedRoll[];
  /** No plan that gives every cut opens fewer. */
  readonly lowerBound: number;
  readonly proven: boolean;
  /** What the rolls in hand do not give. */
  readonly short: readonly PlannedCut[];
  /** Whether no plan at all could give every cut. */
  readonly surelyShort: boolean;
  /** Cloth cut out of cloth opened. */
  readonly utilisation: Ratio;
  readonly cut: Length;
  readonly opened: Length;
}

/** What a search hands over: a load for every stretch of every roll that may be opened. */
export interface Layout {
  readonly rolls: readonly Roll[];
  readonly loads: readonly (readonly Load[])[];
  readonly lowerBound: number;
  readonly surelyShort: boolean;
  /** Which lot each room is cut from, where lots are told apart. */
  readonly lotOf?: ReadonlyMap<string, string> | undefined;
}

/** Steps a plan in a cell may cost: a fraction of a second at worst. */
const CELL_EFFORT = 1_500_000;

export const lotsMatter = (job: CuttingJob): boolean =>
  job.supply === 'in hand' && new Set(job.rolls.map(({ lot }) => lot)).size > 1;

/** The best layout found quickly, with its bound. */
export function quickLayout(job: CuttingJob): Layout {
  const demand = demandOf(job.cuts);
  const effort = new Effort(CELL_EFFORT);
  const cleanOf = (roll: Roll): readonly number[] => cleanStretches(roll, 0).map(({ length }) => length);
  if (job.supply === 'as many as it takes') {
    const roll = job.rolls[0] as Roll;
    const stretches = rollsOnOrder(cleanOf(roll), demand);
    const { loads, lower, surelyShort } = layOnRolls(stretches, demand, effort, true);
    return { rolls: stretches.map(() => roll), loads, lowerBound: lower, surelyShort };
  }
  const stretches = job.rolls.map(cleanOf);
  if (!lotsMatter(job)) {
    const { loads, lower, surelyShort } = layOnRolls(stretches, demand, effort);
    return { rolls: job.rolls, loads, lowerBound: lower, surelyShort };
  }
  const lots = job.rolls.map(({ lot }) => lot ?? '');
  const laid = layByLots(stretches, lots, demand, roomGroups(job.cuts, demand), effort);
  return {
    rolls: job.rolls,
    loads: laid.loads,
    lowerBound: laid.lower,
    surelyShort: laid.surelyShort,
    lotOf: laid.lotOf,
  };
}

interface Taken {
  readonly length: Length;
  readonly count: number;
}

const planned = (
  { start, room, label }: CutLine,
  length: Length,
  count: number,
  line: number,
): PlannedCut => ({
  length,
  count,
  line,
  ...(start !== undefined && { start }),
  room,
  label,
});

/** Hands the cuts of each type out to the lines that asked for them, in the lines' order. */
class Dealer {
  private readonly waiting: number[];
  private readonly linesOf = new Map<string, number[]>();

  constructor(
    private readonly cuts: readonly CutLine[],
    private readonly lotOf: ReadonlyMap<string, string> | undefined,
  ) {
    this.waiting = cuts.map(({ count }) => count);
    cuts.forEach((cut, line) => {
      const lines = this.linesOf.get(typeOfLine(cut)) ?? [];
      lines.push(line);
      this.linesOf.set(typeOfLine(cut), lines);
    });
  }

  take(type: CutLine, { length, count: wanted }: Taken, lot: string | undefined): PlannedCut[] {
    let count = wanted;
    const lines = this.linesOf.get(typeOfLine(type)) ?? [];
    const given: PlannedCut[] = [];
    const hand = (mayTake: (room: string | undefined) => boolean): void => {
      for (const line of lines) {
        const cut = this.cuts[line] as CutLine;
        const taken = Math.min(count, this.waiting[line] ?? 0);
        if (taken === 0 || !mayTake(cut.room)) continue;
        this.waiting[line] = (this.waiting[line] ?? 0) - taken;
        count -= taken;
        given.push(planned(cut, length, taken, line));
      }
    };
    const lotOf = this.lotOf;
    if (lotOf === undefined) hand(() => true);
    else {
      hand((room) => room !== undefined && lotOf.get(room) === (lot ?? ''));
      hand((room) => room === undefined);
    }
    if (count > 0) throw new Error('a plan holds more cuts than were asked for');
    // A line that is served is not looked at again.
    const open = lines.findIndex((line) => (this.waiting[line] ?? 0) > 0);
    lines.splice(0, open < 0 ? lines.length : open);
    return given;
  }

  rest(): PlannedCut[] {
    return this.cuts.flatMap((cut, line) => {
      const count = this.waiting[line] ?? 0;
      return count > 0 ? [planned(cut, cut.length, count, line)] : [];
    });
  }
}

/** Writes the layout out as a plan, checking every roll on the way. */
export function toPlan(job: CuttingJob, layout: Layout): CutPlan {
  const types = typesOf(job.cuts);
  const demand = demandOf(job.cuts);
  const dealer = new Dealer(job.cuts, layout.lotOf);
  const rolls = layout.rolls.flatMap((roll, at): PlannedRoll[] => {
    const loads = layout.loads[at] ?? [];
    if (loads.every((load) => load.length === 0)) return [];
    const stretches = cleanStretches(roll, at).map((stretch, which): PlannedStretch => {
      const cuts = inOrder(loads[which] ?? [], demand).flatMap(({ type, length, count }) =>
        dealer.take(types[type] as CutLine, { length: exact(length), count }, roll.lot),
      );
      const remnant = exact(stretch.length - cutLengthOf(cuts));
      if (remnant < NO_LENGTH) throw new Error('a plan cuts more from a stretch than it holds');
      return { ...stretch, cuts, remnant };
    });
    const remnant = Math.max(NO_LENGTH, ...stretches.map((stretch) => stretch.remnant)) as Length;
    return [{ number: at + 1, lot: roll.lot, length: roll.length, stretches, remnant }];
  });
  const numbered =
    job.supply === 'in hand' ? rolls : rolls.map((roll, at): PlannedRoll => ({ ...roll, number: at + 1 }));
  const short = dealer.rest();
  const cut = cutLengthOf(rolls.flatMap(({ stretches }) => stretches.flatMap(({ cuts }) => cuts)));
  const opened = rolls.reduce((sum, roll) => exact(sum + times(roll.length, 1)), NO_LENGTH);
  const surelyShort = layout.surelyShort && short.length > 0;
  return {
    rolls: numbered,
    lowerBound: layout.lowerBound,
    proven: short.length === 0 && rolls.length <= layout.lowerBound,
    short,
    surelyShort,
    utilisation: (opened > 0 ? Math.floor((cut / opened) * ONE) : 0) as Ratio,
    cut,
    opened,
  };
}
