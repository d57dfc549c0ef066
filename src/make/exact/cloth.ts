/** Cut lengths and yardage of the face, by every repeat rule, and of the cloth turned. */
import { HALF, NONE, ONE, METRE, YARD, below, upToStep, type Exact } from './figures';
import { halfDropCloth, lettersOf, lettersRunningOn, sharedCloth, type Letters } from './halfdrop';
import type { House } from './house';
import {
  boltOf,
  edgesOf,
  edging,
  flatOf,
  flatWanted,
  panelsOf,
  rodShare,
  widthsOf,
  type Treatment,
} from './panel';
import type { Draw, Heading } from './words';

export interface Cloth {
  readonly drop: Exact;
  readonly verticalRepeat: Exact | undefined;
  readonly match: 'straight' | 'half-drop' | undefined;
  readonly quantity: number;
}

export const shrunk = (drop: Exact, shrinkage: Exact): Exact => drop.div(ONE.sub(shrinkage));

/** What hangs and is turned over, before any repeat. */
export const bareCut = (drop: Exact, heading: Heading, house: House): Exact =>
  shrunk(drop, house.ratios.shrinkage)
    .add(house.lengths[`top allowance ${heading}`])
    .add(house.lengths['bottom allowance'])
    .add(heading === 'rod pocket' ? house.lengths['pocket take up'] : NONE);

/** The longest cut under the house's rule; without a repeat the bare cut. */
export function longestCut(bare: Exact, repeat: Exact | undefined, house: House): Exact {
  if (repeat === undefined) return bare;
  const added =
    house.words['repeat rule'] === 'one repeat each' ||
    house.words['repeat rule'] === 'one repeat with every length';
  return added ? bare.add(repeat) : upToStep(bare, repeat);
}

/** The cloth of so many cuts, one after the other off the bolt. */
export function cuttings(count: Exact, bare: Exact, repeat: Exact | undefined, house: House): Exact {
  if (repeat === undefined || count.equals(NONE)) return bare.mul(count);
  const further = longestCut(bare, repeat, house);
  const exactFirst = ['first cut exact', 'one repeat each'].includes(house.words['repeat rule']);
  return exactFirst ? bare.add(further.mul(count.sub(ONE))) : further.mul(count);
}

/** What a patterned order gives up to reach the motif. */
export function patternStart(repeat: Exact | undefined, house: House): Exact {
  if (repeat === undefined || house.words['pattern start'] === 'nothing') return NONE;
  return house.words['pattern start'] === 'one repeat' ? repeat : YARD;
}

export interface Bought {
  /** Each order of so many windows is bought, and rounded, by itself. */
  readonly orders: Exact;
  readonly windows: Exact;
}

/** By order the windows are bought together; by window each by itself. */
export const boughtAs = (quantity: number, house: House): Bought =>
  house.words['yardage rounded by'] === 'order'
    ? { orders: ONE, windows: ONE.mul(quantity) }
    : { orders: ONE.mul(quantity), windows: ONE };

/** Whole cuts of so many windows: a half left over is a whole cut, unless windows share it. */
export function cutsOf(widths: Exact, windows: Exact, house: House): Exact {
  const shared = house.words['share half widths'] === 'yes';
  return shared ? widths.mul(windows).ceil() : widths.ceil().mul(windows);
}

/** Whether halves of two letters come out of one cut: such a cut is half a repeat longer. */
export const halvesDiffer = (widths: Exact, draw: Draw, house: House): boolean =>
  house.words['half drop starts'] === 'run on' &&
  widths.div(panelsOf(draw)).d !== 1n &&
  panelsOf(draw).equals(2);

/** Cuts of each letter for so many windows: each panel from A, or the count runs on from panel to panel. */
export function lettersOfWindows(widths: Exact, draw: Draw, windows: Exact, house: House): Letters {
  const runsOn = house.words['half drop starts'] === 'run on';
  const panels = runsOn ? ONE : panelsOf(draw);
  const { whole, half } = lettersOf(widths.div(panels));
  // The two halves of a shared width carry one letter.
  const count = (letter: 'a' | 'b'): number => {
    const each = panels.mul(whole[letter]).add(half === letter ? panels.mul(HALF) : NONE);
    return cutsOf(each, windows, house).valueOf();
  };
  return { a: count('a'), b: count('b') };
}

const measureOf = (house: House): Exact => (house.unit === 'inches' ? YARD : METRE);

/** Up to the house's step of yards or metres. */
const stepped = (cloth: Exact, house: House): Exact =>
  house.step.equals(NONE) ? cloth : upToStep(cloth, house.step.mul(measureOf(house)));

/** Yards or metres. The pattern's start is bought once with the order, never window by window. */
export function bought(cloth: Exact, { orders }: Bought, house: House, start: Exact = NONE): Exact {
  // Rounded window by window, the first window's cloth has the start in it.
  const all = stepped(cloth.add(start), house).add(stepped(cloth, house).mul(orders.sub(ONE)));
  return all.div(measureOf(house));
}

export function yardageOf(treatment: Treatment, cloth: Cloth, house: House): Exact {
  const widths = widthsOf(treatment, house);
  const bare = bareCut(cloth.drop, treatment.heading, house);
  const order = boughtAs(cloth.quantity, house);
  const { windows } = order;
  const repeat = cloth.verticalRepeat;
  const start = patternStart(repeat, house);
  if (cloth.match !== 'half-drop' || repeat === undefined) {
    const cuts = cutsOf(widths, windows, house);
    return bought(cuttings(cuts, bare, repeat, house), order, house, start);
  }
  const lastOf = (cut: Exact): Exact =>
    house.words['repeat rule'] === 'first cut exact' ? cut : upToStep(cut, repeat);
  if (halvesDiffer(widths, treatment.draw, house)) {
    const whole = Number(widths.div(2).floor().valueOf());
    const letters = lettersRunningOn(whole, Number(windows.valueOf()));
    return bought(sharedCloth(letters, bare, repeat, lastOf), order, house, start);
  }
  const letters = lettersOfWindows(widths, treatment.draw, windows, house);
  return bought(halfDropCloth(letters, bare, repeat, lastOf(bare)), order, house, start);
}

/**
 * Undefined where the cloth is too narrow to be turned. Lengthwise shrinkage goes with the bolt's length, which
 * now runs across the window; so does the vertical repeat: each panel is a cut by the house’s repeat rule, so that panels begin alike.
 */
export function railroadedOf(
  treatment: Treatment,
  hung: Cloth,
  house: House,
  grained = (length: Exact): Exact => length,
): Exact | undefined {
  const { draw, heading, fullness, rod, fabric } = treatment;
  const { lengths } = house;
  const unshrunk = { ...house, ratios: { ...house.ratios, shrinkage: NONE } };
  // The mill's own edge is no hem of the workroom's.
  const hem = house.words['bottom edge'] === 'finished' ? lengths['bottom allowance'] : NONE;
  const upTheDrop = bareCut(hung.drop, heading, unshrunk).sub(hem);
  if (below(boltOf(fabric, undefined, house).usable, upTheDrop)) return undefined;
  const edges = edging(draw, edgesOf(heading, draw, house), house);
  // Side panels are no wider for a wide rod: each is the flat width that its widths give.
  const flat =
    draw === 'stationary'
      ? flatOf(
          widthsOf(treatment, house).div(panelsOf(draw)),
          boltOf(fabric, treatment.horizontalRepeat, house),
          house,
        )
      : flatWanted(rodShare(rod, draw), edges, fullness, house);
  const along = grained(shrunk(flat, house.ratios.shrinkage)).add(lengths['side hem'].mul(2));
  const order = boughtAs(hung.quantity, house);
  const repeat = hung.verticalRepeat;
  const cloth = cuttings(panelsOf(draw).mul(order.windows), along, repeat, house);
  return bought(cloth, order, house, patternStart(repeat, house));
}

/** A made-up layer of one window: its cuts, before the repeat, by the cloth's own weight. */
export function weightOf(treatment: Treatment, drop: Exact, areal: Exact, house: House): Exact {
  const square = treatment.fabric
    .mul(widthsOf(treatment, house))
    .mul(bareCut(drop, treatment.heading, house));
  return house.unit === 'inches'
    ? square.div(YARD).div(YARD).mul(areal).div(16)
    : square.div(METRE).div(METRE).mul(areal).div(1000);
}
