/**
 * From measure to cloth, in exact fractions: rod, drop, finished width, widths, cut, yardage.
 *
 * Reckoned from the trade's words alone; nothing here is taken from the functions it is to check.
 */
import type Fraction from 'fraction.js';
import { exact, HALF, ONE, upTo, ZERO } from './exact';
import { halfDrop } from './half-drop';
import type { Heading, House } from './house';
import { figure, type Line } from './line';

export const isLined = (line: Line): boolean => line.lining !== undefined && line.lining !== 'unlined';
export const isTurned = (line: Line): boolean => line.railroaded === 'yes';

/** A pair and two panels that stay at the sides are two; everything else is one. */
export const panelsOf = (draw: string | undefined): number =>
  draw === undefined || draw === 'pair' || draw === 'stationary' ? 2 : 1;

const headingOf = (line: Line): Heading => (line.heading ?? 'pinch') as Heading;

function ruleOf(rules: Partial<Record<Heading, number>>, heading: Heading, what: string): Fraction {
  const found = rules[heading];
  if (found === undefined) throw new Error(`the house has no ${what} for ${heading}`);
  return exact(found);
}

export const rodOf = (line: Line): Fraction =>
  line['inside width'] !== undefined && line['left extension'] !== undefined
    ? figure(line, 'inside width').add(figure(line, 'left extension')).add(figure(line, 'right extension'))
    : figure(line, 'rod width');

/** From the point measured to the finished drop: on rings or on grommets. */
export function dropOf(line: Line, { drops }: House): Fraction {
  const measured = line['measured height'];
  if (measured === undefined || line['measured to'] === undefined) return figure(line, 'finished drop');
  const grommet = line.heading === 'grommet';
  const added: Readonly<Record<string, number>> = grommet
    ? { 'new rod': drops.newRodGrommet, 'hung rod': drops.hungRodGrommet }
    : { 'new rod': drops.newRodRings, 'hung ring': drops.hungRing };
  const by = added[line['measured to']];
  if (by === undefined) throw new Error(`no drop from the ${line['measured to']}`);
  return measured.add(exact(by));
}

const CARRIED: ReadonlySet<string> = new Set(['pinch', 'goblet', 'cartridge']);

export interface Turns {
  readonly share: Fraction;
  readonly returns: Fraction;
  readonly overlap: Fraction;
}

/** Of one panel: its share of the rod, its returns, and its overlap where leading carriers cross. */
export function turnsOf(line: Line, house: House): Turns {
  const rod = rodOf(line);
  const each = exact(house.return);
  const pair = panelsOf(line.draw) === 2;
  const crosses = line.draw === 'pair' && house.hangOn === 'track' && CARRIED.has(headingOf(line));
  const ends = pair || house.oneWayReturns === 'one end' ? 1 : 2;
  return {
    share: pair ? rod.mul(HALF) : rod,
    returns: each.mul(ends),
    overlap: crosses ? exact(house.overlap) : ZERO,
  };
}

/** Of one panel, after pleating. */
export function finishedWidthOf(line: Line, house: House): Fraction {
  const { share, returns, overlap } = turnsOf(line, house);
  return share.add(returns).add(overlap);
}

export const fullnessOf = (line: Line, house: House): Fraction =>
  line.fullness ?? ruleOf(house.fullness, headingOf(line), 'fullness');

/** Of one panel, before pleating, without hems and seams. */
export function flatOf(line: Line, house: House): Fraction {
  const { share, returns, overlap } = turnsOf(line, house);
  const full = fullnessOf(line, house);
  return house.basis === 'rod width'
    ? share.mul(full).add(returns).add(overlap)
    : share.add(returns).add(overlap).mul(full);
}

/** Seams of a panel: one fewer than its pieces, a half width being a piece. */
const seamsOf = (widths: Fraction, house: House): Fraction => widths.ceil().sub(1).mul(exact(house.seam));

/** The least widths of one panel, in steps of a half or a whole, that hold the cloth with its hems and seams. */
export function widthsHolding(flat: Fraction, bolt: Fraction, step: Fraction, house: House): Fraction {
  const usable = bolt.sub(exact(house.selvage).mul(2));
  const needed = flat.add(exact(house.sideHem).mul(2));
  let widths = step;
  while (usable.mul(widths).compare(needed.add(seamsOf(widths, house))) < 0) widths = widths.add(step);
  return widths;
}

const boltOf = (line: Line, house: House): Fraction => line['fabric width'] ?? exact(house.fabricWidth);

const stepOf = (line: Line, { rounding }: House): Fraction =>
  rounding === 'half per panel' || (rounding === 'whole per pair' && panelsOf(line.draw) === 2) ? HALF : ONE;

/** Widths of the whole window; two side panels that stay are one width each. */
export function widthsOf(line: Line, house: House): Fraction {
  if (line.draw === 'stationary') return exact(2);
  const each = widthsHolding(flatOf(line, house), boltOf(line, house), stepOf(line, house), house);
  return each.mul(panelsOf(line.draw));
}

/** The cloth a panel brings between its side hems, after its seams. */
export function deliveredFlat(line: Line, house: House): Fraction {
  const each = widthsOf(line, house).div(panelsOf(line.draw));
  const usable = boltOf(line, house).sub(exact(house.selvage).mul(2));
  return usable.mul(each).sub(seamsOf(each, house)).sub(exact(house.sideHem).mul(2));
}

/** A cut before the repeat. */
export function bareCutOf(line: Line, house: House): Fraction {
  const drop = dropOf(line, house).div(ONE.sub(exact(house.shrinkage)));
  return drop.add(ruleOf(house.top, headingOf(line), 'top allowance')).add(exact(house.bottom));
}

const repeatOf = (line: Line): Fraction => line['vertical repeat'] ?? ZERO;

/** A half-drop, or a rule by which the first cut is not as the others: no one length says how to cut. */
export function cutsDiffer(line: Line, { repeatRule }: House): boolean {
  if (repeatOf(line).equals(0)) return false;
  return line.match === 'half-drop' || repeatRule === 'first cut exact' || repeatRule === 'one repeat each';
}

/** One cut with what its repeat adds; the further cuts where the first is not as the others. */
export function cutOf(line: Line, house: House): Fraction {
  const bare = bareCutOf(line, house);
  const repeat = repeatOf(line);
  if (repeat.equals(0)) return bare;
  const up = house.repeatRule === 'every cut up' || house.repeatRule === 'first cut exact';
  return up ? upTo(bare, repeat) : bare.add(repeat);
}

/** What so many cuts of a line take off the bolt. */
export function lengthOf(line: Line, house: House, cuts: Fraction): Fraction {
  const repeat = repeatOf(line);
  if (line.match === 'half-drop' && !repeat.equals(0)) {
    const panels = panelsOf(line.draw);
    const windows = cuts.div(widthsOf(line, house).ceil());
    return halfDrop(bareCutOf(line, house), repeat, {
      panels: Number(windows.mul(panels).valueOf()),
      widths: cuts.div(windows.mul(panels)),
    });
  }
  const further = cutOf(line, house);
  const first = cutsDiffer(line, house) ? bareCutOf(line, house) : further;
  return first.add(further.mul(cuts.sub(1)));
}

const largeUnit = ({ unit }: House): Fraction => exact(unit === 'inches' ? 36 : 100);

const quantityOf = (line: Line): Fraction => line.quantity ?? ONE;

/** Rounded up to the house's step, a window or the line at a time. */
function stepped(line: Line, house: House, lengthFor: (windows: Fraction) => Fraction): Fraction {
  const quantity = quantityOf(line);
  const step = exact(house.yardStep);
  return house.yardageBy === 'window'
    ? upTo(lengthFor(ONE).div(largeUnit(house)), step).mul(quantity)
    : upTo(lengthFor(quantity).div(largeUnit(house)), step);
}

/** The face cloth turned, so that its width runs up the drop: flat widths and side hems, no seams. */
const turnedYardage = (line: Line, house: House): Fraction =>
  stepped(line, house, (windows) =>
    flatOf(line, house).add(exact(house.sideHem).mul(2)).mul(panelsOf(line.draw)).mul(windows),
  );

export const fitsTurned = (line: Line, house: House): boolean =>
  bareCutOf(line, house).compare(boltOf(line, house).sub(exact(house.selvage).mul(2))) <= 0;

/** The yardage of so many widths a window; half a width at the end of a window is cut as a whole. */
export function yardageOf(line: Line, house: House, widths: Fraction): Fraction {
  if (isTurned(line)) return turnedYardage(line, house);
  return stepped(line, house, (windows) => lengthOf(line, house, widths.ceil().mul(windows)));
}
