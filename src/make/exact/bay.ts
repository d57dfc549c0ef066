/** A bay or a corner: straight parts from left to right, a bend between each two. */
import { ONE, sumOf, type Exact } from './figures';
import { bracketsOf, piecesOf } from './hardware';
import type { House } from './house';

export const bendsOf = (parts: readonly Exact[]): number => parts.length - 1;

/** The rod's straight parts: the end ones run past the opening. */
export const rodParts = (parts: readonly Exact[], left: Exact, right: Exact): readonly Exact[] =>
  parts.map((part, at) => {
    const more = at === 0 ? part.add(left) : part;
    return at === parts.length - 1 ? more.add(right) : more;
  });

/** Spans are counted part by part, and one bracket stands at each bend. */
export const bracketsOfBay = (parts: readonly Exact[], heavy: boolean, house: House): Exact =>
  sumOf(parts.map((part) => bracketsOf(part, heavy, house).sub(ONE))).add(ONE);

/** No piece runs around a bend. */
export const piecesOfBay = (parts: readonly Exact[], stock: readonly Exact[]): number =>
  parts.reduce((sum, part) => sum + piecesOf(part, stock).pieces, 0);
