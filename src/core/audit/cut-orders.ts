/**
 * The other ways an order's cloth may honestly have been reckoned from its cuts: a half-drop by the rules
 * published beside the order of cutting that takes least, and the pattern's start with another line of the order.
 */
import { plainCut, type Dropped } from '../cloth/cuts';
import { takesOf, type Starts } from '../cloth/half-drop';
import { clothForCuts, cuttingOf, patternStart, type Cutting } from '../cloth/repeat';
import { cutsOf, roundedYardage, startsOf } from '../cloth/yardage';
import { exact, upToStep, type Length } from '../exact/length';
import type { Rules } from '../house/rules';
import { panelsOf } from '../cell/treatment';
import type { Window } from '../window/columns';
import type { WindowWork } from '../window/job';

/** A row's cloth as it was ordered: its widths, and its cut where the row has one. */
export interface ClothOrdered {
  readonly window: Window;
  readonly widths: number;
  readonly dropped: Dropped;
  readonly cutLength: Length | undefined;
}
export type CutOrdered = Pick<ClothOrdered, 'window' | 'dropped'>;

export const cuttingFor = ({ window, dropped }: CutOrdered, rules: Rules): Cutting =>
  cuttingOf(plainCut(dropped, rules), window.verticalRepeat, window.match, rules);

/** What each cut of a half-drop may be called: by what follows it, or with half a repeat more. */
export function* halfDropCuts(order: CutOrdered, rules: Rules): Generator<number> {
  const { cut, repeat, halfDrop } = cuttingFor(order, rules);
  if (!halfDrop || repeat === undefined) return;
  const { like, unlikeTwice } = takesOf(2 * cut, repeat);
  yield* [like, unlikeTwice / 2, like + repeat / 2, like + repeat];
}

/** How a half-drop may be bought; by its cuts alone, and with half a repeat more for the line, is a house’s own. */
export type HalfDropWay =
  | 'as cut'
  | 'a repeat more'
  | 'half a repeat more'
  | 'half a repeat a cut'
  | 'a repeat every other cut'
  | 'half repeats'
  | 'in turn';

export type Cloth = readonly [way: HalfDropWay, nanometres: number];

/** A line of cuts of one length, and what is added for the drop. */
export function* linesOf(cut: number, repeat: number, cuts: number): Generator<Cloth> {
  yield ['as cut', cuts * cut];
  yield ['a repeat more', cuts * cut + repeat];
  yield ['half a repeat more', cuts * cut + repeat / 2];
  yield ['half a repeat a cut', cuts * (cut + repeat / 2)];
  yield ['a repeat every other cut', cuts * cut + repeat * Math.floor(cuts / 2)];
}

/** A line's half-drop by each way; starts in turn or not. */
export function* halfDropCloths(
  { cut, repeat }: Cutting,
  { a, b, shared }: Starts,
  cuts: number,
): Generator<Cloth> {
  const repeated = repeat as Length;
  const { like, unlikeTwice } = takesOf(2 * cut, repeated);
  yield* linesOf(like, repeated, cuts);
  yield ['half repeats', (cuts * unlikeTwice) / 2];
  const whole = a + b + shared;
  const most = a === b ? 2 * b - 1 : 2 * Math.min(a, b);
  for (const last of [like, cut])
    for (const changes of [Math.min(1, b), Math.max(0, most)])
      yield ['in turn', (changes * unlikeTwice) / 2 + (whole - 1 - changes) * like + last];
}

const OF_A_HOUSE: ReadonlySet<HalfDropWay> = new Set<HalfDropWay>(['as cut', 'half a repeat more']);

/** By the order of cutting that takes least, whatever its panels begin with. */
export function* ruledHalfDrops(order: ClothOrdered, windows: number, rules: Rules): Generator<number> {
  const { widths, window } = order;
  const panels = panelsOf(window.draw ?? 'pair');
  for (const halfDropStarts of ['each panel alike', 'run on'] as const)
    yield clothForCuts(
      cuttingFor(order, rules),
      startsOf({ widths, panels }, windows, { ...rules, halfDropStarts }),
    );
}

/** By the row's own cut, in the first place what the rule leaves of it there. */
function ownCuts({ cut, repeat, rule }: Cutting, cutLength: number, cuts: number): number {
  // A length shown without its repeat has it added between the lengths.
  if (repeat !== undefined && rule === 'one repeat each' && cutLength < cut + repeat / 2)
    return cutLength * cuts + repeat * (cuts - 1);
  const first =
    repeat === undefined || (rule !== 'first cut exact' && rule !== 'one repeat each')
      ? cutLength
      : rule === 'first cut exact'
        ? cut
        : cutLength - repeat;
  return first + cutLength * (cuts - 1);
}

function* clothsOfWindows(order: ClothOrdered, windows: number, rules: Rules): Generator<number> {
  const { cutLength, widths, window } = order;
  const cutting = cuttingFor(order, rules);
  const cuts = cutsOf(widths, windows, rules);
  const starts = startsOf({ widths, panels: panelsOf(window.draw ?? 'pair') }, windows, rules);
  yield clothForCuts(cutting, starts);
  if (cuts === 0) return;
  if (cutLength !== undefined) yield ownCuts(cutting, cutLength, cuts);
  if (!cutting.halfDrop || cutting.repeat === undefined) return;
  for (const [way, cloth] of halfDropCloths(cutting, starts, cuts)) if (!OF_A_HOUSE.has(way)) yield cloth;
  yield* ruledHalfDrops(order, windows, rules);
}

/** Cloth as the rules round it, with the pattern's start where the house begins a line at one. */
export function* rounded(order: ClothOrdered, nm: number, rules: Rules): Generator<number> {
  const { quantity, runs } = runsOf(order, rules);
  const start = patternStart(order.window.verticalRepeat, rules);
  const cloth = exact(Math.ceil(nm));
  const yardage = roundedYardage(() => cloth, quantity, rules);
  yield yardage;
  if (start === 0) return;
  const once = upToStep(exact(cloth + start), rules.yardageStep);
  yield runs === quantity ? once : yardage - upToStep(cloth, rules.yardageStep) + once;
}

/** Windows of a line that are bought together. */
export const runsOf = ({ window }: ClothOrdered, rules: Rules): { quantity: number; runs: number } => {
  const quantity = window.quantity ?? 1;
  return { quantity, runs: rules.yardageRoundedBy === 'window' ? 1 : quantity };
};

/** How a house is known to buy its cloth where its rules leave it open (cloth-ways.ts). */
export interface OwnCloth {
  clothsOf(order: ClothOrdered, windows: number, rules: Rules): Iterable<number>;
  /** Whether it is bought so and in no other way. */
  isAlone(order: CutOrdered, rules: Rules): boolean;
  linings(works: readonly WindowWork[], quantity: number, rules: Rules): Iterable<number>;
}

/** Every yardage that follows from the widths and the cut of a row, as its rules round it. */
export function* honestYardages(order: ClothOrdered, rules: Rules, own?: OwnCloth): Generator<number> {
  const { runs } = runsOf(order, rules);
  for (const nm of own?.clothsOf(order, runs, rules) ?? []) yield* rounded(order, nm, rules);
  if (own?.isAlone(order, rules) === true) return;
  for (const nm of clothsOfWindows(order, runs, rules)) yield* rounded(order, nm, rules);
}
