/** Freight of a job: a fixed sum, by the weight of its cloth, by the carton; each where the house sets it. */
import { finding, type Finding } from '../cell/answer';
import { money, type Money } from '../exact/money';
import { unitOf, type Rules } from '../house/rules';
import type { Tally } from './tally';
import { digits } from '../exact/unit';

export interface Freight {
  readonly what: string;
  readonly quantity: number;
  readonly unit: string;
  readonly cost: Money;
}

export interface Weighed {
  /** Of the cloth that travels, lb or kg, as far as it is known. */
  readonly weight: number;
  readonly findings: readonly Finding[];
}

/** Every layer of the windows, and the attic stock; cloth of unknown weight is told, not guessed. */
export function clothWeightOf(job: Tally): Weighed {
  const findings: Finding[] = [];
  let weight = 0;
  for (const { name, weight: own } of job.face) {
    weight += own ?? 0;
    if (own === undefined)
      findings.push(finding('clothWeightUnknown', name, name, 'its cloth weight beside every window of it'));
  }
  for (const { name, weight: own, weighedAs } of job.behind) {
    weight += own ?? 0;
    const rule = `the house rule “${name} weight”`;
    if (own === undefined) findings.push(finding('clothWeightUnknown', name, `the ${name}`, rule));
    else if (weighedAs !== undefined)
      findings.push(finding('weighedAsAnother', name, `the ${name}`, `the ${weighedAs}`, rule));
  }
  return { weight: Number(digits(weight)), findings };
}

/** Pounds (kilograms) to the hundredth, a part counting as a whole one: no carrier weighs finer. */
const HUNDREDTHS = 100;
const shipped = (weight: number): number => Math.ceil(Number(digits(weight * HUNDREDTHS))) / HUNDREDTHS;

export function freightOf(
  job: Tally,
  rules: Rules,
): { readonly freight: readonly Freight[]; readonly findings: readonly Finding[] } {
  const { weight: small } = unitOf(rules);
  const freight: Freight[] = [];
  const findings: Finding[] = [];
  const { freight: fixed, freightPerWeight, cartonHolds, freightPerCarton } = rules;
  if (fixed !== undefined) freight.push({ what: 'freight', quantity: 1, unit: 'job', cost: fixed });
  const byCarton = cartonHolds !== undefined && freightPerCarton !== undefined;
  if (!byCarton && (cartonHolds ?? freightPerCarton) !== undefined) {
    const missing = cartonHolds === undefined ? 'carton holds' : 'freight per carton';
    findings.push(finding('cartonNotWhole', 'freight', missing));
  }
  if (freightPerWeight === undefined && !byCarton) return { freight, findings };
  const weighed = clothWeightOf(job);
  findings.push(...weighed.findings);
  if (weighed.weight === 0) return { freight, findings };
  if (freightPerWeight !== undefined) {
    const quantity = shipped(weighed.weight);
    const cost = freightPerWeight.times(money(quantity));
    freight.push({ what: 'freight by weight', quantity, unit: small, cost });
  }
  if (byCarton) {
    const quantity = Math.ceil(Number(digits(weighed.weight / cartonHolds)));
    const cost = freightPerCarton.times(quantity);
    freight.push({ what: 'freight by the carton', quantity, unit: 'cartons', cost });
  }
  return { freight, findings };
}
