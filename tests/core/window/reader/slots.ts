/** A reading of a table written by hand: its columns, each with what it means. */
import { INCHES } from '../../../../src/core/exact/unit';
import type { OrderKey } from '../../../../src/core/window/meanings';
import type { Plan, Slot } from '../../../../src/core/window/reader/slots';

export const slot = (at: number, keys: readonly OrderKey[], more: Partial<Slot> = {}): Slot => ({
  at,
  part: undefined,
  heading: keys.join(' '),
  keys,
  other: undefined,
  unit: 'in',
  per: undefined,
  addsTo: undefined,
  ...more,
});

export const planOf = (slots: readonly Slot[], more: Partial<Plan> = {}): Plan => ({
  slots,
  headings: slots.map(({ heading }) => [heading]),
  unit: INCHES,
  order: undefined,
  decimalComma: false,
  codes: new Map(),
  measuredTo: undefined,
  stated: {},
  usual: new Set(),
  ...more,
});
