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

/** One repeat more an order, half a repeat more a cut, one repeat more on every other cut; starts in turn or not. */
function* halfDropCloths({ cut, repeat }: Cutting, { a, b, shared }: Starts): Generator<number> {
  const repeated = repeat as Length;
  const { like, unlikeTwice } = takesOf(2 * cut, repeated);
  const cuts = a + b + shared;
  yield* [
    cuts * like + repeated,
    cuts * (like + repeated / 2),
    cuts * like + repeated * Math.floor(cuts / 2),
  ];
  yield (cuts * unlikeTwice) / 2;
  const most = a === b ? 2 * b - 1 : 2 * Math.min(a, b);
  for (const last of [like, cut])
    for (const changes of [Math.min(1, b), Math.max(0, most)])
      yield (changes * unlikeTwice) / 2 + (cuts - 1 - changes) * like + last;
}

function* clothsOfWindows(order: ClothOrdered, windows: number, rules: Rules): Generator<number> {
  const { cutLength, widths, window } = order;
  const cutting = cuttingFor(order, rules);
  const { cut, repeat, rule, halfDrop } = cutting;
  const panels = panelsOf(window.draw ?? 'pair');
  const cuts = cutsOf(widths, windows, rules);
  const starts = startsOf({ widths, panels }, windows, rules);
  yield clothForCuts(cutting, starts);
  if (cuts === 0) return;
  if (cutLength !== undefined) {
    // The row's own cut, in the first place what the rule leaves of it there.
    const first =
      repeat === undefined || (rule !== 'first cut exact' && rule !== 'one repeat each')
        ? cutLength
        : rule === 'first cut exact'
          ? cut
          : cutLength - repeat;
    // A length shown without its repeat has it added between the lengths.
    const between = repeat !== undefined && rule === 'one repeat each' && cutLength < cut + repeat / 2;
    yield between ? cutLength * cuts + repeat * (cuts - 1) : first + cutLength * (cuts - 1);
  }
  if (!halfDrop || repeat === undefined) return;
  yield* halfDropCloths(cutting, starts);
  for (const halfDropStarts of ['each panel alike', 'run on'] as const)
    yield clothForCuts(cutting, startsOf({ widths, panels }, windows, { ...rules, halfDropStarts }));
}

/** Every yardage that follows from the widths and the cut of a row, as its rules round it. */
export function* honestYardages(order: ClothOrdered, rules: Rules): Generator<number> {
  const quantity = order.window.quantity ?? 1;
  const runs = rules.yardageRoundedBy === 'window' ? 1 : quantity;
  const start = patternStart(order.window.verticalRepeat, rules);
  for (const nm of clothsOfWindows(order, runs, rules)) {
    const cloth = exact(Math.ceil(nm));
    const yardage = roundedYardage(() => cloth, quantity, rules);
    yield yardage;
    if (start === 0) continue;
    const once = upToStep(exact(cloth + start), rules.yardageStep);
    yield runs === quantity ? once : yardage - upToStep(cloth, rules.yardageStep) + once;
  }
}
