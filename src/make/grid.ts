/**
 * The grid both reckonings walk: houses of every rule, windows at and beside the point where one
 * width more is needed, figures as cells bring them (64ths, thousandths, millimetres, binary residue, text).
 */
import Fraction from 'fraction.js';
import type { CellIn } from '../core/cell/fields';
import { widestRod, type ClothMeant, type HouseMeant, type WindowMeant } from './reckoning';

/** A figure as a cell brings it, and as it was meant. */
export interface Figure {
  readonly cell: CellIn;
  readonly meant: Fraction;
}

const plain = (figure: number): Figure => ({ cell: figure, meant: new Fraction(String(figure)) });
const asText = (text: string, meant: string | Fraction): Figure => ({
  cell: text,
  meant: new Fraction(meant),
});

/** Figures of windows in inches; the centimetre house takes them as written there. */
const INCHES = {
  rods: [
    { cell: 110.00000000000001, meant: new Fraction(110) },
    { cell: 109.49999999999999, meant: new Fraction('109.5') },
    { cell: 0.1 + 0.2 + 36, meant: new Fraction('36.3') },
    plain(180),
    plain(97.015625),
    plain(84.123),
    asText('7\' 6 1/2"', '90.5'),
    asText('104 1/64', new Fraction(6657, 64)),
    asText('2642 mm', new Fraction(26420, 254)),
    plain(18),
    plain(403.9375),
  ],
  fabrics: [36, 48, 54, 53.984375, 118, 137.795]
    .map(plain)
    .concat(asText('140 cm', new Fraction(14000, 254))),
  repeats: [24, 25.25, 12.625, 19.6875, 3.001].map(plain).concat(asText('64 cm', new Fraction(6400, 254))),
  across: [13.5, 27, 6.75, 60].map(plain),
  drops: [84, 96, 95.984375, 108.5, 63.777, 18.0625]
    .map(plain)
    .concat([
      { cell: 96.00000000000001, meant: new Fraction(96) },
      asText('2,29 m', new Fraction(22900, 254)),
    ]),
};
const CENTIMETRES = {
  rods: [
    { cell: 280.00000000000006, meant: new Fraction(280) },
    { cell: 0.1 + 0.2 + 99, meant: new Fraction('99.3') },
    plain(264.2),
    plain(457.2),
    asText('7\' 6 1/2"', '229.87'),
    asText('2,64 m', '264'),
    plain(61.5),
    plain(1020.1),
  ],
  fabrics: [137, 140, 91.5, 280, 300, 122.55].map(plain).concat(asText('54"', '137.16')),
  repeats: [64, 32.5, 20.05, 61].map(plain).concat(asText('25 1/4 in', '64.135')),
  across: [34, 68.5, 17.1, 160].map(plain),
  drops: [213.4, 240, 260.05, 161.9, 45]
    .map(plain)
    .concat([{ cell: 228.60000000000002, meant: new Fraction('228.6') }]),
};
export const FIGURES = { in: INCHES, cm: CENTIMETRES };

export const FULLNESSES = [1, 1.5, 2, 2.2, 2.25, 2.3333, 2.5, 2.7, 3].map(plain);
const QUANTITIES = [1, 2, 3, 7, 46];
const DRAWS = ['pair', 'one-way left', 'one-way right', 'stationary'] as const;
const MATCHES = [undefined, 'straight', 'half-drop'] as const;

/** The same grid every time: a small generator with a seed of its own (mulberry32). */
export function chooser(seed: number): <T>(from: readonly T[]) => T {
  let state = seed >>> 0;
  return <T>(from: readonly T[]): T => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    const at = ((mixed ^ (mixed >>> 14)) >>> 0) % from.length;
    return from[at] as T;
  };
}

export interface House {
  readonly meant: HouseMeant;
  /** As its rules range stands in the workbook. */
  readonly range: readonly (readonly [string, CellIn])[];
}

type Choose = <T>(from: readonly T[]) => T;

const BASES = ['finished width', 'rod width'] as const;
const ROUNDINGS = ['whole per panel', 'half per panel', 'whole per pair', 'nearest'] as const;
const RULES = ['every cut up', 'first cut exact', 'one repeat each', 'half-drop alternating'] as const;
const STEPS = { in: [0.125, 0.25, 0.5, 1, 0], cm: [0.1, 0.5, 0.05, 1, 0] };

export function house(choose: Choose): House {
  const unit = choose(['in', 'in', 'cm'] as const);
  const scale = unit === 'in' ? 1 : 2.5;
  const of = (...figures: readonly number[]): Figure => plain(choose(figures) * scale);
  const rules = {
    return: of(0, 3.5, 3, 4.5),
    overlap: of(0, 3, 1.5),
    'side hem': of(0, 3, 1, 1.5),
    seam: of(0, 1, 0.5),
    selvage: of(0, 0, 0.5, 0.75),
    'top allowance pinch': of(8, 4, 5.5),
    'bottom allowance': of(8, 3.5, 6),
    'lining shorter': of(1, 0),
    'lining top': of(4, 0),
    'lining bottom': of(4, 2.5),
    'lining less': of(10, 6),
    'lining margin leading': of(2, 1),
    'lining margin outer': of(1, 0.5),
    shrinkage: plain(choose([0, 0, 0.03, 0.04, 0.0125])),
    'yardage step': plain(choose(STEPS[unit])),
  };
  const words = {
    unit: unit === 'in' ? 'inches' : 'centimetres',
    'fullness basis': choose(BASES),
    'widths rounding': choose(ROUNDINGS),
    'one way returns': choose(['both ends', 'one end'] as const),
    'repeat rule': choose(RULES),
    'lining cut': choose(['own allowances', 'less than face'] as const),
    'yardage rounded by': choose(['order', 'window'] as const),
    'share half widths': choose(['no', 'yes'] as const),
  };
  return {
    range: [
      ...Object.entries(words),
      ...Object.entries(rules).map(([name, { cell }]) => [name, cell] as const),
    ],
    meant: {
      unit,
      basis: words['fullness basis'],
      rounding: words['widths rounding'],
      oneWayReturns: words['one way returns'],
      return: rules.return.meant,
      overlap: rules.overlap.meant,
      sideHem: rules['side hem'].meant,
      seam: rules.seam.meant,
      selvage: rules.selvage.meant,
      top: rules['top allowance pinch'].meant,
      bottom: rules['bottom allowance'].meant,
      shrinkage: rules.shrinkage.meant,
      repeatRule: words['repeat rule'],
      liningCut: words['lining cut'],
      liningShorter: rules['lining shorter'].meant,
      liningTop: rules['lining top'].meant,
      liningBottom: rules['lining bottom'].meant,
      liningLess: rules['lining less'].meant,
      marginLeading: rules['lining margin leading'].meant,
      marginOuter: rules['lining margin outer'].meant,
      step: rules['yardage step'].meant,
      roundedBy: words['yardage rounded by'],
      share: words['share half widths'],
    },
  };
}

export interface GridWindow {
  readonly meant: WindowMeant;
  readonly rod: CellIn;
  readonly fabric: CellIn;
  readonly fullness: CellIn;
  readonly horizontalRepeat: CellIn;
}

/** The fields take no wider rod than 1,968 in. */
const WIDEST = 1_968 * 25_400_000;

/** The rods of a window: as measured, and at, a nanometre under and over the widest that n widths serve. */
function rods(of: Omit<WindowMeant, 'rod'>, house: HouseMeant, choose: Choose): readonly Figure[] {
  const grains = house.unit === 'in' ? 25_400_000 : 10_000_000;
  const widths = new Fraction(choose([2, 4, 6, 8, 14]));
  const nanometres = widestRod(of, house, widths).rod.mul(grains).floor().valueOf();
  const beside = [nanometres - 1, nanometres, nanometres + 1]
    .filter((one) => one > grains && one < WIDEST)
    .map((one): Figure => ({ cell: one / grains, meant: new Fraction(one, grains) }));
  return [choose(FIGURES[house.unit].rods), choose(FIGURES[house.unit].rods), ...beside];
}

/** Five rods or so of one choice of draw, cloth and fullness. */
export function windows(house: HouseMeant, choose: Choose): readonly GridWindow[] {
  const fabric = choose(FIGURES[house.unit].fabrics);
  const fullness = choose(FULLNESSES);
  const across = choose([true, false, false]) ? choose(FIGURES[house.unit].across) : undefined;
  const of = {
    draw: choose(DRAWS),
    fullness: fullness.meant,
    fabric: fabric.meant,
    horizontalRepeat: across?.meant,
  };
  return rods(of, house, choose).map(({ cell, meant }) => ({
    meant: { ...of, rod: meant },
    rod: cell,
    fabric: fabric.cell,
    fullness: fullness.cell,
    horizontalRepeat: across?.cell,
  }));
}

export interface GridCloth {
  readonly meant: ClothMeant;
  readonly drop: CellIn;
  readonly verticalRepeat: CellIn;
}

export function cloth(house: HouseMeant, choose: Choose): GridCloth {
  const drop = choose(FIGURES[house.unit].drops);
  const repeat = choose([true, true, false]) ? choose(FIGURES[house.unit].repeats) : undefined;
  return {
    meant: {
      drop: drop.meant,
      verticalRepeat: repeat?.meant,
      match: choose(MATCHES),
      quantity: choose(QUANTITIES),
    },
    drop: drop.cell,
    verticalRepeat: repeat?.cell,
  };
}
