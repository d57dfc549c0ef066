/**
 * House rules of a word that the first orders go by otherwise: where the two part, nearly all orders go by the other.
 * A rule that the list leaves at its default is often one that nobody thought of when it was filled in.
 */
import type { Rules } from '../house/rules';
import { RULE_LINES, type RuleKey, type RuleLine } from '../house/rules';
import type { Order } from '../window/order';
import { fitOf, type Fit } from './fit';

const ASKED: readonly RuleKey[] = [
  'widthsRounding',
  'liningWidths',
  'halfWidthCharged',
  'laborBy',
  'shareHalfWidths',
  'yardageRoundedBy',
  'interliningCut',
  'repeatRule',
];

/** So many orders are looked at. */
const LOOKED_AT = 80;
/** So many go by the other rule, and of those in which the two part so many. */
const LEAST_BETTER = 5;
const BETTER = 0.85;
/** Under it so many orders agree in every figure. */
const LEAST_RIGHT = 0.4;

export interface Variant {
  readonly line: RuleLine;
  readonly value: string;
  readonly standing: string;
  /** Orders that agree in more figures, of those in which the two rules part. */
  readonly better: number;
  readonly outOf: number;
}

export function variantsSeen(
  orders: readonly Order[],
  standing: Rules,
): { readonly seen: readonly Variant[]; readonly rules: Rules } {
  const few = orders.slice(0, LOOKED_AT);
  const seen: Variant[] = [];
  let rules = standing;
  let fit = few.map((order) => fitOf(order, rules));
  if (!fit.some(({ wrong }) => wrong > 0)) return { seen, rules };
  for (const key of ASKED) {
    const line = RULE_LINES.find((one) => one.key === key);
    let best: { variant: Variant; rules: Rules; fit: Fit[] } | undefined;
    for (const { word } of line?.kind.choices ?? []) {
      if (line === undefined || word === rules[key]) continue;
      const other = { ...rules, [key]: word } as Rules;
      const then = few.map((order) => fitOf(order, other));
      const less = then.map(({ wrong }, at) => (fit[at]?.wrong ?? 0) - wrong);
      const better = less.filter((one) => one > 0).length;
      const outOf = less.filter((one) => one !== 0).length;
      // One under which hardly an order is right explains nothing.
      if (then.filter(({ wrong }) => wrong === 0).length < few.length * LEAST_RIGHT) continue;
      if (better < LEAST_BETTER || better < outOf * BETTER || better <= (best?.variant.better ?? 0)) continue;
      const variant = { line, value: word, standing: String(rules[key]), better, outOf };
      best = { variant, rules: other, fit: then };
    }
    if (best === undefined) continue;
    seen.push(best.variant);
    ({ rules, fit } = best);
  }
  return { seen, rules };
}
