import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/core/cell/answer';
import { buyCloth, CLOTH_BREAKS, wholeRolls, type ClothPrice } from '../../../src/core/floor/cloth-price';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { exact, fromUnit, inches, times, upToStep, type Length } from '../../../src/core/exact/length';
import { money, type Money } from '../../../src/core/exact/money';
import { INCHES } from '../../../src/core/exact/unit';

const read = (text: unknown) => CLOTH_BREAKS.read(text, { name: 'price', unit: INCHES });
const plain = (text: unknown) => read(text)?.map(({ from, price }) => [from, price.toString()]);
const yd = (figure: number): Length => fromUnit(figure, 'yd');

describe('a cloth’s price as it is typed', () => {
  it.each([
    ['28.50', [[0, '28.5']]],
    [28.5, [[0, '28.5']]],
    ['28,50', [[0, '28.5']]],
    [
      '0 28.50; 50 26; 150 24.25',
      [
        [0, '28.5'],
        [50, '26'],
        [150, '24.25'],
      ],
    ],
    [
      'from 50 at 26\n0: 28.50',
      [
        [0, '28.5'],
        [50, '26'],
      ],
    ],
    ['50 26', [[50, '26']]],
    ['none', [[0, '0']]],
    [' None ', [[0, '0']]],
    [
      '0 none; 50 26',
      [
        [0, '0'],
        [50, '26'],
      ],
    ],
    ['0', undefined],
    [0, undefined],
    ['0.00', undefined],
  ])('%s', (text, breaks) => {
    expect(plain(text)).toEqual(breaks);
  });
  it.each([
    ['dear', 'price reads “dear”'],
    ['0 28.50; 26', 'price reads “26”. Write one price like 28.50, or from which quantity and at what price'],
    ['0 28; 0 26', 'two prices'],
    ['-5', 'price reads “-5”'],
    ['0 28; 50 cheap', 'price reads “cheap”'],
  ])('“%s” is refused in a sentence', (text, sentence) => {
    expect(() => read(text)).toThrow(Refusal);
    if (sentence !== 'two prices') expect(() => read(text)).toThrow(sentence);
  });
  it('is written as it is read', () => {
    for (const text of ['none', '28.5', '0 28.5; 50 26; 150 24.25', '50 26'])
      expect(CLOTH_BREAKS.write?.(read(text) ?? [], INCHES)).toBe(text);
  });
});

const cents = fc.integer({ min: 1, max: 20_000 }).map((one): Money => money(one).div(100));
const breaks = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 1, max: 400 }), cents), {
    maxLength: 4,
    selector: ([from]) => from,
  })
  .chain((more) => cents.map((first) => [[0, first] as const, ...more]))
  .map((rows) => rows.map(([from, price]) => ({ from, price })).sort((a, b) => a.from - b.from));
const cutsOf = fc.array(
  fc.record({
    length: fc.integer({ min: 40, max: 300 }).map(inches),
    count: fc.integer({ min: 1, max: 60 }),
  }),
  { minLength: 1, maxLength: 4 },
);
const wanted = cutsOf.map((cuts) => ({
  cuts,
  yardage: upToStep(
    cuts.reduce((sum, { length, count }) => exact(sum + times(length, count)), exact(0)),
    DEFAULT_RULES.yardageStep,
  ),
}));
const roll = fc.record({ length: fc.integer({ min: 10, max: 80 }).map(yd), price: cents });
const cost = (clothWanted: Parameters<typeof buyCloth>[0], price: ClothPrice) =>
  buyCloth(clothWanted, price, DEFAULT_RULES)!.cost;

describe('cloth bought', () => {
  it('is never cheaper than nothing, never less than is wanted, and whole rolls never cost more than cutting', () => {
    fc.assert(
      fc.property(wanted, breaks, roll, (given, list, wholeRoll) => {
        const cut = buyCloth(given, { breaks: list }, DEFAULT_RULES)!;
        const best = buyCloth(given, { breaks: list, wholeRoll }, DEFAULT_RULES)!;
        expect(cut.cost.gt(0)).toBe(true);
        expect(best.cost.gt(0)).toBe(true);
        expect(cut.length).toBe(given.yardage);
        expect(best.length).toBeGreaterThanOrEqual(
          given.cuts.reduce((sum, { length, count }) => sum + length * count, 0),
        );
        expect(best.cost.lte(cut.cost)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });
  it('costs no more when the whole roll is cheaper, and no less when the least that is cut is more', () => {
    fc.assert(
      fc.property(wanted, cents, roll, fc.integer({ min: 1, max: 99 }), (given, each, wholeRoll, part) => {
        const list = [{ from: 0, price: each }];
        const cheaper = { ...wholeRoll, price: wholeRoll.price.times(part).div(100) };
        const price = { breaks: list, wholeRoll };
        expect(cost(given, { breaks: list, wholeRoll: cheaper }).lte(cost(given, price))).toBe(true);
        expect(cost(given, { ...price, minimum: yd(part) }).gte(cost(given, price))).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
  it('is counted in rolls by the cuts they give, never by pooled yards', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 300 }),
        fc.integer({ min: 1, max: 200 }),
        roll,
        (cut, count, given) => {
          const each = Math.floor(given.length / inches(cut));
          expect(wholeRolls({ cuts: [{ length: inches(cut), count }] }, given.length, DEFAULT_RULES)).toBe(
            each === 0 ? undefined : Math.ceil(count / each),
          );
        },
      ),
      { numRuns: 100 },
    );
    // A roll of 58 1/2 yd gives 18 cuts of 3 1/4 yd to the inch: the nineteenth opens a second roll.
    expect(wholeRolls({ cuts: [{ length: yd(3.25), count: 19 }] }, yd(58.5), DEFAULT_RULES)).toBe(2);
  });
  it('gives up a repeat at each roll’s start where the house does', () => {
    const cuts = [{ length: yd(10), count: 6 }];
    expect(wholeRolls({ cuts }, yd(60), DEFAULT_RULES)).toBe(1);
    expect(wholeRolls({ cuts, toStart: yd(1) }, yd(60), DEFAULT_RULES)).toBe(2);
  });
});
