/** Pleats of one panel: counted by width, space or take-up, then moved into the bands of the trade. */
import { NONE, ONE, atMost, nearest, type Exact } from './figures';
import type { House } from './house';
import { boltOf, edgesOf, edging, finishedOfCloth, flatOf, panelsOf, rodShare, type Edges } from './panel';
import { FACED, isOneWay, type Draw, type Heading } from './words';

export interface Panel {
  readonly rod: Exact;
  readonly widths: Exact;
  readonly heading: Heading;
  readonly fabric: Exact;
  readonly draw: Draw;
}

export interface Pleats {
  readonly count: number;
  readonly space: Exact;
  readonly takeUp: Exact;
  /** Which bands hold: the usual ones, the wider ones, or none. */
  readonly bands: 'usual' | 'wider' | 'none';
  readonly moved: boolean;
}

interface Band {
  readonly least: Exact;
  readonly most: Exact;
}
interface Bands {
  readonly space: Band;
  readonly takeUp: Band;
}

const usualBands = ({ lengths }: House): Bands => ({
  space: { least: lengths['space low'], most: lengths['space high'] },
  takeUp: { least: lengths['take up low'], most: lengths['take up high'] },
});
/** Taken where no count meets the usual ones. */
const widerBands = ({ lengths }: House): Bands => ({
  space: { least: lengths['space least'], most: lengths['space high'] },
  takeUp: { least: lengths['take up low'], most: lengths['take up most'] },
});
const within = (figure: Exact, { least, most }: Band): boolean =>
  atMost(least, figure) && atMost(figure, most);

/** What of the finished panel is not spaced out: the overlap or the house's edge, and the returns. */
export function unspaced(draw: Draw, edges: Edges, house: House): Exact {
  const all = edging(draw, edges, house);
  if (house.pleatEdge === undefined) return all;
  if (draw === 'pair') return edges.return.add(house.pleatEdge);
  // The leading edge of a one-way panel has the house's edge; its other edge keeps the return.
  return isOneWay(draw) ? edges.return.add(house.pleatEdge) : all;
}

export interface Laid {
  readonly flat: Exact;
  readonly finished: Exact;
  /** Over which the pleats are spaced. */
  readonly spaced: Exact;
}

export function laid(panel: Panel, house: House): Laid {
  const { draw, heading, rod } = panel;
  const edges = edgesOf(heading, draw, house);
  const bolt = boltOf(panel.fabric, undefined, house);
  const flat = flatOf(panel.widths.div(panelsOf(draw)), bolt, house);
  const finished =
    draw === 'stationary'
      ? finishedOfCloth(flat, house.ratios[`fullness ${heading}`], edges, house)
      : rodShare(rod, draw).add(edging(draw, edges, house));
  return { flat, finished, spaced: finished.sub(unspaced(draw, edges, house)) };
}

/** The count that the house wishes for, before any band. */
function wished(panel: Panel, { flat, finished, spaced }: Laid, house: House): Exact {
  const by = house.words['pleats by'];
  if (by === 'space') return nearest(spaced.div(house.lengths['pleat space'])).add(ONE);
  if (by === 'take-up') return nearest(flat.sub(finished).div(house.lengths['take up']));
  const each = house.counts['pleats a width'];
  const on = house.lengths['pleats counted on'];
  if (panel.fabric.equals(on)) return panel.widths.div(panelsOf(panel.draw)).mul(each).floor();
  return flat.div(on).mul(each).floor();
}

interface Setting {
  readonly space: Exact;
  readonly takeUp: Exact;
}

function setting(count: number, heading: Heading, { flat, finished, spaced }: Laid, house: House): Setting {
  const faces = FACED.includes(heading) ? house.lengths['box face'].mul(count) : NONE;
  return { space: spaced.sub(faces).div(count - 1), takeUp: flat.sub(finished).div(count) };
}

/** The most pleats whose faces alone leave a space between them; never fewer than two. */
function roomFor(heading: Heading, { spaced }: Laid, house: House): number {
  if (!FACED.includes(heading)) return Infinity;
  return Math.max(2, spaced.div(house.lengths['box face']).ceil().sub(ONE).valueOf());
}

/** The count nearest to the wish that meets the bands; of two as near, the smaller. */
function nearestWithin(wish: number, most: number, meets: (count: number) => boolean): number | undefined {
  for (let away = 0; away <= most; away += 1) {
    if (wish - away >= 2 && meets(wish - away)) return wish - away;
    if (meets(wish + away)) return wish + away;
  }
  return undefined;
}

export function pleatsOf(panel: Panel, house: House): Pleats {
  const lay = laid(panel, house);
  const wish = Math.max(2, wished(panel, lay, house).valueOf());
  // No more pleats than the cloth taken up gives at the least of a pleat.
  const most = wish + lay.flat.div(house.lengths['take up low']).ceil().valueOf();
  const meeting = (bands: Bands) => (count: number) => {
    const { space, takeUp } = setting(count, panel.heading, lay, house);
    return within(space, bands.space) && within(takeUp, bands.takeUp);
  };
  const usual = nearestWithin(wish, most, meeting(usualBands(house)));
  const wider = usual ?? nearestWithin(wish, most, meeting(widerBands(house)));
  const count = usual ?? wider ?? Math.min(wish, roomFor(panel.heading, lay, house));
  return {
    count,
    ...setting(count, panel.heading, lay, house),
    bands: usual !== undefined ? 'usual' : wider !== undefined ? 'wider' : 'none',
    moved: count !== wish,
  };
}
