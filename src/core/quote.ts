/**
 * The price of a job: materials at their price break, making, hardware, installation, freight;
 * markup or margin, discount, tax, deposit. Cost and selling price stand apart on every line.
 */
import { finding, type Finding } from './answer';
import type { WindowWork } from './job';
import { exact, NO_LENGTH, toUnit, UNITS, upToStep, type Length } from './length';
import { money, NOTHING, toCent, type Money } from './money';
import { breakPrice, sellPrice, type PriceBreak } from './price';
import { unitOf, type Rules } from './rules';
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

export interface ClothTotal {
  readonly name: string;
  readonly yardage: Length;
  /** Cuts of the windows, spares not in them. */
  readonly cuts: number;
}

const UNNAMED = 'face fabric';

/** Face yardage by fabric, in the order they first appear; spares added on top. */
export function clothTotals(windows: readonly WindowWork[], rules: Rules): readonly ClothTotal[] {
  const totals = new Map<string, { yardage: number; cuts: number }>();
  for (const work of windows) {
    const name = work.window.fabric ?? UNNAMED;
    const { yardage, cuts } = work.cloth();
    const sum = totals.get(name) ?? { yardage: 0, cuts: 0 };
    totals.set(name, { yardage: sum.yardage + yardage, cuts: sum.cuts + cuts });
  }
  const spare = rules.spareWindows.plus(1).toNumber();
  return [...totals].map(([name, { yardage, cuts }]) => ({
    name,
    cuts,
    yardage: spare === 1 ? exact(yardage) : upToStep(exact(Math.ceil(yardage * spare)), rules.yardageStep),
  }));
}

export const liningTotal = (windows: readonly WindowWork[]): Length =>
  exact(windows.reduce((sum, work) => sum + work.liningYardage().value, 0));

export interface HardwareTotal {
  readonly rings: number;
  readonly brackets: number;
  readonly finials: number;
  /** All rods end to end. */
  readonly rod: Length;
}

export function hardwareTotal(windows: readonly WindowWork[]): HardwareTotal {
  let rings = 0;
  let brackets = 0;
  let count = 0;
  let rod = 0;
  for (const work of windows) {
    rings += work.rings().value * work.quantity;
    brackets += work.brackets().value * work.quantity;
    rod += (work.window.rodWidth ?? work.rodWidth().value) * work.quantity;
    count += work.quantity;
  }
  return { rings, brackets, finials: 2 * count, rod: exact(rod) };
}

/** Prices a whole job. Lines without a price stand at nothing, with a finding each. */
export function quote(windows: readonly WindowWork[], prices: PriceList, rules: Rules): Quote {
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

  for (const total of clothTotals(windows, rules))
    cloth('face', total.name, total.yardage, prices.face.get(total.name));
  const lining = liningTotal(windows);
  if (lining > 0) cloth('lining', 'lining', lining, prices.lining);

  const count = windows.reduce((sum, work) => sum + work.quantity, 0);
  const making = windows.reduce((sum, work) => sum.plus(work.labor().value.times(work.quantity)), NOTHING);
  add(
    'making',
    'making',
    windows.reduce((sum, work) => sum + work.widths() * work.quantity, 0),
    'widths',
    making,
    true,
    rules.taxLabor === 'yes',
  );

  const hardware = hardwareTotal(windows);
  const rodUnit = large === 'yd' ? 'ft' : 'm';
  const rods = hardware.rod / UNITS[rodUnit];
  const pieces: readonly (readonly [string, number, string, Money | undefined])[] = [
    ['rods', rods, rodUnit, rules.pricePerRodFoot],
    ['rings and carriers', hardware.rings, 'pieces', rules.pricePerRing],
    ['brackets', hardware.brackets, 'pieces', rules.pricePerBracket],
    ['finials', hardware.finials, 'pieces', rules.pricePerFinial],
  ];
  for (const [what, quantity, of, each] of pieces) {
    if (quantity > 0 && each !== undefined)
      add('hardware', what, quantity, of, each.times(money(quantity)), true, true);
  }
  if (rules.installationPerWindow !== undefined) {
    add(
      'installation',
      'installation',
      count,
      'windows',
      rules.installationPerWindow.times(count),
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
