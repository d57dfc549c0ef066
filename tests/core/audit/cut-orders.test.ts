import { describe, expect, it } from 'vitest';
import { halfDropCuts, honestYardages } from '../../../src/core/audit/cut-orders';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit } from '../../../src/core/exact/length';

/** Six widths, A-B-A twice, cut 112, repeat 20: a cut before one like it takes 120, before the other start 130. */
const ordered = (match: 'half-drop' | 'straight', verticalRepeat: number, cutLength?: number) => ({
  window: { heading: 'pinch', match, verticalRepeat: inches(verticalRepeat) } as const,
  widths: 6,
  dropped: { finishedDrop: inches(96), heading: 'pinch' } as const,
  cutLength: cutLength === undefined ? undefined : inches(cutLength),
});
const yardages = (given: ReturnType<typeof ordered>, ...rules: readonly (readonly [string, string])[]) =>
  new Set(
    [...honestYardages(given, readHouse(rules.length === 0 ? undefined : rules).rules)].map((yards) =>
      toUnit(yards, 'yd'),
    ),
  );

describe('the ways a half-drop may honestly have been bought', () => {
  const found = yardages(ordered('half-drop', 20));
  it.each([
    ['the order that takes least, 730 in', 20.375],
    ['its last cut as it is, 722 in', 20.125],
    ['one repeat more an order, 740 in', 20.625],
    ['half a repeat more a cut, or one repeat more on every other cut, 780 in', 21.75],
    ['starts in turn though it takes more, 4 × 130 + 2 × 120 = 760 in', 21.125],
  ])('are among others %s', (_, yards) => expect([...found]).toContain(yards));

  it('never leave the pattern out: 672 in', () => expect([...found]).not.toContain(18.75));

  it('call a cut by what follows it, or half a repeat or a repeat longer; never by its drop alone', () => {
    const cuts = [...halfDropCuts(ordered('half-drop', 20), readHouse(undefined).rules)];
    expect(cuts.map((cut) => cut / inches(1))).toEqual([120, 130, 130, 140]);
  });

  it('of a straight match are its own cuts and no others', () => {
    expect([...yardages(ordered('straight', 20))]).toEqual([20]);
    // 7 repeats a cut as the row has it: 840 in.
    expect([...yardages(ordered('straight', 20, 140))]).toEqual([20, 23.375]);
  });

  it('with a repeat between the lengths, have it once for each further one, whether the cut shows it or not', () => {
    const each = [['repeat rule', 'one repeat each']] as const;
    // 6 × 112 + 5 × 20 = 772 in; 672 in would be no pattern at all.
    for (const cut of [112, 132]) {
      const found = [...yardages(ordered('straight', 20, cut), ...each)];
      expect(found).toEqual([21.5]);
    }
  });

  it('have the pattern’s start or not, for one line of an order buys it for all', () => {
    const [without, with_] = [...yardages(ordered('straight', 20), ['pattern start', 'one repeat'])];
    expect([without, with_]).toEqual([20, 20.625]);
  });
});
