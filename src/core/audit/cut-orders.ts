/**
 * The other ways an order's cloth may honestly have been reckoned from its cuts: a half-drop by the rules
 * published beside the order of cutting that takes least, and the pattern's start with another line of the order.
 */
import { plainCut, type Dropped } from '../cloth/cuts';
import { takesOf, type Starts } from '../cloth/half-drop';
import { clothForCuts, cuttingOf, furtherCut, patternStart, type Cutting } from '../cloth/repeat';
import { cutsOf, roundedYardage, startsOf } from '../cloth/yardage';
import { exact, upToStep, type Length } from '../exact/length';
import type { Rules } from '../house/rules';
import { panelsOf } from '../cell/treatment';
import type { Window } from '../window/columns';

/** A row's cloth as it was ordered: its widths, and its cut where the row has one. */
export interface ClothOrdered {
  readonly window: Window;
  readonly widths: number;
  readonly dropped: Dropped;
  readonly cutLength: Length | undefined;
}
type CutOrdered = Pick<ClothOrdered, 'window' | 'dropped'>;

const cuttingFor = ({ window, dropped }: CutOrdered, rules: Rules): Cutting =>
  cuttingOf(plainCut(dropped, rules), window.verticalRepeat, window.match, rules);

/** What each cut of a half-drop may be called: by what follows it, or with half a repeat more. */
export function* halfDropCuts(order: CutOrdered, rules: Rules): Generator<number> {
  const { cut, repeat, halfDrop } = cuttingFor(order, rules);
  if (!halfDrop || repeat === undefined) return;
  const { like, unlikeTwice } = takesOf(2 * cut, repeat);
  yield* [like, unlikeTwice / 2, like + repeat / 2, like + repeat];
}

/** How a house buys its half-drops, beside the order of cutting that takes least. */
export const HALF_DROP_WAYS = {
  'as cut': 'by its cuts alone',
  'a repeat more': 'with one repeat more for the line',
  'half a repeat more': 'with half a repeat more for the line',
  'half a repeat a cut': 'with half a repeat more on every cut',
  'a repeat every other cut': 'with one repeat more on every other cut',
  'half repeats': 'with every cut up to an odd half repeat',
  'in turn': 'in the order that it is cut',
} as const;
export type HalfDropWay = keyof typeof HALF_DROP_WAYS;

/** What a house does with its cloth that no rule says; a window's odd half is else bought whole. */
export interface ClothHabits {
  readonly byHalves?: true;
  /** Its half-drops, and in no other way. */
  readonly halfDrops?: readonly HalfDropWay[];
}

type Cloth = readonly [way: HalfDropWay, nanometres: number];

/** A line of cuts of one length, and what is added for the drop. */
function* linesOf(cut: number, repeat: number, cuts: number): Generator<Cloth> {
  yield ['as cut', cuts * cut];
  yield ['a repeat more', cuts * cut + repeat];
  yield ['half a repeat more', cuts * cut + repeat / 2];
  yield ['half a repeat a cut', cuts * (cut + repeat / 2)];
  yield ['a repeat every other cut', cuts * cut + repeat * Math.floor(cuts / 2)];
}

/** A line's half-drop by each way; starts in turn or not. */
function* halfDropCloths({ cut, repeat }: Cutting, { a, b, shared }: Starts, cuts: number): Generator<Cloth> {
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

/** The rules of cutting that are published; half a repeat for the line is a house’s own. */
const PUBLISHED: ReadonlySet<HalfDropWay> = new Set<HalfDropWay>([
  'a repeat more',
  'half a repeat a cut',
  'a repeat every other cut',
  'half repeats',
  'in turn',
]);

/** A half-drop’s cloth by each way a house may have. */
function* byWays(order: ClothOrdered, windows: number, rules: Rules, byHalves: boolean): Generator<Cloth> {
  const { widths, window } = order;
  const cutting = cuttingFor(order, rules);
  const starts = startsOf({ widths, panels: panelsOf(window.draw ?? 'pair') }, windows, rules);
  const whole = cutsOf(widths, windows, rules);
  if (!cutting.halfDrop || cutting.repeat === undefined || whole === 0) return;
  for (const cuts of new Set(byHalves ? [whole, widths * windows] : [whole])) {
    yield* halfDropCloths(cutting, starts, cuts);
    // The row’s own cut is what its yardage follows from.
    if (order.cutLength !== undefined) yield* linesOf(order.cutLength, cutting.repeat, cuts);
  }
  for (const one of ruledHalfDrops(order, windows, rules)) yield ['in turn', one];
}

/** By the order of cutting that takes least, whatever its panels begin with. */
function* ruledHalfDrops(order: ClothOrdered, windows: number, rules: Rules): Generator<number> {
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

function* clothsOfWindows(
  order: ClothOrdered,
  windows: number,
  rules: Rules,
  { byHalves = false, halfDrops }: { readonly byHalves?: boolean } & Pick<ClothHabits, 'halfDrops'>,
): Generator<number> {
  const { cutLength, widths, window } = order;
  const cutting = cuttingFor(order, rules);
  const cuts = cutsOf(widths, windows, rules);
  const isHalfDrop = cutting.halfDrop && cuts > 0;
  if (!isHalfDrop || halfDrops === undefined) {
    yield clothForCuts(
      cutting,
      startsOf({ widths, panels: panelsOf(window.draw ?? 'pair') }, windows, rules),
    );
    if (byHalves) yield (cutLength ?? furtherCut(cutting)) * widths * windows;
    if (cutLength !== undefined && cuts > 0) yield ownCuts(cutting, cutLength, cuts);
  }
  if (!isHalfDrop) return;
  for (const [way, cloth] of byWays(order, windows, rules, byHalves))
    if (halfDrops?.includes(way) ?? PUBLISHED.has(way)) yield cloth;
}

/** Cloth as the rules round it, with the pattern's start where the house begins a line at one. */
function* rounded(order: ClothOrdered, nm: number, rules: Rules): Generator<number> {
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
const runsOf = ({ window }: ClothOrdered, rules: Rules): { quantity: number; runs: number } => {
  const quantity = window.quantity ?? 1;
  return { quantity, runs: rules.yardageRoundedBy === 'window' ? 1 : quantity };
};

/** Every yardage that follows from the widths and the cut of a row, as its rules round it. */
export function* honestYardages(
  order: ClothOrdered,
  rules: Rules,
  habits: ClothHabits = {},
): Generator<number> {
  for (const nm of clothsOfWindows(order, runsOf(order, rules).runs, rules, habits))
    yield* rounded(order, nm, rules);
}

/** Whether a house’s own way of half-drops is known, and the cloth is one. */
export const hasOwnWay = (order: CutOrdered, rules: Rules, habits: ClothHabits | undefined): boolean =>
  habits?.halfDrops !== undefined && cuttingFor(order, rules).halfDrop;

/** The ways by which a half-drop takes so much; undefined of any other cloth. */
export function waysOfHalfDrop(
  order: ClothOrdered,
  rules: Rules,
  takes: (yardage: number) => boolean,
): ReadonlySet<HalfDropWay> | undefined {
  const { halfDrop, repeat } = cuttingFor(order, rules);
  if (!halfDrop || repeat === undefined) return undefined;
  const ways = new Set<HalfDropWay>();
  for (const [way, nm] of byWays(order, runsOf(order, rules).runs, rules, true))
    for (const yardage of rounded(order, nm, rules)) if (takes(yardage)) ways.add(way);
  return ways;
}
