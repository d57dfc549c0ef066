/** Prices in bulk worked by hand: a new case is a new file in tests/core/quotes. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { PriceList, Quote } from '../../../src/core/quote/quote';
import { quote } from '../../../src/core/quote/quote';
import { priceOf, worksOf, type PriceGiven } from './priced';

interface Case {
  readonly name: string;
  readonly source: string;
  readonly working: readonly string[];
  readonly rules: readonly (readonly unknown[])[];
  readonly windows: readonly (readonly unknown[])[];
  readonly prices: Readonly<Record<string, PriceGiven>>;
  readonly lines: readonly {
    readonly what: string;
    readonly quantity: number;
    /** None where no price is set. */
    readonly cost?: string;
    readonly price: string;
    readonly says?: string;
  }[];
  readonly totals?: Partial<Record<'sum' | 'discount' | 'tax' | 'total' | 'deposit', string>>;
  /** Findings that must be there, and some that must not. */
  readonly findings?: readonly string[];
  readonly no?: readonly string[];
}

const folder = fileURLToPath(new URL('quotes/', import.meta.url));
const cases = readdirSync(folder).map((file) => JSON.parse(readFileSync(folder + file, 'utf8')) as Case);

function sold(given: Case): Quote {
  const { works, house } = worksOf(given.windows, given.rules);
  const list: PriceList = new Map(
    Object.entries(given.prices).map(([name, one]) => [name, priceOf(one, house.unit)]),
  );
  return quote(works, list, house.rules);
}

describe.each(cases.map((one) => [one.name, one] as const))('%s', (_, given) => {
  const priced = sold(given);
  it('is worked out on paper, and says where its rules are from', () => {
    expect(given.source).not.toBe('');
    expect(given.working.length).toBeGreaterThan(1);
  });
  it.each(given.lines.map((line) => [line.what, line] as const))('%s', (what, wanted) => {
    const line = priced.lines.find((one) => one.what === what);
    expect({
      what,
      quantity: line?.quantity,
      cost: line?.cost?.toString(),
      price: line?.price.toFixed(2),
      ...(line?.says !== undefined && { says: line.says }),
    }).toEqual(wanted);
  });
  it('adds up', () => {
    const { totals = {} } = given;
    for (const [key, wanted] of Object.entries(totals))
      expect(priced[key as keyof typeof totals].toFixed(2), key).toBe(wanted);
    expect(priced.sum.toFixed(2)).toBe(
      priced.lines.reduce((sum, { price }) => sum.plus(price), priced.sum.times(0)).toFixed(2),
    );
  });
  it('says what is worth a second look', () => {
    const codes = priced.findings.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining([...(given.findings ?? [])]));
    for (const code of given.no ?? []) expect(codes).not.toContain(code);
  });
});
