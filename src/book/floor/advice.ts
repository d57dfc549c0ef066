/** What would save cloth over a floor, in sentences. */
import type { ClothPrice } from '../../core/floor/cloth-price';
import { savings, turnedSaves, type Saving } from '../../core/floor/floor';
import { shorterCutInWords } from '../../core/cloth/advice';
import type { WindowWork } from '../../core/window/job';
import { exact, inches, NO_LENGTH, toUnit, UNITS, upToStep, type Length } from '../../core/exact/length';
import { money, NOTHING, type Money } from '../../core/exact/money';
import { toFigure } from '../../core/exact/ratio';
import { fabricOf, tally } from '../../core/floor/tally';
import { digits, showLength, showYardage, type Unit } from '../../core/exact/unit';
import type { Floor } from './floor';

/** A rod is offered narrower by no more than this. */
export const MOST_NARROWER = inches(4);

/** As a tape is read: an eighth of an inch, or a millimetre, never less than it takes. */
const onTape = (length: Length, unit: Unit): Length =>
  upToStep(length, exact(unit.small === 'in' ? UNITS.in / 8 : UNITS.mm));

export interface Advice {
  readonly sentence: string;
  readonly yardage: Length;
  readonly worth: Money;
}

const counted = (count: number, noun: string): string =>
  `${digits(count)} ${count === 1 ? noun : `${noun}s`}`;
const worthOf = (worth: Money): string => (worth.eq(0) ? '' : `, ${worth.toFixed(2)}`);

/** What the next yard or metre costs at the quantity of the whole floor. */
const reachedPrice = (price: ClothPrice | undefined, quantity: number): Money | undefined =>
  price?.breaks.filter(({ from }) => from <= quantity).at(-1)?.price ??
  price?.breaks[0]?.price ??
  price?.wholeRoll?.price;

/** “Ostrel linen: 1/4 in less extension on the rods of 77 in, or a fullness of 2.24, saves” */
function lessOf({ work, narrower, fullness }: Saving, unit: Unit): string {
  const rods = `on the rods of ${showLength(work.rod, unit)}`;
  const full = fullness === undefined ? '' : `a fullness of ${digits(toFigure(fullness))}`;
  if (narrower === undefined) return `${fabricOf(work)}: ${full} ${rods} saves`;
  const extension = `${showLength(onTape(narrower, unit), unit)} less extension ${rods}`;
  return `${fabricOf(work)}: ${extension}${full === '' ? '' : `, or ${full},`} saves`;
}

/** Alike windows on one line, the most cloth first. */
export function adviceOf(
  { windows, house }: Pick<Floor, 'windows' | 'house'>,
  prices: ReadonlyMap<string, ClothPrice>,
): readonly Advice[] {
  const { unit } = house;
  const works = windows.map(({ work }) => work);
  const reached = new Map(
    prices.size === 0
      ? []
      : tally(works, house.rules).face.map(({ name, yardage }) => [
          name,
          reachedPrice(prices.get(name), toUnit(yardage, unit.large)),
        ]),
  );
  const each = (fabric: string): Money | undefined => reached.get(fabric);
  const alike = new Map<string, { windows: number; widths: number; yardage: Length; worth: Money }>();
  for (const saving of savings(works, MOST_NARROWER, (work) => each(fabricOf(work)))) {
    const { work, widthsSaved, yardageSaved, worth } = saving;
    if (yardageSaved === NO_LENGTH) continue;
    const key = lessOf(saving, unit);
    const sum = alike.get(key) ?? { windows: 0, widths: 0, yardage: NO_LENGTH, worth: NOTHING };
    alike.set(key, {
      windows: sum.windows + work.quantity,
      widths: sum.widths + widthsSaved,
      yardage: exact(sum.yardage + yardageSaved),
      worth: sum.worth.plus(worth),
    });
  }
  const narrower = [...alike].map(([key, sum]): Advice => ({
    ...sum,
    sentence: `${key} ${counted(sum.widths, 'width')} at ${counted(sum.windows, 'window')}: ${showYardage(sum.yardage, unit)}${worthOf(sum.worth)}.`,
  }));
  const turned = new Map<string, Length>();
  for (const work of works) {
    const saved = turnedSaves(work) ?? NO_LENGTH;
    if (saved > NO_LENGTH)
      turned.set(fabricOf(work), exact((turned.get(fabricOf(work)) ?? NO_LENGTH) + saved));
  }
  const railroaded = [...turned].map(([fabric, yardage]): Advice => {
    const worth = (each(fabric) ?? NOTHING).times(money(toUnit(yardage, unit.large)));
    return {
      yardage,
      worth,
      sentence: `${fabric} railroaded saves ${showYardage(yardage, unit)}${worthOf(worth)}, if its pattern and pile allow it to be turned.`,
    };
  });
  const saved = [...narrower, ...railroaded, ...shorterCuts(works, each, unit)];
  // Another bolt has a price of its own, so it stands behind what this cloth saves.
  return [...saved.sort((one, other) => other.yardage - one.yardage), ...widerBolts(works, unit)];
}

/** Alike cuts on one line: a little less allowance or drop that saves a repeat on each. */
function shorterCuts(
  works: readonly WindowWork[],
  each: (fabric: string) => Money | undefined,
  unit: Unit,
): readonly Advice[] {
  const alike = new Map<string, Length>();
  for (const work of works) {
    const shorter = isClothed(work) ? work.shorterCut() : undefined;
    if (shorter === undefined) continue;
    const key = `${fabricOf(work)}: ${shorterCutInWords(shorter.cut, shorter.drop, unit)}`;
    alike.set(key, exact((alike.get(key) ?? NO_LENGTH) + shorter.saved));
  }
  return [...alike].map(([key, yardage]): Advice => {
    const fabric = key.slice(0, key.lastIndexOf(': '));
    const worth = (each(fabric) ?? NOTHING).times(money(toUnit(yardage, unit.large)));
    return { yardage, worth, sentence: `${key} and saves ${showYardage(yardage, unit)}${worthOf(worth)}.` };
  });
}

/** What a bolt a little wider would save; its price is not known here. */
function widerBolts(works: readonly WindowWork[], unit: Unit): readonly Advice[] {
  const alike = new Map<string, { widths: number; yardage: Length }>();
  for (const work of works) {
    const wider = isClothed(work) ? work.widerBolt() : undefined;
    if (wider === undefined) continue;
    const key = `${fabricOf(work)}: of a bolt ${showLength(wider.fabricWidth, unit)} wide`;
    const sum = alike.get(key) ?? { widths: 0, yardage: NO_LENGTH };
    const { work: now, yardage } = work.cloth();
    alike.set(key, {
      widths: sum.widths + (now.widths - wider.widths) * work.quantity,
      yardage: exact(sum.yardage + yardage - wider.yardage),
    });
  }
  return [...alike].map(([key, { widths, yardage }]) => ({
    yardage,
    worth: NOTHING,
    sentence: `${key} it takes ${counted(widths, 'width')} and ${showYardage(yardage, unit)} less, at that bolt’s own price.`,
  }));
}

const isClothed = ({ window }: WindowWork): boolean =>
  window.heading !== undefined && window.fabricWidth !== undefined;
