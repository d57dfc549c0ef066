/** The making charge of a whole job: what its breaks take off, and the least that the house makes it for. */
import { lessInWords, makingReduction } from '../cell/making-breaks';
import { money, toCent, type Money } from '../exact/money';
import type { Rules } from '../house/rules';

const lessBreaks = (making: Money, widths: number, rules: Rules): Money => {
  const less = makingReduction(widths, rules);
  return less.eq(0) ? making : toCent(making.times(money(1).minus(less)), rules.centRounding);
};

/** The least of a job of so many widths, where the house has one and it is more than the charge. */
const leastAbove = (charge: Money, widths: number, { makingMinimum: least }: Rules): Money | undefined =>
  widths > 0 && least?.gt(charge) === true ? least : undefined;

export interface JobMaking {
  /** Undefined where the house sets no price for a heading of the job. */
  readonly charge: Money | undefined;
  /** What changed it. */
  readonly says: readonly string[];
}

export function jobMaking(making: Money | undefined, widths: number, rules: Rules): JobMaking {
  const less = makingReduction(widths, rules);
  const says = making === undefined || less.eq(0) ? [] : [lessInWords(less, widths, rules)];
  if (making === undefined) return { charge: undefined, says };
  const charge = lessBreaks(making, widths, rules);
  const least = leastAbove(charge, widths, rules);
  return least === undefined
    ? { charge, says }
    : { charge: least, says: [...says, `at least ${least.toFixed(2)}`] };
}

/** What an order's row may state: other rows of its job may reach a break that it does not, or it is the job. */
export function* rowMaking(making: Money, widths: number, rules: Rules): Generator<Money> {
  for (const reached of [widths, ...(rules.makingBreaks ?? []).map(({ from }) => Math.max(from, widths))])
    yield lessBreaks(making, reached, rules);
  const alone = leastAbove(lessBreaks(making, widths, rules), widths, rules);
  if (alone !== undefined) yield alone;
}
