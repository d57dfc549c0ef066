import { describe, expect, it } from 'vitest';
import { bayPieces, brackets, rodPieces } from '../../../src/core/heading/hardware';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';

type Rule = readonly [string, string | number];
const rulesOf = (...rules: readonly Rule[]) => readHouse(rules.length === 0 ? undefined : rules).rules;

describe('brackets', () => {
  const bracketsOf = (rod: Length, weight?: number, ...rules: readonly Rule[]): number =>
    brackets({ rodWidth: rod, weight }, rulesOf(...rules)).value;

  it('stand at both ends and at most a span apart', () => {
    expect([
      bracketsOf(inches(10)),
      bracketsOf(inches(48)),
      bracketsOf((inches(48) + 1) as Length),
      bracketsOf(inches(144)),
    ]).toEqual([2, 2, 3, 4]);
  });

  it('stand closer under a heavy drapery, from its weight on', () => {
    expect([bracketsOf(inches(72), 19.999), bracketsOf(inches(72), 20), bracketsOf(inches(73), 20)]).toEqual([
      3, 3, 4,
    ]);
    expect(bracketsOf(inches(96), 24, ['bracket span heavy', 24])).toBe(5);
  });
});

describe('a bay', () => {
  const parts = [46, 60, 46].map(inches);

  it('is made up of each straight part by itself: no piece runs around a bend', () => {
    const { pieces, splices } = bayPieces(parts, rulesOf()).value;
    // 46 of a 48, 60 of a 72, 46 of a 48; a straight rod of 152 would be 120 + 48.
    expect(pieces.map(({ stockLength, count }) => [toUnit(stockLength, 'in'), count])).toEqual([
      [72, 1],
      [48, 2],
    ]);
    expect(splices).toBe(0);
    expect(bayPieces([200, 30].map(inches), rulesOf()).value.splices).toBe(1);
  });

  it('has a bracket at each bend beside those of its spans: 1 + 2 + 1 and one more', () => {
    expect(brackets({ rodWidth: inches(152), weight: undefined, parts }, rulesOf()).value).toBe(5);
    expect(brackets({ rodWidth: inches(152), weight: undefined }, rulesOf()).value).toBe(5);
    // 20 + 20: one span straight on, two around a corner.
    const corner = [20, 20].map(inches);
    expect(brackets({ rodWidth: inches(40), weight: undefined, parts: corner }, rulesOf()).value).toBe(3);
  });
});

describe('the pieces of a rod', () => {
  const piecesOf = (rod: number, ...stock: readonly number[]) => {
    const { pieces, splices } = rodPieces(
      { rodWidth: inches(rod), stockLengths: stock.length === 0 ? undefined : stock.map(inches) },
      rulesOf(),
    ).value;
    return [...pieces.map(({ stockLength, count }) => `${count} × ${toUnit(stockLength, 'in')}`), splices];
  };

  it('are one where one is long enough, the shortest that is', () => {
    expect(piecesOf(110)).toEqual(['1 × 120', 0]);
    expect(piecesOf(120)).toEqual(['1 × 120', 0]);
    expect(piecesOf(120.015625)).toEqual(['1 × 144', 0]);
  });

  it('are the fewest, then the least length: 200 is 144 + 96 and not 120 + 96 short', () => {
    expect(piecesOf(200, 96, 144)).toEqual(['1 × 144', '1 × 96', 1]);
    expect(piecesOf(250, 100, 90, 60)).toEqual(['1 × 100', '1 × 90', '1 × 60', 2]);
    expect(piecesOf(400, 144, 96)).toEqual(['3 × 144', 2]);
  });

  it('are of one length where that comes to the same: 600 is 5 × 120', () => {
    expect(piecesOf(600)).toEqual(['5 × 120', 4]);
  });

  it('are told from a list with the same length twice', () => {
    expect(piecesOf(100, 60, 60)).toEqual(['2 × 60', 1]);
  });

  it('are refused from more kinds of rod than can be weighed up', () => {
    expect(() => piecesOf(100, ...Array.from({ length: 13 }, (_, at) => 40 + at))).toThrow(/more than 12/);
  });
});
