/**
 * A column that is read as its words say and agrees with the rules only as its neighbour: a height that is the
 * finished drop, widths that are a panel's. It is told from the first orders and said once.
 */
import { panelsOf } from '../cell/treatment';
import type { Rules } from '../house/rules';
import type { Window } from '../window/columns';
import type { FigureKey } from '../window/figures';
import type { OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import { fitOf, type Fit } from './fit';

export interface Rereading {
  readonly key: OrderKey;
  /** What it then is. */
  readonly as: OrderKey;
  /** In words. */
  readonly means: string;
  mayBe(order: Order): boolean;
  read(order: Order): Order;
}

const inWindow = (order: Order, window: Partial<Window>): Order => ({
  ...order,
  window: { ...order.window, ...window },
});

/** A figure that counts another number of panels or windows. */
const times = (key: FigureKey, means: string, by: (window: Window) => number): Rereading => ({
  key,
  as: key,
  means,
  mayBe: ({ window, ordered }) => ordered[key] !== undefined && by(window) !== 1,
  read(order) {
    const figure = order.ordered[key];
    return figure === undefined
      ? order
      : { ...order, ordered: { ...order.ordered, [key]: figure * by(order.window) } };
  },
});

const panels = ({ draw }: Window): number => panelsOf(draw ?? 'pair');
const windows = ({ quantity }: Window): number => quantity ?? 1;

/** Of a rod that its house chooses beside the usual extensions the opening tells nothing. */
const CHOSEN_ROD: Rereading = {
  key: 'openingWidth',
  as: 'openingWidth',
  means: 'the opening of a rod chosen beside the usual extensions, so that the rod alone counts',
  mayBe: ({ window: { openingWidth, rodWidth, leftExtension, rightExtension } }) =>
    openingWidth !== undefined &&
    rodWidth !== undefined &&
    (leftExtension === undefined || rightExtension === undefined),
  read: (order) => (CHOSEN_ROD.mayBe(order) ? inWindow(order, { openingWidth: undefined }) : order),
};

export const REREADINGS = {
  drop: {
    key: 'measured',
    as: 'finishedDrop',
    means: 'finished drop',
    mayBe: ({ window }) => window.measured !== undefined && window.finishedDrop === undefined,
    read: (order) =>
      order.window.finishedDrop === undefined
        ? inWindow(order, { measured: undefined, finishedDrop: order.window.measured })
        : order,
  },
  rod: {
    key: 'openingWidth',
    as: 'rodWidth',
    means: 'rod width',
    mayBe: ({ window }) => window.openingWidth !== undefined && window.rodWidth === undefined,
    read: (order) =>
      order.window.rodWidth === undefined
        ? inWindow(order, { openingWidth: undefined, rodWidth: order.window.openingWidth })
        : order,
  },
  chosenRod: CHOSEN_ROD,
  widthsOfAPanel: times('widths', 'the widths of one panel', panels),
  widthsOfAllWindows: times('widths', 'the widths of all windows', (window) => 1 / windows(window)),
  yardageOfAllWindows: times('yardage', 'the yardage of all windows', (window) => 1 / windows(window)),
  yardageOfAWindow: times('yardage', 'the yardage of one window', windows),
  liningOfAWindow: times('liningYardage', 'the lining of one window', windows),
  finishedWidthOfAll: times(
    'finishedWidth',
    'the finished width of all panels',
    (window) => 1 / panels(window),
  ),
} as const satisfies Readonly<Record<string, Rereading>>;

export type RereadingName = keyof typeof REREADINGS;
const NAMES = Object.keys(REREADINGS) as RereadingName[];

/** A window that has a lining's yardage and no word of a lining is lined. */
const LINED_BY_ITS_YARDAGE: Rereading = {
  key: 'lining',
  as: 'lining',
  means: 'lined',
  mayBe: ({ window, ordered }) => window.lining === undefined && (ordered.liningYardage ?? 0) > 0,
  read: (order) => (LINED_BY_ITS_YARDAGE.mayBe(order) ? inWindow(order, { lining: 'lined' }) : order),
};

/** The readings of these names, and what every order is read by. */
export const rereadingsOf = (names: readonly RereadingName[]): readonly Rereading[] => [
  ...names.map((name) => REREADINGS[name]),
  LINED_BY_ITS_YARDAGE,
];

export const reread = (order: Order, names: readonly RereadingName[]): Order =>
  rereadingsOf(names).reduce((read, one) => one.read(read), order);

/** So many orders are looked at. */
const LOOKED_AT = 120;
const LEAST_ORDERS = 12;
/** More figures agree in so many of the orders that can tell, and no fewer in the others. */
const BETTER = 0.4;

export interface RereadSeen {
  readonly name: RereadingName;
  /** Orders that agree in more figures, of those that can tell. */
  readonly better: number;
  readonly outOf: number;
}

/** Readings that may only show together: each undoes what the other made agree. */
const TOGETHER: readonly (readonly RereadingName[])[] = [
  ...NAMES.map((name) => [name]),
  ['widthsOfAllWindows', 'yardageOfAllWindows'],
  ['widthsOfAPanel', 'yardageOfAllWindows'],
];

/** The readings by which clearly more of these orders agree with the rules. */
export function rereadSeen(orders: readonly Order[], rules: Rules): RereadSeen[] {
  const seen: RereadSeen[] = [];
  let read: readonly Order[] = orders.slice(0, LOOKED_AT);
  let fit = read.map((order) => fitOf(order, rules));
  for (const names of TOGETHER) {
    const all: readonly Rereading[] = names.map((name) => REREADINGS[name]);
    if (seen.some(({ name }) => all.some(({ key }) => REREADINGS[name].key === key))) continue;
    const able = read.flatMap((order, at) => (all.every((one) => one.mayBe(order)) ? [at] : []));
    if (able.length < LEAST_ORDERS || !able.some((at) => (fit[at]?.wrong ?? 0) > 0)) continue;
    const anew = read.map((order) => reread(order, names));
    const then = anew.map((order, at) => (able.includes(at) ? fitOf(order, rules) : (fit[at] as Fit)));
    const less = (at: number): number => (fit[at]?.wrong ?? 0) - (then[at]?.wrong ?? 0);
    const better = able.filter((at) => less(at) > 0).length;
    const worse = able.filter((at) => less(at) < 0).length;
    if (better < able.length * BETTER || worse * 4 > better) continue;
    for (const name of names) seen.push({ name, better, outOf: able.length });
    [read, fit] = [anew, then];
  }
  return seen;
}
