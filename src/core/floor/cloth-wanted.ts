/** What is to be bought of each cloth: for the windows, to spare, to keep; and its cuts where rolls ask for them. */
import type { ClothWanted } from './cloth-price';
import { clothsOf } from './floor-cuts';
import type { WindowWork } from '../window/job';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import type { BehindTotal, ClothTotal } from './tally';
import type { Direction } from '../cell/treatment';

/** One cloth to be bought. */
export interface Wanted {
  readonly name: string;
  /** For the windows, with its spares. */
  readonly yardage: Length;
  /** Cuts of it that are spares. */
  readonly spares: number;
  /** Kept for later repairs. */
  readonly attic: Length;
  /** As cuts: only asked for where whole rolls are priced or counted. */
  readonly pieces: () => Pieces;
  /** The same without what is kept: as the cutting plan has it. */
  readonly planned: () => Pieces;
}

type Pieces = Omit<ClothWanted, 'yardage'>;

/** Windows, spares and attic stock are ordered together. */
export const clothFor = ({ yardage, attic, pieces }: Wanted, inRolls: boolean): ClothWanted => ({
  yardage: exact(yardage + attic),
  ...(inRolls ? pieces() : { cuts: [] }),
});

export function facesWanted(
  windows: readonly WindowWork[],
  totals: readonly ClothTotal[],
  direction: Direction = 'up the roll',
): readonly Wanted[] {
  return totals.map(({ name, yardage, spares, attic, atticCuts, longestCut, byType }): Wanted => {
    const kept = { length: longestCut, count: atticCuts };
    const planned = (): Pieces => {
      // Turned cloth is cut panel by panel; up the roll the cutting plan says which cuts there are.
      const cloth =
        direction === 'railroaded'
          ? undefined
          : clothsOf(windows).find((one) => one.layer === 'face' && one.name === name);
      return { cuts: [...(cloth?.cuts ?? byType), ...spares], toStart: cloth?.toStart };
    };
    return {
      name,
      yardage,
      attic,
      spares: spares.reduce((sum, { count }) => sum + count, 0),
      pieces: () => {
        const { cuts, toStart } = planned();
        return { cuts: [...cuts, kept], toStart };
      },
      planned,
    };
  });
}

/** A lining of several bolt widths comes on several kinds of rolls: that is cut to order. */
export const behindWanted = (windows: readonly WindowWork[], totals: readonly BehindTotal[]) =>
  totals.map(({ name, yardage }) => {
    const pieces = (): Pieces => {
      const [cloth, ...others] = clothsOf(windows).filter(
        ({ layer, pricedAs }) => layer !== 'face' && pricedAs === name,
      );
      return cloth === undefined || others.length > 0 ? { cuts: [] } : cloth;
    };
    return { name, yardage, spares: 0, attic: NO_LENGTH, pieces, planned: pieces };
  });
