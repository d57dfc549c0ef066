/** How many figures of an order agree with the rules, and how many do not. */
import type { Rules } from '../house/rules';
import { FIGURE_KEYS } from '../window/meanings';
import type { Order } from '../window/order';
import { Compared } from './compared';

export interface Fit {
  readonly right: number;
  readonly wrong: number;
}

/** Turned cloth is cut another way, and tells nothing. */
export function fitOf({ window, ordered }: Order, rules: Rules): Fit {
  if (window.railroaded === 'railroaded') return { right: 0, wrong: 0 };
  const { right, wrong } = new Compared(window, ordered, rules).compare(FIGURE_KEYS);
  return { right: right.length, wrong: wrong.length };
}
