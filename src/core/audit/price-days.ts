/** The days from which a house’s fabrics cost another price, told from what its orders paid. */

import { finding } from '../cell/answer';
import { showDay } from '../cell/day';
import type { Paid, PricesByDay } from './between-rows';

/** A fabric’s price was the old one until after a day, and the new one on another. */
interface Change {
  readonly after: number;
  readonly upTo: number;
  /** Orders at either price, of the price that fewer have. */
  readonly fewest: number;
}

/** At either price so many orders of a fabric tell of a change. */
const LEAST_AT_A_PRICE = 2;
/** Of its orders, so many go by it. */
const HOLDS = 0.8;
/** One fabric tells of a day by itself where so many orders have either price. */
const ALONE = 3;
const MOST_DAYS = 6;

export interface Usual {
  readonly value: number;
  readonly count: number;
}

/** The price that most of these orders paid. */
export function usualOf(paid: readonly Paid[]): Usual | undefined {
  const times = new Map<number, number>();
  for (const { value } of paid) times.set(value, (times.get(value) ?? 0) + 1);
  let usual: Usual | undefined;
  for (const [value, count] of times) if (count > (usual?.count ?? 0)) usual = { value, count };
  return usual;
}

type Dated = Paid & { readonly day: number };

/** Where one price gives way to another, of these orders by their days. */
function cutOf(dated: readonly Dated[]): { readonly at: number; readonly change: Change } | undefined {
  let best: { right: number; at: number; change: Change } | undefined;
  const alone = usualOf(dated)?.count ?? 0;
  for (let at = 1; at < dated.length; at++) {
    const [before, from] = [dated.slice(0, at), dated.slice(at)];
    if ((before[at - 1] as Dated).day === (from[0] as Dated).day) continue;
    const [was, is] = [usualOf(before), usualOf(from)];
    if (was === undefined || is === undefined || was.value === is.value) continue;
    const fewest = Math.min(was.count, is.count);
    const right = was.count + is.count;
    if (fewest < LEAST_AT_A_PRICE || right < alone + LEAST_AT_A_PRICE || right <= (best?.right ?? 0))
      continue;
    const after = Math.max(...before.filter(({ value }) => value === was.value).map(({ day }) => day));
    const upTo = Math.min(...from.filter(({ value }) => value === is.value).map(({ day }) => day));
    best = { right, at, change: { after, upTo, fewest } };
  }
  return best !== undefined && best.right >= dated.length * HOLDS ? best : undefined;
}

function changesOf(dated: readonly Dated[]): Change[] {
  const cut = cutOf(dated);
  if (cut === undefined) return [];
  return [...changesOf(dated.slice(0, cut.at)), cut.change, ...changesOf(dated.slice(cut.at))];
}

/** The first days of new prices, of the fabrics of a house. */
export function turningDays(fabrics: Iterable<readonly Paid[]>): number[] {
  let changes: Change[] = [];
  for (const paid of fabrics) {
    const dated = paid.filter((one): one is Dated => one.day !== undefined);
    changes.push(...changesOf([...dated].sort((one, other) => one.day - other.day)));
  }
  const days: number[] = [];
  while (days.length < MOST_DAYS) {
    let best: { day: number; by: Change[] } | undefined;
    for (const { upTo: day } of changes) {
      const by = changes.filter(({ after, upTo }) => after < day && day <= upTo);
      if (by.length > (best?.by.length ?? 0)) best = { day, by };
    }
    if (best === undefined) break;
    const { day, by } = best;
    changes = changes.filter((one) => !by.includes(one));
    if (by.length > 1 || by.some(({ fewest }) => fewest >= ALONE)) days.push(day);
  }
  return days.sort((one, other) => one - other);
}

/** Between which turning days a day lies. */
export const spanOf = (day: number | undefined, days: readonly number[]): number | undefined =>
  day === undefined ? undefined : days.filter((one) => one <= day).length;

/** A price of another day: what others paid in its own, and until or from when its own was paid. */
export interface OfAnotherDay {
  readonly usual: number;
  readonly turned: number;
  readonly later: boolean;
}

/** Whether a fabric’s price is what others paid before a turning day that had passed, or after one that had not. */
export function ofAnotherDay<P extends Paid>(
  one: P,
  fabric: readonly P[],
  days: readonly number[],
): OfAnotherDay | undefined {
  const span = spanOf(one.day, days);
  if (span === undefined || days.length === 0) return undefined;
  const inSpan = (which: number): P[] =>
    fabric.filter((other) => other !== one && spanOf(other.day, days) === which);
  const here = inSpan(span);
  const usual = usualOf(here);
  const alike = here.filter(({ value }) => value === one.value).length;
  if (usual === undefined || usual.value === one.value || usual.count <= alike) return undefined;
  for (const [which, turned] of [
    [span - 1, days[span - 1]],
    [span + 1, days[span]],
  ] as const) {
    if (turned === undefined) continue;
    const there = usualOf(inSpan(which));
    if (there?.value === one.value && there.count >= LEAST_AT_A_PRICE)
      return { usual: usual.value, turned, later: which > span };
  }
  return undefined;
}

/** Each fabric's prices span by span, and what is said of one that belongs to another. */
export const pricesByDay: PricesByDay = {
  turningDays,
  parted(fabric, days) {
    const odd: { one: (typeof fabric)[number]; usual: number; when: string }[] = [];
    const spans = new Map<number | undefined, (typeof fabric)[number][]>();
    for (const one of fabric) {
      const other = ofAnotherDay(one, fabric, days);
      const span = spanOf(one.day, days);
      if (other === undefined) spans.set(span, [...(spans.get(span) ?? []), one]);
      else {
        const { usual, turned, later } = other;
        odd.push({ one, usual, when: later ? `from ${showDay(turned)} on` : `before ${showDay(turned)}` });
      }
    }
    return { odd, spans: [...spans.values()] };
  },
  say: (column, value, called, usual, when) =>
    finding('priceOfAnotherDay', column, column, value.toFixed(2), `“${called}”`, usual.toFixed(2), when),
};
