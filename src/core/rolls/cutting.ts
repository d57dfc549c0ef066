/**
 * What is to be cut, and what it is cut from. A cut never crosses a roll's end or a flaw,
 * and where dye lots are told apart one room is cut from one lot.
 */
import { exact, NO_LENGTH, times, type Length } from '../exact/length';
import { upToWhole, type Money } from '../exact/money';
import type { Rules } from '../house/rules';
import type { Start, Starts } from '../cloth/half-drop';
import { furtherCut, halfDropGroups, type Cutting } from '../cloth/repeat';

export interface CutLine {
  /** What it takes off a roll where a cut like it follows: up to its repeat. */
  readonly length: Length;
  /** All it needs where no cut follows; its length where this is not given. */
  readonly bare?: Length | undefined;
  readonly count: number;
  /** Of a half-drop: where the pattern begins, and what it takes before a cut of the other start, doubled. */
  readonly start?: Start | undefined;
  readonly unlikeTwice?: number | undefined;
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
export function cleanStretches(bought: Roll, roll: number): readonly Stretch[] {
  const flaws = [...(bought.flaws ?? [])].sort((one, other) => one.from - other.from);
  const toStart = bought.toStart ?? NO_LENGTH;
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
  add(bought.length);
  return stretches;
}

/** Cuts alike are one type: by what they take, longest first, and how many of each. */
export interface Demand {
  readonly lengths: readonly number[];
  readonly counts: readonly number[];
  /** What each needs where no cut follows; its length where this is not given. */
  readonly bare?: readonly number[];
  /** Of a half-drop. */
  readonly halfDrop?: readonly { readonly start: Start; readonly unlikeTwice: number }[];
}

/** A cloth's cuts as rolls give them, whatever the order of cutting. */
export function cutLines(cutting: Cutting, starts: Starts): readonly CutLine[] {
  if (!cutting.halfDrop || cutting.repeat === undefined) {
    const count = starts.a + starts.b + starts.shared;
    return [{ length: furtherCut(cutting), bare: cutting.cut, count }];
  }
  // Where no cut follows, every cut is taken as it is.
  return halfDropGroups({ ...cutting, rule: 'first cut exact' }, starts)
    .filter(({ count }) => count > 0)
    .map(({ like, last, unlikeTwice, start, count }) => ({
      length: exact(like),
      bare: exact(last),
      count,
      start,
      unlikeTwice,
    }));
}

export const bareOfLine = ({ length, bare }: CutLine): Length => bare ?? length;

/** Lines of one key are cuts of one type. */
export const typeOfLine = (line: CutLine): string =>
  `${line.length} ${bareOfLine(line)} ${line.start ?? ''} ${line.unlikeTwice ?? ''}`;

/** One line of every type that is wanted, longest first. */
export function typesOf(cuts: readonly CutLine[]): readonly CutLine[] {
  const types = new Map<string, CutLine>();
  for (const line of cuts) {
    if (line.count === 0) continue;
    const same = types.get(typeOfLine(line));
    types.set(typeOfLine(line), { ...line, count: line.count + (same?.count ?? 0) });
  }
  return [...types.values()].sort((one, other) => other.length - one.length);
}

export function demandOf(cuts: readonly CutLine[]): Demand {
  const types = typesOf(cuts);
  const plain = { lengths: types.map(({ length }) => length), counts: types.map(({ count }) => count) };
  if (types.some(({ start }) => start !== undefined)) {
    const halfDrop = types.map(({ start = 'A' as const, unlikeTwice, length }) => ({
      start,
      unlikeTwice: unlikeTwice ?? 2 * length,
    }));
    return { ...plain, bare: types.map(bareOfLine), halfDrop };
  }
  return types.every((line) => bareOfLine(line) === line.length)
    ? plain
    : { ...plain, bare: types.map(bareOfLine) };
}

export const cutLengthOf = (cuts: readonly { readonly length: Length; readonly count: number }[]): Length =>
  cuts.reduce((sum, { length, count }) => exact(sum + times(length, count)), NO_LENGTH);

/**
 * Spares of every kind of cut, whatever the room: a share of the count, a part counting as a whole cut. The one
 * rule for plan, totals and price.
 */
export function sparesOf(cuts: readonly CutLine[], share: Money): readonly CutLine[] {
  const spares = typesOf(cuts).map((line): CutLine => ({
    ...line,
    room: undefined,
    count: upToWhole(share.times(line.count)),
    label: 'spare',
  }));
  return spares.filter(({ count }) => count > 0);
}

/** The cuts of one row: of all its windows together, or window by window where each one's cloth is bought by itself. */
export function cutsOfRow(
  { cutting, starts }: { readonly cutting: Cutting; readonly starts: (windows: number) => Starts },
  windows: number,
  { yardageRoundedBy }: Rules,
): readonly CutLine[] {
  const runs = yardageRoundedBy === 'window' ? windows : 1;
  return cutLines(cutting, starts(runs === 1 ? windows : 1)).map((line) => ({
    ...line,
    count: line.count * runs,
  }));
}

/**
 * Lines counted in half widths, as whole cuts. Where the house lets two windows share a width,
 * halves alike in one room make a cut in pairs; otherwise each line's odd half takes a whole cut.
 */
export function fromHalfWidths(lines: readonly CutLine[], shared: boolean): readonly CutLine[] {
  if (!shared) return lines.map((line) => ({ ...line, count: Math.ceil(line.count / 2) }));
  const odd = new Map<string, boolean>();
  return lines.map((line) => {
    const key = `${typeOfLine(line)} ${line.room ?? ''}`;
    const waiting = odd.get(key) === true;
    const halves = line.count - (waiting ? 1 : 0);
    if (line.count > 0) odd.set(key, halves % 2 !== 0);
    return { ...line, count: line.count > 0 ? Math.ceil(halves / 2) : 0 };
  });
}
