/** Extensions, rods, heights, drops and stacks, against the exact ones. */
import { blankCell, lengthCell, wordCell, type Cell } from './cells';
import type { Ground } from './compare-cloth';
import { inches, lesser, type Exact } from './figures';
import type { House } from './house';
import {
  DROP_TABLE,
  FINISHES,
  clearExtension,
  dropOf,
  extensionOf,
  rodHeightOf,
  rodWidthOf,
  stackOf,
  type LiningWord,
  type Point,
} from './measure';
import type { Figure } from './tally';
import { measured, type Window } from './windows';

const LININGS: readonly LiningWord[] = ['unlined', 'lined', 'interlined', 'blackout'];
const POINTS: readonly Point[] = ['new rod', 'hung ring', 'hung rod', 'track'];
const length = (value: Exact, house: House): Figure => ({ as: 'length', unit: house.unit, value });

function compareExtensions({ house, chance, tally }: Ground, { heading, draw, cells, about }: Window): void {
  const opening = measured(12, 200, house, chance);
  const cell = lengthCell(opening, house.unit, chance);
  const end = chance.pick(['low', 'high'] as const);
  tally.compare(
    'extension',
    'EXTENSION',
    [cell, end === 'low' ? blankCell(chance) : end, house.rows],
    [length(extensionOf(opening, end, house), house)],
    { end },
  );
  if (draw !== 'stationary') {
    const lining = chance.pick(LININGS);
    const clear = clearExtension(opening, heading, draw, lining, house);
    const meant: Figure = clear === undefined ? { as: 'refused' } : length(clear, house);
    tally.compare(
      'extension',
      'EXTENSION',
      [cell, 'clear', house.rows, cells.heading, cells.draw, lining],
      [meant],
      { ...about, end: 'clear' },
    );
    const stack = stackOf(opening, heading, draw, lining, house);
    tally.compare(
      'stack',
      'STACK',
      [cell, cells.heading, cells.draw, wordCell(lining, chance), house.rows],
      [{ as: 'twice worked length', unit: house.unit, value: stack }],
      { ...about, lining },
    );
  }
  const left = chance.inHundred(50) ? undefined : measured(0, 20, house, chance);
  const right = chance.inHundred(50) ? undefined : measured(0, 20, house, chance);
  const side = (given: Exact | undefined): Cell =>
    given === undefined ? blankCell(chance) : lengthCell(given, house.unit, chance);
  tally.compare(
    'rod width',
    'RODWIDTH',
    [cell, side(left), side(right), house.rows],
    [length(rodWidthOf(opening, left, right, house), house)],
    {},
  );
}

function compareDrops({ house, chance, tally }: Ground, { heading, cells, about }: Window): void {
  // The table of drops is in inches: a metric house has its own rules for it, which are not told here.
  if (house.unit !== 'inches') return;
  const point = chance.pick(POINTS);
  // A radiator's clearance is its maker's: a house that has set nothing has none.
  const finishes = house.rows === undefined ? FINISHES.filter((one) => one !== 'radiator') : FINISHES;
  const finish = chance.pick(finishes);
  const first = measured(60, 130, house, chance);
  const second = first.add(inches(chance.pick(['0', '0.125', '-0.25'])));
  const drop = dropOf(lesser(first, second), heading, point, finish, house, (row) => inches(DROP_TABLE[row]));
  if (drop === undefined) return;
  const clear = finish === 'clear';
  const readings = clear
    ? [[lengthCell(first, house.unit, chance)], [lengthCell(second, house.unit, chance)]]
    : [[lengthCell(lesser(first, second), house.unit, chance)]];
  tally.compare(
    'drop',
    'DROP',
    [readings, cells.heading, point, clear && chance.inHundred(50) ? blankCell(chance) : finish, house.rows],
    [length(drop, house)],
    { ...about, point, finish },
  );
}

function compareHeights({ house, chance, tally }: Ground, { heading, cells, about }: Window): void {
  const top = measured(60, 110, house, chance);
  const ceiling = chance.inHundred(30) ? undefined : top.add(measured(4, 30, house, chance));
  const meant = rodHeightOf(top, ceiling, heading, house);
  const cell = ceiling === undefined ? blankCell(chance) : lengthCell(ceiling, house.unit, chance);
  tally.compare(
    'rod height',
    'RODHEIGHT',
    [lengthCell(top, house.unit, chance), cell, cells.heading, house.rows],
    [length(meant, house)],
    about,
  );
}

export function compareMeasures(ground: Ground, window: Window): void {
  compareExtensions(ground, window);
  compareDrops(ground, window);
  compareHeights(ground, window);
}
