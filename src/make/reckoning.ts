/**
 * Widths and yardage reckoned a second time, from the rules' words, in exact fractions (fraction.js).
 * Nothing here is shared with the core: no nanometres but one, no tables, no search it makes.
 * Every length is a fraction of the house's unit, as it was meant, not as a cell's binary holds it.
 *
 * One rounding is the core's own and kept: what is cut or laid out is whole nanometres, up.
 */
import Fraction from 'fraction.js';

export interface HouseMeant {
  readonly unit: 'in' | 'cm';
  readonly basis: 'finished width' | 'rod width';
  readonly rounding: 'whole per panel' | 'half per panel' | 'whole per pair' | 'nearest';
  readonly oneWayReturns: 'both ends' | 'one end';
  readonly return: Fraction;
  readonly overlap: Fraction;
  readonly sideHem: Fraction;
  readonly seam: Fraction;
  readonly selvage: Fraction;
  readonly top: Fraction;
  readonly bottom: Fraction;
  readonly shrinkage: Fraction;
  readonly repeatRule: 'every cut up' | 'first cut exact' | 'one repeat each' | 'half-drop alternating';
  readonly liningCut: 'own allowances' | 'less than face';
  readonly liningShorter: Fraction;
  readonly liningTop: Fraction;
  readonly liningBottom: Fraction;
  readonly liningLess: Fraction;
  readonly marginLeading: Fraction;
  readonly marginOuter: Fraction;
  /** In yards or metres; 0 leaves the yardage exact. */
  readonly step: Fraction;
  readonly roundedBy: 'order' | 'window';
  readonly share: 'yes' | 'no';
}

export interface WindowMeant {
  readonly draw: 'pair' | 'one-way left' | 'one-way right' | 'stationary';
  readonly rod: Fraction;
  readonly fullness: Fraction;
  readonly fabric: Fraction;
  readonly horizontalRepeat: Fraction | undefined;
}

export interface ClothMeant {
  readonly drop: Fraction;
  readonly verticalRepeat: Fraction | undefined;
  readonly match: 'straight' | 'half-drop' | undefined;
  readonly quantity: number;
}

export const NONE = new Fraction(0);
const ONE = new Fraction(1);
const HALF = new Fraction(1, 2);

/** Nanometres in the small unit. */
const GRAINS = { in: new Fraction(25_400_000), cm: new Fraction(10_000_000) };
/** Small units in the large one: inches in a yard, centimetres in a metre. */
const SMALL = { in: new Fraction(36), cm: new Fraction(100) };

export const inGrains = (of: Fraction, unit: HouseMeant['unit']): Fraction => of.mul(GRAINS[unit]);
const upToGrain = (of: Fraction, unit: HouseMeant['unit']): Fraction =>
  of.mul(GRAINS[unit]).ceil().div(GRAINS[unit]);
const downToGrain = (of: Fraction, unit: HouseMeant['unit']): Fraction =>
  of.mul(GRAINS[unit]).floor().div(GRAINS[unit]);
const atLeast = (of: Fraction, least: Fraction): Fraction => (of.compare(least) < 0 ? least : of);
const upTo = (of: Fraction, step: Fraction): Fraction =>
  step.equals(0) ? of : of.div(step).ceil().mul(step);

const panelsIn = ({ draw }: WindowMeant): number => (draw === 'pair' ? 2 : 1);

/** “Pair, each panel: return + overlap. One way: return(s) as the house has it.” */
function parts(window: WindowMeant, house: HouseMeant): Fraction {
  switch (window.draw) {
    case 'pair':
      return house.return.add(house.overlap).mul(2);
    case 'stationary':
      return house.return.mul(2);
    case 'one-way left':
    case 'one-way right':
      return house.oneWayReturns === 'one end' ? house.return : house.return.mul(2);
  }
}

/** “On rod + returns + overlaps, or on the rod alone with returns and overlaps added after.” */
function wanted(window: WindowMeant, house: HouseMeant): Fraction {
  const more = parts(window, house);
  return house.basis === 'finished width'
    ? window.rod.add(more).mul(window.fullness)
    : window.rod.mul(window.fullness).add(more);
}

interface Strip {
  /** What one width gives. */
  readonly gives: Fraction;
  readonly seam: Fraction;
}

/** “Bolt width less selvages, and less what a pattern match wastes”; the seam lies in that waste. */
function strip({ fabric, horizontalRepeat }: WindowMeant, house: HouseMeant): Strip {
  const usable = fabric.sub(house.selvage.mul(2));
  if (horizontalRepeat === undefined || horizontalRepeat.compare(usable) > 0)
    return { gives: usable, seam: house.seam };
  const gives = usable.div(horizontalRepeat).floor().mul(horizontalRepeat);
  return { gives, seam: atLeast(house.seam.sub(usable.sub(gives)), NONE) };
}

/** Flat cloth of so many widths, in so many panels: a seam between each two pieces, a hem at each side. */
function flat(widths: Fraction, panels: number, { gives, seam }: Strip, hem: Fraction): Fraction {
  const seams = widths.div(panels).ceil().sub(1).mul(panels);
  return widths
    .mul(gives)
    .sub(seams.mul(seam))
    .sub(hem.mul(2 * panels));
}

/**
 * The fewest widths a panel can be made of: m widths have m − 1 seams, so m × gives − (m − 1) × seam
 * must reach the need, and m is (need − seam) ÷ (gives − seam), up. The last may do as a half.
 */
function ofOnePanel(need: Fraction, { gives, seam }: Strip, halves: boolean): Fraction {
  const whole = atLeast(need.sub(seam).div(gives.sub(seam)).ceil(), ONE);
  if (!halves) return whole;
  const less = whole.sub(HALF);
  return less.mul(gives).sub(whole.sub(1).mul(seam)).compare(need) >= 0 ? less : whole;
}

function count(
  want: Fraction,
  panels: number,
  of: Strip,
  hem: Fraction,
  rounding: HouseMeant['rounding'],
): Fraction {
  if (rounding === 'nearest') {
    // The first count that falls short by less than half a width.
    let widths = atLeast(
      want
        .add(hem.mul(2 * panels))
        .div(of.gives)
        .sub(1)
        .floor(),
      ONE,
    );
    while (want.sub(flat(widths, panels, of, hem)).compare(of.gives.mul(HALF)) >= 0) widths = widths.add(1);
    return widths;
  }
  const need = want.div(panels).add(hem.mul(2));
  // A pair shared out in whole widths is two panels in halves.
  const halves = rounding === 'half per panel' || (rounding === 'whole per pair' && panels === 2);
  return ofOnePanel(need, of, halves).mul(panels);
}

export interface WidthsMeant {
  readonly widths: Fraction;
  /** Flat ÷ finished, or with the flat parts off on the rod's basis. */
  readonly delivered: Fraction;
  /** How much narrower the rod must be for a step less, or undefined where there is none. */
  readonly toOneLess: Fraction | undefined;
}

export function widthsMeant(window: WindowMeant, house: HouseMeant): WidthsMeant {
  const panels = panelsIn(window);
  const of = strip(window, house);
  const want = wanted(window, house);
  const widths = count(want, panels, of, house.sideHem, house.rounding);
  const cloth = flat(widths, panels, of, house.sideHem);
  const more = parts(window, house);
  const delivered =
    house.basis === 'finished width' ? cloth.div(window.rod.add(more)) : cloth.sub(more).div(window.rod);
  return { widths, delivered, toOneLess: oneLess(window, house, widths) };
}

/** The widest rod that so many widths serve, in the unit; not whole nanometres. */
export function widestRod(
  window: Omit<WindowMeant, 'rod'>,
  house: HouseMeant,
  widths: Fraction,
): { readonly rod: Fraction; readonly reached: boolean } {
  const any = { ...window, rod: ONE };
  const of = strip(any, house);
  const own = flat(widths, panelsIn(any), of, house.sideHem);
  const nearest = house.rounding === 'nearest';
  const cloth = nearest ? own.add(of.gives.mul(HALF)) : own;
  const more = parts(any, house);
  const rod =
    house.basis === 'finished width'
      ? cloth.div(window.fullness).sub(more)
      : cloth.sub(more).div(window.fullness);
  return { rod, reached: !nearest };
}

function oneLess(window: WindowMeant, house: HouseMeant, widths: Fraction): Fraction | undefined {
  const panels = panelsIn(window);
  const step =
    house.rounding === 'whole per panel' ? panels : house.rounding === 'half per panel' ? panels / 2 : 1;
  const fewer = widths.sub(step);
  if (fewer.compare(0) <= 0) return undefined;
  const { rod, reached } = widestRod(window, house, fewer);
  let most = downToGrain(rod, house.unit);
  if (!reached && most.equals(rod)) most = most.sub(ONE.div(GRAINS[house.unit]));
  return most.compare(0) > 0 ? window.rod.sub(most) : undefined;
}

/** “Drop + top allowance + bottom allowance”; “drop ÷ (1 − s), never × (1 + s)”. */
const faceCut = (drop: Fraction, house: HouseMeant): Fraction =>
  upToGrain(drop.div(ONE.sub(house.shrinkage)), house.unit)
    .add(house.top)
    .add(house.bottom);

/** Cloth for so many cuts, by the words of each repeat rule. */
function run(
  cuts: number,
  cut: Fraction,
  repeat: Fraction | undefined,
  rule: HouseMeant['repeatRule'],
  unit: HouseMeant['unit'],
): Fraction {
  if (repeat === undefined || cuts === 0) return cut.mul(cuts);
  switch (rule) {
    case 'every cut up':
      return upTo(cut, repeat).mul(cuts);
    case 'first cut exact':
      return upTo(cut, repeat)
        .mul(cuts - 1)
        .add(cut);
    case 'one repeat each':
      return cut.mul(cuts).add(repeat.mul(cuts - 1));
    case 'half-drop alternating': {
      // Whole repeats and a half: the next cut starts half a repeat on.
      const halves = repeat.mul(HALF);
      const whole = cut.sub(halves).div(repeat).ceil();
      return upToGrain(atLeast(whole, NONE).mul(repeat).add(halves).mul(cuts), unit);
    }
  }
}

/** “Half widths are bought whole”, or shared among the windows of the line. */
function cutsOf(widths: Fraction, windows: number, house: HouseMeant): number {
  const cuts = house.share === 'yes' ? widths.mul(windows).ceil() : widths.ceil().mul(windows);
  return cuts.valueOf();
}

/** “Rounded up to the house's step, per window or per order”, in yards or metres. */
function bought(cloth: (windows: number) => Fraction, quantity: number, house: HouseMeant): Fraction {
  const large = SMALL[house.unit];
  return house.roundedBy === 'window'
    ? upTo(cloth(1).div(large), house.step).mul(quantity)
    : upTo(cloth(quantity).div(large), house.step);
}

function ruleFor({ match }: ClothMeant, house: HouseMeant): HouseMeant['repeatRule'] {
  if (match === 'half-drop') return 'half-drop alternating';
  return match === 'straight' && house.repeatRule === 'half-drop alternating'
    ? 'every cut up'
    : house.repeatRule;
}

export function yardageMeant(widths: Fraction, cloth: ClothMeant, house: HouseMeant): Fraction {
  const cut = faceCut(cloth.drop, house);
  const rule = ruleFor(cloth, house);
  return bought(
    (windows) => run(cutsOf(widths, windows, house), cut, cloth.verticalRepeat, rule, house.unit),
    cloth.quantity,
    house,
  );
}

/**
 * “Of the face's bolt width, as many widths as the face; of another width, by the face's delivered
 * flat width”, narrower than the face as seamed by twice the margins of each panel.
 */
export function liningMeant(
  { window, widths: faceWidths, bolt }: { window: WindowMeant; widths: Fraction; bolt: Fraction },
  cloth: ClothMeant,
  house: HouseMeant,
): Fraction | undefined {
  const panels = panelsIn(window);
  const cut =
    house.liningCut === 'less than face'
      ? faceCut(cloth.drop, house).sub(house.liningLess)
      : cloth.drop.sub(house.liningShorter).add(house.liningTop).add(house.liningBottom);
  if (cut.compare(0) <= 0) return undefined;
  const margins = house.marginLeading.add(house.marginOuter).mul(2 * panels);
  const seamed = flat(faceWidths, panels, strip(window, house), NONE);
  // A layer that does not reach across the face lines nothing.
  const up = house.rounding === 'nearest' ? 'whole per pair' : house.rounding;
  const widths = bolt.equals(window.fabric)
    ? faceWidths
    : count(atLeast(seamed.sub(margins), NONE), panels, { gives: bolt, seam: house.seam }, NONE, up);
  return bought((windows) => cut.mul(cutsOf(widths, windows, house)), cloth.quantity, house);
}

/** “Only if the cut length fits the usable width; yardage = flat width ÷ 36”, hems in it. */
export function turnedMeant(window: WindowMeant, cloth: ClothMeant, house: HouseMeant): Fraction | undefined {
  const cut = cloth.drop.add(house.top).add(house.bottom);
  if (cut.compare(window.fabric.sub(house.selvage.mul(2))) > 0) return undefined;
  const panels = panelsIn(window);
  const panel = upToGrain(
    wanted(window, house).div(panels).add(house.sideHem.mul(2)).div(ONE.sub(house.shrinkage)),
    house.unit,
  );
  return bought(
    (windows) => run(panels * windows, panel, cloth.verticalRepeat, house.repeatRule, house.unit),
    cloth.quantity,
    house,
  );
}
