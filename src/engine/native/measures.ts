/** Figures of a list of numbers. */
import { DIV0, Fault, held, NA, NUM } from './values';

export const sum = (list: readonly number[]): number | Fault =>
  held(list.reduce((total, one) => total + one, 0));
export const mean = (list: readonly number[]): number | Fault =>
  list.length === 0 ? DIV0 : held(list.reduce((total, one) => total + one, 0) / list.length);

/** The sum of the squares of how far each is from the mean. */
export function spreadOf(list: readonly number[]): number {
  const middle = Number(mean(list));
  return list.reduce((total, one) => total + (one - middle) ** 2, 0);
}
/** `less` is 1 for a sample, 0 for a whole. */
export const variance = (list: readonly number[], less: 0 | 1): number | Fault =>
  list.length - less < 1 ? DIV0 : held(spreadOf(list) / (list.length - less));
export function deviation(list: readonly number[], less: 0 | 1): number | Fault {
  const found = variance(list, less);
  return found instanceof Fault ? found : Math.sqrt(found);
}
export const sorted = (list: readonly number[]): number[] => [...list].sort((one, other) => one - other);

export function median(list: readonly number[]): number | Fault {
  if (list.length === 0) return NUM;
  const ordered = sorted(list);
  const half = ordered.length / 2;
  return Number.isInteger(half)
    ? ((ordered[half - 1] ?? 0) + (ordered[half] ?? 0)) / 2
    : (ordered[Math.floor(half)] ?? 0);
}
export function mode(list: readonly number[]): number | Fault {
  const counts = new Map<number, number>();
  for (const one of list) counts.set(one, (counts.get(one) ?? 0) + 1);
  let [best, times] = [0, 1];
  for (const [one, count] of counts) if (count > times) [best, times] = [one, count];
  return times === 1 ? NA : best;
}
export const smallest = (list: readonly number[], place: number): number | Fault => {
  const at = Math.ceil(place);
  return at < 1 || at > list.length ? NUM : (sorted(list)[at - 1] ?? NUM);
};
export const largest = (list: readonly number[], place: number): number | Fault => {
  const at = Math.ceil(place);
  return at < 1 || at > list.length ? NUM : (sorted(list)[list.length - at] ?? NUM);
};
export function percentile(list: readonly number[], part: number): number | Fault {
  if (list.length === 0 || part < 0 || part > 1) return NUM;
  return between(sorted(list), part * (list.length - 1));
}
export function percentileExclusive(list: readonly number[], part: number): number | Fault {
  const place = part * (list.length + 1) - 1;
  if (list.length === 0 || part <= 0 || part >= 1 || place < 0 || place > list.length - 1) return NUM;
  return between(sorted(list), place);
}
function between(ordered: readonly number[], place: number): number {
  const at = Math.floor(place + 1e-12);
  const rest = Math.max(0, place - at);
  const low = ordered[at] ?? 0;
  return rest < 1e-12 ? low : low + rest * ((ordered[at + 1] ?? low) - low);
}
