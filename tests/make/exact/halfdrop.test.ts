/** The half-drop's table against every order of cutting written out, and the trade's own examples. */
import { describe, expect, it } from 'vitest';
import { exact, inches, upToOddHalf, upToStep, type Exact } from '../../../src/make/exact/figures';
import { halfDropCloth, lettersOf, lettersRunningOn, sharedCloth } from '../../../src/make/exact/halfdrop';

/** Every order of so many A's and B's. */
function ordersOf(a: number, b: number): readonly string[] {
  if (a + b === 0) return [''];
  const withA = a > 0 ? ordersOf(a - 1, b).map((rest) => `A${rest}`) : [];
  const withB = b > 0 ? ordersOf(a, b - 1).map((rest) => `B${rest}`) : [];
  return [...withA, ...withB];
}

function clothOf(order: string, cut: Exact, repeat: Exact, last: Exact): Exact {
  let cloth = last;
  for (let at = 1; at < order.length; at += 1)
    cloth = cloth.add(order[at] === order[at - 1] ? upToStep(cut, repeat) : upToOddHalf(cut, repeat));
  return cloth;
}

describe('a half-drop', () => {
  it.each([
    [112, 20],
    [112, 25.25],
    [98.5, 27],
    [120, 20],
    [90, 20],
    [30, 64],
    [10, 64],
  ])('of cut %s and repeat %s takes what the best of all orders takes', (cut, repeat) => {
    const [bare, pattern] = [inches(cut), inches(repeat)];
    for (let a = 0; a <= 6; a += 1)
      for (let b = a === 0 ? 1 : 0; b <= 5; b += 1)
        for (const last of [bare, upToStep(bare, pattern)]) {
          const all = ordersOf(a, b).map((order) => clothOf(order, bare, pattern, last));
          const least = all.reduce((one, other) => (other.compare(one) < 0 ? other : one));
          expect(halfDropCloth({ a, b }, bare, pattern, last).toFraction()).toBe(least.toFraction());
        }
  });

  it('cuts 112 in, repeat 20, A-B-A twice, from 730 in: 120 × 3 + 130 + 120 + 120', () => {
    const cloth = halfDropCloth({ a: 4, b: 2 }, inches(112), inches(20), inches(120));
    expect(cloth.toFraction()).toBe(inches(730).toFraction());
  });

  it('cuts 112 in, repeat 25¼, A-B-A twice, from 707 in, or 692¾ where the last cut is plain', () => {
    const cut = (last: number): string =>
      halfDropCloth({ a: 4, b: 2 }, inches(112), inches(25.25), inches(last)).div(inches(1)).toFraction();
    expect(cut(126.25)).toBe('707');
    expect(cut(112)).toBe('2771/4');
  });

  it('begins each panel alike, and gives a half width the letter of its turn', () => {
    expect(lettersOf(exact('2.5'))).toEqual({ whole: { a: 1, b: 1 }, half: 'a' });
    expect(lettersOf(exact('1.5'))).toEqual({ whole: { a: 1, b: 0 }, half: 'b' });
    expect(lettersOf(exact(3))).toEqual({ whole: { a: 2, b: 1 }, half: undefined });
  });

  it('runs on through two panels, a shared cut between them begun at either letter', () => {
    // A B, half an A beside half a B, then A B again.
    expect(lettersRunningOn(2, 1)).toEqual({ a: 2, b: 2, shared: 1 });
    expect(lettersRunningOn(1, 3)).toEqual({ a: 3, b: 3, shared: 3 });
    const up = (cut: Exact): Exact => upToStep(cut, inches(25.25));
    const cloth = sharedCloth({ a: 0, b: 0, shared: 2 }, inches(100), inches(25.25), up);
    expect(cloth.div(inches(1)).valueOf()).toBe(113.625 + 126.25);
    // Without a shared one it is the table of the two letters.
    for (const cut of [30, 98.5, 112, 120])
      expect(sharedCloth({ a: 3, b: 2, shared: 0 }, inches(cut), inches(25.25), up).toFraction()).toBe(
        halfDropCloth({ a: 3, b: 2 }, inches(cut), inches(25.25), up(inches(cut))).toFraction(),
      );
  });
});
