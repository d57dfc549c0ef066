/** Checks of what has to add up within a row: the widths of the panels, the amount, the total. */
import { finding, type Finding } from '../cell/answer';
import { toUnit } from '../exact/length';
import { isNear, money, NOTHING, toCent, type Money } from '../exact/money';
import { digits, type Unit } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { CellIn } from '../cell/fields';
import type { FactKey } from '../window/facts';
import { cellOf, moneyOf } from '../window/reader/cells';
import type { OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import type { Check, RowGiven } from './check';
import { compareFigures } from './compare-figures';
import { told, type OrderFinding } from './finding';

const shown = (amount: Money): string => amount.toFixed(2);

const PARTS: readonly FactKey[] = ['amount', 'liningAmount', 'hardware', 'installation', 'freight', 'tax'];

/** What a total is the sum of, the discount taken off; before tax, or with it. */
function partsOf(
  { facts, ordered }: Order,
  sum: 'net' | 'total',
): { readonly key: OrderKey; readonly amount: Money }[] {
  const parts: { key: OrderKey; amount: Money }[] = [];
  for (const key of PARTS) {
    if (sum === 'net' && key === 'tax') continue;
    const amount = facts[key] as Money | undefined;
    if (amount !== undefined) parts.push({ key, amount });
  }
  if (ordered.labor !== undefined) parts.push({ key: 'labor', amount: money(ordered.labor) });
  if (facts.discount !== undefined) parts.push({ key: 'discount', amount: facts.discount.abs().neg() });
  return parts;
}

function moneyIn(cell: CellIn): Money | undefined {
  const figure = moneyOf(cellOf(cell));
  return figure === undefined ? undefined : money(figure);
}

/** What the columns of money that nobody knows could add: any of them, or none. */
function* untoldSums({ cells, untold }: RowGiven): Generator<Money> {
  const figures = untold.flatMap((at) => moneyIn(cells[at]) ?? []);
  for (let chosen = 1; chosen < 2 ** figures.length; chosen++)
    yield figures.reduce((sum, one, place) => ((chosen >> place) & 1 ? sum.plus(one) : sum), NOTHING);
}

/** `over`: what the row's amount or its making is found to be too much; a total that was added up without it is no second mistake. */
function addsUp(row: RowGiven, key: 'net' | 'total', over: readonly Money[]): OrderFinding[] {
  const { at, order, rules, name, has, totalStep } = row;
  const total = order.facts[key];
  if (total === undefined) return [];
  const unread = order.unread.some(
    ({ column }) =>
      column.key === 'labor' || column.key === 'discount' || PARTS.includes(column.key as FactKey),
  );
  const columns = [...PARTS, 'labor' as const].filter(has).length;
  const parts = columns < 2 || unread ? [] : partsOf(order, key);
  const sum = parts.reduce((all, one) => all.plus(one.amount), NOTHING);
  const near = (one: Money): boolean =>
    isNear(total, one, rules.moneyTolerance) || total.minus(one).abs().lt(totalStep);
  if (parts.length === 0 || near(sum) || over.some((much) => near(sum.minus(much)))) return [];
  // Some call net what is left to pay, tax and all.
  if (key === 'net' && order.facts.tax !== undefined && near(sum.plus(order.facts.tax))) return [];
  for (const more of untoldSums(row)) if (near(sum.plus(more))) return [];
  const column = name(key);
  const said = parts.map(
    ({ key: part, amount }) => `${amount.lt(0) ? 'less ' : ''}${name(part)} ${shown(amount.abs())}`,
  );
  const about = finding('partsDoNotAdd', column, column, shown(total), said.join(', '), shown(sum));
  return [
    told(at, about, {
      measure: 'money',
      found: total.toNumber(),
      expected: sum.toNumber(),
      money: total.minus(sum).toNumber(),
    }),
  ];
}

function totals(row: RowGiven, over: readonly Money[]): OrderFinding[] {
  const { at, order, rules, name } = row;
  const { facts } = order;
  const before = addsUp(row, 'net', over);
  // A total over a wrong sum before tax is no second mistake.
  const found = before.length > 0 ? before : addsUp(row, 'total', over);
  const { total } = facts;
  if (total === undefined) return found;
  const { deposit } = facts;
  if (deposit?.gt(total.plus(rules.moneyTolerance)) === true) {
    const column = name('deposit');
    found.push(
      told(at, finding('depositAboveTotal', column, column, shown(deposit), shown(total)), {
        measure: 'money',
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
function extended({ at, order, rules, name }: RowGiven, expectedYardage: number | undefined): OrderFinding[] {
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
        measure: 'money',
        found: amount.toNumber(),
        expected: expected.toNumber(),
        money: amount.minus(expected).toNumber(),
      },
    ),
  ];
}

function panelWidths({ at, order, name }: RowGiven): OrderFinding[] {
  const { leftWidths, rightWidths } = order.facts;
  const { widths } = order.ordered;
  if (leftWidths === undefined || rightWidths === undefined || widths === undefined) return [];
  const sum = leftWidths + rightWidths;
  if (Math.abs(sum - widths) < 1e-9) return [];
  const column = name('widths');
  const parts = `${name('leftWidths')} ${digits(leftWidths)}, ${name('rightWidths')} ${digits(rightWidths)}`;
  const about: Finding = finding('partsDoNotAdd', column, column, digits(widths), parts, digits(sum));
  return [told(at, about, { measure: 'count', found: widths, expected: sum })];
}

/** What is found too much in a column of money. */
const tooMuch = (found: readonly OrderFinding[], column: string): Money =>
  found.reduce(
    (sum, one) => (one.column === column && one.measure === 'money' ? sum.plus(Number(one.difference)) : sum),
    NOTHING,
  );

export const sums: Check = {
  mayBeMeant: true,
  find(row) {
    // Comparing the figures tells the yardage the row should have had.
    const compared = row.foundBy(compareFigures);
    const amounts = extended(row.given, row.expectedYardage);
    const amount = amounts.reduce((sum, one) => sum.plus(Number(one.money)), NOTHING);
    const making = tooMuch(compared, row.given.name('labor'));
    const over = [amount, making, amount.plus(making)];
    const { headings, ways, holdsAt } = row.given;
    const placed = ({ column }: OrderFinding): number => headings.indexOf(column);
    // What is as in nearly all orders of its table is no slip, and a sum whose parts the table tells is judged by them.
    return [
      ...panelWidths(row.given),
      ...amounts.filter((one) => !holdsAt(placed(one))),
      ...totals(row.given, over).filter(
        (one) => one.code !== 'partsDoNotAdd' || !ways.some(({ target }) => target === placed(one)),
      ),
    ];
  },
};
