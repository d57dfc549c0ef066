/**
 * What a house does with its figures that its rules do not say, told from its first orders: the making charge
 * marked up, up to the whole amount or never below a least charge; cuts up to a step.
 */
import { UNITS } from '../exact/length';
import { INCHES } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import type { FigureKey } from '../window/figures';
import { orderedFigure } from '../window/meanings';
import type { Order } from '../window/order';
import { reckoned } from './check';
import { canBeWorkedOut, Compared, within } from './compared';
import { NO_PRACTICE, practised, type Practice, type Practices } from './practice';

/** Fewer orders tell nothing of the others. */
const LEAST_ORDERS = 12;
/** A practice is borne out by so many of the orders that have the figure, and by so many more than the rules alone. */
const HOLDS = 0.75;
const MORE = 0.08;
/** A column goes by a step where so many of its figures are whole multiples of it. */
const STEPPED = 0.95;
const ASKED: readonly FigureKey[] = ['labor', 'cutLength'];

/** An ordered figure, and what the rules may make of it. */
interface Told {
  readonly found: number;
  readonly by: readonly number[];
}

function toldOf(orders: readonly Order[], key: FigureKey, rules: Rules): Told[] {
  return orders.flatMap(({ window, ordered }): Told[] => {
    const found = ordered[key];
    if (found === undefined || found === 0 || window.railroaded === 'railroaded') return [];
    if (!canBeWorkedOut(key, window)) return [];
    const by = reckoned(() => [...new Compared(window, ordered, rules).candidates(key)]);
    return by === undefined ? [] : [{ found, by }];
  });
}

/** How many orders a practice makes agree. */
export interface Tried {
  readonly practice: Practice;
  readonly fit: number;
}

const fits = (key: FigureKey, { found, by }: Told, practice: Practice, rules: Rules): boolean =>
  by.some((figure) => within(key, found, practised(figure, practice), rules));

const tried = (key: FigureKey, told: readonly Told[], practice: Practice, rules: Rules): Tried => ({
  practice,
  fit: told.filter((one) => fits(key, one, practice, rules)).length,
});

/** Steps that the column's figures go by, beside what they need not be told of. */
function stepsOf(key: FigureKey, told: readonly Told[], rules: Rules): number[] {
  const steps =
    orderedFigure(key).kind.quantity === 'money'
      ? [1, 5, 10]
      : unitOf(rules) === INCHES
        ? [UNITS.in / 2, UNITS.in, 2 * UNITS.in, 3 * UNITS.in]
        : [UNITS.cm, 2 * UNITS.cm, 5 * UNITS.cm, 10 * UNITS.cm];
  return steps.filter(
    (step) =>
      told.filter(({ found }) => Math.abs(found / step - Math.round(found / step)) < 1e-6).length >=
      told.length * STEPPED,
  );
}

/** So many times the rules' figure in most orders, in hundredths. */
function factorsOf(key: FigureKey, told: readonly Told[]): number[] {
  if (orderedFigure(key).kind.quantity !== 'money') return [1];
  const ratios = told.map(({ found, by }) => found / (by[0] ?? NaN)).sort((one, other) => one - other);
  const middle = ratios[ratios.length >> 1] ?? 1;
  return [...new Set([1, Math.round(middle * 100) / 100, Math.round(middle * 1000) / 1000])].filter(
    (one) => one > 0 && Number.isFinite(one),
  );
}

/** The charge that stands in more than one order in the place of less. */
function leastOf(told: readonly Told[], { factor, step, up }: Practice): number {
  const times = new Map<number, number>();
  for (const { found, by } of told) {
    const all = by.map((figure) => practised(figure, { factor, step, up, least: 0 }));
    const differs = all.every((figure) => Math.abs(figure - found) > 0.01);
    if (differs && all.some((figure) => figure < found)) times.set(found, (times.get(found) ?? 0) + 1);
  }
  const [[least, count] = [0, 0]] = [...times].sort((one, other) => other[1] - one[1]);
  const below = told.filter(({ found }) => found < least).length;
  return count > 1 && below * 2 <= count ? least : 0;
}

function bestFor(key: FigureKey, told: readonly Told[], rules: Rules): Tried & { readonly alone: number } {
  const withLeast = (practice: Practice): Tried => {
    const least = key === 'labor' ? leastOf(told, practice) : 0;
    return tried(key, told, { ...practice, least }, rules);
  };
  const plain = withLeast(NO_PRACTICE);
  let best = plain;
  for (const factor of factorsOf(key, told))
    for (const step of [0, ...stepsOf(key, told, rules)])
      for (const up of step === 0 ? [true] : [true, false]) {
        const one = withLeast({ factor, step, up, least: 0 });
        if (one.fit > best.fit && one.fit >= plain.fit + told.length * MORE) best = one;
      }
  return { ...best, alone: tried(key, told, NO_PRACTICE, rules).fit };
}

export interface PracticeSeen extends Tried {
  readonly key: FigureKey;
  /** So many agree with the rules alone, of so many. */
  readonly alone: number;
  readonly outOf: number;
}

export function practicesSeen(orders: readonly Order[], rules: Rules): PracticeSeen[] {
  return ASKED.flatMap((key): PracticeSeen[] => {
    const told = toldOf(orders, key, rules);
    if (told.length < LEAST_ORDERS) return [];
    const best = bestFor(key, told, rules);
    if (best.fit <= best.alone || best.fit < told.length * HOLDS) return [];
    return [{ ...best, key, outOf: told.length }];
  });
}

export const practicesOf = (seen: readonly PracticeSeen[]): Practices =>
  Object.fromEntries(seen.map(({ key, practice }) => [key, practice]));
