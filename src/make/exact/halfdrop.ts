/**
 * A half-drop off the roll: two like starts lie a whole number of repeats apart, two unlike ones an odd
 * number of half repeats. Every order of cutting is tried, by a table over what is left to cut.
 */
import { NONE, below, exact, upToOddHalf, upToStep, type Exact } from './figures';

export interface Letters {
  readonly a: number;
  readonly b: number;
}

/** How often an order of cutting can pass from one letter to the other, the least and the most. */
export interface Changes {
  readonly least: number;
  readonly most: number;
}

interface Ways {
  readonly fewest: number;
  readonly oftenest: number;
}
const NO_WAY: Ways = { fewest: Infinity, oftenest: -Infinity };
const known = new Map<string, Ways>();

/** Orders of `own` cuts of one letter, the last of them standing last, among `other` of the other letter. */
function endingIn(own: number, other: number): Ways {
  if (own === 0) return NO_WAY;
  if (own === 1 && other === 0) return { fewest: 0, oftenest: 0 };
  const key = `${own} ${other}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const same = endingIn(own - 1, other);
  const unlike = endingIn(other, own - 1);
  const ways = {
    fewest: Math.min(same.fewest, unlike.fewest + 1),
    oftenest: Math.max(same.oftenest, unlike.oftenest + 1),
  };
  known.set(key, ways);
  return ways;
}

export function changesOf({ a, b }: Letters): Changes {
  const ends = [endingIn(a, b), endingIn(b, a)];
  return {
    least: Math.min(...ends.map(({ fewest }) => fewest)),
    most: Math.max(...ends.map(({ oftenest }) => oftenest)),
  };
}

/** The least cloth for so many A's and B's; the last cut takes its own length. */
export function halfDropCloth(letters: Letters, cut: Exact, repeat: Exact, last: Exact): Exact {
  const all = letters.a + letters.b;
  if (all === 0) return NONE;
  const like = upToStep(cut, repeat);
  const unlike = upToOddHalf(cut, repeat);
  const { least, most } = changesOf(letters);
  const cloth = (changes: number): Exact =>
    unlike
      .mul(exact(changes))
      .add(like.mul(exact(all - 1 - changes)))
      .add(last);
  const one = cloth(least);
  const other = cloth(most);
  return below(other, one) ? other : one;
}

/** Letters of one panel from its leading edge: A, B, A …; a half width keeps the letter of its turn. */
export function lettersOf(widths: Exact): { readonly whole: Letters; readonly half: 'a' | 'b' | undefined } {
  const whole = Number(widths.floor().valueOf());
  const half = widths.d === 1n ? undefined : whole % 2 === 0 ? 'a' : 'b';
  return { whole: { a: Math.ceil(whole / 2), b: Math.floor(whole / 2) }, half };
}

export interface SharedLetters extends Letters {
  /** Cuts of which the two halves carry unlike letters: half a repeat longer, and begun at either. */
  readonly shared: number;
}

/** Two panels of so many whole widths and a half each, where the count runs on through them. */
export function lettersRunningOn(whole: number, windows: number): SharedLetters {
  // The halves stand side by side at the return edges: one place each.
  const places = [...Array(whole).keys(), ...Array.from({ length: whole }, (_, at) => whole + 2 + at)];
  const a = places.filter((place) => place % 2 === 0).length;
  return { a: a * windows, b: (places.length - a) * windows, shared: windows };
}

/** The least cloth with shared cuts among the others: every order of cutting, and of each shared cut either start. */
export function sharedCloth(
  letters: SharedLetters,
  cut: Exact,
  repeat: Exact,
  lastOf: (cut: Exact) => Exact,
): Exact {
  const half = repeat.div(2);
  const longer = cut.add(half);
  // In half repeats, so that every order is counted in whole numbers.
  const takes = [cut, longer].map((one) => ({
    like: upToStep(one, repeat).div(half).valueOf(),
    unlike: upToOddHalf(one, repeat).div(half).valueOf(),
  })) as [Takes, Takes];
  const known = new Map<number, number>();
  const least = (a: number, b: number, shared: number, next: 0 | 1): number => {
    if (a + b + shared === 0) return 0;
    const key = ((a * (letters.b + 1) + b) * (letters.shared + 1) + shared) * 2 + next;
    const found = known.get(key);
    if (found !== undefined) return found;
    const before = (start: 0 | 1, { like, unlike }: Takes): number => (start === next ? like : unlike);
    let best = Infinity;
    if (a > 0) best = Math.min(best, before(0, takes[0]) + least(a - 1, b, shared, 0));
    if (b > 0) best = Math.min(best, before(1, takes[0]) + least(a, b - 1, shared, 1));
    for (const start of shared > 0 ? ([0, 1] as const) : [])
      best = Math.min(best, before(start, takes[1]) + least(a, b, shared - 1, start));
    known.set(key, best);
    return best;
  };
  const { a, b, shared } = letters;
  const ends = [
    ...(a > 0
      ? [
          exact(least(a - 1, b, shared, 0))
            .mul(half)
            .add(lastOf(cut)),
        ]
      : []),
    ...(b > 0
      ? [
          exact(least(a, b - 1, shared, 1))
            .mul(half)
            .add(lastOf(cut)),
        ]
      : []),
    ...(shared > 0
      ? ([0, 1] as const).map((start) =>
          exact(least(a, b, shared - 1, start))
            .mul(half)
            .add(lastOf(longer)),
        )
      : []),
  ];
  return ends.reduce((one, other) => (below(other, one) ? other : one));
}

interface Takes {
  readonly like: number;
  readonly unlike: number;
}
