/** A row's windows as the workroom makes them, for its work order, its labels and its install sheet. */
import { drawnFigure } from '../drawing/laid-out';
import { panelsOf } from '../cell/treatment';
import { exact, type Length } from '../exact/length';
import { digits, type Unit } from '../exact/unit';
import { making, turnedMaking, type Cut, type Making, type PanelMade } from '../window/panels';
import type { JobWindow } from './job';

export interface RowMade extends Making {
  readonly turned: boolean;
}

/** As the row says its cloth lies; up the roll where it says nothing, or where the cloth is too narrow. */
export function madeUp({ work }: JobWindow): RowMade {
  const turned = work.isTurned ? turnedMaking(work) : undefined;
  return turned === undefined ? { ...making(work), turned: false } : { ...turned, turned: true };
}

/** As a tape reads it. */
export const figure = (length: number, unit: Unit): string => drawnFigure(exact(Math.round(length)), unit);

/** “left panel”, or “panel” where there is but one. */
export const panelName = ({ work: { window } }: JobWindow, { side }: Pick<PanelMade, 'side'>): string =>
  panelsOf(window.draw ?? 'pair') === 1 ? 'panel' : `${side} panel`;

/** “1A”, “5, left half”. */
export const widthName = ({ cut, half }: PanelMade['widths'][number]): string =>
  `${cut.number}${cut.start ?? ''}${half === undefined ? '' : ` (${half} half)`}`;

/** Widths are whole ones and halves: 2 1/2. */
export function halves(widths: number): string {
  const whole = Math.floor(widths);
  if (widths - whole !== 0.5) return digits(widths);
  return whole === 0 ? '1/2' : `${whole} 1/2`;
}

export const widthsOf = ({ widths }: PanelMade): string =>
  halves(widths.reduce((sum, { half }) => sum + (half === undefined ? 1 : 0.5), 0));

/** Cuts of one length and start. */
export interface CutsAlike {
  readonly numbers: readonly number[];
  readonly length: Length;
  readonly start?: Cut['start'];
}

/** Rows that a page has room for. */
const MOST_RUNS = 4;

/** Cuts alike, as they follow each other; where they change too often for a page, all of one kind together. */
export function cutsAlike(cuts: readonly Cut[]): readonly CutsAlike[] {
  const runs = grouped(cuts, true);
  return runs.length <= MOST_RUNS ? runs : grouped(cuts, false);
}

function grouped(cuts: readonly Cut[], followingOnly: boolean): readonly CutsAlike[] {
  const groups: CutsAlike[] = [];
  for (const { number, length, start } of cuts) {
    const from = followingOnly ? Math.max(0, groups.length - 1) : 0;
    const at = groups.findIndex(
      (one, place) => place >= from && one.length === length && one.start === start,
    );
    const same = groups[at];
    if (same === undefined) groups.push({ numbers: [number], length, ...(start !== undefined && { start }) });
    else groups[at] = { ...same, numbers: [...same.numbers, number] };
  }
  return groups;
}

/** “1 to 8”, “1, 3 … 19”, or one by one. */
export function numbersInWords(numbers: readonly number[]): string {
  const [first = 0, second = 0] = numbers;
  const last = numbers.at(-1) ?? 0;
  const step = second - first;
  const even = numbers.every((number, at) => number === first + at * step);
  if (numbers.length > 2 && even && step === 1) return `${first} to ${last}`;
  if (numbers.length > 4 && even) return `${first}, ${second} … ${last}`;
  return numbers.join(', ');
}
