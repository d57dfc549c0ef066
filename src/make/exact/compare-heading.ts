/** Pleats, snaps, rings and carriers, grommets, pockets, brackets and rods, against the exact ones. */
import { blankCell, lengthCell, plain, type Range } from './cells';
import type { Ground } from './compare-cloth';
import { exact, inches, type Exact } from './figures';
import { bracketsOf, piecesOf } from './hardware';
import { grommetsOf, pocketOf, ringsOf, snapsOf } from './heading';
import type { House } from './house';
import { widthsOf } from './panel';
import { laid, pleatsOf, type Panel } from './pleats';
import type { About, Figure } from './tally';
import { listed, measured, type Window } from './windows';
import { PLEATED } from './words';

const length = (value: Exact, house: House): Figure => ({ as: 'length', unit: house.unit, value });
const count = (value: Exact): Figure => ({ as: 'count', value });

/** So many widths, those of the house or some beside them. */
function panelOf({ house, chance }: Ground, window: Window): Panel {
  const { rod, heading, fabric, draw } = window;
  const made = widthsOf({ ...window, horizontalRepeat: undefined }, house);
  return { rod, heading, fabric, draw, widths: made.add(chance.pick([0, 0, 0, 1, 2])) };
}

function comparePleats(ground: Ground, window: Window, panel: Panel, about: About): void {
  const { house, tally } = ground;
  const { cells, heading } = window;
  const given = [cells.rod, panel.widths.valueOf(), cells.heading, cells.fabric, cells.draw, house.rows];
  if (heading === 'wave') {
    const { count: snaps, apart, along } = snapsOf(panel, house);
    if (snaps.compare(4) < 0) return;
    tally.compare(
      'snaps',
      'PLEATS',
      given,
      [count(snaps), count(snaps.sub(1)), length(apart, house), length(along, house)],
      about,
    );
    return;
  }
  if (!PLEATED.includes(heading)) {
    tally.compare('pleats', 'PLEATS', given, [{ as: 'refused' }], about);
    return;
  }
  const pleats = pleatsOf(panel, house);
  const more = { ...about, bands: pleats.bands };
  tally.compare(
    'pleats',
    'PLEATS',
    given,
    [
      count(exact(pleats.count)),
      count(exact(pleats.count - 1)),
      length(pleats.space, house),
      length(pleats.takeUp, house),
    ],
    more,
  );
}

function compareGrommets({ house, chance, tally }: Ground): void {
  const flat = measured(20, 220, house, chance);
  const grommets = grommetsOf(flat, house);
  if (grommets === undefined) return;
  const { count: many, spacing, first } = grommets;
  tally.compare(
    'grommets',
    'GROMMETS',
    [lengthCell(flat, house.unit, chance), house.rows],
    [count(many), length(spacing, house), length(first, house)],
    { edge: house.grommetEdge === undefined ? 'half' : 'own' },
  );
}

const STOCK = ['48', '72', '96', '120', '144', '60', '84', '36'];

function compareHardware({ house, chance, tally }: Ground, window: Window): void {
  const { cells, rod } = window;
  const weight = chance.pick([undefined, 8, 15.99, 16, 19.99, 20, 25.5, 31.5]);
  const heavy = weight !== undefined && exact(weight).compare(house.heavyFrom) >= 0;
  tally.compare(
    'brackets',
    'BRACKETS',
    [cells.rod, weight ?? blankCell(chance), house.rows],
    [count(bracketsOf(rod, heavy, house))],
    { weight: heavy ? 'heavy' : 'light' },
  );
  const stock = Array.from({ length: 1 + chance.below(4) }, () => listed(STOCK, house, chance));
  const range: Range = stock.map((piece) => [plain(piece, house.unit)]);
  const { pieces } = piecesOf(rod, stock);
  const column = new Set(stock.map((piece) => piece.toFraction()));
  // A mix of one length shows its count and its splices in one row.
  if (column.size === 1)
    tally.compare(
      'rod pieces',
      'RODPIECES',
      [cells.rod, range, house.rows],
      [length(stock[0] ?? inches(0), house), count(exact(pieces)), count(exact(pieces - 1))],
      {},
    );
  else
    tally.compare(
      'rod pieces',
      'RODPIECES',
      [cells.rod, range, house.rows],
      [undefined, undefined, count(exact(pieces - 1))],
      {},
    );
}

export function compareHeading(ground: Ground, window: Window): void {
  const { house, chance, tally } = ground;
  const { cells } = window;
  const panel = panelOf(ground, window);
  const { flat, finished } = laid(panel, house);
  const fuller = flat.compare(finished) > 0 ? 'yes' : 'no';
  const about = { ...window.about, fuller };
  // Where two faces alone pass the rod, nothing can be set out.
  const room = !PLEATED.includes(window.heading) || pleatsOf(panel, house).space.compare(0) > 0;
  if (fuller === 'yes' && room) {
    comparePleats(ground, window, panel, about);
    tally.compare(
      'rings',
      'RINGS',
      [cells.rod, panel.widths.valueOf(), cells.heading, cells.draw, house.rows, cells.fabric],
      [count(ringsOf(panel, house))],
      about,
    );
  }
  compareGrommets(ground);
  compareHardware(ground, window);
  const around = listed(['3.125', '2', '4.5', '5.75'], house, chance);
  tally.compare(
    'pocket',
    'POCKET',
    [lengthCell(around, house.unit, chance), house.rows],
    [length(pocketOf(around, house), house)],
    {},
  );
}
