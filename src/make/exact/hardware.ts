/** Brackets by the largest span, and rods from stock pieces by trying every mix. */
import { ONE, below, exact, type Exact } from './figures';
import type { House } from './house';

/** One more than the spans, ends included. */
export const bracketsOf = (rod: Exact, heavy: boolean, house: House): Exact =>
  rod
    .div(house.lengths[heavy ? 'bracket span heavy' : 'bracket span light'])
    .ceil()
    .add(ONE);

export interface Pieces {
  readonly pieces: number;
  readonly all: Exact;
}

/** The fewest pieces that cover the rod, and of those mixes the least length. Lengths are whole nanometres. */
export function piecesOf(rod: Exact, stock: readonly Exact[]): Pieces {
  let reached: readonly Exact[] = [exact(0)];
  for (let pieces = 1; ; pieces += 1) {
    const sums = new Map<string, Exact>();
    for (const sum of reached)
      for (const piece of stock) {
        const longer = sum.add(piece);
        sums.set(longer.toFraction(), longer);
      }
    reached = [...sums.values()];
    const covering = reached.filter((sum) => !below(sum, rod));
    const least = covering.reduce<Exact | undefined>(
      (best, sum) => (best === undefined || below(sum, best) ? sum : best),
      undefined,
    );
    if (least !== undefined) return { pieces, all: least };
  }
}
