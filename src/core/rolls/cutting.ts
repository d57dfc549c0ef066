/**
 * What is to be cut, and what it is cut from. A cut never crosses a roll's end or a flaw,
 * and where dye lots are told apart one room is cut from one lot.
 */
import { exact, NO_LENGTH, times, type Length } from '../exact/length';
import { ONE, type Ratio } from '../exact/ratio';
import type { Start } from '../cloth/half-drop';

export interface CutLine {
  readonly length: Length;
  readonly count: number;
  /** Of a half-drop. */
  readonly start?: Start | undefined;
  /** A room's cuts all come from one dye lot. */
  readonly room?: string | undefined;
  /** For the cutter's list: the window, the layer. */
  readonly label?: string | undefined;
}

/** A stretch of a received roll that cannot be used; a flaw of no length is a point. */
export interface Flaw {
  readonly from: Length;
  readonly length: Length;
}

export interface Roll {
  readonly length: Length;
  readonly lot?: string | undefined;
  readonly flaws?: readonly Flaw[] | undefined;
  /** Given up at the roll's start, and again after every flaw, to reach the pattern's start. */
  readonly toStart?: Length | undefined;
}

/** Cloth on order comes in as many rolls of its one length as it takes; rolls in hand are each one roll. */
export type Supply = 'as many as it takes' | 'in hand';

export interface CuttingJob {
  readonly cuts: readonly CutLine[];
  readonly rolls: readonly Roll[];
  readonly supply: Supply;
}

/** A clean piece of a roll: what lies between its ends and its flaws. */
export interface Stretch {
  /** Which roll, counted from 0. */
  readonly roll: number;
  /** Where cutting begins. */
  readonly from: Length;
  readonly length: Length;
  /** Cloth given up before it, to the pattern's start; nothing where there is none. */
  readonly toStart?: Length | undefined;
}

/** The clean stretches of a roll, from its start. Overlapping flaws are one flaw. */
export function cleanStretches(of: Roll, roll: number): readonly Stretch[] {
  const flaws = [...(of.flaws ?? [])].sort((one, other) => one.from - other.from);
  const toStart = of.toStart ?? NO_LENGTH;
  const stretches: Stretch[] = [];
  let from: number = NO_LENGTH;
  const add = (end: number): void => {
    const length = end - from - toStart;
    if (length <= 0) return;
    const stretch = { roll, from: exact(from + toStart), length: exact(length) };
    stretches.push(toStart > 0 ? { ...stretch, toStart } : stretch);
  };
  for (const flaw of flaws) {
    add(flaw.from);
    from = Math.max(from, flaw.from + flaw.length);
  }
  add(of.length);
  return stretches;
}

/** Distinct cut lengths, longest first, and how many of each. */
export interface Demand {
  readonly lengths: readonly number[];
  readonly counts: readonly number[];
}

export function demandOf(cuts: readonly CutLine[]): Demand {
  const byLength = new Map<number, number>();
  for (const { length, count } of cuts) byLength.set(length, (byLength.get(length) ?? 0) + count);
  const lengths = [...byLength.keys()].sort((one, other) => other - one);
  return { lengths, counts: lengths.map((length) => byLength.get(length) ?? 0) };
}

export const cutLengthOf = (cuts: readonly CutLine[]): Length =>
  cuts.reduce((sum, { length, count }) => exact(sum + times(length, count)), NO_LENGTH);

/** Spares by cut length, whatever the room: a share of the count, a part counting as a whole cut. */
export function withSpares(cuts: readonly CutLine[], share: Ratio): readonly CutLine[] {
  const { lengths, counts } = demandOf(cuts);
  const spares = lengths.map((length, type): CutLine => ({
    length: exact(length),
    count: Math.ceil(((counts[type] ?? 0) * share) / ONE),
    label: 'spare',
  }));
  return [...cuts, ...spares.filter(({ count }) => count > 0)];
}

/**
 * Lines counted in half widths, as whole cuts. Where the house lets two windows share a width,
 * halves of one length, one start and one room make a cut in pairs; otherwise each line's odd half takes a whole cut.
 */
export function fromHalfWidths(lines: readonly CutLine[], shared: boolean): readonly CutLine[] {
  if (!shared) return lines.map((line) => ({ ...line, count: Math.ceil(line.count / 2) }));
  const odd = new Map<string, boolean>();
  return lines.map((line) => {
    const key = `${line.length} ${line.start ?? ''} ${line.room ?? ''}`;
    const waiting = odd.get(key) === true;
    const halves = line.count - (waiting ? 1 : 0);
    if (line.count > 0) odd.set(key, halves % 2 !== 0);
    return { ...line, count: line.count > 0 ? Math.ceil(halves / 2) : 0 };
  });
}
