/** What a job comes to, counted in one pass so that no window need be kept: cloth, making, hardware. */
import { atticCuts } from '../cell/attic';
import { arealOf, BEHIND, layerOf, standsIn, WEIGHT_RULE, type Behind } from '../cloth/behind';
import { longestCut } from '../cloth/repeat';
import { cutLengthOf, cutsOfRow, sparesOf, typesOf, type CutLine } from '../rolls/cutting';
import { NO_FITTINGS, withMore, type Fittings } from '../heading/fittings';
import type { WindowWork } from '../window/job';
import { exact, NO_LENGTH, times, toUnit, upToStep, type Length } from '../exact/length';
import { NOTHING, type Money } from '../exact/money';
import { unitOf, type Rules } from '../house/rules';
import { digits } from '../exact/unit';
import type { TurnedWork } from '../cloth/yardage';
import { panelsOf, type Direction } from '../cell/treatment';

export interface ClothTotal {
  readonly name: string;
  /** With the spares the house orders beyond the windows; attic stock is not in it. */
  readonly yardage: Length;
  readonly spares: readonly CutLine[];
  /** Kept for later repairs: so many of the longest cut. */
  readonly attic: Length;
  readonly atticCuts: number;
  readonly longestCut: Length;
  /** Cuts of the windows, alike ones together. */
  readonly byType: readonly CutLine[];
  /** Cuts of the windows, spares not in them. */
  readonly cuts: number;
  readonly windows: number;
  /** Of the cloth and its attic stock, lb or kg; undefined where a row's cloth weight is not known. */
  readonly weight: number | undefined;
}

/** One cloth behind the face; the house orders no spares of it and keeps none. */
export interface BehindTotal {
  readonly name: Behind;
  readonly yardage: Length;
  readonly cuts: number;
  readonly windows: number;
  /** lb or kg; undefined where the house sets no weight for it. */
  readonly weight: number | undefined;
  /** Whose weight it was given, where it has none of its own. */
  readonly weighedAs?: Behind | undefined;
}

export interface Tally {
  readonly windows: number;
  readonly widths: number;
  readonly panels: number;
  /** Face fabrics in the order they first appear. */
  readonly face: readonly ClothTotal[];
  /** Only what the windows have. */
  readonly behind: readonly BehindTotal[];
  /** Making charge; undefined where the house sets no price for a heading. */
  readonly making: Money | undefined;
  /** Rods end to end, and what belongs to their headings. */
  readonly hardware: Fittings;
}

/** What a window's cloth is called where the sheet names none. */
export const fabricOf = (work: WindowWork): string => work.window.fabric ?? 'face fabric';

interface Counted {
  /** Of the windows alone. */
  yardage: number;
  /** Bought once for the order, to reach the pattern's start. */
  toStart: number;
  cuts: number;
  windows: number;
  /** Alike ones together. */
  byType: readonly CutLine[];
  longestCut: Length;
  weight: number | undefined;
}

/** Cloth of a bolt by its weight: pounds from oz/yd², kilograms from g/m². */
function weightOf(yardage: number, boltWidth: Length, areal: number, rules: Rules): number {
  const { large } = unitOf(rules);
  return (toUnit(yardage, large) * toUnit(boltWidth, large) * areal) / (large === 'yd' ? 16 : 1000);
}

function clothTotal(name: string, counted: Counted, rules: Rules): ClothTotal {
  const { cuts, windows, byType, longestCut, weight } = counted;
  const spares = sparesOf(byType, rules.spareWindows);
  const spared = cutLengthOf(spares);
  const kept = atticCuts(cuts, rules.atticStock);
  const attic = upToStep(times(longestCut, kept), rules.yardageStep);
  const { yardage: cutUp, toStart } = counted;
  const own = exact(cutUp + toStart);
  return {
    name,
    cuts,
    windows,
    byType,
    longestCut,
    spares,
    attic,
    atticCuts: kept,
    yardage: spared === 0 ? own : upToStep(exact(own + spared), rules.yardageStep),
    // Spares stay in the workroom; attic stock travels with the windows.
    weight: weight === undefined || cutUp === 0 ? weight : figure((weight * (cutUp + attic)) / cutUp),
  };
}

const figure = (figure: number): number => Number(digits(figure));

/** Face cloth counted window by window. */
class FaceCount {
  private readonly byName = new Map<string, Counted>();

  constructor(private readonly rules: Rules) {}

  add(work: WindowWork, worked: TurnedWork): void {
    const { quantity, window, rules } = work;
    const { yardageOfCuts: yardage, cutting, cuts } = worked;
    const name = fabricOf(work);
    let sum = this.byName.get(name);
    if (sum === undefined) {
      sum = { yardage: 0, toStart: 0, cuts: 0, windows: 0, byType: [], longestCut: NO_LENGTH, weight: 0 };
      this.byName.set(name, sum);
    }
    sum.yardage += yardage;
    sum.toStart = Math.max(sum.toStart, worked.yardage - yardage);
    sum.cuts += cuts;
    sum.windows += quantity;
    sum.byType = typesOf([...sum.byType, ...cutsOfRow(worked, quantity, rules)]);
    sum.longestCut = exact(Math.max(sum.longestCut, longestCut(cutting)));
    const { arealWeight, fabricWidth } = window;
    if (sum.weight !== undefined)
      sum.weight =
        arealWeight === undefined || fabricWidth === undefined
          ? undefined
          : sum.weight + weightOf(yardage, fabricWidth, arealWeight, rules);
  }

  totals(): readonly ClothTotal[] {
    return [...this.byName].map(([name, counted]) => clothTotal(name, counted, this.rules));
  }
}

/** What lies behind the face, counted window by window. */
class BehindCount {
  private readonly byName = new Map<
    Behind,
    { yardage: number; cuts: number; windows: number; bolt: number }
  >();

  constructor(private readonly rules: Rules) {}

  add(work: WindowWork): void {
    for (const name of work.clothsBehind) {
      const behind = work.behind(name);
      if (behind === undefined || behind.yardage === 0) continue;
      let sum = this.byName.get(name);
      if (sum === undefined) {
        sum = { yardage: 0, cuts: 0, windows: 0, bolt: 0 };
        this.byName.set(name, sum);
      }
      sum.yardage += behind.yardage;
      sum.cuts += behind.cuts;
      sum.windows += work.quantity;
      // One ounce or gram over: bolts of several widths weigh by their own.
      sum.bolt += weightOf(behind.yardage, work.boltWidth(layerOf(name)), 1, this.rules);
    }
  }

  totals(): readonly BehindTotal[] {
    return BEHIND.flatMap((name): BehindTotal[] => {
      const sum = this.byName.get(name);
      if (sum === undefined) return [];
      const { yardage, cuts, windows, bolt } = sum;
      const other = standsIn(name);
      const own = this.rules[WEIGHT_RULE[name]];
      const areal = arealOf(name, this.rules);
      return [
        {
          name,
          yardage: exact(yardage),
          cuts,
          windows,
          weight: areal === undefined ? undefined : figure(bolt * areal),
          ...(own === undefined && areal !== undefined && { weighedAs: other }),
        },
      ];
    });
  }
}

/** The face cloth of some windows, laid one way; refused where a window’s cloth is too narrow to be turned. */
export function faceTotals(
  windows: Iterable<WindowWork>,
  rules: Rules,
  direction: Direction,
): readonly ClothTotal[] {
  const face = new FaceCount(rules);
  for (const work of windows) {
    const worked = direction === 'up the roll' ? work.cloth() : work.turned();
    if (worked === undefined) work.railroaded();
    else face.add(work, worked);
  }
  return face.totals();
}

export function tally(windows: Iterable<WindowWork>, rules: Rules): Tally {
  const face = new FaceCount(rules);
  const behind = new BehindCount(rules);
  let [count, widths, panels] = [0, 0, 0];
  let hardware = NO_FITTINGS;
  let making: Money | undefined = NOTHING;
  for (const work of windows) {
    const { quantity } = work;
    face.add(work, work.laid());
    count += quantity;
    widths += work.widths() * quantity;
    panels += panelsOf(work.window.draw ?? 'pair') * quantity;
    behind.add(work);
    hardware = withMore(hardware, work.fittings(), quantity);
    making = work.isPriced ? making?.plus(work.labor().value.times(quantity)) : undefined;
  }
  return {
    windows: count,
    widths,
    panels,
    face: face.totals(),
    behind: behind.totals(),
    making,
    hardware,
  };
}
