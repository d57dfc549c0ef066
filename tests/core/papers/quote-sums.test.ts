import { expect, it } from 'vitest';
import type { JobExtra, Sum } from '../../../src/core/papers/job';
import { amount, count, words } from '../../../src/core/papers/paper';
import { printed } from '../../../src/core/papers/quote-sums';

const sum = (is: Sum['is'], label: string, value: number): Sum => ({ is, label, entry: amount(value) });
const SUMS = [
  sum('subtotal', 'Subtotal', 90),
  sum('part', 'Freight', 0),
  sum('total', 'Total', 90),
  sum('deposit', 'Deposit', 0),
  sum('balance', 'Balance', 90),
];
const labels = (sums: readonly Sum[], extras: readonly JobExtra[] = []): string[] =>
  printed({ sums, extras }).map(({ label }) => label);

it('are without what is 0, and without a balance where there is no deposit', () => {
  expect(labels(SUMS)).toEqual(['Subtotal', 'Total']);
  expect(labels([sum('total', 'Total', 0)])).toEqual(['Total']);
});
it('name the draperies where more is listed', () => {
  expect(labels(SUMS, [{ what: words('travel'), quantity: count(1) }])).toEqual(['Draperies', 'Total']);
});
