/** Where the brackets stand along a rod, and where its pieces meet. */
import { exact, type Length } from '../exact/length';
import type { RodPieces } from './hardware';

/** From the rod's left end; the first stands at that end, the last at the other. */
export interface Mounting {
  readonly brackets: readonly Length[];
  /** Where two pieces meet; each is one of the brackets. */
  readonly splices: readonly Length[];
  /** Brackets more than the longest span asks for, so that every splice has one. */
  readonly added: number;
}

const evenly = (rod: Length, spans: number): readonly Length[] =>
  Array.from({ length: spans + 1 }, (_, at) => exact(Math.round((rod * at) / spans)));

/** Pieces laid end to end, the longest first; each ends at the farthest bracket it reaches. */
function splicesAt(
  rod: Length,
  brackets: readonly Length[],
  pieces: readonly Length[],
): { readonly splices: readonly Length[]; readonly covers: boolean } {
  const splices: Length[] = [];
  let from = 0;
  for (const piece of pieces) {
    const reach = from + piece;
    if (reach >= rod) return { splices, covers: true };
    from = brackets.reduce<number>((far, at) => (at <= reach ? Math.max(far, at) : far), from);
    splices.push(exact(from));
  }
  return { splices, covers: false };
}

/**
 * Brackets in equal spans, ends included. Where the pieces cannot all meet at one of them, they meet where
 * they end, and each such place takes a bracket more.
 */
export function mounting(given: { rodWidth: Length; brackets: number; pieces: RodPieces }): Mounting {
  const { rodWidth: rod } = given;
  const even = evenly(rod, Math.max(1, given.brackets - 1));
  const pieces = given.pieces.pieces
    .flatMap(({ stockLength, count }) => Array.from({ length: count }, () => stockLength))
    .sort((one, other) => other - one);
  const { splices, covers } = splicesAt(rod, even, pieces);
  if (covers) return { brackets: even, splices, added: 0 };
  let from = 0;
  const ends = pieces.slice(0, -1).map((piece) => exact((from += piece)));
  const all = [...new Set([...even, ...ends])].sort((one, other) => one - other);
  return { brackets: all, splices: ends, added: all.length - even.length };
}
