/**
 * What cloth costs: by the yard (metre) off the bolt with quantity breaks, or in whole rolls at a price
 * of their own. Whole rolls are counted by the cuts they give, since no cut crosses from roll to roll.
 */
import { refuse } from '../cell/answer';
import { oneCell, readBack, type Kind } from '../cell/fields';
import { orNone, PRICE, QUANTITY, setOrNone } from '../cell/figure-kinds';
import { exact, NO_LENGTH, times, toUnit, UNITS, upToStep, type Length } from '../exact/length';
import { money, NOTHING, type Money } from '../exact/money';
import { partsOf, readPart } from '../cell/written-parts';
import { breakPrice, readPriceBreaks, type PriceBreak } from '../price/price';
import { bareOfLine, cutLengthOf, type CutLine } from '../rolls/cutting';
import { cutPlan, MOST_CUTS } from '../rolls/rolls';
import { unitOf, type Rules } from '../house/rules';
import { digits, INCHES, showYardage, type Unit } from '../exact/unit';

export interface ClothPrice {
  /** From so many yards (metres), at so much; none where the cloth is sold in whole rolls only. */
  readonly breaks: readonly PriceBreak[];
  /** The least the mill cuts. */
  readonly minimum?: Length | undefined;
  /** A whole roll's length, and its price by the yard (metre). */
  readonly wholeRoll?: { readonly length: Length; readonly price: Money } | undefined;
}

export interface ClothWanted {
  /** As ordered off the bolt, its steps in it. */
  readonly yardage: Length;
  /** The same cloth as cuts, for whole rolls. */
  readonly cuts: readonly CutLine[];
  /** What a roll gives up to reach the pattern's start. */
  readonly toStart?: Length | undefined;
}

export interface ClothBought {
  readonly rolls: number;
  /** Cut to order beside the rolls; not below the least that is cut. */
  readonly cut: Length;
  /** Rolls and cut together. */
  readonly length: Length;
  /** Price of the cut part, by the yard (metre). */
  readonly cutPrice: Money | undefined;
  readonly cost: Money;
}

/** One price, or breaks as a person types them: “28.50”, “0 28.50; 50 26; 150 24.25”; none where nothing is charged. */
export const CLOTH_BREAKS: Kind<readonly PriceBreak[]> = {
  quantity: 'money',
  noun: 'a price, none, or breaks like 0 28.50; 50 26',
  shape: 'cell',
  read(raw, place) {
    const cell = oneCell(raw, place);
    if (cell === undefined) return undefined;
    const parts = typeof cell === 'string' ? partsOf(cell) : [];
    const pairs = parts.map((part) => /^(?:from\s)?\s*(\S+?)(?:\s*:\s*|\s+at\s+|\s+)(\S.*)$/i.exec(part));
    if (parts.length < 2 && (pairs[0] ?? null) === null) {
      const price = setOrNone(PRICE).read(typeof cell === 'string' ? parts[0] : cell, place);
      return price === undefined ? undefined : [{ from: 0, price }];
    }
    return readPriceBreaks(
      pairs.map((pair, at) =>
        pair === null
          ? refuse('breakUnreadable', place.name, place.name, readBack(parts[at] ?? ''))
          : [readPart(QUANTITY, pair[1], place), readPart(orNone(PRICE), pair[2], place).toString()],
      ),
    );
  },
  write: (breaks) =>
    breaks.length === 1 && breaks[0]?.from === 0
      ? String(setOrNone(PRICE).write?.(breaks[0].price, INCHES))
      : breaks.map(({ from, price }) => `${digits(from)} ${price.toString()}`).join('; '),
};

/** Cut to order: the least that is sold where less is wanted, at the break it reaches. */
function cutToOrder(
  wanted: Length,
  { breaks, minimum }: ClothPrice,
  unit: Unit,
): { cut: Length; cutPrice: Money; cost: Money } | undefined {
  const [first] = breaks;
  if (first === undefined) return undefined;
  const cut = exact(Math.max(wanted, leastSold(breaks, minimum, unit)));
  const quantity = toUnit(cut, unit.large);
  const cutPrice = breakPrice({ quantity, priceBreaks: breaks }).value;
  return { cut, cutPrice, cost: cutPrice.times(money(quantity)) };
}

/** The least that is cut; where the prices begin above it, what they begin at. */
const leastSold = (breaks: readonly PriceBreak[], minimum: Length | undefined, unit: Unit): number =>
  Math.max(minimum ?? NO_LENGTH, Math.ceil((breaks[0]?.from ?? 0) * UNITS[unit.large]));

/** Cloth that each roll of a plan saves from being cut to order, the fullest first; nothing where a cut is longer than the roll. */
function rollsFilled(
  { cuts, toStart = NO_LENGTH }: Omit<ClothWanted, 'yardage'>,
  length: Length,
  rules: Rules,
): readonly Length[] {
  const asked = cuts.filter(({ count }) => count > 0);
  const count = asked.reduce((sum, one) => sum + one.count, 0);
  if (count === 0 || count > MOST_CUTS || asked.some((one) => bareOfLine(one) + toStart > length)) return [];
  const job = { cuts: asked, rolls: [{ length, toStart }], supply: 'as many as it takes' } as const;
  const { rolls } = cutPlan(job, rules).value;
  // Cut off a bolt instead, every one of them would take its repeat as well.
  const used = rolls.map(({ stretches }) =>
    cutLengthOf(
      stretches
        .flatMap((one) => one.cuts)
        .map(({ line, count: many }) => ({ ...(asked[line] as CutLine), count: many })),
    ),
  );
  return used.sort((one, other) => other - one);
}

/** How many whole rolls of one length the cuts take; undefined where a cut is longer than the roll. */
export function wholeRolls(
  wanted: Omit<ClothWanted, 'yardage'>,
  length: Length,
  rules: Rules,
): number | undefined {
  const filled = rollsFilled(wanted, length, rules);
  return filled.length === 0 ? undefined : filled.length;
}

/**
 * The cheapest of: all cut to order; so many whole rolls and the rest cut to order; all whole rolls, with more
 * cloth than is needed. Undefined where no way is priced. The rest counts by itself towards a break.
 */
export function buyCloth(wanted: ClothWanted, price: ClothPrice, rules: Rules): ClothBought | undefined {
  const unit = unitOf(rules);
  const { yardage } = wanted;
  const { wholeRoll } = price;
  const bolt = cutToOrder(yardage, price, unit);
  let best: ClothBought | undefined =
    bolt === undefined
      ? undefined
      : { rolls: 0, cut: bolt.cut, length: bolt.cut, cutPrice: bolt.cutPrice, cost: bolt.cost };
  if (wholeRoll === undefined || yardage === 0) return best;
  const filled = rollsFilled(wanted, wholeRoll.length, rules);
  const each = wholeRoll.price.times(money(toUnit(wholeRoll.length, unit.large)));
  let left = filled.reduce((sum, one) => exact(sum + one), NO_LENGTH);
  filled.forEach((full, at) => {
    const rolls = at + 1;
    left = exact(left - full);
    const rest =
      left === 0
        ? { cut: NO_LENGTH, cutPrice: undefined, cost: NOTHING }
        : cutToOrder(upToStep(left, rules.yardageStep), price, unit);
    if (rest === undefined) return;
    const cost = each.times(rolls).plus(rest.cost);
    if (best !== undefined && cost.gte(best.cost)) return;
    best = { ...rest, rolls, length: exact(times(wholeRoll.length, rolls) + rest.cut), cost };
  });
  return best;
}

/** “2 rolls of 60 yd at 24.00 and 8 1/2 yd cut at 28.50”; nothing where it is simply cut to order. */
export function howBought(bought: ClothBought, price: ClothPrice, unit: Unit): string {
  const { rolls, cut, cutPrice } = bought;
  if (rolls === 0 || price.wholeRoll === undefined) return '';
  const { length, price: each } = price.wholeRoll;
  const whole = `${rolls} whole ${rolls === 1 ? 'roll' : 'rolls'} of ${showYardage(length, unit)} at ${each.toFixed(2)}`;
  return cutPrice === undefined
    ? whole
    : `${whole} and ${showYardage(cut, unit)} cut at ${cutPrice.toFixed(2)}`;
}

/** The next break, where ordering up to it costs less than what is bought. */
export function cheaperBreak(
  bought: ClothBought,
  price: ClothPrice,
  unit: Unit,
): { readonly from: number; readonly saved: Money } | undefined {
  if (bought.rolls > 0) return undefined;
  const quantity = toUnit(bought.cut, unit.large);
  const further = price.breaks
    .filter(({ from }) => from > quantity)
    .map(({ from, price: each }) => ({ from, saved: bought.cost.minus(each.times(money(from))) }))
    .filter(({ saved }) => saved.gt(0));
  return further.sort((one, other) => other.saved.cmp(one.saved))[0];
}
