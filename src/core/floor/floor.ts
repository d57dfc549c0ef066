/**
 * A floor of windows in bulk: totals by fabric and type, what other choices would cost,
 * and what a slightly narrower rod would save over the whole floor.
 */
import { Refusal } from '../cell/answer';
import type { Window } from '../window/columns';
import { WindowWork } from '../window/job';
import { exact, NO_LENGTH, toUnit, type Length } from '../exact/length';
import { money, NOTHING, type Money } from '../exact/money';
import { buyCloth, wholeRolls, type ClothPrice, type ClothWanted } from './cloth-price';
import { clothFor, facesWanted, type Wanted } from './cloth-wanted';
import { ONE, type Ratio } from '../exact/ratio';
import type { RepeatRule } from '../cell/ways';
import type { Rules } from '../house/rules';
import { unitOf } from '../house/rules';
import { faceTotals } from './tally';
import type { Direction } from '../cell/treatment';

export interface Choice {
  readonly fullness?: Ratio | undefined;
  readonly fabricWidth?: Length | undefined;
  readonly direction: Direction;
  readonly repeatRule?: RepeatRule | undefined;
}

export interface Costed {
  readonly choice: Choice;
  /** Undefined where it cannot be made so, with the reason. */
  readonly yardage: Length | undefined;
  readonly why?: string;
  /** Whole rolls of the given length; undefined without one. */
  readonly rolls: number | undefined;
  readonly price: Money | undefined;
  /** Of the choices with a price the least; none where no price is known. */
  readonly cheapest: boolean;
  /** The least yardage where no price is known. */
  readonly leastCloth: boolean;
}

/** The face cloth of all the windows under one choice, spares and attic stock in it, as it would be bought. */
function wantedUnder(windows: readonly Window[], choice: Choice, rules: Rules): readonly Wanted[] {
  const under = choice.repeatRule === undefined ? rules : { ...rules, repeatRule: choice.repeatRule };
  const works = windows.map(
    (window) =>
      new WindowWork(
        {
          ...window,
          fullness: choice.fullness ?? window.fullness,
          fabricWidth: choice.fabricWidth ?? window.fabricWidth,
        },
        under,
      ),
  );
  return facesWanted(works, faceTotals(works, under, choice.direction), choice.direction);
}

/** A sum over all cloths; undefined where one of them has none. */
function allOf<T>(
  cloths: readonly ClothWanted[],
  figureOf: (cloth: ClothWanted) => T | undefined,
  add: (one: T, other: T) => T,
): T | undefined {
  const each = cloths.map(figureOf);
  return each.reduce((sum, one) => (sum === undefined || one === undefined ? undefined : add(sum, one)));
}

/**
 * The what-if table: every choice with its yardage, rolls and price. The cheapest is marked by price alone:
 * cloths of several widths cost differently a yard, so without a price only the least cloth can be told.
 */
export function whatIf(
  windows: readonly Window[],
  choices: readonly Choice[],
  given: { readonly price?: ClothPrice | undefined; readonly rollLength?: Length | undefined },
  rules: Rules,
): readonly Costed[] {
  const { price, rollLength } = given;
  const costed = choices.map((choice): Omit<Costed, 'cheapest' | 'leastCloth'> => {
    try {
      const cloths = wantedUnder(windows, choice, rules).map((wanted) =>
        clothFor(wanted, rollLength !== undefined || price?.wholeRoll !== undefined),
      );
      return {
        choice,
        yardage: exact(cloths.reduce((sum, cloth) => sum + cloth.yardage, 0)),
        rolls: allOf(
          cloths,
          (cloth) => rollLength && wholeRolls(cloth, rollLength, rules),
          (a, b) => a + b,
        ),
        price: allOf(
          cloths,
          (cloth) => price && buyCloth(cloth, price, rules)?.cost,
          (a, b) => a.plus(b),
        ),
      };
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      return { choice, yardage: undefined, why: thrown.finding.sentence, rolls: undefined, price: undefined };
    }
  });
  const priced = costed.flatMap(({ price: one }) => one ?? []);
  const least = priced.reduce((low, one) => (one.lt(low) ? one : low), priced[0] ?? NOTHING);
  const shortest = Math.min(...costed.map(({ yardage }) => yardage ?? Infinity));
  return costed.map((one) => ({
    ...one,
    cheapest: one.price?.eq(least) === true,
    leastCloth: priced.length === 0 && one.yardage === shortest,
  }));
}

export interface Saving {
  readonly work: WindowWork;
  /** How much narrower each rod must be; undefined where that is too much. */
  readonly narrower: Length | undefined;
  /** The fullness that saves as much; undefined where it would be seen. */
  readonly fullness: Ratio | undefined;
  readonly widthsSaved: number;
  /** Over all the windows of the line. */
  readonly yardageSaved: Length;
  readonly worth: Money;
}

/** So little less fullness is not seen. */
const LITTLE_LESS = ONE / 10;

/** Where a slightly narrower rod, or a little less fullness, saves a step of widths at every window, the most cloth first. */
export function savings(
  windows: readonly WindowWork[],
  most: Length,
  price: (work: WindowWork) => Money | undefined,
): readonly Saving[] {
  const found: Saving[] = [];
  for (const work of windows) {
    const { window, rules, quantity } = work;
    if (window.heading === undefined || window.fabricWidth === undefined || work.isTurned) continue;
    const cloth = work.cloth();
    const narrower = work.toOneLess();
    if (narrower === undefined) continue;
    const less = work.fullnessOfOneLess();
    const fullness = less !== undefined && less.asked - less.serves <= LITTLE_LESS ? less.serves : undefined;
    if (narrower > most && fullness === undefined) continue;
    const after = new WindowWork({ ...window, rodWidth: exact(work.rod - narrower) }, rules).cloth();
    const yardageSaved = exact(Math.max(NO_LENGTH, cloth.yardage - after.yardage));
    const each = price(work);
    const worth = each === undefined ? NOTHING : each.times(money(toUnit(yardageSaved, unitOf(rules).large)));
    found.push({
      work,
      narrower: narrower > most ? undefined : narrower,
      fullness,
      widthsSaved: (cloth.work.widths - after.work.widths) * quantity,
      yardageSaved,
      worth,
    });
  }
  return found.sort((one, other) => other.yardageSaved - one.yardageSaved);
}

/** The cheaper way to lay the cloth for one line; undefined where it cannot be turned. */
export function turnedSaves(work: WindowWork): Length | undefined {
  const { heading, fabricWidth } = work.window;
  if (heading === undefined || fabricWidth === undefined || work.isTurned) return undefined;
  const turned = work.turned()?.yardage;
  return turned === undefined ? undefined : exact(work.cloth().yardage - turned);
}
