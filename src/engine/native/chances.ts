/** Gamma, beta and error functions, to the last digits of a double. */
import { unproven } from './values';

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
/** The logarithm of gamma, for what is above 0. */
export function gammaLog(x: number): number {
  if (x === 1 || x === 2) return 0;
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - gammaLog(1 - x);
  if (x > 15) {
    // Stirling's series: eight terms are more than enough from here on.
    const terms = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];
    let [series, power] = [0, x];
    for (const term of terms) {
      series += term / power;
      power *= x * x;
    }
    return (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + series;
  }
  const at = x - 1;
  const t = at + 7.5;
  const sum = LANCZOS.slice(1).reduce((total, one, i) => total + one / (at + i + 1), LANCZOS[0] ?? 1);
  return 0.5 * Math.log(2 * Math.PI) + (at + 0.5) * Math.log(t) - t + Math.log(sum);
}

const MOST_STEPS = 100_000;
/** The lower part of gamma, of 1. */
export function gammaPart(a: number, x: number): number {
  if (x <= 0) return 0;
  if (x < a + 1) {
    let [sum, term] = [1 / a, 1 / a];
    for (let n = 1; n < MOST_STEPS; n++) {
      term *= x / (a + n);
      sum += term;
      if (Math.abs(term) < Math.abs(sum) * 1e-17) break;
    }
    return sum * Math.exp(-x + a * Math.log(x) - gammaLog(a));
  }
  return 1 - gammaRest(a, x);
}
/** The upper part, of 1, where x is well above a. */
export function gammaRest(a: number, x: number): number {
  if (x < a + 1) return 1 - gammaPart(a, x);
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < MOST_STEPS; n++) {
    const factor = -n * (n - a);
    b += 2;
    d = 1 / (factor * d + b || 1e-300);
    c = b + factor / c || 1e-300;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return Math.exp(-x + a * Math.log(x) - gammaLog(a)) * h;
}

export const errorPart = (x: number): number => (x < 0 ? -gammaPart(0.5, x * x) : gammaPart(0.5, x * x));
export const errorRest = (x: number): number => (x < 0 ? 1 + gammaPart(0.5, x * x) : gammaRest(0.5, x * x));

export const betaLog = (a: number, b: number): number => gammaLog(a) + gammaLog(b) - gammaLog(a + b);
/** The lower part of beta, of 1. */
export function betaPart(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - betaLog(a, b));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || 1e-300);
  let h = d;
  for (let m = 1; m < MOST_STEPS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || 1e-300);
    c = 1 + even / c || 1e-300;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || 1e-300);
    c = 1 + odd / c || 1e-300;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return h;
}

export const normalPart = (z: number): number =>
  z < 0 ? errorRest(-z / Math.SQRT2) / 2 : 1 - errorRest(z / Math.SQRT2) / 2;
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Where a rising function reaches `wanted`, between two places, by halving to the last digit. */
export function inverted(rising: (x: number) => number, wanted: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let step = 0; step < 1_100; step++) {
    const middle = low / 2 + high / 2;
    if (middle === low || middle === high) break;
    if (rising(middle) < wanted) low = middle;
    else high = middle;
  }
  return low / 2 + high / 2;
}
/** What a distribution's own last digits may be off by, and how far its place may then be off. */
const [LAST_DIGITS, NEAR] = [5e-16, 1e-12];
/** The same, where no last digit of a chance moves the place by more than a few of its own. */
export function surelyInverted(
  rising: (x: number) => number,
  wanted: number,
  from: number,
  to: number,
): number {
  const x = inverted(rising, wanted, from, to);
  const step = 1e-4;
  const slope = (rising(x * (1 + step)) - rising(x * (1 - step))) / (2 * step);
  return slope * NEAR > LAST_DIGITS * Math.abs(wanted)
    ? x
    : unproven('looks for a place that the last digit of a chance decides');
}
export function normalAt(part: number): number {
  if (part === 0.5) return 0;
  // From the smaller side, where a chance keeps its digits.
  const tail = Math.min(part, 1 - part);
  const z = inverted((x) => -normalPart(-x), -tail, 0, 40);
  return part < 0.5 ? -z : z;
}
