/** From opening to rod and drop. */
import { NONE, TWO, atMost, below, lesser, type Exact } from './figures';
import type { House } from './house';
import { isOneWay, type Draw, type Heading } from './words';

/** The band of the side extension, low end or high end. */
export function extensionOf(opening: Exact, end: 'low' | 'high', { lengths }: House): Exact {
  if (atMost(opening, lengths['extension small up to'])) return lengths[`extension small ${end}`];
  if (atMost(opening, lengths['extension medium up to'])) return lengths[`extension medium ${end}`];
  return lengths[`extension large ${end}`];
}

export type LiningWord = 'unlined' | 'lined' | 'interlined' | 'blackout';

/** Stack on a side to the rod. Two sides stack in a pair. */
function stackShare(heading: Heading, draw: Draw, lining: LiningWord, { ratios }: House): Exact {
  const unlined = ratios[`stack share ${heading}`];
  const more =
    lining === 'unlined'
      ? unlined
      : unlined.mul(ratios[lining === 'interlined' ? 'stack interlined' : 'stack lined']);
  return isOneWay(draw) ? more : more.div(2);
}

export const stackOf = (rod: Exact, heading: Heading, draw: Draw, lining: LiningWord, house: House): Exact =>
  rod.mul(stackShare(heading, draw, lining, house));

/** The least extension that the stack does not pass: e with share × (opening + 2e) = e; undefined where none is. */
export function clearExtension(
  opening: Exact,
  heading: Heading,
  draw: Draw,
  lining: LiningWord,
  house: House,
): Exact | undefined {
  const share = stackShare(heading, draw, lining, house);
  const rest = share.mul(2).neg().add(1);
  return below(NONE, rest) ? opening.mul(share).div(rest) : undefined;
}

export const rodWidthOf = (
  opening: Exact,
  left: Exact | undefined,
  right: Exact | undefined,
  house: House,
): Exact =>
  opening.add(left ?? extensionOf(opening, 'low', house)).add(right ?? extensionOf(opening, 'low', house));

export function rodHeightOf(
  top: Exact,
  ceiling: Exact | undefined,
  heading: Heading | undefined,
  { lengths }: House,
): Exact {
  const usual = top.add(lengths['rod above opening']);
  if (ceiling === undefined) return usual;
  return lesser(
    usual,
    ceiling.sub(heading === 'grommet' ? lengths['ceiling clearance grommet'] : lengths['ceiling clearance']),
  );
}

export type Point = 'new rod' | 'hung ring' | 'hung rod' | 'track';
export const FINISHES = ['clear', 'kiss', 'break', 'puddle', 'sill', 'apron', 'radiator', 'counter'] as const;
export type Finish = (typeof FINISHES)[number];

/** Common practice in inches: rings and grommets by the trade's table, with the clearance in it. */
const TABLE = {
  'rings new rod': '-2',
  'rings hung ring': '-0.5',
  'grommet new rod': '2',
  'grommet hung rod': '1.5',
} as const;
export type TableRow = keyof typeof TABLE;
export const DROP_TABLE = TABLE;

/** Where the cloth's top edge stands over the point measured, less the floor's clearance; undefined where not said. */
export function dropOf(
  measured: Exact,
  heading: Heading,
  point: Point,
  finish: Finish,
  house: House,
  table: (row: TableRow) => Exact,
): Exact | undefined {
  const rise = riseOf(heading, point, house, table);
  return rise === undefined ? undefined : measured.add(rise).add(bottomOf(finish, house));
}

/** What the finish adds at the bottom; over an edge its own clearance stands in for the floor's. */
function bottomOf(finish: Finish, { lengths }: House): Exact {
  const usual = lengths['floor clearance'];
  switch (finish) {
    case 'sill':
    case 'counter':
    case 'radiator':
      return usual.sub(lengths[`${finish} clearance`]);
    case 'apron':
      return usual.add(lengths['apron below sill']);
    default:
      return lengths[`floor ${finish}`];
  }
}

function riseOf(
  heading: Heading,
  point: Point,
  { lengths, words }: House,
  table: (row: TableRow) => Exact,
): Exact | undefined {
  const clearance = lengths['floor clearance'];
  if (heading === 'grommet')
    return point === 'new rod'
      ? table('grommet new rod')
      : point === 'hung rod'
        ? table('grommet hung rod')
        : undefined;
  if (heading === 'rod pocket')
    return point === 'new rod' || point === 'hung rod'
      ? lengths['rod diameter'].div(TWO).add(lengths['pocket header']).sub(clearance)
      : undefined;
  if (heading === 'tab top')
    return point === 'new rod' || point === 'hung rod' ? lengths['tab drop'].add(clearance).neg() : undefined;
  const onTrack = heading === 'wave' || words['hang on'] === 'track';
  if (onTrack) return point === 'track' ? lengths['track to top'].add(clearance).neg() : undefined;
  return point === 'new rod'
    ? table('rings new rod')
    : point === 'hung ring'
      ? table('rings hung ring')
      : undefined;
}
