/** What no comparison of lengths shows: hardware that cannot work, cautions, and sums that do not add up. */
import { finding, Refusal, type Finding } from '../cell/answer';
import { told, type OrderFinding } from './finding';
import { showNear } from './show';
import { WindowWork } from '../window/job';
import { exact, toUnit, type Length } from '../exact/length';
import { isNear, money, NOTHING, toCent, type Money } from '../exact/money';
import type { OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import type { FactKey } from '../window/facts';
import { unitOf, type Rules } from '../house/rules';
import { digits, INCHES, type Unit } from '../exact/unit';

export interface Facing {
  readonly at: number;
  readonly order: Order;
  readonly rules: Rules;
  name(key: OrderKey): string;
  has(key: OrderKey): boolean;
}

const shown = (amount: Money): string => amount.toFixed(2);

/** Grommets in an odd count turn one edge into the room. */
export function oddGrommets({ at, order, name }: Facing): OrderFinding[] {
  const count = order.ordered.marks;
  if (order.window.heading !== 'grommet' || count === undefined || count % 2 === 0) return [];
  const expected = Math.ceil(count / 2) * 2;
  const column = name('marks');
  return [
    told(at, finding('oddGrommets', column, column, digits(count), digits(expected)), {
      found: count,
      expected,
    }),
  ];
}

/** Whether the drawn-back drapery fits beside the opening, where the glass is to be clear. */
export function stackOverGlass({ at, order, rules, name }: Facing): OrderFinding[] {
  const { window, facts, ordered } = order;
  const asked = facts.clearGlass ?? rules.keepGlassClear;
  const { openingWidth, heading, draw } = window;
  if (asked === 'no' || openingWidth === undefined || heading === undefined || draw === 'stationary')
    return [];
  const work = new WindowWork(window, rules);
  const rod = window.rodWidth ?? work.rodWidth().value;
  const even = exact(Math.max(0, Math.floor((rod - openingWidth) / 2)));
  const left = window.leftExtension ?? even;
  const right = window.rightExtension ?? even;
  const beside = draw === 'one-way left' ? left : draw === 'one-way right' ? right : Math.min(left, right);
  const stack = (ordered.stack as Length | undefined) ?? work.stack().value;
  const over = stack - beside;
  if (over <= rules.lengthTolerance) return [];
  // A wider rod stacks wider too: its share of the rod is taken off before the division.
  const sides = draw === undefined || draw === 'pair' ? 2 : 1;
  const share = stack / rod;
  const clear = openingWidth / (1 - sides * share);
  const unit = unitOf(rules);
  const step = unit === INCHES ? 12_700_000 : 10_000_000;
  const show = (of: number): string => showNear(of, unit);
  const about = finding(
    'stackOverGlass',
    name('rodWidth'),
    show(stack),
    show(beside),
    show(over),
    clear > 0 && Number.isFinite(clear) ? show(Math.ceil(clear / step) * step) : 'more',
  );
  return [
    told(at, about, {
      found: Number(toUnit(stack, unit.small).toPrecision(6)),
      expected: Number(toUnit(beside, unit.small).toPrecision(6)),
      sure: 'likely',
    }),
  ];
}

/** Cloth ordered railroaded whose cut does not fit its width. */
export function tooNarrowToTurn({ at, order, rules, name }: Facing): OrderFinding[] {
  const { fabricWidth, heading } = order.window;
  if (order.facts.railroaded !== 'yes' || fabricWidth === undefined || heading === undefined) return [];
  try {
    new WindowWork(order.window, rules).railroaded();
    return [];
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    if (thrown.error !== '#N/A') return [];
    return [
      told(at, finding('orderTooNarrowToTurn', name('fabricWidth'), thrown.finding.sentence), {
        found: Number(toUnit(fabricWidth, unitOf(rules).small).toPrecision(9)),
      }),
    ];
  }
}

const NO_CERTIFICATE = /^(no|none|n|-+|n\/?a|missing|pending|tbc|tba|open|to come|\?+)$/i;

export function flame({ at, order, rules, name, has }: Facing): OrderFinding[] {
  const { certificate, publicJob } = order.facts;
  const found: OrderFinding[] = [];
  const given = certificate !== undefined && !NO_CERTIFICATE.test(certificate);
  if (publicJob === 'yes' && !given) {
    const read =
      certificate === undefined
        ? has('certificate')
          ? 'no'
          : 'no column for a'
        : `“${certificate}” for the`;
    const column = has('certificate') ? name('certificate') : name('publicJob');
    found.push(told(at, finding('noCertificate', column, read), { found: certificate ?? '' }));
  }
  const { arealWeight } = order.window;
  const most = rules.flameMethodOneUpTo;
  if (given && arealWeight !== undefined && arealWeight > most && /method\s*(1|one|i)\b/i.test(certificate)) {
    const { areal } = unitOf(rules);
    const column = name('arealWeight');
    const about = finding(
      'aboveMethodOne',
      column,
      column,
      `${digits(arealWeight)} ${areal}`,
      `${digits(most)} ${areal}`,
    );
    found.push(told(at, about, { found: arealWeight, expected: most }));
  }
  return found;
}

export function cords({ at, order, name }: Facing): OrderFinding[] {
  const { drawnBy, children, childSafe } = order.facts;
  if (drawnBy !== 'cord') return [];
  const inReach = childSafe === 'no' || (children === 'yes' && childSafe !== 'yes');
  return inReach ? [told(at, finding('cordInReach', name('drawnBy'), drawnBy), { found: drawnBy })] : [];
}

const PARTS: readonly FactKey[] = ['amount', 'liningAmount', 'hardware', 'installation', 'freight', 'tax'];

/** What a total is the sum of, the discount taken off. */
function partsOf({ facts, ordered }: Order): { readonly key: OrderKey; readonly of: Money }[] {
  const parts: { key: OrderKey; of: Money }[] = [];
  for (const key of PARTS) {
    const of = facts[key] as Money | undefined;
    if (of !== undefined) parts.push({ key, of });
  }
  if (ordered.labor !== undefined) parts.push({ key: 'labor', of: money(ordered.labor) });
  if (facts.discount !== undefined) parts.push({ key: 'discount', of: facts.discount.abs().neg() });
  return parts;
}

function totals({ at, order, rules, name, has }: Facing): OrderFinding[] {
  const { facts } = order;
  const { total } = facts;
  if (total === undefined) return [];
  const found: OrderFinding[] = [];
  const unread = order.unread.some(
    ({ column }) =>
      column.key === 'labor' || column.key === 'discount' || PARTS.includes(column.key as FactKey),
  );
  const columns = [...PARTS, 'labor' as const].filter(has).length;
  const parts = columns < 2 || unread ? [] : partsOf(order);
  const sum = parts.reduce((all, one) => all.plus(one.of), NOTHING);
  if (parts.length > 0 && !isNear(total, sum, rules.moneyTolerance)) {
    const column = name('total');
    const said = parts.map(({ key, of }) => `${of.isNeg() ? 'less ' : ''}${name(key)} ${shown(of.abs())}`);
    const about = finding('partsDoNotAdd', column, column, shown(total), said.join(', '), shown(sum));
    found.push(
      told(at, about, {
        found: total.toNumber(),
        expected: sum.toNumber(),
        money: total.minus(sum).toNumber(),
      }),
    );
  }
  const { deposit } = facts;
  if (deposit?.gt(total.plus(rules.moneyTolerance)) === true) {
    const column = name('deposit');
    found.push(
      told(at, finding('depositAboveTotal', column, column, shown(deposit), shown(total)), {
        found: deposit.toNumber(),
        expected: total.toNumber(),
        money: deposit.minus(total).toNumber(),
      }),
    );
  }
  return found;
}

/** What may have been priced: the yardage, as ordered or as it should be, the windows or the widths. */
function* priced(
  { window, ordered }: Order,
  expectedYardage: number | undefined,
  unit: Unit,
): Generator<number> {
  const { yardage, widths } = ordered;
  // To the millionth: a cell's digits, without a binary tail.
  if (yardage !== undefined) yield Math.round(toUnit(yardage, unit.large) * 1e6) / 1e6;
  if (expectedYardage !== undefined) yield Math.round(toUnit(expectedYardage, unit.large) * 1e6) / 1e6;
  if (window.quantity !== undefined) yield window.quantity;
  if (widths !== undefined) yield widths;
  if (widths !== undefined) yield widths * (window.quantity ?? 1);
}

/** The amount is the unit price × whatever is priced. */
function extended({ at, order, rules, name }: Facing, expectedYardage: number | undefined): OrderFinding[] {
  const { unitPrice, amount } = order.facts;
  if (unitPrice === undefined || amount === undefined) return [];
  const unit = unitOf(rules);
  let likeliest: { count: number; cost: Money } | undefined;
  for (const count of priced(order, expectedYardage, unit)) {
    const cost = toCent(unitPrice.times(count), rules.centRounding);
    if (isNear(amount, cost, rules.moneyTolerance)) return [];
    likeliest ??= { count, cost };
  }
  if (likeliest === undefined) return [];
  const { count, cost: expected } = likeliest;
  const column = name('amount');
  const by = order.ordered.yardage === undefined ? digits(count) : `${digits(count)} ${unit.large}`;
  return [
    told(
      at,
      finding('amountDiffers', column, column, shown(amount), `${by} × ${shown(unitPrice)}`, shown(expected)),
      {
        found: amount.toNumber(),
        expected: expected.toNumber(),
        money: amount.minus(expected).toNumber(),
      },
    ),
  ];
}

function panelWidths({ at, order, name }: Facing): OrderFinding[] {
  const { leftWidths, rightWidths } = order.facts;
  const { widths } = order.ordered;
  if (leftWidths === undefined || rightWidths === undefined || widths === undefined) return [];
  const sum = leftWidths + rightWidths;
  if (Math.abs(sum - widths) < 1e-9) return [];
  const column = name('widths');
  const parts = `${name('leftWidths')} ${digits(leftWidths)}, ${name('rightWidths')} ${digits(rightWidths)}`;
  const about: Finding = finding('partsDoNotAdd', column, column, digits(widths), parts, digits(sum));
  return [told(at, about, { found: widths, expected: sum })];
}

export const sums = (of: Facing, expectedYardage: number | undefined): OrderFinding[] => [
  ...panelWidths(of),
  ...extended(of, expectedYardage),
  ...totals(of),
];
