import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutLength } from '../../../src/core/cloth/cuts';
import {
  allAlike,
  clothForCuts,
  cuttingOf,
  furtherCut,
  orderInWords,
  runOfCuts,
} from '../../../src/core/cloth/repeat';
import { leastOrder, takesOf } from '../../../src/core/cloth/half-drop';
import { startsOf, yardage, type Covered } from '../../../src/core/cloth/yardage';
import type { RepeatRule } from '../../../src/core/cell/ways';
import { readHouse } from '../../../src/core/house/house';
import { exact, inches, toUnit, type Length } from '../../../src/core/exact/length';
import { house, quantity, rangeOf, sixtyFourths } from '../../properties/given';

const rulesOf = (...rules: readonly (readonly [string, string | number])[]) =>
  readHouse(rules.length === 0 ? undefined : rules).rules;
const RULES = [
  'every cut up',
  'first cut exact',
  'one repeat each',
  'one repeat with every length',
  'half-drop alternating',
] as const;

/** 4 lengths of 84 in with a repeat of 24 (Project Gutenberg #63282), in yards. */
describe('cloth for 4 cuts of 84 in with a repeat of 24', () => {
  const cutting = (rule: RepeatRule, repeat: Length | undefined) =>
    cuttingOf(inches(84), repeat, undefined, rulesOf(['repeat rule', rule]));
  const starts = (rule: RepeatRule, cuts: number) =>
    rule === 'half-drop alternating'
      ? { a: cuts - Math.floor(cuts / 2), b: Math.floor(cuts / 2), shared: 0 }
      : allAlike(cuts);

  it.each<[RepeatRule, number, number]>([
    ['every cut up', 96, 32 / 3],
    ['first cut exact', 96, 31 / 3],
    ['one repeat each', 108, 34 / 3],
    ['one repeat with every length', 108, 12],
    // A B A B: 7 half repeats are 84, three times, and the last up to 96: 348 in.
    ['half-drop alternating', 96, 29 / 3],
  ])('by “%s” takes %d in where one like it follows, %d yd in all', (rule, further, yards) => {
    expect(toUnit(furtherCut(cutting(rule, inches(24))), 'in')).toBe(further);
    expect(toUnit(clothForCuts(cutting(rule, inches(24)), starts(rule, 4)), 'yd')).toBeCloseTo(yards, 12);
  });

  it('is plain where there is no repeat, and nothing for no cuts', () => {
    for (const rule of RULES) {
      for (const none of [undefined, inches(0)])
        expect(clothForCuts(cutting(rule, none), starts(rule, 4))).toBe(inches(336));
      expect(clothForCuts(cutting(rule, inches(24)), starts(rule, 0))).toBe(0);
    }
  });

  it('of one cut by “first cut exact” or “one repeat each” is that cut', () => {
    expect(clothForCuts(cutting('first cut exact', inches(24)), allAlike(1))).toBe(inches(84));
    expect(clothForCuts(cutting('one repeat each', inches(24)), allAlike(1))).toBe(inches(84));
    expect(clothForCuts(cutting('one repeat with every length', inches(24)), allAlike(1))).toBe(inches(108));
  });
});

/** A UK shop's curtain guide (CHECKS U7): (135 + 27) × 4 = 648 cm. */
it('one repeat with every length: 4 cuts of 135 cm with a repeat of 27 are 648 cm', () => {
  const centimetres = (figure: number): Length => exact(figure * 10_000_000);
  const rules = rulesOf(['repeat rule', 'one repeat with every length'], ['unit', 'centimetres']);
  const cutting = cuttingOf(centimetres(135), centimetres(27), undefined, rules);
  expect(clothForCuts(cutting, allAlike(4))).toBe(centimetres(648));
});

describe('a half-drop', () => {
  it('is decided by the match; else the house rule stands', () => {
    const cutBy = (match: 'straight' | 'half-drop' | undefined, rule: RepeatRule) => {
      const { halfDrop, rule: own } = cuttingOf(
        inches(84),
        inches(24),
        match,
        rulesOf(['repeat rule', rule]),
      );
      return [halfDrop, own];
    };
    expect(cutBy('half-drop', 'every cut up')).toEqual([true, 'every cut up']);
    expect(cutBy('half-drop', 'first cut exact')).toEqual([true, 'first cut exact']);
    expect(cutBy('half-drop', 'one repeat each')).toEqual([true, 'every cut up']);
    expect(cutBy(undefined, 'half-drop alternating')).toEqual([true, 'every cut up']);
    expect(cutBy('straight', 'half-drop alternating')).toEqual([false, 'every cut up']);
    expect(cutBy('straight', 'one repeat each')).toEqual([false, 'one repeat each']);
  });

  it('keeps half a nanometre until the whole run is summed', () => {
    const cutting = cuttingOf(exact(1), exact(3), 'half-drop', rulesOf());
    // A B: 1½ before the B, and the last up to 3.
    expect(runOfCuts(cutting, { a: 1, b: 1, shared: 0 }).map(({ length }) => length)).toEqual([2, 3]);
    // A B A B: 1½ three times, 4½ up to 5, and 3.
    expect(clothForCuts(cutting, { a: 2, b: 2, shared: 0 })).toBe(8);
  });

  it('begins each panel alike: the halves of a shared width carry one letter, or the count runs on', () => {
    const starts = (widths: number, panels: 1 | 2, ...rules: readonly (readonly [string, string])[]) => {
      const { a, b, shared } = startsOf({ widths, panels }, 1, rulesOf(...rules));
      return [a, b, shared];
    };
    // A B A twice; A B and half an A twice, the halves out of one cut; A and half a B twice.
    expect(starts(6, 2)).toEqual([4, 2, 0]);
    expect(starts(5, 2)).toEqual([3, 2, 0]);
    expect(starts(3, 2)).toEqual([2, 1, 0]);
    expect(starts(2.5, 1)).toEqual([2, 1, 0]);
    const on = ['half drop starts', 'run on'] as const;
    expect(starts(6, 2, on)).toEqual([3, 3, 0]);
    expect(starts(5, 2, on)).toEqual([2, 2, 1]);
    expect(starts(2.5, 1, on)).toEqual([2, 1, 0]);
  });

  it('begins a shared cut at A or B, as it takes least: one of each is less where an odd number of half repeats is', () => {
    const cutting = cuttingOf(inches(100), inches(25.25), 'half-drop', rulesOf());
    // A shared cut is 112 5/8: before its like 126 1/4, before the other start 9 halves, 113 5/8.
    expect(toUnit(clothForCuts(cutting, { a: 0, b: 0, shared: 2 }), 'in')).toBe(113.625 + 126.25);
    expect(orderInWords(cutting, { a: 0, b: 0, shared: 2 })).toBe('A B');
    // Of a repeat of 20 it is 110: 120 before its like, 110 before the other start, as the plain cuts are not.
    const other = cuttingOf(inches(100), inches(20), 'half-drop', rulesOf());
    expect(toUnit(clothForCuts(other, { a: 1, b: 1, shared: 0 }), 'in')).toBe(110 + 100);
    expect(toUnit(clothForCuts(other, { a: 0, b: 0, shared: 2 }), 'in')).toBe(110 + 120);
  });

  it('takes least of all ways to begin its shared cuts', () => {
    const job = fc.record({
      cut: fc.integer({ min: 1, max: 60 }),
      repeat: fc.integer({ min: 1, max: 30 }).map((one) => 2 * one),
      each: fc.integer({ min: 0, max: 3 }),
      more: fc.integer({ min: 0, max: 2 }),
      shared: fc.integer({ min: 1, max: 6 }),
      exactLast: fc.boolean(),
    });
    fc.assert(
      fc.property(job, ({ cut, repeat, each, more, shared, exactLast }) => {
        const rules = rulesOf(['repeat rule', exactLast ? 'first cut exact' : 'every cut up']);
        const cutting = cuttingOf(exact(cut), exact(repeat), 'half-drop', rules);
        const group = (start: 'A' | 'B', count: number, twice: number) => {
          const takes = takesOf(twice, exact(repeat));
          return { ...takes, start, count, last: exactLast ? twice / 2 : takes.like };
        };
        const longer = 2 * cut + repeat;
        const all = Array.from(
          { length: shared + 1 },
          (_, atA) =>
            leastOrder([
              group('A', each + more, 2 * cut),
              group('B', each, 2 * cut),
              group('A', atA, longer),
              group('B', shared - atA, longer),
            ]).twice / 2,
        );
        expect(clothForCuts(cutting, { a: each + more, b: each, shared })).toBe(Math.min(...all));
      }),
      { numRuns: 400, seed: 8 },
    );
  });

  it('names its order: cut by cut where they are few, else in words', () => {
    const rules = rulesOf();
    const words = (repeat: number, a: number, b: number) =>
      orderInWords(cuttingOf(inches(112), inches(repeat), 'half-drop', rules), { a, b, shared: 0 });
    expect(words(20, 4, 2)).toBe('A A A A B B');
    expect(words(25.25, 4, 2)).toBe('A B A B A A');
    expect(words(20, 40, 20)).toBe('all 40 A, half a repeat down, then all 20 B');
    expect(words(25.25, 40, 20)).toBe('A and B in turn, 20 of each, then the 20 A left');
    expect(words(20, 4, 0)).toBeUndefined();
  });
});

describe('the cuts that the steps list', () => {
  const window = fc.record({
    rodWidth: sixtyFourths(20, 200).map((figure) => inches(Number(figure))),
    finishedDrop: sixtyFourths(30, 130).map((figure) => inches(Number(figure))),
    heading: fc.constantFrom('pinch', 'wave') as fc.Arbitrary<Covered['heading']>,
    draw: fc.constantFrom('pair', 'one-way left') as fc.Arbitrary<Covered['draw']>,
    verticalRepeat: sixtyFourths(2, 40).map((figure) => inches(Number(figure))),
    match: fc.constantFrom('straight', 'half-drop', undefined) as fc.Arbitrary<Covered['match']>,
    quantity,
  });

  it('add up to the cloth before it is rounded under every rule, the pattern’s start apart', () => {
    fc.assert(
      fc.property(
        window,
        house,
        fc.constantFrom(...RULES),
        fc.constantFrom('nothing', 'one repeat', 'one yard'),
        (given, words, rule, start) => {
          const range = rangeOf({
            ...words,
            'yardage step': '0 yd',
            'repeat rule': rule,
            'pattern start': start,
          });
          const { rules } = readHouse(range);
          const window = { ...given, fabricWidth: inches(54), fullness: undefined };
          const { value, steps } = yardage(window, rules);
          const listed = steps.find(({ what }) => what.startsWith('cloth')) as (typeof steps)[number];
          const figures = listed.figures.map(({ value: figure }) => Number(figure));
          let sum = 0;
          for (let at = 0; at < figures.length; at += 2) sum += (figures[at] ?? 0) * (figures[at + 1] ?? 0);
          const more =
            start === 'nothing' || value === 0
              ? 0
              : start === 'one repeat'
                ? given.verticalRepeat
                : inches(36);
          expect(sum + more).toBe(value);
          // Where all cuts are alike the cut length is theirs, else it is the longest.
          const cut = cutLength({ ...window, layer: undefined }, rules).value;
          const lengths = figures.filter((_, at) => at % 2 === 1);
          for (const length of lengths) expect(length).toBeLessThanOrEqual(cut);
          if (rule === 'every cut up' && given.match !== 'half-drop')
            expect(new Set(lengths).size).toBeLessThanOrEqual(1);
        },
      ),
      { numRuns: 400, seed: 5 },
    );
  });
});

/** A sewing blog (CHECKS U10): 114 in, repeat 4½; two lengths and a repeat are 6.625 yd. */
it('the pattern’s start is bought once: 2 × 117 + 4½ = 238½ in, 6⅝ yd', () => {
  const covered: Covered = {
    rodWidth: inches(30),
    finishedDrop: inches(114),
    heading: 'flat',
    draw: 'pair',
    fabricWidth: inches(54),
    fullness: undefined,
    verticalRepeat: inches(4.5),
    quantity: undefined,
  };
  const rules = (start: string) =>
    rulesOf(
      ['pattern start', start],
      ['top allowance flat', 0],
      ['bottom allowance', 0],
      ['yardage step', 0],
    );
  expect(toUnit(yardage(covered, rules('one repeat')).value, 'yd')).toBe(6.625);
  expect(toUnit(yardage(covered, rules('nothing')).value, 'yd')).toBe(6.5);
  expect(toUnit(yardage(covered, rules('one yard')).value, 'yd')).toBe(7.5);
  // Under its old name, and not window by window.
  const old = rulesOf(
    ['roll start', 'one repeat'],
    ['yardage rounded by', 'window'],
    ['top allowance flat', 0],
    ['bottom allowance', 0],
    ['yardage step', 0],
  );
  expect(toUnit(yardage({ ...covered, quantity: 3 }, old).value, 'yd')).toBe(6.5 * 3 + 0.125);
});
