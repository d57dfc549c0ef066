/**
 * The price of a job: materials at their price break, making, hardware, installation, freight;
 * markup or margin, discount, tax, deposit. Cost and selling price stand apart on every line.
 */
import { finding, type Finding } from './answer';
import type { WindowWork } from './job';
import { NO_LENGTH, toUnit, UNITS, type Length } from './length';
import { money, NOTHING, toCent, type Money } from './money';
import { breakPrice, sellPrice, type PriceBreak } from './price';
import { unitOf, type Rules } from './rules';
import { tally } from './tally';
import { showYardage } from './unit';

export interface ClothPrice {
  /** From so many yards (metres), at so much. */
  readonly breaks: readonly PriceBreak[];
  /** The least the mill cuts. */
  readonly minimum?: Length | undefined;
}

export interface PriceList {
  readonly face: ReadonlyMap<string, ClothPrice>;
  readonly lining?: ClothPrice | undefined;
}

export type LineKind = 'face' | 'lining' | 'making' | 'hardware' | 'installation' | 'freight';

export interface QuoteLine {
  readonly kind: LineKind;
  readonly what: string;
  readonly quantity: number;
  readonly unit: string;
  /** Undefined where no price is set. */
  readonly cost: Money | undefined;
  readonly price: Money;
  readonly taxed: boolean;
}

export interface Quote {
  readonly lines: readonly QuoteLine[];
  readonly sum: Money;
  readonly discount: Money;
  readonly tax: Money;
  readonly total: Money;
  readonly deposit: Money;
  readonly findings: readonly Finding[];
}

/** Prices a whole job. Lines without a price stand at nothing, with a finding each. */
export function quote(windows: Iterable<WindowWork>, prices: PriceList, rules: Rules): Quote {
  const job = tally(windows, rules);
  const unit = unitOf(rules);
  const lines: QuoteLine[] = [];
  const findings: Finding[] = [];
  const large = unit.large;

  function add(
    kind: LineKind,
    what: string,
    quantity: number,
    of: string,
    cost: Money | undefined,
    markedUp: boolean,
    taxed: boolean,
  ): void {
    const price =
      cost === undefined
        ? NOTHING
        : markedUp
          ? sellPrice({ cost, rate: rules.sellRate, basis: rules.sellBasis }).value
          : toCent(cost, rules.centRounding);
    lines.push({ kind, what, quantity, unit: of, cost, price, taxed });
  }

  function cloth(
    kind: 'face' | 'lining',
    name: string,
    yardage: Length,
    price: ClothPrice | undefined,
  ): void {
    if (price === undefined) {
      findings.push(finding('noClothPrice', name, name));
      return add(kind, name, toUnit(yardage, large), large, undefined, true, true);
    }
    const least = price.minimum ?? NO_LENGTH;
    if (yardage < least)
      findings.push(
        finding('belowMinimumCut', name, name, showYardage(yardage, unit), showYardage(least, unit)),
      );
    const bought = toUnit(Math.max(yardage, least), large);
    const each = breakPrice({ quantity: bought, priceBreaks: price.breaks }).value;
    add(kind, name, bought, large, each.times(money(bought)), true, true);
  }

  for (const total of job.face) cloth('face', total.name, total.yardage, prices.face.get(total.name));
  if (job.lining > 0) cloth('lining', 'lining', job.lining, prices.lining);

  if (job.making === undefined) findings.push(finding('noMakingPrice', 'rules'));
  add('making', 'making', job.widths, 'widths', job.making, true, rules.taxLabor === 'yes');

  const rodUnit = large === 'yd' ? 'ft' : 'm';
  const rods = job.rod / UNITS[rodUnit];
  const pieces: readonly (readonly [string, number, string, Money | undefined])[] = [
    ['rods', rods, rodUnit, rules.pricePerRodFoot],
    ['rings and carriers', job.rings, 'pieces', rules.pricePerRing],
    ['brackets', job.brackets, 'pieces', rules.pricePerBracket],
    ['finials', job.finials, 'pieces', rules.pricePerFinial],
  ];
  for (const [what, quantity, of, each] of pieces) {
    if (quantity > 0 && each !== undefined)
      add('hardware', what, quantity, of, each.times(money(quantity)), true, true);
  }
  if (rules.installationPerWindow !== undefined) {
    add(
      'installation',
      'installation',
      job.windows,
      'windows',
      rules.installationPerWindow.times(job.windows),
      false,
      rules.taxInstallation === 'yes',
    );
  }
  if (rules.freight !== undefined) add('freight', 'freight', 1, 'job', rules.freight, false, false);

  const sum = lines.reduce((total, line) => total.plus(line.price), NOTHING);
  const discount = toCent(sum.times(rules.discount), rules.centRounding);
  const tax = jobTax(lines, rules);
  const total = sum.minus(discount).plus(tax);
  const deposit = toCent(total.times(rules.deposit), rules.centRounding);
  const clothCost = lines
    .filter(({ kind }) => kind === 'face' || kind === 'lining')
    .reduce((all, line) => all.plus(line.cost ?? NOTHING), NOTHING);
  if (deposit.lt(clothCost))
    findings.push(finding('depositBelowCloth', 'deposit', deposit.toFixed(2), clothCost.toFixed(2)));
  return { lines, sum, discount, tax, total, deposit, findings };
}

/** Tax on what is taxed, the discount taken off in proportion. */
function jobTax(lines: readonly QuoteLine[], rules: Rules): Money {
  const kept = money(1).minus(rules.discount);
  const taxed = lines.filter((line) => line.taxed).map((line) => line.price.times(kept).times(rules.taxRate));
  if (rules.taxBasis === 'line')
    return taxed.reduce((sum, one) => sum.plus(toCent(one, rules.centRounding)), NOTHING);
  return toCent(
    taxed.reduce((sum, one) => sum.plus(one), NOTHING),
    rules.centRounding,
  );
}
