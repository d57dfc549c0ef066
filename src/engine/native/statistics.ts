/** Places in a list, spreads, and how two lists go together. */
import { define, defineIn } from './call';
import * as measures from './measures';
import { numbersA, numbersIn, pairsIn, rowsIn, stop, stopping } from './ranges';
import { Area, DIV0, Fault, Grid, held, NA, NUM, toNumber, unproven, type Value } from './values';
import type { World } from './world';

type Many = (Value | undefined)[];
const ofList = (names: string, answer: (list: readonly number[]) => number | Fault): void => {
  defineIn(
    names,
    'r*',
    stopping((world: World, ...given: Many) => answer(numbersIn(world, given))),
  );
};
const ofListA = (names: string, answer: (list: readonly number[]) => number | Fault): void => {
  defineIn(
    names,
    'r*',
    stopping((world: World, ...given: Many) => answer(numbersA(world, given))),
  );
};
ofList('MEDIAN', measures.median);
defineIn(
  'MODE MODE.SNGL',
  'r*',
  stopping((world: World, ...given: Many) => {
    const many = given.every(
      (one) =>
        typeof one === 'number' ||
        ((one instanceof Area || one instanceof Grid) && one.rows * one.columns > 1),
    );
    return many
      ? measures.mode(numbersIn(world, given))
      : unproven('looks for the most frequent of single values');
  }),
);
ofList('STDEV STDEV.S', (list) => measures.deviation(list, 1));
ofList('STDEVP STDEV.P', (list) => measures.deviation(list, 0));
ofList('VAR VAR.S', (list) => measures.variance(list, 1));
ofList('VARP VAR.P', (list) => measures.variance(list, 0));
ofListA('STDEVA', (list) => measures.deviation(list, 1));
ofListA('STDEVPA', (list) => measures.deviation(list, 0));
ofListA('VARA', (list) => measures.variance(list, 1));
ofListA('VARPA', (list) => measures.variance(list, 0));
ofList('DEVSQ', (list) => (list.length === 0 ? NUM : measures.spreadOf(list)));
ofList('AVEDEV', (list) => {
  if (list.length === 0) return NUM;
  const middle = Number(measures.mean(list));
  return measures.mean(list.map((one) => Math.abs(one - middle)));
});
ofList('GEOMEAN', (list) =>
  list.length === 0 || list.some((one) => one <= 0)
    ? NUM
    : Math.exp(list.reduce((sum, one) => sum + Math.log(one), 0) / list.length),
);
ofList('HARMEAN', (list) =>
  list.length === 0 || list.some((one) => one <= 0)
    ? NUM
    : list.length / list.reduce((sum, one) => sum + 1 / one, 0),
);
function moment(list: readonly number[], power: number): number {
  const [middle, spread] = [Number(measures.mean(list)), Number(measures.deviation(list, 1))];
  return list.reduce((sum, one) => sum + ((one - middle) / spread) ** power, 0);
}
ofList('SKEW', (list) => {
  const n = list.length;
  if (n < 3 || measures.deviation(list, 1) === 0) return DIV0;
  return (n / ((n - 1) * (n - 2))) * moment(list, 3);
});
ofList('SKEW.P', (list) => {
  const spread = measures.deviation(list, 0);
  if (list.length < 3 || spread instanceof Fault || spread === 0) return DIV0;
  const middle = Number(measures.mean(list));
  return list.reduce((sum, one) => sum + ((one - middle) / spread) ** 3, 0) / list.length;
});
ofList('KURT', (list) => {
  const n = list.length;
  if (n < 4 || measures.deviation(list, 1) === 0) return DIV0;
  return (
    ((n * (n + 1)) / ((n - 1) * (n - 2) * (n - 3))) * moment(list, 4) -
    (3 * (n - 1) ** 2) / ((n - 2) * (n - 3))
  );
});
defineIn('MODE.MULT', 'r*', () => unproven('takes all the most frequent numbers'));

const placed = (names: string, answer: (list: readonly number[], place: number) => number | Fault): void => {
  defineIn(
    names,
    'rn',
    stopping((world: World, range: Value, place: number) => answer(numbersIn(world, [range]), place)),
  );
};
placed('LARGE', measures.largest);
placed('SMALL', measures.smallest);
placed('PERCENTILE PERCENTILE.INC', measures.percentile);
placed('PERCENTILE.EXC', measures.percentileExclusive);
placed('QUARTILE QUARTILE.INC', (list, place) => measures.percentile(list, Math.trunc(place) / 4));
placed('QUARTILE.EXC', (list, place) => measures.percentileExclusive(list, Math.trunc(place) / 4));
placed('TRIMMEAN', (list, part) => {
  if (list.length === 0 || part < 0 || part >= 1) return NUM;
  const off = Math.floor((list.length * part) / 2);
  return measures.mean(measures.sorted(list).slice(off, list.length - off));
});
const ranked = (names: string, mean: boolean): void => {
  defineIn(
    names,
    'nr?n',
    stopping((world: World, number: number, range: Value, rising = 0) => {
      const list = numbersIn(world, [range]);
      const equal = list.filter((one) => one === number).length;
      if (equal === 0) return NA;
      const before = list.filter((one) => (rising === 0 ? one > number : one < number)).length;
      return before + 1 + (mean ? (equal - 1) / 2 : 0);
    }),
  );
};
ranked('RANK RANK.EQ', false);
ranked('RANK.AVG', true);
const percentRanked = (names: string, extra: 0 | 1): void => {
  defineIn(
    names,
    'rn?n',
    stopping((world: World, range: Value, number: number, digits = 3) => {
      const list = measures.sorted(numbersIn(world, [range]));
      const [first, last] = [list[0], list.at(-1)];
      if (digits < 1 || first === undefined || last === undefined) return NUM;
      if (number < first || number > last) return NA;
      const at = list.findIndex((one) => one >= number);
      const [below, above] = [list[at - 1] ?? first, list[at] ?? last];
      const place = above === number ? at : at - 1 + (number - below) / (above - below);
      const part =
        extra === 0 ? (list.length === 1 ? 1 : place / (list.length - 1)) : (place + 1) / (list.length + 1);
      const scale = 10 ** Math.trunc(digits);
      return Math.floor(Number((part * scale).toPrecision(14))) / scale;
    }),
  );
};
percentRanked('PERCENTRANK PERCENTRANK.INC', 0);
percentRanked('PERCENTRANK.EXC', 1);
define('STANDARDIZE', 'nnn', (number: number, middle: number, spread: number) =>
  spread <= 0 ? NUM : (number - middle) / spread,
);
define('FISHER', 'n', (number: number) => (Math.abs(number) >= 1 ? NUM : Math.atanh(number)));
define('FISHERINV', 'n', (number: number) => Math.tanh(number));

/** Sums of squares and products about the means of two lists. */
function together(
  x: readonly number[],
  y: readonly number[],
): {
  readonly n: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
  readonly mx: number;
  readonly my: number;
} {
  const [mx, my] = [Number(measures.mean(x)), Number(measures.mean(y))];
  let [xx, yy, xy] = [0, 0, 0];
  for (const [at, one] of x.entries()) {
    const [a, b] = [one - mx, (y[at] ?? 0) - my];
    [xx, yy, xy] = [xx + a * a, yy + b * b, xy + a * b];
  }
  return { n: x.length, xx, yy, xy, mx, my };
}
const ofPairs = (names: string, answer: (sums: ReturnType<typeof together>) => number | Fault): void => {
  defineIn(
    names,
    'aa',
    stopping((world: World, first: Value, second: Value) => {
      const [y, x] = pairsIn(world, first, second, NA);
      if (x.length === 0) return DIV0;
      const found = answer(together(x, y));
      return found instanceof Fault ? found : held(found);
    }),
  );
};
const divide = (one: number, other: number): number | Fault => (other === 0 ? DIV0 : one / other);
ofPairs('CORREL PEARSON', ({ xy, xx, yy }) => divide(xy, Math.sqrt(xx * yy)));
ofPairs('RSQ', ({ xy, xx, yy }) => divide(xy * xy, xx * yy));
ofPairs('SLOPE', ({ xy, xx }) => divide(xy, xx));
ofPairs('INTERCEPT', ({ xy, xx, mx, my }) => (xx === 0 ? DIV0 : my - (xy / xx) * mx));
ofPairs('STEYX', ({ xy, xx, yy, n }) =>
  n < 3 || xx === 0 ? DIV0 : Math.sqrt((yy - (xy * xy) / xx) / (n - 2)),
);
ofPairs('COVAR COVARIANCE.P', ({ xy, n }) => xy / n);
ofPairs('COVARIANCE.S', ({ xy, n }) => (n < 2 ? DIV0 : xy / (n - 1)));
defineIn(
  'FORECAST FORECAST.LINEAR',
  'naa',
  stopping((world: World, at: number, ys: Value, xs: Value) => {
    const [y, x] = pairsIn(world, ys, xs, NA);
    if (x.length === 0) return NA;
    const { xy, xx, mx, my } = together(x, y);
    return xx === 0 ? DIV0 : my + (xy / xx) * (at - mx);
  }),
);
defineIn(
  'PROB',
  'aan?n',
  stopping((world: World, xs: Value, chances: Value, from: number, to?: number) => {
    const [x, p] = [rowsIn(world, xs).cells, rowsIn(world, chances).cells];
    if (x.length !== p.length) return NA;
    let [sum, all] = [0, 0];
    for (const [at, one] of x.entries()) {
      const [number, chance] = [toNumber(one), toNumber(p[at] ?? null)];
      if (number instanceof Fault) stop(number);
      if (chance instanceof Fault) stop(chance);
      if (Number(chance) <= 0 || Number(chance) > 1) return NUM;
      all += Number(chance);
      if (Number(number) >= from && Number(number) <= (to ?? from)) sum += Number(chance);
    }
    return Math.abs(all - 1) > 1e-9 ? NUM : sum;
  }),
);
