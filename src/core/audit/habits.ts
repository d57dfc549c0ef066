/**
 * What a house does beside its rules in some of its orders: so much more a width above a drop, a longer hem for one
 * cloth, another charge from some day on. Learned from its first orders (learn-habits.ts), and applied to each.
 */
import { exact } from '../exact/length';
import { money } from '../exact/money';
import type { Rules } from '../house/rules';
import type { FigureKey } from '../window/figures';
import { NO_PRACTICE, type Conditioned, type Practice, type Practices } from './practice';

export const SIZES = {
  finishedDrop: ({ window }) => window.finishedDrop ?? window.measured,
  rodWidth: ({ window }) => window.rodWidth ?? window.openingWidth,
  widths: ({ ordered }) => ordered.widths,
  quantity: ({ window }) => window.quantity ?? 1,
  date: ({ facts }) => facts?.date?.early,
} as const satisfies Readonly<Record<string, (order: Conditioned) => number | undefined>>;
export type Size = keyof typeof SIZES;

export const WORDS = {
  heading: ({ window }) => window.heading,
  lining: ({ window }) => window.lining,
  draw: ({ window }) => window.draw,
  match: ({ window }) => (window.verticalRepeat === undefined ? 'plain' : (window.match ?? 'straight')),
  fabric: ({ window }) => window.fabric?.toLowerCase(),
  customer: ({ facts }) => facts?.customer?.toLowerCase(),
} as const satisfies Readonly<Record<string, (order: Conditioned) => string | undefined>>;
export type Word = keyof typeof WORDS;

/** On one side of a size, or where a column says one of some words. */
export type OneCondition =
  | { readonly size: Size; readonly from: number; readonly above: boolean }
  | { readonly word: Word; readonly are: readonly string[] };
/** Where a habit holds: all of these; none is every order. */
export type Condition = readonly OneCondition[];

export type HabitKey = 'labor' | 'cutLength' | 'yardage' | 'liningYardage';
/** More for each of what the making is charged by, for the line, for each window, as a share; or on each cut. */
export type HabitBy = 'each' | 'line' | 'window' | 'share' | 'cut';

export interface Habit {
  readonly key: HabitKey;
  readonly by: HabitBy;
  /** In the figure's own measure, or a share; less than nothing is less. */
  readonly more: number;
  readonly when: Condition;
}

function holdsOne(one: OneCondition, order: Conditioned): boolean {
  if ('word' in one) {
    const word = WORDS[one.word](order);
    return word !== undefined && one.are.includes(word);
  }
  const size = SIZES[one.size](order);
  return size !== undefined && size >= one.from === one.above;
}
export const holds = (when: Condition, order: Conditioned): boolean =>
  when.every((one) => holdsOne(one, order));

/** Of the steps by one size the furthest reached counts alone: from 108 in so much, from 120 in so much instead. */
function isOutdone({ key, by, when }: Habit, others: readonly Habit[]): boolean {
  const [step, more] = when;
  if (step === undefined || more !== undefined || 'word' in step) return false;
  return others.some(({ key: otherKey, by: otherBy, when: [other, also] }) => {
    if (otherKey !== key || otherBy !== by || also !== undefined) return false;
    if (other === undefined || 'word' in other || other.size !== step.size || other.above !== step.above)
      return false;
    return step.above ? other.from > step.from : other.from < step.from;
  });
}

/** The habits that an order has. */
export function habitsOf(habits: readonly Habit[], order: Conditioned): readonly Habit[] {
  const those = habits.filter(({ when }) => holds(when, order));
  return those.filter((one) => !isOutdone(one, those));
}

/** The rules with what is more on each width or each cut. */
export function withHabits(rules: Rules, habits: readonly Habit[]): Rules {
  let kept = rules;
  for (const { by, more } of habits) {
    if (by === 'cut')
      kept = { ...kept, bottomAllowance: exact(Math.max(0, Math.round(kept.bottomAllowance + more))) };
    if (by !== 'each') continue;
    const labor = Object.fromEntries(
      Object.entries(kept.labor).map(([heading, rate]) => [heading, rate?.plus(money(more))]),
    ) as unknown as Rules['labor'];
    kept = { ...kept, labor };
  }
  return kept;
}

/** A figure's practice with what is more on the line, on each window or as a share. */
export function habitual(
  practice: Practice | undefined,
  key: FigureKey,
  habits: readonly Habit[],
  quantity: number,
): Practice | undefined {
  let kept = practice;
  for (const one of habits) {
    if (one.key !== key || one.by === 'each' || one.by === 'cut') continue;
    const { factor, plus = 0, ...more } = kept ?? NO_PRACTICE;
    kept =
      one.by === 'share'
        ? { ...more, plus, factor: factor * (1 + one.more) }
        : { ...more, factor, plus: plus + one.more * (one.by === 'window' ? quantity : 1) };
  }
  return kept;
}

/** A house's habits as each of its orders is read by them. */
export const keeping =
  (all: readonly Habit[]): NonNullable<Practices['habits']> =>
  (order, rules) => {
    const those = habitsOf(all, order);
    if (those.length === 0) return undefined;
    const quantity = order.window.quantity ?? 1;
    return {
      rules: withHabits(rules, those),
      practiceOf: (key, practice) => habitual(practice, key, those, quantity),
    };
  };
