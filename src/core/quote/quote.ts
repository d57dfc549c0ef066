/**
 * The price of a job: materials as they are cheapest bought, making, hardware, installation, freight;
 * markup or margin, discount, tax, deposit. Cost and selling price stand apart on every line.
 */
import { finding, type Finding } from '../cell/answer';
import {
  buyCloth,
  cheaperBreak,
  howBought,
  wholeRolls,
  type ClothBought,
  type ClothPrice,
  type ClothWanted,
} from '../floor/cloth-price';
import { BEHIND, standsIn, type Behind } from '../cloth/behind';
import { behindWanted, clothFor, facesWanted, type Wanted } from '../floor/cloth-wanted';
import { freightOf } from '../floor/freight';
import { pricedFittings, rodPricedTwice } from '../heading/fittings';
import type { WindowWork } from '../window/job';
import { toUnit } from '../exact/length';
import { money, NOTHING, toCent, type Money } from '../exact/money';
import { jobMaking } from '../price/job-making';
import { COUNTED_AS, sellPrice } from '../price/price';
import { unitOf, type Rules } from '../house/rules';
import { tally, type Tally } from '../floor/tally';
import { digits, showYardage } from '../exact/unit';

/** By the cloth's name: fabrics, and “lining”, “blackout lining”, “interlining”. */
export type PriceList = ReadonlyMap<string, ClothPrice>;

/** A cloth behind the face is a kind by its own name. */
export type LineKind = 'face' | 'attic stock' | Behind | 'making' | 'hardware' | 'installation' | 'freight';

export interface QuoteLine {
  readonly kind: LineKind;
  readonly what: string;
  readonly quantity: number;
  readonly unit: string;
  /** Undefined where no price is set. */
  readonly cost: Money | undefined;
  readonly price: Money;
  readonly taxed: boolean;
  /** How it comes to that, where the quantity does not say it: whole rolls, spares, a reduction. */
  readonly says?: string;
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

const CLOTH: ReadonlySet<LineKind> = new Set<LineKind>(['face', 'attic stock', ...BEHIND]);

class Lines {
  readonly all: QuoteLine[] = [];
  readonly findings: Finding[] = [];

  constructor(private readonly rules: Rules) {}

  add({ markedUp, ...line }: Omit<QuoteLine, 'price'> & { readonly markedUp: boolean }): void {
    const { cost } = line;
    const { sellRate: rate, sellBasis: basis, centRounding } = this.rules;
    const sold = (amount: Money): Money =>
      markedUp
        ? sellPrice({ cost: amount, rate, basis, rounding: centRounding }).value
        : toCent(amount, centRounding);
    this.all.push({ ...line, price: cost === undefined ? NOTHING : sold(cost) });
  }

  cloth(kind: 'face' | Behind, wanted: Wanted, price: ClothPrice | undefined): void {
    const unit = unitOf(this.rules);
    const { name, yardage, spares, attic } = wanted;
    const cloth = clothFor(wanted, price?.wholeRoll !== undefined);
    const bought = price === undefined ? undefined : buyCloth(cloth, price, this.rules);
    const put = (kind: LineKind, what: string, length: number, cost: Money | undefined, says: string): void =>
      this.add({
        kind,
        what,
        quantity: toUnit(length, unit.large),
        unit: unit.large,
        cost,
        markedUp: true,
        taxed: true,
        ...(says !== '' && { says }),
      });
    const spare = spares > 0 ? `${spares} spare ${spares === 1 ? 'cut' : 'cuts'} in it` : '';
    if (bought === undefined || price === undefined) {
      this.findings.push(finding('noClothPrice', name, name));
      put(kind, name, yardage, undefined, spare);
      if (attic > 0) put('attic stock', `${name}, attic stock`, attic, undefined, '');
      return;
    }
    this.findings.push(...buyingFindings(name, cloth, bought, price, this.rules));
    this.findings.push(...atticInRolls(wanted, bought, price, this.rules));
    // In whole rolls its share of the cost by length, to the cent; the rest is the windows'.
    const kept =
      bought.rolls === 0 && bought.cutPrice !== undefined
        ? bought.cutPrice.times(money(toUnit(attic, unit.large)))
        : toCent(bought.cost.times(attic).div(Math.max(1, bought.length)));
    const says = [howBought(bought, price, unit), spare].filter((one) => one !== '').join('; ');
    put(kind, name, bought.length - attic, bought.cost.minus(kept), says);
    if (attic > 0) put('attic stock', `${name}, attic stock`, attic, kept, '');
  }
}

function buyingFindings(
  name: string,
  wanted: ClothWanted,
  bought: ClothBought,
  price: ClothPrice,
  rules: Rules,
): Finding[] {
  const unit = unitOf(rules);
  const { yardage: all } = wanted;
  const found: Finding[] = [];
  const { wholeRoll } = price;
  const noRoll = bought.rolls === 0 && all > 0;
  if (noRoll && wholeRoll !== undefined && wholeRolls(wanted, wholeRoll.length, rules) === undefined)
    found.push(finding('noWholeRollFits', name, name, showYardage(wholeRoll.length, unit)));
  if (bought.rolls === 0 && bought.cut > all)
    found.push(finding('belowMinimumCut', name, name, showYardage(all, unit), showYardage(bought.cut, unit)));
  const further = cheaperBreak(bought, price, unit);
  if (further !== undefined)
    found.push(
      finding(
        ...(['nextBreakSaves', name, name, showYardage(bought.cut, unit)] as const),
        `${digits(further.from)} ${unit.large}`,
        further.saved.toFixed(2),
      ),
    );
  return found;
}

/** Rolls that hold attic stock too may be more than the cutting plan opens, which has the windows and spares. */
function atticInRolls(
  { name, attic, planned }: Wanted,
  { rolls }: ClothBought,
  { wholeRoll }: ClothPrice,
  rules: Rules,
): Finding[] {
  if (rolls === 0 || attic === 0 || wholeRoll === undefined) return [];
  const opened = wholeRolls(planned(), wholeRoll.length, rules) ?? 0;
  return opened === rolls ? [] : [finding('rollsUnlikePlan', name, name, rolls, opened)];
}

function addMaking(lines: Lines, job: Tally, rules: Rules): void {
  const { making, widths } = job;
  const { laborBy } = rules;
  if (making === undefined) lines.findings.push(finding('noMakingPrice', 'rules'));
  const { charge, says } = jobMaking(making, widths, rules);
  lines.add({
    kind: 'making',
    what: 'making',
    quantity: { width: widths, panel: job.panels, window: job.windows }[laborBy],
    unit: COUNTED_AS[laborBy],
    markedUp: true,
    cost: charge,
    taxed: rules.taxLabor === 'yes',
    ...(says.length > 0 && { says: says.join('; ') }),
  });
}

function addHardware(lines: Lines, { hardware }: Tally, rules: Rules): void {
  if (hardware.rod > 0 && rodPricedTwice(rules)) lines.findings.push(finding('rodPricedTwice', 'rules'));
  for (const { each, ...line } of pricedFittings(hardware, rules))
    lines.add({
      kind: 'hardware',
      ...line,
      markedUp: true,
      taxed: true,
      cost: each.times(money(line.quantity)),
    });
}

/** Prices a whole job. Lines without a price stand at nothing, with a finding each. */
export function quote(windows: Iterable<WindowWork>, prices: PriceList, rules: Rules): Quote {
  const works = [...windows];
  const job = tally(works, rules);
  const lines = new Lines(rules);
  for (const wanted of facesWanted(works, job.face)) lines.cloth('face', wanted, prices.get(wanted.name));
  for (const wanted of behindWanted(works, job.behind)) {
    const { name } = wanted;
    const other = standsIn(name);
    const instead = prices.has(name) || other === undefined ? undefined : prices.get(other);
    if (instead !== undefined && other !== undefined)
      lines.findings.push(finding('pricedAsAnother', name, name, other));
    lines.cloth(name, wanted, prices.get(name) ?? instead);
  }
  addMaking(lines, job, rules);
  addHardware(lines, job, rules);
  if (rules.installationPerWindow !== undefined)
    lines.add({
      kind: 'installation',
      what: 'installation',
      quantity: job.windows,
      unit: 'windows',
      cost: rules.installationPerWindow.times(job.windows),
      markedUp: false,
      taxed: rules.taxInstallation === 'yes',
    });
  const { freight, findings } = freightOf(job, rules);
  for (const one of freight) lines.add({ kind: 'freight', ...one, markedUp: false, taxed: false });
  return settled(lines.all, [...lines.findings, ...findings], rules);
}

/** Sum, discount, tax, total and deposit of a quote's lines. */
function settled(lines: readonly QuoteLine[], found: readonly Finding[], rules: Rules): Quote {
  const sum = lines.reduce((total, line) => total.plus(line.price), NOTHING);
  const discount = toCent(sum.times(rules.discount), rules.centRounding);
  const tax = jobTax(lines, rules);
  const total = sum.minus(discount).plus(tax);
  const deposit = toCent(total.times(rules.deposit), rules.centRounding);
  const cloth = lines
    .filter(({ kind }) => CLOTH.has(kind))
    .reduce((all, line) => all.plus(line.cost ?? NOTHING), NOTHING);
  const findings = deposit.lt(cloth)
    ? [...found, finding('depositBelowCloth', 'deposit', deposit.toFixed(2), cloth.toFixed(2))]
    : found;
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
