/** What a job comes to, counted in one pass so that no window need be kept: cloth, making, hardware. */
import type { WindowWork } from './job';
import { exact, upToStep, type Length } from './length';
import { NOTHING, type Money } from './money';
import type { Rules } from './rules';

export interface ClothTotal {
  readonly name: string;
  /** With the spares the house orders beyond the windows. */
  readonly yardage: Length;
  /** Cuts of the windows, spares not in them. */
  readonly cuts: number;
  readonly windows: number;
}

export interface Tally {
  readonly windows: number;
  readonly widths: number;
  /** Face fabrics in the order they first appear. */
  readonly face: readonly ClothTotal[];
  readonly lining: Length;
  /** Making charge; undefined where the house sets no price for a heading. */
  readonly making: Money | undefined;
  readonly rings: number;
  readonly brackets: number;
  /** Two a window. */
  readonly finials: number;
  /** All rods end to end. */
  readonly rod: Length;
}

/** What a window's cloth is called where the sheet names none. */
export const fabricOf = (work: WindowWork): string => work.window.fabric ?? 'face fabric';

export function tally(windows: Iterable<WindowWork>, rules: Rules): Tally {
  const face = new Map<string, { yardage: number; cuts: number; windows: number }>();
  let [count, widths, lining, rings, brackets, rod] = [0, 0, 0, 0, 0, 0];
  let making: Money | undefined = NOTHING;
  for (const work of windows) {
    const { quantity } = work;
    const { yardage, cuts } = work.cloth();
    const name = fabricOf(work);
    const sum = face.get(name) ?? { yardage: 0, cuts: 0, windows: 0 };
    face.set(name, {
      yardage: sum.yardage + yardage,
      cuts: sum.cuts + cuts,
      windows: sum.windows + quantity,
    });
    count += quantity;
    widths += work.widths() * quantity;
    lining += work.liningYardage().value;
    rings += work.rings().value * quantity;
    brackets += work.brackets().value * quantity;
    rod += work.rod * quantity;
    making = work.isPriced ? making?.plus(work.labor().value.times(quantity)) : undefined;
  }
  const spare = rules.spareWindows.plus(1).toNumber();
  return {
    windows: count,
    widths,
    face: [...face].map(([name, total]) => ({
      name,
      cuts: total.cuts,
      windows: total.windows,
      yardage:
        spare === 1
          ? exact(total.yardage)
          : upToStep(exact(Math.ceil(total.yardage * spare)), rules.yardageStep),
    })),
    lining: exact(lining),
    making,
    rings,
    brackets,
    finials: 2 * count,
    rod: exact(rod),
  };
}
