/**
 * A half-drop as it is cut: neighbouring widths begin half a repeat apart, A, B, A … Off a roll two like
 * starts lie a whole number of repeats apart, two unlike ones an odd number of half repeats, so what a cut
 * takes depends on the cut that follows it, and the order of cutting on which of the two is less.
 *
 * Half a repeat may be half a nanometre: figures named “twice” are doubled, and so always whole.
 */
import type { Length } from '../exact/length';

/** Where the pattern begins at a width's top: at the motif, or half a repeat down. */
export type Start = 'A' | 'B';

/** Cuts by their start; `shared` serve two panels from unlike starts, half a repeat longer for it. */
export interface Starts {
  readonly a: number;
  readonly b: number;
  readonly shared: number;
}

/** What one cut takes off the roll, by what follows it. */
export interface Takes {
  /** A cut of the same start follows: whole repeats. */
  readonly like: number;
  /** A cut of the other start follows: an odd number of half repeats, doubled. */
  readonly unlikeTwice: number;
}

/** `cutTwice`: the cut before any repeat, doubled. */
export function takesOf(cutTwice: number, repeat: Length): Takes {
  const halves = Math.ceil(cutTwice / repeat);
  return {
    like: Math.ceil(cutTwice / (2 * repeat)) * repeat,
    unlikeTwice: (halves % 2 === 0 ? halves + 1 : halves) * repeat,
  };
}

/** Cuts alike: of one start and length. */
export interface Group extends Takes {
  readonly start: Start;
  /** What it takes where no cut follows. */
  readonly last: number;
  readonly count: number;
}

/** An order of cutting that takes least. */
export interface Order {
  readonly twice: number;
  readonly begins: Start;
  /** Cuts after which the start changes, and not, of each group by its place. */
  readonly unlike: readonly number[];
  /** The group of the very last cut, by its place; -1 where there is none. */
  readonly last: number;
}

interface Placed extends Group {
  readonly at: number;
}

/** What a change of start adds, doubled; where it is less, something is saved. */
const changeOf = (group: Group): number => group.unlikeTwice - 2 * group.like;

/** So many changes after the cuts for which they cost least; groups are sorted by what a change adds. */
function changes(groups: readonly Placed[], count: number, into?: number[]): number {
  let twice = 0;
  for (const group of groups) {
    const taken = Math.min(count, group.count);
    twice += taken * changeOf(group);
    count -= taken;
    if (into !== undefined) into[group.at] = taken;
  }
  return twice;
}

const countOf = (groups: readonly Group[]): number => groups.reduce((sum, { count }) => sum + count, 0);

/** Where the cost of more changes may turn from falling to rising: at the end of a group. */
function turningPoints(groups: readonly Group[]): number[] {
  let all = 0;
  return groups.flatMap(({ count }) => [(all += count), all + 1]);
}

/** The order that takes least of all: every last cut, beginning and number of changes is looked at. */
export function leastOrder(groups: readonly Group[]): Order {
  const plain = groups.reduce((sum, { like, count }) => sum + 2 * like * count, 0);
  const placed = groups
    .map((group, at): Placed => ({ ...group, at }))
    .filter(({ count }) => count > 0)
    .sort((one, other) => changeOf(one) - changeOf(other));
  const startingAt = (start: Start): Placed[] => placed.filter((group) => group.start === start);
  const none = groups.map(() => 0);
  let best: Order = { twice: plain, begins: 'A', unlike: none, last: -1 };
  let found = false;
  for (const end of placed) {
    const others = startingAt(end.start === 'A' ? 'B' : 'A');
    const own = startingAt(end.start).map((group) =>
      group.at === end.at ? { ...group, count: group.count - 1 } : group,
    );
    const saved = plain - 2 * (end.like - end.last);
    const most = countOf(others);
    const keep = (changesOfOthers: number, changesOfOwn: number): void => {
      const twice = saved + changes(others, changesOfOthers) + changes(own, changesOfOwn);
      const begins = changesOfOthers === changesOfOwn ? end.start : end.start === 'A' ? 'B' : 'A';
      if (found && (twice > best.twice || (twice === best.twice && begins >= best.begins))) return;
      found = true;
      const unlike = [...none];
      changes(others, changesOfOthers, unlike);
      changes(own, changesOfOwn, unlike);
      best = { twice, begins, unlike, last: end.at };
    };
    if (most === 0) {
      keep(0, 0);
      continue;
    }
    for (const point of new Set([1, most, ...turningPoints(others), ...turningPoints(own)])) {
      if (point < 1 || point > most) continue;
      // From the other start there is always one change more, or as many where it begins as it ends.
      if (point - 1 <= countOf(own)) keep(point, point - 1);
      if (point <= countOf(own)) keep(point, point);
    }
  }
  return best;
}

/** A cut in its place. */
export interface InTurn {
  /** The group's place. */
  readonly at: number;
  readonly length: number;
}

/**
 * The order, cut by cut: the changes first, one after the other, then what is left of each start together.
 * Lengths are whole nanometres; together they are half of `twice`, up.
 */
export function* inTurn(groups: readonly Group[], order: Order): Generator<InTurn> {
  const { begins, last } = order;
  const unlike = [...order.unlike];
  const like = groups.map(({ count }, at) => count - (unlike[at] ?? 0) - (at === last ? 1 : 0));
  const ends = groups[last]?.start;
  const places = (start: Start): number[] =>
    groups.flatMap((group, at) => (group.start === start ? [at] : []));
  const placesOf = { A: places('A'), B: places('B') };
  const left = (start: Start, counts: readonly number[]): number =>
    placesOf[start].reduce((sum, at) => sum + (counts[at] ?? 0), 0);
  const next = (start: Start, counts: number[]): number => {
    const at = placesOf[start].find((one) => (counts[one] ?? 0) > 0) as number;
    counts[at] = (counts[at] ?? 0) - 1;
    return at;
  };
  let up = true;
  let start = begins;
  for (let runs = left('A', unlike) + left('B', unlike) + 1; runs > 0; runs--) {
    // The last run of a start takes the cuts that have their own start after them.
    const isLastRun = left(start, unlike) === (start === ends ? 0 : 1);
    while (isLastRun && left(start, like) > 0) {
      const at = next(start, like);
      yield { at, length: groups[at]?.like as number };
    }
    if (runs === 1) {
      if (last >= 0) yield { at: last, length: groups[last]?.last as number };
      return;
    }
    const at = next(start, unlike);
    const twice = groups[at]?.unlikeTwice as number;
    yield { at, length: up ? Math.ceil(twice / 2) : Math.floor(twice / 2) };
    up = !up;
    start = start === 'A' ? 'B' : 'A';
  }
}
