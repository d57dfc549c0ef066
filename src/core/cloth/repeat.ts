/** What a pattern adds to the cuts: by the house rule, by a half-drop, and once to reach its start. */
import { finding, lengthFigure, step, type Finding, type Step } from '../cell/answer';
import { parameter } from '../findings/parameters';
import type { Match } from '../cell/treatment';
import type { RepeatRule } from '../cell/ways';
import { exact, NO_LENGTH, times, UNITS, upToStep, type Length } from '../exact/length';
import { showLength } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import { inTurn, leastOrder, takesOf, type Group, type Start, type Starts } from './half-drop';

/** A rule of cutting that needs no word of how the widths meet. */
export type StraightRule = Exclude<RepeatRule, 'half-drop alternating'>;

/** How a cloth's cuts go on from the cut before any repeat. */
export interface Cutting {
  readonly cut: Length;
  readonly repeat: Length | undefined;
  readonly rule: StraightRule;
  /** Neighbouring widths begin half a repeat apart. */
  readonly halfDrop: boolean;
}

/** A cloth without a pattern, or one whose pattern nothing has to meet. */
export const plainCutting = (cut: Length): Cutting => ({
  cut,
  repeat: undefined,
  rule: 'every cut up',
  halfDrop: false,
});

/**
 * A half-drop goes by what follows each cut, so that of the house rule only its last cut is left: exact
 * under “first cut exact”, else up to whole repeats.
 */
export function cuttingOf(
  cut: Length,
  repeat: Length | undefined,
  match: Match | undefined,
  rules: Rules,
): Cutting {
  if (repeat === undefined || repeat === 0) return plainCutting(cut);
  const { repeatRule } = rules;
  const halfDrop = match === 'half-drop' || (match !== 'straight' && repeatRule === 'half-drop alternating');
  const straight = repeatRule === 'half-drop alternating' ? 'every cut up' : repeatRule;
  const rule = halfDrop && straight !== 'first cut exact' ? 'every cut up' : straight;
  return { cut, repeat, rule, halfDrop };
}

/** What a cut takes off the bolt where one like it follows. */
export function furtherCut({ cut, repeat, rule }: Cutting): Length {
  if (repeat === undefined) return cut;
  if (rule === 'one repeat each' || rule === 'one repeat with every length') return exact(cut + repeat);
  return upToStep(cut, repeat);
}

/** The longest cut there may be; of a half-drop by what follows. */
export function longestCut(cutting: Cutting): Length {
  const further = furtherCut(cutting);
  if (!cutting.halfDrop || cutting.repeat === undefined) return further;
  const { unlikeTwice } = takesOf(2 * cutting.cut, cutting.repeat);
  return exact(Math.max(further, Math.ceil(unlikeTwice / 2)));
}

/** Cuts of one length, and of one start where the pattern is a half-drop. */
export interface CutsAlike {
  readonly length: Length;
  readonly count: number;
  readonly start?: Start | undefined;
}

/** The first two groups of a half-drop are its own A's and B's; those behind them are shared. */
export const isShared = (group: number): boolean => group > 1;

/**
 * How many of the shared cuts begin at A: a shared one may begin at either, since each of its halves fits one of
 * them. Least cloth is taken at all of one start, or where both starts are as many.
 */
function sharedAtA(groups: (atA: number) => readonly Group[], { a, b, shared }: Starts): number {
  const even = (b - a + shared) / 2;
  const tried = [shared, Math.ceil(even), Math.floor(even), Math.ceil(even) + 1, Math.floor(even) - 1, 0]
    .concat(Math.ceil(shared / 2), Math.floor(shared / 2))
    .filter((one) => one >= 0 && one <= shared);
  let [best, least] = [shared, Infinity];
  for (const atA of new Set(tried)) {
    const { twice } = leastOrder(groups(atA));
    if (twice < least) [best, least] = [atA, twice];
  }
  return best;
}

/** The cuts of a half-drop by what each takes. */
export function halfDropGroups({ cut, repeat, rule }: Cutting, { a, b, shared }: Starts): readonly Group[] {
  const repeated = repeat as Length;
  const group = (start: Start, count: number, cutTwice: number): Group => {
    const takes = takesOf(cutTwice, repeated);
    const last = rule === 'first cut exact' ? Math.ceil(cutTwice / 2) : takes.like;
    return { ...takes, start, count, last };
  };
  const groups = [group('A', a, 2 * cut), group('B', b, 2 * cut)];
  if (shared === 0) return groups;
  const longer = 2 * cut + repeated;
  const withShared = (atA: number): readonly Group[] => [
    ...groups,
    group('A', atA, longer),
    group('B', shared - atA, longer),
  ];
  return withShared(sharedAtA(withShared, { a, b, shared }));
}

function halfDropRun(cutting: Cutting, starts: Starts): readonly CutsAlike[] {
  const groups = halfDropGroups(cutting, starts);
  const order = leastOrder(groups);
  // Half a repeat may be half a nanometre: every other such cut leaves out what the last took too much.
  let up = Math.ceil(order.unlike.reduce((sum, one) => sum + one, 0) / 2);
  return groups.flatMap(({ start, like, unlikeTwice, last, count }, at): CutsAlike[] => {
    const unlike = order.unlike[at] ?? 0;
    const isLast = at === order.last ? 1 : 0;
    const more = Math.min(up, unlike);
    up -= more;
    const alike = [
      [like, count - unlike - isLast],
      [Math.ceil(unlikeTwice / 2), more],
      [Math.floor(unlikeTwice / 2), unlike - more],
      [last, isLast],
    ] as const;
    return alike.map(([length, many]) => ({ length: exact(length), count: many, start }));
  });
}

/** The cuts of one run by their real lengths, longest last; together they are its cloth to the nanometre. */
export function runOfCuts(cutting: Cutting, starts: Starts): readonly CutsAlike[] {
  const cuts = starts.a + starts.b + starts.shared;
  if (cuts === 0) return [];
  if (cutting.halfDrop && cutting.repeat !== undefined) return together(halfDropRun(cutting, starts));
  const further = furtherCut(cutting);
  const exactFirst = cutting.rule === 'first cut exact' || cutting.rule === 'one repeat each';
  const [first, rest] = exactFirst ? [1, cuts - 1] : [0, cuts];
  return together([
    { length: cutting.cut, count: first },
    { length: further, count: rest },
  ]);
}

/** Lengths alike once. */
function together(cuts: readonly CutsAlike[]): readonly CutsAlike[] {
  const found: CutsAlike[] = [];
  for (const one of cuts) {
    if (one.count === 0) continue;
    const at = found.findIndex(({ length, start }) => length === one.length && start === one.start);
    const same = found[at];
    if (same === undefined) found.push(one);
    else found[at] = { ...same, count: same.count + one.count };
  }
  return found;
}

export const clothOfCuts = (cuts: readonly CutsAlike[]): Length =>
  cuts.reduce((sum, { length, count }) => exact(sum + times(length, count)), NO_LENGTH);

/** Cloth for the cuts of one run, with what the repeat adds by the rule. */
export const clothForCuts = (cutting: Cutting, starts: Starts): Length =>
  clothOfCuts(runOfCuts(cutting, starts));

/** Cuts that all begin alike. */
export const allAlike = (count: number): Starts => ({ a: count, b: 0, shared: 0 });

/** What the order of a patterned cloth buys more, once, to reach the pattern's start. */
export function patternStart(repeat: Length | undefined, rules: Rules): Length {
  if (repeat === undefined || repeat === 0 || rules.patternStart === 'nothing') return NO_LENGTH;
  return rules.patternStart === 'one repeat' ? repeat : exact(UNITS.yd);
}

/** A half-drop without a repeat, and a pattern taller than the cut, are looked at before cutting. */
export function repeatFindings(
  cut: Length,
  repeat: Length | undefined,
  match: Match | undefined,
  rules: Rules,
): Finding[] {
  if (repeat === undefined || repeat === 0)
    return match === 'half-drop' ? [finding('matchWithoutRepeat', parameter('match'))] : [];
  if (repeat <= cut) return [];
  const unit = unitOf(rules);
  return [
    finding(
      'repeatTallerThanCut',
      parameter('verticalRepeat'),
      showLength(repeat, unit),
      showLength(cut, unit),
    ),
  ];
}

/** How the repeat lengthens a cut, and which cuts it leaves shorter. */
export function repeatSteps(cutting: Cutting): Step[] {
  const { cut, repeat, rule, halfDrop } = cutting;
  if (repeat === undefined) return [];
  const figures = [lengthFigure(cut), lengthFigure(repeat)];
  const further = furtherCut(cutting);
  if (halfDrop) {
    const { unlikeTwice } = takesOf(2 * cut, repeat);
    const unlike = exact(Math.ceil(unlikeTwice / 2));
    const like = step(
      'cut before one that begins alike',
      '{} up to whole repeats of {}',
      figures,
      lengthFigure(further),
    );
    const other = step(
      'cut before one that begins half a repeat apart',
      '{} up to an odd number of half repeats of {}',
      figures,
      lengthFigure(unlike),
    );
    const last = step('the last cut, as it is', '', [], lengthFigure(cut));
    return rule === 'first cut exact' ? [like, other, last] : [like, other];
  }
  if (rule === 'every cut up')
    return [step('cut length with repeat', '{} up to whole repeats of {}', figures, lengthFigure(further))];
  if (rule === 'one repeat with every length')
    return [step('cut length with repeat', '{} and one {} repeat', figures, lengthFigure(further))];
  return [
    step('the first cut, as it is', '', [], lengthFigure(cut)),
    rule === 'first cut exact'
      ? step('cut length after the first', '{} up to whole repeats of {}', figures, lengthFigure(further))
      : step('cut length after the first', '{} and one {} repeat', figures, lengthFigure(further)),
  ];
}

/** More cuts than this are told by their number, not one after the other. */
const TOLD = 12;

/** The order of cutting of a half-drop, where it has two starts: “A B A B A A”. */
export function orderInWords(cutting: Cutting, starts: Starts): string | undefined {
  const { a, b, shared } = starts;
  if (!cutting.halfDrop || cutting.repeat === undefined) return undefined;
  const groups = halfDropGroups(cutting, starts);
  if (new Set(groups.flatMap(({ start, count }) => (count > 0 ? [start] : []))).size < 2) return undefined;
  const order = leastOrder(groups);
  if (a + b + shared <= TOLD)
    return [...inTurn(groups, order)].map(({ at }) => groups[at]?.start ?? '').join(' ');
  const atA = groups[2]?.count ?? 0;
  const countOf = { A: a + atA, B: b + shared - atA };
  const other = order.begins === 'A' ? 'B' : 'A';
  if (order.unlike.reduce((sum, one) => sum + one, 0) === 1)
    return `all ${countOf[order.begins]} ${order.begins}, half a repeat down, then all ${countOf[other]} ${other}`;
  const more = Math.abs(countOf.A - countOf.B);
  const rest = more === 0 ? '' : `, then the ${more} ${countOf.A > countOf.B ? 'A' : 'B'} left`;
  return `${order.begins} and ${other} in turn, ${Math.min(countOf.A, countOf.B)} of each${rest}`;
}
