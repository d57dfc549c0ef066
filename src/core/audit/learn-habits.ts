/**
 * Which habits the first orders show: several differ from the rules by the same, and these are told from the others
 * by a size, by a word or by the day. One order alone is a slip, and so are several that nothing tells apart.
 */
import { UNITS } from '../exact/length';
import { money } from '../exact/money';
import { INCHES } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import type { Order } from '../window/order';
import { reckoned } from './check';
import { canBeWorkedOut, Compared } from './compared';
import {
  holds,
  keeping,
  SIZES,
  WORDS,
  type Condition,
  type OneCondition,
  type Habit,
  type HabitBy,
  type HabitKey,
  type Size,
  type Word,
} from './habits';
import type { Practices } from './practice';

/** Fewer orders tell nothing of all the others. */
const LEAST_ORDERS = 25;
/** So many orders have a habit. */
const LEAST = 5;
/** So few of them may stand outside of its condition, and so few of the others within. */
const OUTSIDE = 0.1;
const WITHIN = 0.15;
/** Where so many have it, and nearly all, it needs no condition. */
const LEAST_ALWAYS = 12;
const ALWAYS = 0.8;
const MOST_A_FIGURE = 3;
const MOST_TRIED = 8;

const KEYS: readonly HabitKey[] = ['labor', 'cutLength', 'yardage', 'liningYardage'];

export interface HabitSeen {
  readonly habit: Habit;
  readonly fit: number;
  readonly outOf: number;
}

/** An order's figure: whether it agrees, and by what it may differ. */
interface Told {
  readonly order: Order;
  readonly right: boolean;
  readonly differs: readonly { readonly by: HabitBy; readonly more: number }[];
}

/** The rules with one more on each of what the making is charged by. */
const oneMore = (rules: Rules): Rules => ({
  ...rules,
  labor: Object.fromEntries(
    Object.entries(rules.labor).map(([heading, rate]) => [heading, rate?.plus(money(1))]),
  ) as unknown as Rules['labor'],
});

type More = Told['differs'][number];
const CENT = 0.0101;
const SHARE = 200;

function moneyMore(order: Order, found: number, compared: Compared, more: Compared): More[] {
  const quantity = order.window.quantity ?? 1;
  const raised = [...more.candidates('labor')];
  return [...compared.candidates('labor')].flatMap((figure, at): More[] => {
    const apart = found - figure;
    const each = Math.round(((raised[at] ?? NaN) - figure) * 1e4) / 1e4;
    const apiece = (times: number): number => Math.round((apart / times) * 100) / 100;
    const fits = (times: number): boolean =>
      times > 0 && Math.abs(apiece(times) * times - apart) <= CENT && Math.abs(apiece(times)) >= 0.25;
    const share = Math.round((found / figure - 1) * SHARE) / SHARE;
    return [
      ...(fits(each) ? [{ by: 'each', more: apiece(each) } as const] : []),
      ...(fits(quantity) ? [{ by: 'window', more: apiece(quantity) } as const] : []),
      ...(fits(1) ? [{ by: 'line', more: apiece(1) } as const] : []),
      ...(share !== 0 && Math.abs(figure * (1 + share) - found) <= CENT
        ? [{ by: 'share', more: share } as const]
        : []),
    ];
  });
}

function lengthMore(order: Order, key: HabitKey, found: number, compared: Compared): More[] {
  const { rules } = compared;
  const isInches = unitOf(rules) === INCHES;
  const step = isInches ? UNITS.in / 16 : UNITS.mm / 2;
  const quantity = order.window.quantity ?? 1;
  const all: More[] = [];
  for (const figure of new Set(compared.candidates(key))) {
    const apart = found - figure;
    const to = (one: number): number => Math.round(one / step) * step;
    if (key === 'cutLength') {
      if (order.window.verticalRepeat === undefined) all.push({ by: 'cut', more: to(apart) });
      continue;
    }
    all.push({ by: 'line', more: to(apart) });
    if (quantity > 1) all.push({ by: 'window', more: to(apart / quantity) });
    else all.push({ by: 'window', more: to(apart) });
    for (const share of [0.05, 0.1, 0.15, 0.2, 0.25])
      if (
        found >= (figure - rules.yardageStep) * (1 + share) &&
        found < figure * (1 + share) + rules.yardageStep
      )
        all.push({ by: 'share', more: share });
  }
  return all;
}

function toldOf(orders: readonly Order[], key: HabitKey, rules: Rules, practices: Practices): Told[] {
  const raised = oneMore(rules);
  return orders.flatMap((order): Told[] => {
    const { window, ordered, facts } = order;
    const found = ordered[key];
    if (found === undefined || found === 0 || window.railroaded === 'railroaded') return [];
    if (!canBeWorkedOut(key, window)) return [];
    const told = reckoned((): Told[] => {
      const how = { practices, facts };
      const compared = new Compared(window, ordered, rules, how);
      const { right, wrong } = compared.compare([key]);
      if (right.length > 0) return [{ order, right: true, differs: [] }];
      if (wrong.length === 0) return [];
      const differs =
        key === 'labor'
          ? moneyMore(order, found, compared, new Compared(window, ordered, raised, how))
          : lengthMore(order, key, found, compared);
      return [{ order, right: false, differs }];
    });
    return told ?? [];
  });
}

interface Side {
  readonly when: OneCondition;
  readonly errors: number;
}

/** Of these that have a habit and those that have none: whether a condition tells them apart. */
function parts(when: OneCondition, having: number, missing: number, without: number): Side | undefined {
  const within = having - missing;
  if (within < LEAST || missing > having * OUTSIDE || without > Math.max(1, within * WITHIN))
    return undefined;
  return { when, errors: missing + without };
}

const OF_COUNTS = [1, 0.5];
const OF_LENGTHS = [50, 10, 5, 1, 0.5].map((cm) => cm * UNITS.cm);
const OF_INCHES = [12, 6, 1, 0.5].map((inch) => inch * UNITS.in);

/** The roundest figure above one and up to another: nobody begins a charge at 246.25. */
function roundest(above: number, upTo: number, size: Size, isInches: boolean): number {
  const steps =
    size === 'finishedDrop' || size === 'rodWidth' ? (isInches ? OF_INCHES : OF_LENGTHS) : OF_COUNTS;
  for (const step of steps) {
    const round = Math.floor(upTo / step) * step;
    if (round > above) return round;
  }
  return upTo;
}

function bySize(
  size: Size,
  having: readonly Order[],
  lacking: readonly Order[],
  isInches: boolean,
): Side | undefined {
  const read = (orders: readonly Order[]): number[] => orders.flatMap((order) => SIZES[size](order) ?? []);
  const [has, lacks] = [read(having), read(lacking)];
  if (has.length < having.length * (1 - OUTSIDE)) return undefined;
  const edges = [...new Set([...has, ...lacks])].sort((one, other) => one - other);
  let best: Side | undefined;
  for (let at = 1; at < edges.length; at++) {
    const from = roundest(edges[at - 1] as number, edges[at] as number, size, isInches);
    for (const above of [true, false]) {
      const missing = has.filter((one) => one >= from !== above).length;
      const without = lacks.filter((one) => one >= from === above).length;
      const side = parts({ size, from, above }, has.length, missing, without);
      // A side on which all stand tells nothing.
      if (side === undefined || lacks.length === without) continue;
      if (best === undefined || side.errors < best.errors) best = side;
    }
  }
  return best;
}

function byWord(word: Word, having: readonly Order[], lacking: readonly Order[]): Side | undefined {
  const counted = (orders: readonly Order[]): Map<string, number> => {
    const times = new Map<string, number>();
    for (const order of orders) {
      const said = WORDS[word](order);
      if (said !== undefined) times.set(said, (times.get(said) ?? 0) + 1);
    }
    return times;
  };
  const [has, lacks] = [counted(having), counted(lacking)];
  const are = [...has].flatMap(([one, count]) => (count >= 4 * (lacks.get(one) ?? 0) ? [one] : []));
  const sum = (times: ReadonlyMap<string, number>): number =>
    are.reduce((all, one) => all + (times.get(one) ?? 0), 0);
  const [within, without] = [sum(has), sum(lacks)];
  if (are.length * 2 > within || without === lacking.length) return undefined;
  return parts({ word, are }, having.length, having.length - within, without);
}

const least = (sides: readonly (Side | undefined)[]): Side | undefined =>
  sides.reduce(
    (best, one) => (one !== undefined && (best === undefined || one.errors < best.errors) ? one : best),
    undefined,
  );

function conditionOf(
  having: readonly Order[],
  lacking: readonly Order[],
  isInches: boolean,
): Condition | undefined {
  const words = Object.keys(WORDS) as Word[];
  const sizes = (others: readonly Order[]): (Side | undefined)[] =>
    (Object.keys(SIZES) as Size[]).map((size) => bySize(size, having, others, isInches));
  const one = least([...sizes(lacking), ...words.map((word) => byWord(word, having, lacking))]);
  if (one !== undefined) return [one.when];
  // What all of them say in one column, and of the others that say it a size.
  for (const word of words) {
    const are = [...new Set(having.flatMap((order) => WORDS[word](order) ?? []))];
    if (are.length * 4 > having.length) continue;
    const both: OneCondition = { word, are };
    const alike = lacking.filter((order) => holds([both], order));
    if (alike.length === lacking.length) continue;
    const side = least(sizes(alike));
    if (side !== undefined) return [both, side.when];
  }
  return undefined;
}

interface Look {
  readonly key: HabitKey;
  readonly rules: Rules;
  readonly practices: Practices;
  /** The habits already seen. */
  readonly known: readonly Habit[];
}

/** Whether an order's figure would agree all the same. */
function agreesWith(
  habit: Habit,
  { window, ordered, facts }: Order,
  { key, rules, practices, known }: Look,
): boolean {
  const right = reckoned(
    () =>
      new Compared(window, ordered, rules, {
        practices: { ...practices, habits: keeping([...known, habit]) },
        facts,
      }).compare([key]).right,
  );
  return right !== undefined && right.length > 0;
}

/** The difference that most orders have alike, and where they have it. */
function nextHabit(told: readonly Told[], look: Look): HabitSeen | undefined {
  const { key } = look;
  const right = told.flatMap((one) => (one.right ? [one.order] : []));
  const times = new Map<string, More & { readonly orders: Set<Order> }>();
  for (const { order, differs } of told)
    for (const { by, more } of differs) {
      const id = `${by} ${more}`;
      const those = times.get(id) ?? { by, more, orders: new Set<Order>() };
      those.orders.add(order);
      times.set(id, those);
    }
  const most = [...times.values()]
    .filter(({ orders, more }) => orders.size >= LEAST && more !== 0)
    .sort((one, other) => other.orders.size - one.orders.size)
    .slice(0, MOST_TRIED);
  for (const { by, more, orders } of most) {
    const having = [...orders];
    const always: Habit = { key, by, more, when: [] };
    // A cut that goes up to its repeat either way tells nothing.
    const lacking = right.filter((order) => !agreesWith(always, order, look));
    const outOf = having.length + lacking.length;
    if (having.length >= LEAST_ALWAYS && having.length >= outOf * ALWAYS)
      return { habit: always, fit: having.length, outOf };
    const when = conditionOf(having, lacking, unitOf(look.rules) === INCHES);
    if (when === undefined) continue;
    const within = (those: readonly Order[]): number => those.filter((order) => holds(when, order)).length;
    const fit = within(having);
    return { habit: { key, by, more, when }, fit, outOf: fit + within(lacking) };
  }
  return undefined;
}

/** What these orders do beside the rules and what is already known of them. */
export function habitsSeen(orders: readonly Order[], rules: Rules, practices: Practices): HabitSeen[] {
  const seen: HabitSeen[] = [];
  if (orders.length < LEAST_ORDERS) return seen;
  for (const key of KEYS) {
    for (let found = 0; found < MOST_A_FIGURE; found++) {
      const known = seen.map(({ habit }) => habit);
      const look = { key, rules, practices: { ...practices, habits: keeping(known) }, known };
      const told = toldOf(orders, key, rules, look.practices);
      if (told.filter(({ right }) => !right).length < LEAST) break;
      const next = nextHabit(told, look);
      if (next === undefined) break;
      seen.push(next);
    }
  }
  return seen;
}
