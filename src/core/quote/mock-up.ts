/**
 * The mock-up room: so many windows made and hung first to be approved. They are an order of their own,
 * priced at their own quantity, so that no break of the rest helps them; spares and attic stock wait for the rest.
 */
import { finding, type Finding } from '../cell/answer';
import { WindowWork } from '../window/job';
import { NOTHING, type Money } from '../exact/money';
import { quote, type PriceList, type Quote } from './quote';
import type { Rules } from '../house/rules';

export interface MockUp {
  /** “2 windows of room 401”. */
  readonly says: string;
  readonly first: Quote;
  readonly rest: Quote;
  /** Both orders. */
  readonly total: Money;
  /** What the two orders cost beyond one. */
  readonly adds: Money;
}

export interface JobPrice {
  /** All windows in one order. */
  readonly whole: Quote;
  /** The same in two orders, where the house makes some windows first. */
  readonly mockUp?: MockUp;
  readonly findings: readonly Finding[];
}

interface Apart {
  readonly first: readonly WindowWork[];
  readonly rest: readonly WindowWork[];
  readonly windows: number;
  readonly groups: number;
}

const some = (work: WindowWork, quantity: number): readonly WindowWork[] =>
  quantity === 0
    ? []
    : quantity === work.quantity
      ? [work]
      : [new WindowWork({ ...work.window, quantity }, work.rules)];

/** The first windows of the first room, or of each type, as the rows have them; a row of many is divided. */
export function setApart(
  windows: readonly WindowWork[],
  { mockUpWindows: asked, mockUpOf }: Pick<Rules, 'mockUpWindows' | 'mockUpOf'>,
  typeOf: (work: WindowWork) => string,
): Apart {
  const room = windows[0]?.window.room;
  const groupOf = (work: WindowWork): string | undefined =>
    mockUpOf === 'each room type' ? typeOf(work) : work.window.room === room ? '' : undefined;
  const taken = new Map<string, number>();
  const first: WindowWork[] = [];
  const rest: WindowWork[] = [];
  for (const work of windows) {
    const group = groupOf(work);
    const had = group === undefined ? asked : (taken.get(group) ?? 0);
    const count = Math.min(asked - had, work.quantity);
    if (group !== undefined && count > 0) taken.set(group, had + count);
    first.push(...some(work, count));
    rest.push(...some(work, work.quantity - count));
  }
  const all = [...taken.values()].reduce((sum, one) => sum + one, 0);
  return { first, rest, windows: all, groups: taken.size };
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

function saysOf({ first, windows, groups }: Apart, { mockUpOf }: Rules): string {
  if (mockUpOf === 'each room type')
    return `${counted(windows, 'window')} of ${counted(groups, 'room type')}`;
  const room = first[0]?.window.room;
  return room === undefined ? counted(windows, 'window') : `${counted(windows, 'window')} of room ${room}`;
}

/** Prices a job, and where the house makes a mock-up first, the two orders it then comes in. */
export function priceJob(
  windows: readonly WindowWork[],
  prices: PriceList,
  rules: Rules,
  typeOf: (work: WindowWork) => string,
): JobPrice {
  const whole = quote(windows, prices, rules);
  if (rules.mockUpWindows === 0 || windows.length === 0) return { whole, findings: whole.findings };
  const apart = setApart(windows, rules, typeOf);
  if (apart.rest.length === 0)
    return {
      whole,
      findings: [...whole.findings, finding('mockUpIsAll', 'mock up windows', apart.windows)],
    };
  const first = quote(apart.first, prices, { ...rules, spareWindows: NOTHING, atticStock: undefined });
  const rest = quote(apart.rest, prices, rules);
  const total = first.total.plus(rest.total);
  const both = [...first.findings, ...rest.findings];
  return {
    whole,
    mockUp: { says: saysOf(apart, rules), first, rest, total, adds: total.minus(whole.total) },
    findings: both.filter((one, at) => both.findIndex((other) => other.sentence === one.sentence) === at),
  };
}
