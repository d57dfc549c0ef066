/**
 * Whether the first orders of a file go by other house rules than those they are checked against: an audit
 * that doubts nearly every order for the same reason says it once.
 */
import { finding, type Finding } from '../cell/answer';
import { showDay } from '../cell/day';
import type { CellIn } from '../cell/fields';
import type { FigureKey } from '../window/figures';
import { digits, type Unit } from '../exact/unit';
import { FIGURE_KEYS } from '../window/meanings';
import type { Order } from '../window/order';
import { OrderRows, type OrderLine, type OrderTable } from '../window/reader/order-rows';
import { Compared } from './compared';
import { learnWith, type Proposal } from './learn';
import { practicesOf, practicesSeen, type PracticeSeen } from './learn-practices';
import { keeping, type Condition, type HabitBy } from './habits';
import { habitsSeen, type HabitSeen } from './learn-habits';
import type { Practice, Practices } from './practice';
import { reread, REREADINGS, rereadingsOf, rereadSeen } from './reread';
import { inOrders, showNear, showOf } from './show';
import { ownClothBy } from './cloth-ways';
import { clothSeen } from './own-cloth';
import { variantsSeen } from './variants';
import { OneByOne, type AuditBy, type Period } from './one-by-one';
import { saidOnce } from './table-wide';

/** So many orders are looked at. */
export const FIRST_ORDERS = 1_000;
/** Fewer tell nothing of all the others. */
const LEAST_ORDERS = 50;
/** Of those that can be compared, so many must differ in one figure. */
const DIFFER = 0.5;
/** And of these, so many must agree with the rules learned. */
const AGREE = 0.8;
/** Where no rules are learned that they agree with, so many must differ. */
const NEARLY_ALL = 0.8;
/** Rules are learned from so many, which takes a second at most. */
const LEARNED_FROM = 150;

type Row = readonly CellIn[];

/** What the audit goes by, once the first rows below the header were looked at. */
export function byRulesSeen(table: OrderTable, by: AuditBy, rows: Iterable<readonly [number, Row]>): AuditBy {
  const lines = firstLines(table, rows);
  const asTheyStand = lines.flatMap(({ order }) => order ?? []);
  const [latest] = by.periods;
  const anew = latest === undefined ? [] : rereadSeen(asTheyStand, latest.house.rules);
  const names = anew.map(({ name }) => name);
  const rereadings = rereadingsOf(names);
  const alone = new OneByOne(table, { ...by, rereadings });
  const orders = new Map<Period, Order[]>();
  for (const stands of asTheyStand) {
    const order = reread(stands, names);
    const period = alone.periodOf(order);
    const those = orders.get(period);
    if (those === undefined) orders.set(period, [order]);
    else those.push(order);
  }
  const doubts: Finding[] = anew.map(({ name, better, outOf }) => {
    const { key, means } = REREADINGS[name];
    return finding('readInstead', alone.name(key), alone.name(key), means, better, inOrders(outOf));
  });
  const periods = by.periods.map((stands) => {
    const those = orders.get(stands) ?? [];
    const period = asKept(stands, those, { alone, doubts });
    const seen = seenOf(those, period, alone);
    if (seen === undefined) return withOwnHabits(period, those, { alone, doubts });
    doubts.push(seen.doubt);
    return seen.instead === undefined ? period : { ...period, instead: seen.instead };
  });
  return saidOnce(table, { ...by, periods, rereadings, doubts: [...(by.doubts ?? []), ...doubts] }, lines);
}

function firstLines(table: OrderTable, rows: Iterable<readonly [number, Row]>): OrderLine[] {
  const reader = new OrderRows(table);
  const lines: OrderLine[] = [];
  let orders = 0;
  for (const [at, cells] of rows) {
    for (const line of reader.push(at, cells)) {
      lines.push(line);
      if (line.order !== undefined) orders++;
    }
    if (orders >= FIRST_ORDERS) break;
  }
  return lines;
}

/** “× 1.6, up to 1, at least 140.00” */
function inWords(key: FigureKey, { factor, step, up, least }: Practice, unit: Unit): string {
  return [
    ...(factor === 1 ? [] : [`× ${digits(factor)}`]),
    ...(step === 0 ? [] : [`${up ? 'up' : 'to the nearest'} to ${showOf(key, step, unit)}`]),
    ...(least === 0 ? [] : [`at least ${showOf(key, least, unit)}`]),
  ].join(', ');
}

const aboutPractice = (
  { key, practice, fit, alone, outOf }: PracticeSeen,
  { name, unit }: OneByOne,
): Finding =>
  finding('practiceSeen', name(key), name(key), inWords(key, practice, unit), fit, inOrders(outOf), alone);

const BY: Readonly<Record<HabitBy, string>> = {
  each: 'on each that it is charged by',
  line: 'on the line',
  window: 'on each window',
  share: '',
  cut: 'on each cut',
};

/** “ where Fin. drop is above about 98 in and lining is “lined””; nothing where it is always so. */
function whereIn(when: Condition, { name, unit }: OneByOne): string {
  const all = when.map((one) => {
    if ('word' in one) return `${name(one.word)} is ${one.are.map((word) => `“${word}”`).join(' or ')}`;
    const { size, from, above } = one;
    const side = above ? 'above' : 'below';
    if (size === 'date') return `${name(size)} is ${above ? 'from' : 'before'} ${showDay(Math.ceil(from))}`;
    const shown = size === 'widths' || size === 'quantity' ? digits(from) : showNear(from, unit);
    return `${name(size)} is ${side} about ${shown}`;
  });
  return all.length === 0 ? '' : ` where ${all.join(' and ')}`;
}

function aboutHabit({ habit, fit, outOf }: HabitSeen, alone: OneByOne): Finding {
  const { key, by, more, when } = habit;
  const size = Math.abs(more);
  const much = by === 'share' ? `${digits(Math.round(size * 1000) / 10)} %` : showOf(key, size, alone.unit);
  const what = [`${much} ${more > 0 ? 'more' : 'less'}`, BY[by]].filter(Boolean).join(' ');
  return finding('habitSeen', alone.name(key), alone.name(key), what, whereIn(when, alone), fit, outOf);
}

/** The rules of a period as its orders keep them: a rule of a word taken otherwise, and what is done beside the rules. */
function asKept(
  period: Period,
  orders: readonly Order[],
  { alone, doubts }: { readonly alone: OneByOne; readonly doubts: Finding[] },
): Period {
  const { seen, rules } = variantsSeen(orders, period.house.rules);
  for (const { line, value, standing, better, outOf } of seen)
    doubts.push(finding('ruleSeen', line.name, line.name, value, standing, better, inOrders(outOf)));
  const found = practicesSeen(orders, rules);
  for (const one of found) doubts.push(aboutPractice(one, alone));
  const few = orders.slice(0, LEARNED_FROM);
  const cloth = clothSeen(few, rules);
  for (const { way, fit, outOf } of cloth.says)
    doubts.push(finding('clothSeen', alone.name('yardage'), way, fit, outOf));
  const known: Practices = {
    ...practicesOf(found),
    ...(cloth.says.length > 0 && { cloth: ownClothBy(cloth.habits) }),
  };
  return {
    ...period,
    ...(seen.length > 0 && { house: { ...period.house, rules } }),
    practices: known,
  };
}

/** What a period's orders do where something tells them from the others; of orders by other rules nobody knows. */
function withOwnHabits(
  period: Period,
  orders: readonly Order[],
  { alone, doubts }: { readonly alone: OneByOne; readonly doubts: Finding[] },
): Period {
  const { practices = {}, house } = period;
  const seen = habitsSeen(orders.slice(0, LEARNED_FROM), house.rules, practices);
  for (const one of seen) doubts.push(aboutHabit(one, alone));
  return seen.length === 0
    ? period
    : { ...period, practices: { ...practices, habits: keeping(seen.map(({ habit }) => habit)) } };
}

interface Differing {
  readonly key: FigureKey;
  readonly orders: readonly Order[];
  /** In so many it can be compared. */
  readonly outOf: number;
}

/** The figures that most orders have otherwise than by these rules, most first. */
function differing(orders: readonly Order[], { house, practices }: Period): Differing[] {
  const compared = new Map<FigureKey, number>();
  const differ = new Map<FigureKey, Order[]>();
  for (const order of orders) {
    if (order.window.railroaded === 'railroaded') continue;
    const { wrong, right } = new Compared(order.window, order.ordered, house.rules, {
      practices,
      facts: order.facts,
    }).compare(FIGURE_KEYS);
    for (const key of [...wrong.map((one) => one.key), ...right])
      compared.set(key, (compared.get(key) ?? 0) + 1);
    for (const { key } of wrong) {
      const those = differ.get(key);
      if (those === undefined) differ.set(key, [order]);
      else those.push(order);
    }
  }
  return [...differ]
    .map(([key, those]) => ({ key, orders: those, outOf: compared.get(key) ?? 0 }))
    .filter((one) => one.outOf >= LEAST_ORDERS && one.orders.length >= one.outOf * DIFFER)
    .sort((one, other) => other.orders.length - one.orders.length);
}

const said = ({ rule, value, standing }: Proposal): string =>
  `“${rule}” ${String(value)} in the place of ${String(standing)}`;

function seenOf(
  orders: readonly Order[],
  period: Period,
  { name }: OneByOne,
): { readonly doubt: Finding; readonly instead?: Period['instead'] } | undefined {
  if (orders.length < LEAST_ORDERS) return undefined;
  const differ = differing(orders, period);
  const [first] = differ;
  if (first === undefined) return undefined;
  const { key, orders: those, outOf } = first;
  const headings = differ.map((one) => name(one.key)).join(' and ');
  const { learned, rules } = learnWith(orders.slice(0, LEARNED_FROM), period.house.rules);
  const agreeing = those.filter(
    ({ window, ordered }) =>
      new Compared(window, ordered, rules, { practices: period.practices }).compare([key]).right.length > 0,
  );
  if (learned.proposals.length > 0 && agreeing.length >= those.length * AGREE) {
    const proposed = learned.proposals.map(said).join(', ');
    return {
      doubt: finding(
        'otherRules',
        name(key),
        headings,
        those.length,
        inOrders(outOf),
        proposed,
        agreeing.length,
      ),
      instead: rules,
    };
  }
  if (those.length < outOf * NEARLY_ALL) return undefined;
  return { doubt: finding('otherRulesUnknown', name(key), headings, those.length, inOrders(outOf)) };
}
