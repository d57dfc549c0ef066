/**
 * What a roll gives, by trying every order of cutting: written from the trade's words alone. A cut begins where
 * the pattern stands as it did at the cut before it, or half a repeat further where the two begin half a
 * repeat apart; it lies clear of the cut before; and the roll's end is no nearer than the last cut's own length.
 */
export interface Piece {
  /** All that is cut, no repeat in it. */
  readonly cut: number;
  /** Of the pattern; 0 where there is none. An even number, so that half of it is whole. */
  readonly repeat: number;
  /** Half a repeat down. */
  readonly down?: boolean;
}

/** From where one cut begins to where the next may begin. */
function apart(one: Piece, next: Piece): number {
  if (one.repeat === 0) return one.cut;
  let at = one.down === next.down ? 0 : one.repeat / 2;
  while (at < one.cut) at += one.repeat;
  return at;
}

/** The least cloth that takes them, whatever the order: by every subset and its last cut. */
export function leastCloth(pieces: readonly Piece[]): (subset: number) => number {
  const all = 1 << pieces.length;
  /** Where the last of a subset begins at the soonest. */
  const begins = Array.from({ length: all }, () => pieces.map(() => Infinity));
  const least = new Array<number>(all).fill(Infinity);
  least[0] = 0;
  for (let subset = 1; subset < all; subset++) {
    pieces.forEach((piece, last) => {
      if ((subset & (1 << last)) === 0) return;
      const others = subset & ~(1 << last);
      const own = begins[subset] as number[];
      own[last] = others === 0 ? 0 : Infinity;
      pieces.forEach((before, at) => {
        if ((others & (1 << at)) === 0) return;
        own[last] = Math.min(own[last] as number, (begins[others]?.[at] as number) + apart(before, piece));
      });
      least[subset] = Math.min(least[subset] as number, (own[last] as number) + piece.cut);
    });
  }
  return (subset) => least[subset] ?? Infinity;
}

/** The fewest of these rolls that take all the pieces; undefined where they do not. */
export function fewestRolls(pieces: readonly Piece[], rolls: readonly number[]): number | undefined {
  const cloth = leastCloth(pieces);
  const all = (1 << pieces.length) - 1;
  const known = new Map<string, number>();
  const from = (roll: number, left: number): number => {
    if (left === 0) return 0;
    if (roll === rolls.length) return Infinity;
    const key = `${roll} ${left}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = from(roll + 1, left);
    for (let subset = left; subset > 0; subset = (subset - 1) & left)
      if (cloth(subset) <= (rolls[roll] as number)) best = Math.min(best, 1 + from(roll + 1, left & ~subset));
    known.set(key, best);
    return best;
  };
  const found = from(0, all);
  return found === Infinity ? undefined : found;
}
