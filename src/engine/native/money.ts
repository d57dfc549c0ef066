/** Loans, cash flows, depreciation and interest. */
import { define, defineIn } from './call';
import { numbersIn, stopping } from './ranges';
import { bounded, DIV0, type Fault, held, NUM, unproven, VALUE, type Value } from './values';
import type { World } from './world';

type Answer = number | Fault;
type Many = (Value | undefined)[];

/** What a level payment must be. */
function payment(rate: number, periods: number, present: number, future: number, first: number): number {
  if (rate === 0) return -(present + future) / periods;
  const growth = (1 + rate) ** periods;
  return (-rate * (future + present * growth)) / ((1 + rate * first) * (growth - 1));
}
function futureValue(rate: number, periods: number, paid: number, present: number, first: number): number {
  if (rate === 0) return -(present + paid * periods);
  const growth = (1 + rate) ** periods;
  const [kept, saved] = [present * growth, (paid * (1 + rate * first) * (growth - 1)) / rate];
  if (Math.abs(kept + saved) < 1e-4 * Math.abs(kept))
    return unproven('comes to so little of large sums that only rounding is left');
  return -(kept + saved);
}
const begins = (type: number): number => (type === 0 ? 0 : 1);
define('PMT', 'nnn?nn', (rate: number, periods: number, present: number, future = 0, type = 0): Answer =>
  periods === 0 || rate <= -1 ? NUM : held(payment(rate, periods, present, future, begins(type))),
);
define('FV', 'nnn?nn', (rate: number, periods: number, paid: number, present = 0, type = 0): Answer =>
  held(futureValue(rate, periods, paid, present, begins(type))),
);
define('PV', 'nnn?nn', (rate: number, periods: number, paid: number, future = 0, type = 0): Answer => {
  if (rate === 0) return -(future + paid * periods);
  if (rate <= -1) return unproven('discounts by a rate of −100 % or less');
  const growth = (1 + rate) ** periods;
  return held(-(future + (paid * (1 + rate * begins(type)) * (growth - 1)) / rate) / growth);
});
define('NPER', 'nnn?nn', (rate: number, paid: number, present: number, future = 0, type = 0): Answer => {
  if (rate === 0) return paid === 0 ? NUM : -(present + future) / paid;
  if (rate <= -1) return NUM;
  const level = paid * (1 + rate * begins(type));
  const ratio = (level - future * rate) / (level + present * rate);
  return ratio <= 0 ? NUM : held(Math.log(ratio) / Math.log(1 + rate));
});
function interest(
  rate: number,
  period: number,
  periods: number,
  present: number,
  future: number,
  first: number,
): number {
  const paid = payment(rate, periods, present, future, first);
  if (period === 1) return first === 1 ? 0 : -present * rate;
  const owed = futureValue(rate, period - 1 - first, paid, present, first) - (first === 1 ? paid : 0);
  return first === 1 ? (futureValue(rate, period - 2, paid, present, 1) - paid) * rate : owed * rate;
}
define(
  'IPMT',
  'nnnn?nn',
  (rate: number, period: number, periods: number, present: number, future = 0, type = 0): Answer =>
    period < 1 || period >= periods + 1
      ? NUM
      : held(interest(rate, period, periods, present, future, begins(type))),
);
define(
  'PPMT',
  'nnnn?nn',
  (rate: number, period: number, periods: number, present: number, future = 0, type = 0): Answer =>
    period < 1 || period >= periods + 1
      ? NUM
      : held(
          payment(rate, periods, present, future, begins(type)) -
            interest(rate, period, periods, present, future, begins(type)),
        ),
);
define('ISPMT', 'nnnn', (rate: number, period: number, periods: number, present: number): Answer =>
  periods === 0 ? DIV0 : present * rate * (period / periods - 1),
);
const cumulative =
  (principal: boolean) =>
  (
    rate: number,
    periods: number,
    present: number,
    fromGiven: number,
    toGiven: number,
    type: number,
  ): Answer => {
    const [from, to] = [Math.ceil(fromGiven), Math.trunc(toGiven)];
    if (
      rate <= 0 ||
      periods <= 0 ||
      present <= 0 ||
      from < 1 ||
      to < 1 ||
      from > to ||
      to > periods ||
      (type !== 0 && type !== 1)
    )
      return NUM;
    const paid = payment(rate, periods, present, 0, type);
    let sum = 0;
    for (let period = from; period <= bounded(to); period++) {
      const part = interest(rate, period, periods, present, 0, type);
      sum += principal ? paid - part : part;
    }
    return held(sum);
  };
define('CUMIPMT', 'mmmmmm', cumulative(false));
define('CUMPRINC', 'mmmmmm', cumulative(true));

define('RATE', 'nnn?nnn', () => unproven('looks for a rate that Excel finds only nearly'));
const discounted = (rate: number, flows: readonly number[]): number =>
  flows.reduce((sum, one, at) => sum + one / (1 + rate) ** (at + 1), 0);
defineIn(
  'NPV',
  'nr*',
  stopping((world: World, rate: number, ...given: Many): Answer => {
    if (rate === -1) return DIV0;
    const flows = numbersIn(world, given);
    const found = discounted(rate, flows);
    const largest = flows.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    return Math.abs(found) < 1e-6 * largest
      ? unproven('comes to so little of large sums that only rounding is left')
      : held(found);
  }),
);
defineIn(
  'IRR',
  'r?n',
  stopping((world: World, range: Value, guess = 0.1): Answer => {
    const flows = numbersIn(world, [range]);
    if (!flows.some((one) => one > 0) || !flows.some((one) => one < 0)) return NUM;
    // Excel stops searching before the last digits, and where it stops is not known.
    return Number.isFinite(guess) ? unproven('looks for a rate that Excel finds only nearly') : VALUE;
  }),
);
defineIn(
  'MIRR',
  'rnn',
  stopping((world: World, range: Value, paid: number, earned: number): Answer => {
    const flows = numbersIn(world, [range]);
    const n = flows.length;
    if (!flows.some((one) => one < 0) || n < 2) return DIV0;
    if (paid === -1 || earned === -1) return unproven('discounts by a rate of −100 %');
    const gained = discounted(
      earned,
      flows.map((one) => Math.max(one, 0)),
    );
    const spent = discounted(
      paid,
      flows.map((one) => Math.min(one, 0)),
    );
    const ratio = (-gained * (1 + earned) ** n) / (spent * (1 + paid));
    return ratio < 0 ? NUM : held(ratio ** (1 / (n - 1)) - 1);
  }),
);
defineIn('XNPV', 'mrr', () => unproven('discounts by dates'));
defineIn('XIRR', 'rr?m', () => unproven('looks for a rate that Excel finds only nearly'));

define('SLN', 'nnn', (cost: number, rest: number, life: number): Answer =>
  life === 0 ? DIV0 : (cost - rest) / life,
);
define('SYD', 'nnnn', (cost: number, rest: number, life: number, period: number): Answer =>
  life <= 0 || period <= 0 || period > life
    ? NUM
    : ((cost - rest) * (life - period + 1) * 2) / (life * (life + 1)),
);
define('DDB', 'nnnn?n', (cost: number, rest: number, life: number, period: number, factor = 2): Answer => {
  if (cost < 0 || rest < 0 || life <= 0 || period <= 0 || period > life || factor <= 0) return NUM;
  if (!Number.isInteger(period)) return unproven('writes off part of a period');
  let [left, off] = [cost, 0];
  for (let one = 1; one <= bounded(period); one++) {
    off = Math.max(0, Math.min((left * factor) / life, left - rest));
    left -= off;
  }
  return off;
});
define('DB', 'nnnn?n', (cost: number, rest: number, life: number, period: number, months = 12): Answer => {
  if (cost < 0 || rest < 0 || life <= 0 || period < 1 || months < 1 || months > 12) return NUM;
  if (cost === 0) return 0;
  if (!Number.isInteger(period) || !Number.isInteger(life) || period > life + (months < 12 ? 1 : 0))
    return unproven('writes off part of a period');
  const rate = Math.round((1 - (rest / cost) ** (1 / life)) * 1000) / 1000;
  let [gone, off] = [0, 0];
  for (let one = 1; one <= bounded(period); one++) {
    off =
      one === 1
        ? (cost * rate * months) / 12
        : one > life
          ? ((cost - gone) * rate * (12 - months)) / 12
          : (cost - gone) * rate;
    gone += off;
  }
  return off;
});
define('EFFECT', 'mm', (rate: number, given: number): Answer => {
  const periods = Math.trunc(given);
  return rate <= 0 || periods < 1 ? NUM : (1 + rate / periods) ** periods - 1;
});
define('NOMINAL', 'mm', (rate: number, given: number): Answer => {
  const periods = Math.trunc(given);
  return rate <= 0 || periods < 1 ? NUM : periods * ((1 + rate) ** (1 / periods) - 1);
});
define('RRI', 'nnn', (periods: number, from: number, to: number): Answer =>
  periods <= 0 || from === 0 ? NUM : to / from < 0 ? NUM : (to / from) ** (1 / periods) - 1,
);
define('PDURATION', 'nnn', (rate: number, from: number, to: number): Answer =>
  rate <= 0 || from <= 0 || to <= 0 ? NUM : (Math.log(to) - Math.log(from)) / Math.log(1 + rate),
);
const digitsOf = (whole: number): number => 10 ** Math.ceil(Math.log10(whole));
define('DOLLARDE', 'mm', (price: number, given: number): Answer => {
  const parts = Math.trunc(given);
  if (parts < 0) return NUM;
  if (parts === 0) return DIV0;
  const whole = Math.trunc(price);
  return whole + ((price - whole) * digitsOf(parts)) / parts;
});
define('DOLLARFR', 'mm', (price: number, given: number): Answer => {
  const parts = Math.trunc(given);
  if (parts < 0) return NUM;
  if (parts === 0) return DIV0;
  const whole = Math.trunc(price);
  return whole + ((price - whole) * parts) / digitsOf(parts);
});
const bill =
  (answer: (days: number, given: number) => Answer) =>
  (settled: number, due: number, given: number): Answer => {
    const [from, to] = [Math.trunc(settled), Math.trunc(due)];
    if (given <= 0 || from < 0 || from >= to || to - from > 366) return NUM;
    if (to - from > 365) return unproven('reckons with a bill of a whole leap year');
    return answer(to - from, given);
  };
define(
  'TBILLPRICE',
  'mmm',
  bill((days, discount) => {
    const price = 100 * (1 - (discount * days) / 360);
    return price < 0 ? NUM : price;
  }),
);
define(
  'TBILLYIELD',
  'mmm',
  bill((days, price) => ((100 - price) / price) * (360 / days)),
);
define(
  'TBILLEQ',
  'mmm',
  bill((days, discount) => {
    if (days > 182) return unproven('reckons with a bill of more than half a year');
    const below = 360 - discount * days;
    return below === 0 ? DIV0 : below < 0 ? NUM : (365 * discount) / below;
  }),
);
