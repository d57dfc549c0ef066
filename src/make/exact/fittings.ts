/** The hardware that belongs to a heading, and what it costs. */
import { NONE, ONE, TWO, greater, sumOf, exact, type Exact } from './figures';
import { ringsOf } from './heading';
import type { House } from './house';
import { laid, type Panel } from './pleats';
import { panelsOf } from './panel';
import { ON_THE_ROD, isOneWay } from './words';

export type Priced =
  | 'ring'
  | 'grommet'
  | 'bracket'
  | 'finial'
  | 'end stop'
  | 'wand'
  | 'bend'
  | 'rod piece'
  | 'rod metre'
  | 'rod foot';
export type Prices = Readonly<Partial<Record<Priced, Exact>>>;

export interface Rod {
  readonly length: Exact;
  readonly pieces: number;
  readonly brackets: Exact;
  readonly bends: number;
}

/** Along one panel's flat cloth: a grommet at each return, half a space to an edge without one, an even count. */
export function grommetsOfPanel(flat: Exact, returns: readonly [Exact, Exact], house: House): Exact {
  const own = house.grommetEdge;
  const places = returns.map((side) => (side.equals(NONE) ? own : side));
  const between = flat.sub(sumOf(places.map((place) => place ?? NONE)));
  const halves = exact(places.filter((place) => place === undefined).length).div(2);
  // So many centres that no space between two is longer than the house's.
  const least = between.div(house.lengths['grommet spacing']).sub(halves).add(ONE).ceil();
  return greater(least.div(2).ceil(), ONE).mul(2);
}

const turns = (panel: Panel, house: House): readonly [Exact, Exact] => {
  const side = house.lengths.return;
  const both = isOneWay(panel.draw) && house.words['one way returns'] === 'both ends';
  return [both ? side : NONE, side];
};

/** Each kind of piece of one window; a rod or track is of every heading. */
export function piecesOfHardware(
  panel: Panel,
  rod: Rod,
  { ordered, wands }: { readonly ordered: boolean; readonly wands: boolean },
  house: House,
): Readonly<Record<Exclude<Priced, 'rod piece' | 'rod metre' | 'rod foot'>, Exact>> {
  const { heading, draw } = panel;
  const onRings = house.words['hang on'] === 'rings';
  const usual = heading !== 'wave' && !ON_THE_ROD.includes(heading);
  const grommets =
    heading === 'grommet'
      ? grommetsOfPanel(laid(panel, house).flat, turns(panel, house), house).mul(panelsOf(draw))
      : NONE;
  const none = { ring: NONE, grommet: grommets, bracket: NONE, finial: NONE, 'end stop': NONE, wand: NONE };
  if (!ordered) return { ...none, bend: NONE };
  const showsItsEnds = heading === 'grommet' || heading === 'tab top' || (usual && onRings);
  const drawn = draw !== 'stationary' && heading !== 'rod pocket' && heading !== 'tab top';
  return {
    ring: usual ? ringsOf(panel, house) : NONE,
    grommet: grommets,
    bracket: rod.brackets,
    finial: showsItsEnds ? TWO : NONE,
    'end stop': usual && !onRings ? TWO : NONE,
    wand: wands && drawn ? panelsOf(draw) : NONE,
    bend: exact(rod.bends),
  };
}

/** By the piece where that is priced, else by the metre, else by the foot (in a metric house the metre). */
function rodCost({ length, pieces }: Rod, prices: Prices, house: House): Exact {
  const metre = exact(1_000_000_000);
  const foot = house.unit === 'inches' ? exact(304_800_000) : metre;
  if (prices['rod piece'] !== undefined) return prices['rod piece'].mul(pieces);
  if (prices['rod metre'] !== undefined) return prices['rod metre'].mul(length).div(metre);
  return (prices['rod foot'] ?? NONE).mul(length).div(foot);
}

export function hardwareCost(
  pieces: ReturnType<typeof piecesOfHardware>,
  rod: Rod | undefined,
  prices: Prices,
  house: House,
): Exact {
  const parts = Object.entries(pieces).map(([piece, count]) => count.mul(prices[piece as Priced] ?? NONE));
  return sumOf(parts).add(rod === undefined ? NONE : rodCost(rod, prices, house));
}
