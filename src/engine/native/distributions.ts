/** Distributions of chance. */
import { define } from './call';
import {
  betaLog,
  betaPart,
  errorPart,
  errorRest,
  gammaLog,
  gammaPart,
  gammaRest,
  surelyInverted,
  normalAt,
  normalDensity,
  normalPart,
} from './chances';
import { combinations } from './numbers';
import { bounded, DIV0, Fault, held, NUM } from './values';

type Answer = number | Fault;
const { exp, log, sqrt, trunc } = Math;

define('GAMMALN GAMMALN.PRECISE', 'n', (x: number): Answer => (x <= 0 ? NUM : gammaLog(x)));
define('GAMMA', 'n', (x: number): Answer => {
  if (x === 0 || (x < 0 && Number.isInteger(x))) return NUM;
  if (x > 171.62) return NUM;
  if (Number.isInteger(x)) {
    let product = 1;
    for (let one = 2; one < x; one++) product *= one;
    return held(product);
  }
  return x > 0 ? held(exp(gammaLog(x))) : held(Math.PI / (Math.sin(Math.PI * x) * exp(gammaLog(1 - x))));
});
define('ERF', 'm?m', (from: number, to?: number): Answer =>
  to === undefined ? errorPart(from) : errorPart(to) - errorPart(from),
);
define('ERF.PRECISE', 'm', (x: number): Answer => errorPart(x));
define('ERFC ERFC.PRECISE', 'm', (x: number): Answer => errorRest(x));
define('GAUSS', 'n', (z: number): Answer => errorPart(z / Math.SQRT2) / 2);
define('PHI', 'n', (z: number): Answer => normalDensity(z));

define('NORMSDIST', 'n', (z: number): Answer => normalPart(z));
define('NORM.S.DIST', 'nb', (z: number, whole: boolean): Answer =>
  whole ? normalPart(z) : normalDensity(z),
);
define('NORMDIST NORM.DIST', 'nnnb', (x: number, middle: number, spread: number, whole: boolean): Answer => {
  if (spread <= 0) return NUM;
  const z = (x - middle) / spread;
  return whole ? normalPart(z) : normalDensity(z) / spread;
});
define('NORMSINV NORM.S.INV', 'n', (part: number): Answer => (part <= 0 || part >= 1 ? NUM : normalAt(part)));
define('NORMINV NORM.INV', 'nnn', (part: number, middle: number, spread: number): Answer =>
  part <= 0 || part >= 1 || spread <= 0 ? NUM : middle + spread * normalAt(part),
);
define('CONFIDENCE CONFIDENCE.NORM', 'nnn', (part: number, spread: number, size: number): Answer =>
  part <= 0 || part >= 1 || spread <= 0 || size < 1
    ? NUM
    : (-normalAt(part / 2) * spread) / sqrt(trunc(size)),
);
define('LOGNORM.DIST', 'nnnb', (x: number, middle: number, spread: number, whole: boolean): Answer => {
  if (x <= 0 || spread <= 0) return NUM;
  const z = (log(x) - middle) / spread;
  return whole ? normalPart(z) : normalDensity(z) / (x * spread);
});
define('LOGNORMDIST', 'nnn', (x: number, middle: number, spread: number): Answer =>
  x <= 0 || spread <= 0 ? NUM : normalPart((log(x) - middle) / spread),
);
define('LOGINV LOGNORM.INV', 'nnn', (part: number, middle: number, spread: number): Answer =>
  part <= 0 || part >= 1 || spread <= 0 ? NUM : exp(middle + spread * normalAt(part)),
);

define('EXPONDIST EXPON.DIST', 'nnb', (x: number, rate: number, whole: boolean): Answer => {
  if (x < 0 || rate <= 0) return NUM;
  return whole ? -Math.expm1(-rate * x) : rate * exp(-rate * x);
});
define('WEIBULL WEIBULL.DIST', 'nnnb', (x: number, shape: number, scale: number, whole: boolean): Answer => {
  if (x < 0 || shape <= 0 || scale <= 0) return NUM;
  const power = (x / scale) ** shape;
  return whole ? -Math.expm1(-power) : (shape / scale) * (x / scale) ** (shape - 1) * exp(-power);
});
define('POISSON POISSON.DIST', 'nnb', (count: number, mean: number, whole: boolean): Answer => {
  const k = trunc(count);
  if (k < 0 || mean < 0) return NUM;
  if (mean === 0) return whole || k === 0 ? 1 : 0;
  return whole ? gammaRest(k + 1, mean) : exp(k * log(mean) - mean - gammaLog(k + 1));
});
const binomial = (k: number, n: number, p: number): number => {
  if (p === 0) return k === 0 ? 1 : 0;
  if (p === 1) return k === n ? 1 : 0;
  const ways = combinations(n, k);
  return Number.isFinite(ways) && n < 1_000
    ? ways * p ** k * (1 - p) ** (n - k)
    : exp(gammaLog(n + 1) - gammaLog(k + 1) - gammaLog(n - k + 1) + k * log(p) + (n - k) * Math.log1p(-p));
};
define(
  'BINOMDIST BINOM.DIST',
  'nnnb',
  (count: number, trials: number, chance: number, whole: boolean): Answer => {
    const [k, n] = [trunc(count), trunc(trials)];
    if (k < 0 || k > n || chance < 0 || chance > 1) return NUM;
    if (!whole) return binomial(k, n, chance);
    return k === n ? 1 : betaPart(1 - chance, n - k, k + 1);
  },
);
define('NEGBINOMDIST', 'nnn', (fails: number, wins: number, chance: number): Answer => {
  const [f, w] = [trunc(fails), trunc(wins)];
  if (f < 0 || w < 1 || chance <= 0 || chance >= 1) return NUM;
  return combinations(f + w - 1, w - 1) * chance ** w * (1 - chance) ** f;
});
define('NEGBINOM.DIST', 'nnnb', (fails: number, wins: number, chance: number, whole: boolean): Answer => {
  const [f, w] = [trunc(fails), trunc(wins)];
  if (f < 0 || w < 1 || chance <= 0 || chance >= 1) return NUM;
  return whole
    ? betaPart(chance, w, f + 1)
    : combinations(f + w - 1, w - 1) * chance ** w * (1 - chance) ** f;
});
define('CRITBINOM BINOM.INV', 'nnn', (trials: number, chance: number, part: number): Answer => {
  const n = trunc(trials);
  if (n < 0 || chance < 0 || chance > 1 || part <= 0 || part >= 1) return NUM;
  let sum = 0;
  for (let k = 0; k <= bounded(n); k++) {
    sum += binomial(k, n, chance);
    if (sum >= part) return k;
  }
  return n;
});
const hypergeometric = (k: number, n: number, marked: number, all: number): number =>
  k < 0 || k > n || k > marked || n - k > all - marked
    ? 0
    : (combinations(marked, k) * combinations(all - marked, n - k)) / combinations(all, n);
const hyper = (whole: boolean | undefined, given: readonly number[]): Answer => {
  const [k = 0, n = 0, marked = 0, all = 0] = given.map(trunc);
  if (k < 0 || n <= 0 || n > all || marked <= 0 || marked > all || all <= 0 || k > Math.min(n, marked))
    return NUM;
  if (k < Math.max(0, n - all + marked)) return NUM;
  if (whole !== true) return hypergeometric(k, n, marked, all);
  let sum = 0;
  for (let one = 0; one <= bounded(k); one++) sum += hypergeometric(one, n, marked, all);
  return sum;
};
define('HYPGEOMDIST', 'nnnn', (...given: number[]) => hyper(undefined, given));
define('HYPGEOM.DIST', 'nnnnb', (k: number, n: number, marked: number, all: number, whole: boolean) =>
  hyper(whole, [k, n, marked, all]),
);

define('GAMMADIST GAMMA.DIST', 'nnnb', (x: number, shape: number, scale: number, whole: boolean): Answer => {
  if (x < 0 || shape <= 0 || scale <= 0) return NUM;
  if (whole) return gammaPart(shape, x / scale);
  if (x === 0) return shape < 1 ? NUM : shape === 1 ? 1 / scale : 0;
  return exp((shape - 1) * log(x) - x / scale - shape * log(scale) - gammaLog(shape));
});
/** A place beyond which hardly any chance is left. */
const farther = (part: (x: number) => number, wanted: number): number => {
  let far = 1;
  while (part(far) < wanted && far < 1e300) far *= 2;
  return far;
};
const inverse = (part: (x: number) => number, wanted: number): number =>
  wanted === 0 ? 0 : surelyInverted(part, wanted, 0, farther(part, wanted));
define('GAMMAINV GAMMA.INV', 'nnn', (part: number, shape: number, scale: number): Answer =>
  part < 0 || part >= 1 || shape <= 0 || scale <= 0 ? NUM : scale * inverse((x) => gammaPart(shape, x), part),
);
const chi = (x: number, freedom: number): number => gammaPart(freedom / 2, x / 2);
const free = (freedom: number): boolean => freedom >= 1 && freedom <= 1e10;
define('CHISQ.DIST', 'nnb', (x: number, given: number, whole: boolean): Answer => {
  const freedom = trunc(given);
  if (x < 0 || !free(freedom)) return NUM;
  if (whole) return chi(x, freedom);
  if (x === 0) return freedom > 2 ? 0 : freedom === 2 ? 0.5 : NUM;
  return exp((freedom / 2 - 1) * log(x) - x / 2 - (freedom / 2) * Math.LN2 - gammaLog(freedom / 2));
});
define('CHIDIST CHISQ.DIST.RT', 'nn', (x: number, freedom: number): Answer =>
  x < 0 || !free(trunc(freedom)) ? NUM : gammaRest(trunc(freedom) / 2, x / 2),
);
define('CHISQ.INV', 'nn', (part: number, freedom: number): Answer =>
  part < 0 || part >= 1 || !free(trunc(freedom)) ? NUM : inverse((x) => chi(x, trunc(freedom)), part),
);
define('CHIINV CHISQ.INV.RT', 'nn', (part: number, freedom: number): Answer =>
  part <= 0 || part > 1 || !free(trunc(freedom))
    ? NUM
    : part === 1
      ? 0
      : surelyInverted(
          (x) => -gammaRest(trunc(freedom) / 2, x / 2),
          -part,
          0,
          farther((x) => -gammaRest(trunc(freedom) / 2, x / 2), -part),
        ),
);

const betaScaled = (x: number, a: number, b: number, low: number, high: number): number | undefined =>
  a <= 0 || b <= 0 || low >= high || x < low || x > high ? undefined : (x - low) / (high - low);
define('BETADIST', 'nnn?nn', (x: number, a: number, b: number, low = 0, high = 1): Answer => {
  const at = betaScaled(x, a, b, low, high);
  return at === undefined ? NUM : betaPart(at, a, b);
});
define(
  'BETA.DIST',
  'nnnb?nn',
  (x: number, a: number, b: number, whole: boolean, low = 0, high = 1): Answer => {
    const at = betaScaled(x, a, b, low, high);
    if (at === undefined) return NUM;
    if (whole) return betaPart(at, a, b);
    if (at === 0 || at === 1) return NUM;
    return exp((a - 1) * log(at) + (b - 1) * Math.log1p(-at) - betaLog(a, b)) / (high - low);
  },
);
define('BETAINV BETA.INV', 'nnn?nn', (part: number, a: number, b: number, low = 0, high = 1): Answer =>
  part <= 0 || part >= 1 || a <= 0 || b <= 0
    ? NUM
    : low + (high - low) * surelyInverted((x) => betaPart(x, a, b), part, 0, 1),
);

/** Beyond t on one side. */
const tRest = (t: number, freedom: number): number =>
  betaPart(freedom / (freedom + t * t), freedom / 2, 0.5) / 2;
const tPart = (t: number, freedom: number): number => (t < 0 ? tRest(t, freedom) : 1 - tRest(t, freedom));
define('T.DIST', 'nnb', (t: number, given: number, whole: boolean): Answer => {
  const freedom = trunc(given);
  if (freedom < 1) return whole ? NUM : DIV0;
  if (whole) return tPart(t, freedom);
  return (
    exp(-((freedom + 1) / 2) * Math.log1p((t * t) / freedom) - betaLog(0.5, freedom / 2)) / sqrt(freedom)
  );
});
define('T.DIST.RT', 'nn', (t: number, freedom: number): Answer =>
  freedom < 1 ? NUM : 1 - tPart(t, trunc(freedom)),
);
define('T.DIST.2T', 'nn', (t: number, freedom: number): Answer =>
  freedom < 1 || t < 0 ? NUM : 2 * tRest(t, trunc(freedom)),
);
define('TDIST', 'nnn', (t: number, freedom: number, given: number): Answer => {
  const sides = trunc(given);
  return t < 0 || freedom < 1 || (sides !== 1 && sides !== 2) ? NUM : sides * tRest(t, trunc(freedom));
});
/** Where so much lies beyond on one side. */
const tAt = (rest: number, freedom: number): number =>
  surelyInverted(
    (t) => -tRest(t, freedom),
    -rest,
    0,
    farther((t) => -tRest(t, freedom), -rest),
  );
define('TINV T.INV.2T', 'nn', (part: number, freedom: number): Answer =>
  part <= 0 || part > 1 || freedom < 1 ? NUM : part === 1 ? 0 : tAt(part / 2, trunc(freedom)),
);
define('T.INV', 'nn', (part: number, freedom: number): Answer => {
  if (part <= 0 || part >= 1 || freedom < 1) return NUM;
  return part === 0.5 ? 0 : part < 0.5 ? -tAt(part, trunc(freedom)) : tAt(1 - part, trunc(freedom));
});
define('CONFIDENCE.T', 'nnn', (part: number, spread: number, size: number): Answer => {
  if (part <= 0 || part >= 1 || spread <= 0 || size < 1) return NUM;
  return size < 2 ? DIV0 : (tAt(part / 2, trunc(size) - 1) * spread) / sqrt(trunc(size));
});
const fRest = (x: number, one: number, other: number): number =>
  betaPart(other / (other + one * x), other / 2, one / 2);
const fPart = (x: number, one: number, other: number): number =>
  betaPart((one * x) / (other + one * x), one / 2, other / 2);
define('FDIST F.DIST.RT', 'nnn', (x: number, one: number, other: number): Answer =>
  x < 0 || one < 1 || other < 1 ? NUM : fRest(x, trunc(one), trunc(other)),
);
define('F.DIST', 'nnnb', (x: number, first: number, second: number, whole: boolean): Answer => {
  const [one, other] = [trunc(first), trunc(second)];
  if (x < 0 || one < 1 || other < 1) return NUM;
  if (whole) return fPart(x, one, other);
  if (x === 0) return one > 2 ? 0 : one === 2 ? 1 : NUM;
  return exp(
    (one / 2) * log(one) +
      (other / 2) * log(other) +
      (one / 2 - 1) * log(x) -
      ((one + other) / 2) * log(other + one * x) -
      betaLog(one / 2, other / 2),
  );
});
define('FINV F.INV.RT', 'nnn', (part: number, first: number, second: number): Answer => {
  const [one, other] = [trunc(first), trunc(second)];
  if (part <= 0 || part > 1 || one < 1 || other < 1) return NUM;
  if (part === 1) return 0;
  const rest = (x: number): number => -fRest(x, one, other);
  return surelyInverted(rest, -part, 0, farther(rest, -part));
});
define('F.INV', 'nnn', (part: number, one: number, other: number): Answer =>
  part < 0 || part >= 1 || one < 1 || other < 1
    ? NUM
    : inverse((x) => fPart(x, trunc(one), trunc(other)), part),
);
