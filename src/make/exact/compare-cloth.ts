/** Widths, fullness, cuts, yardage, linings and turned cloth of one window, against the exact ones. */
import { blankCell, lengthCell, ratioCell, wordCell, type Cell } from './cells';
import type { Chance } from './chance';
import { bareCut, longestCut, railroadedOf, weightOf, yardageOf, type Cloth } from './cloth';
import { ONE, below, exact, type Exact } from './figures';
import type { House } from './house';
import { layerCut, layerYardage, type Layer } from './lining';
import { delivered, edgesOf, finishedOf, finishedDrawn, panelsNeeded, saving, widthsOf } from './panel';
import type { Figure, Tally } from './tally';
import { listed, measured, optional, type Window } from './windows';

const VERTICAL = ['20', '27', '25.25', '13.5', '4.5', '36', '54', '12', '31.5', '140'];
const QUANTITIES = [1, 1, 2, 3, 5, 8, 14];
const LININGS = ['54', '48', '60', '45', '118', '54.5'];

const length = (value: Exact, house: House): Figure => ({ as: 'length', unit: house.unit, value });
const count = (value: Exact): Figure => ({ as: 'count', value });
const cloth = (value: Exact): Figure => ({ as: 'cloth', value });
const REFUSED: Figure = { as: 'refused' };

export interface Ground {
  readonly house: House;
  readonly chance: Chance;
  readonly tally: Tally;
}

function compareFinished({ house, chance, tally }: Ground, window: Window): void {
  const { rod, heading, draw, cells, about } = window;
  const rules = house.rows;
  if (draw === 'stationary') {
    // The function knows no cloth: side panels are of the house's usual width and fullness.
    const usual = {
      fabric: house.lengths['usual fabric width'],
      fullness: house.ratios[`fullness ${heading}`],
    };
    const panel = { ...window, ...usual, horizontalRepeat: undefined };
    const side = finishedOf(panel, widthsOf(panel, house), house);
    tally.compare(
      'finished',
      'FINISHEDWIDTH',
      [cells.rod, cells.heading, cells.draw, undefined, null, rules],
      [length(side, house)],
      about,
    );
    return;
  }
  const own = edgesOf(heading, draw, house);
  const finished = finishedDrawn(rod, draw, own, house);
  tally.compare(
    'finished',
    'FINISHEDWIDTH',
    [cells.rod, cells.heading, cells.draw, blankCell(chance), blankCell(chance), rules],
    [length(finished, house)],
    about,
  );
  // A return of the window's own, 0 in a recess.
  const given = chance.pick([exact(0), measured(1, 8, house, chance)]);
  const turned = finishedDrawn(rod, draw, { ...own, return: given }, house);
  tally.compare(
    'finished',
    'FINISHEDWIDTH',
    [cells.rod, cells.heading, cells.draw, lengthCell(given, house.unit, chance), undefined, rules],
    [length(turned, house)],
    about,
  );
}

function compareWidths({ house, chance, tally }: Ground, window: Window): Exact {
  const { cells, about, heading } = window;
  const rules = house.rows;
  const widths = widthsOf(window, house);
  tally.compare(
    'widths',
    'WIDTHS',
    [cells.rod, cells.heading, cells.fabric, cells.draw, cells.fullness, cells.horizontalRepeat, rules],
    [count(widths)],
    about,
  );
  const plain: Window = { ...window, horizontalRepeat: undefined };
  const made = widths.add(chance.pick([0, 0, 1, 2]));
  const own = { ...plain, fullness: house.ratios[`fullness ${heading}`] };
  const fullness = delivered(own, made, house);
  if (below(exact(0), fullness))
    tally.compare(
      'delivered',
      'FULLNESS',
      [cells.rod, made.valueOf(), cells.heading, cells.fabric, cells.draw, rules],
      [{ as: 'ratio', value: fullness }],
      about,
    );
  const saved = saving(plain, house);
  // Where a rest of just half a width goes up, the rod must be narrower by a nanometre more.
  const open = saved?.open === true ? saved.rod.floor().add(ONE) : saved?.rod.ceil();
  tally.compare(
    'saved',
    'SAVEWIDTH',
    [cells.rod, cells.heading, cells.fabric, cells.draw, cells.fullness, rules],
    [open === undefined ? REFUSED : length(open, house)],
    about,
  );
  const each = exact(chance.pick(['1', '1.5', '2', '3']));
  const panels = panelsNeeded(plain, each, house);
  tally.compare(
    'panels',
    'PANELS',
    [cells.rod, cells.heading, cells.fabric, each.valueOf(), cells.draw, cells.fullness, rules],
    [count(panels)],
    about,
  );
  return widths;
}

export function clothOf({ house, chance }: Ground): Cloth {
  const verticalRepeat = chance.inHundred(35) ? undefined : listed(VERTICAL, house, chance);
  return {
    drop: measured(24, 150, house, chance),
    verticalRepeat,
    match: chance.pick([undefined, 'straight', 'half-drop']),
    quantity: chance.pick(QUANTITIES),
  };
}

function compareCuts(ground: Ground, window: Window, { drop, verticalRepeat }: Cloth, dropCell: Cell): void {
  const { house, chance, tally } = ground;
  const { cells, about, heading } = window;
  const bare = bareCut(drop, heading, house);
  const more = { ...about, repeat: verticalRepeat === undefined ? 'none' : 'given' };
  tally.compare(
    'cut',
    'CUTLENGTH',
    [dropCell, cells.heading, optional(verticalRepeat, house, chance), blankCell(chance), house.rows],
    [length(longestCut(bare, verticalRepeat, house), house)],
    more,
  );
  const layer = chance.pick<Layer>(['lining', 'interlining']);
  tally.compare(
    'lining cut',
    'CUTLENGTH',
    [dropCell, cells.heading, undefined, layer, house.rows],
    [length(layerCut(drop, heading, layer, house), house)],
    { ...about, layer },
  );
}

/** Whether a length comes out in whole nanometres. */
export const wholeness = (bare: Exact): string => (bare.d === 1n ? 'whole nanometres' : 'broken');

function compareYardage(ground: Ground, window: Window): void {
  const { house, chance, tally } = ground;
  const { cells } = window;
  const given = clothOf(ground);
  const { drop, verticalRepeat, match, quantity } = given;
  const dropCell = lengthCell(drop, house.unit, chance);
  const many = quantity === 1 && chance.inHundred(50) ? blankCell(chance) : quantity;
  const repeatCell = optional(verticalRepeat, house, chance);
  const about = {
    ...window.about,
    'bare cut': wholeness(bareCut(drop, window.heading, house)),
    repeat: verticalRepeat === undefined ? 'none' : 'given',
    match: verticalRepeat === undefined ? 'none' : (match ?? 'straight'),
  };
  compareCuts(ground, window, given, dropCell);
  tally.compare(
    'yardage',
    'YARDAGE',
    [
      cells.rod,
      dropCell,
      cells.heading,
      cells.fabric,
      repeatCell,
      many,
      cells.draw,
      cells.fullness,
      match === undefined ? blankCell(chance) : wordCell(match, chance),
      cells.horizontalRepeat,
      house.rows,
    ],
    [cloth(yardageOf(window, given, house))],
    about,
  );
  const turned = railroadedOf(window, given, house);
  // How side panels are cut from turned cloth is not told.
  if (window.draw !== 'stationary')
    tally.compare(
      'railroaded',
      'RAILROADED',
      [
        cells.rod,
        dropCell,
        cells.heading,
        cells.fabric,
        many,
        cells.draw,
        cells.fullness,
        repeatCell,
        cells.horizontalRepeat,
        house.rows,
      ],
      [
        turned === undefined
          ? REFUSED
          : { as: 'cloth', value: turned, grained: railroadedOf(window, given, house, (one) => one.floor()) },
      ],
      about,
    );
  compareLayers(ground, window, given, dropCell, many);
}

function compareLayers(
  { house, chance, tally }: Ground,
  window: Window,
  given: Cloth,
  dropCell: Cell,
  many: Cell,
): void {
  const { cells } = window;
  const layer = chance.pick<Layer>(['lining', 'lining', 'interlining']);
  const sameBolt = chance.inHundred(40);
  const fabric = sameBolt ? window.fabric : listed(LININGS, house, chance);
  const cell = sameBolt ? cells.fabric : lengthCell(fabric, house.unit, chance);
  const cut = layerCut(given.drop, window.heading, layer, house);
  const about = {
    ...window.about,
    layer,
    'bare cut': wholeness(cut),
    bolt: fabric.equals(window.fabric) ? 'same' : 'other',
  };
  tally.compare(
    'lining',
    'LINING',
    [
      cells.rod,
      dropCell,
      cells.heading,
      cell,
      many,
      cells.draw,
      cells.fullness,
      layer,
      house.rows,
      cells.fabric,
      cells.horizontalRepeat,
    ],
    [cloth(layerYardage(window, given, fabric, layer, house))],
    about,
  );
}

function compareWeight({ house, chance, tally }: Ground, window: Window): void {
  const { cells, about } = window;
  const drop = measured(24, 150, house, chance);
  const areal = exact(chance.pick(house.unit === 'inches' ? ['8', '12.5', '6.25'] : ['250', '310.5', '180']));
  const plain: Window = { ...window, horizontalRepeat: undefined };
  tally.compare(
    'weight',
    'CLOTHWEIGHT',
    [
      cells.rod,
      lengthCell(drop, house.unit, chance),
      cells.heading,
      cells.fabric,
      ratioCell(areal, chance),
      cells.draw,
      cells.fullness,
      house.rows,
    ],
    [{ as: 'cloth', value: weightOf(plain, drop, areal, house) }],
    about,
  );
}

export function compareCloth(ground: Ground, window: Window, cloths: number): void {
  compareFinished(ground, window);
  compareWidths(ground, window);
  for (let one = 0; one < cloths; one += 1) compareYardage(ground, window);
  compareWeight(ground, window);
}
