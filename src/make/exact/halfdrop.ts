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
