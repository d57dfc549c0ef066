/** Walks the grid with the core on one side and exact fractions on the other. */
import type Fraction from 'fraction.js';
import { type CellIn } from '../core/cell/fields';
import { FULLNESS } from '../core/cell/figure-kinds';
import { REPEAT, SIZE } from '../core/cell/length-kinds';
import type { Length } from '../core/exact/length';
import { readHouse, type House as Rules } from '../core/house/house';
import { toOneLess, workWidths, type Gathered } from '../core/cloth/widths';
import { workLining } from '../core/cloth/lining';
import { turnedYardage, workYardage, type Covered } from '../core/cloth/yardage';
import { chooser, cloth, house, windows, type GridCloth, type GridWindow, type House } from './grid';
import { inGrains, liningMeant, turnedMeant, widthsMeant, yardageMeant } from './reckoning';

export interface Compared {
  /** Answers compared, by kind. */
  readonly counts: Record<'widths' | 'delivered' | 'saved' | 'yardage' | 'lining' | 'railroaded', number>;
  /** Told at most; all are counted. */
  readonly differences: readonly string[];
  readonly differing: number;
}

const TOLD = 20;
/** Of the face's bolt: as wide, wider, narrower. */
const LINING_BOLTS = [1, 1.25, 0.75];
const LARGE = { in: 36, cm: 100 };

/** A grid of so many houses, each with so many windows of about five rods, each with so many cloths. */
export interface Size {
  readonly houses: number;
  readonly windows: number;
  readonly cloths: number;
  readonly seed: number;
}

export function compare(size: Size, progress?: (house: number) => void): Compared {
  const counts = { widths: 0, delivered: 0, saved: 0, yardage: 0, lining: 0, railroaded: 0 };
  const differences: string[] = [];
  let differing = 0;
  const choose = chooser(size.seed);

  function same(
    kind: keyof typeof counts,
    ours: number | undefined,
    theirs: Fraction | number | undefined,
    where: () => unknown,
  ): void {
    counts[kind]++;
    const equal =
      ours === undefined || theirs === undefined
        ? ours === theirs
        : typeof theirs === 'number'
          ? ours === theirs
          : theirs.equals(ours);
    if (equal) return;
    differing++;
    if (differences.length < TOLD)
      differences.push(
        `${kind}: the core says ${String(ours)}, the fractions ${String(theirs)}: ${JSON.stringify(where())}`,
      );
  }

  for (let at = 0; at < size.houses; at++) {
    const one = house(choose);
    const read = readHouse(one.range);
    for (let i = 0; i < size.windows; i++) {
      for (const window of windows(one.meant, choose)) compareWindow(one, read, window);
    }
    progress?.(at + 1);
  }
  return { counts, differences, differing };

  function compareWindow(one: House, read: Rules, window: GridWindow): void {
    const { meant } = one;
    const gathered = gatheredOf(window, read);
    const where = (more: unknown = {}) => ({
      rules: one.range,
      ...window,
      meant: undefined,
      draw: window.meant.draw,
      more,
    });
    const work = workWidths(gathered, read.rules);
    const theirs = widthsMeant(window.meant, meant);
    same('widths', work.widths, theirs.widths, where);
    // A plain figure on both sides: a double's own precision is all that can be asked of it.
    const delivered = theirs.delivered.valueOf();
    const near = Math.abs(work.delivered - delivered) <= 4 * Number.EPSILON * Math.abs(delivered);
    same('delivered', near ? delivered : work.delivered, delivered, where);
    const saved = toOneLess(gathered, work, read.rules);
    same('saved', saved, theirs.toOneLess && inGrains(theirs.toOneLess, meant.unit), where);
    for (let i = 0; i < size.cloths; i++) {
      const piece = cloth(meant, choose);
      const covered = coveredOf(gathered, piece, read);
      const grains = (yards: Fraction | undefined): Fraction | undefined =>
        yards && inGrains(yards.mul(LARGE[meant.unit]), meant.unit);
      const about = () =>
        where({ ...piece, meant: undefined, quantity: piece.meant.quantity, match: piece.meant.match });
      same(
        'yardage',
        workYardage(covered, read.rules).yardage,
        grains(yardageMeant(theirs.widths, piece.meant, meant)),
        about,
      );
      if (i > 0) continue;
      const { unit } = read;
      for (const times of LINING_BOLTS) {
        const bolt = window.meant.fabric.mul(times);
        const lined = liningMeant({ window: window.meant, widths: theirs.widths, bolt }, piece.meant, meant);
        const liningWidth = SIZE.read(bolt.valueOf(), { name: 'lining_width', unit }) as Length;
        if (lined === undefined || !inGrains(bolt, meant.unit).equals(liningWidth)) continue;
        same(
          'lining',
          workLining({ ...covered, liningWidth, layer: 'lining' }, read.rules).yardage,
          grains(lined),
          about,
        );
      }
      same(
        'railroaded',
        turnedYardage(covered, read.rules),
        grains(turnedMeant(window.meant, piece.meant, meant)),
        about,
      );
    }
  }
}

function gatheredOf(window: GridWindow, { unit }: Rules): Gathered {
  const size = (name: string, raw: CellIn): Length => SIZE.read(raw, { name, unit }) as Length;
  return {
    rodWidth: size('rod_width', window.rod),
    heading: 'pinch',
    draw: window.meant.draw,
    fabricWidth: size('fabric_width', window.fabric),
    fullness: FULLNESS.read(window.fullness, { name: 'fullness', unit }),
    horizontalRepeat: REPEAT.read(window.horizontalRepeat, { name: 'horizontal_repeat', unit }),
  };
}

function coveredOf(gathered: Gathered, piece: GridCloth, { unit }: Rules): Covered {
  return {
    ...gathered,
    finishedDrop: SIZE.read(piece.drop, { name: 'finished_drop', unit }) as Length,
    quantity: piece.meant.quantity,
    verticalRepeat: REPEAT.read(piece.verticalRepeat, { name: 'vertical_repeat', unit }),
    match: piece.meant.match,
  };
}
