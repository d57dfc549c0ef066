/** Widths of a half-drop pattern: neighbours start half a repeat apart, and the best order of cutting is bought. */
import type Fraction from 'fraction.js';
import { HALF, upTo } from './exact';

interface Panels {
  readonly panels: number;
  /** Widths of each panel; halves of two panels come out of one cut. */
  readonly widths: Fraction;
}

/** How many cuts start with the motif and how many half a repeat down; each panel begins alike. */
export function lettersOf({ panels, widths }: Panels): { readonly a: number; readonly b: number } {
  const whole = Number(widths.floor().valueOf());
  const shared = widths.equals(whole) ? 0 : Math.ceil(panels / 2);
  const a = Math.ceil(whole / 2) * panels;
  const b = Math.floor(whole / 2) * panels;
  // The half stands after the whole widths, so it carries the next letter.
  return whole % 2 === 0 ? { a: a + shared, b } : { a, b: b + shared };
}

/** The least an odd number of half repeats that holds the cut. */
function oddHalves(cut: Fraction, repeat: Fraction): Fraction {
  const half = repeat.mul(HALF);
  const halves = cut.div(half).ceil();
  return halves.mod(2).equals(0) ? halves.add(1).mul(half) : halves.mul(half);
}

/** The length that the cuts take off the bolt, every cut up to where the next begins. */
export function halfDrop(cut: Fraction, repeat: Fraction, panels: Panels): Fraction {
  const { a, b } = lettersOf(panels);
  const like = upTo(cut, repeat);
  const unlike = oddHalves(cut, repeat);
  const steps = a + b - 1;
  const most = a === b ? 2 * a - 1 : 2 * Math.min(a, b);
  const least = Math.min(a, b) === 0 ? 0 : 1;
  const changes = unlike.compare(like) > 0 ? least : most;
  return unlike
    .mul(changes)
    .add(like.mul(steps - changes))
    .add(like);
}
