/** Rows of sheers: their widths, cloth, fullness and drop, and that nothing is cut to line them. */
import { blankOrNought, lengthCell, ratioCell, type Cell, type Range } from './cells';
import { bareCut, longestCut, yardageOf } from './cloth';
import { clothOf, type Ground } from './compare-cloth';
import { NONE, inches, type Exact } from './figures';
import { DROP_TABLE, dropOf } from './measure';
import { delivered, widthsOf } from './panel';
import { asSheer, sheerHouse, underDrapery } from './sheer';
import type { Figure } from './tally';
import { measured, optional, type Window } from './windows';

const HEADERS: Range = [
  [
    'layer',
    'rod width',
    'finished drop',
    'measured height',
    'measured to',
    'heading',
    'fabric width',
    'vertical repeat',
    'match',
    'quantity',
    'draw',
    'fullness',
    'lining',
  ],
];
const OUTPUTS = 'finished drop, widths, cut length, yardage, lining yardage, delivered fullness';

/** Measured to a new rod or to a track, where the heading has a row in the trade's table. */
function hangs(
  height: Exact,
  { heading }: Window,
  house: Ground['house'],
): readonly [string, Exact] | undefined {
  if (house.unit !== 'inches') return undefined;
  for (const point of ['new rod', 'track'] as const) {
    const drop = dropOf(height, heading, point, 'clear', house, (row) => inches(DROP_TABLE[row]));
    if (drop !== undefined) return [point, drop];
  }
  return undefined;
}

interface Dropped {
  readonly drop: Exact;
  /** Finished drop, measured height, point measured to. */
  readonly cells: readonly Cell[];
  readonly is: 'given' | 'measured';
}

function dropped({ house, chance }: Ground, window: Window, given: Exact, layer: string): Dropped {
  const height = measured(40, 130, house, chance);
  const hung = chance.inHundred(50) ? hangs(height, window, house) : undefined;
  if (hung === undefined)
    return { drop: given, cells: [lengthCell(given, house.unit, chance), null, null], is: 'given' };
  const [point, drop] = hung;
  return {
    drop: layer === 'sheer' ? underDrapery(drop, house) : drop,
    cells: [null, lengthCell(height, house.unit, chance), point],
    is: 'measured',
  };
}

export function compareSheer(ground: Ground, window: Window): void {
  const { chance, tally } = ground;
  const { cells, heading } = window;
  const house = sheerHouse(ground.house);
  const layer = chance.pick(['sheer', 'sheer', 'sheer alone']);
  const given = chance.inHundred(40);
  const sheer = { ...asSheer(window, given, house), horizontalRepeat: undefined };
  const cloth = clothOf(ground);
  const { drop, cells: dropCells, is } = dropped(ground, window, cloth.drop, layer);
  const own = { ...cloth, drop };
  const row = [
    layer,
    cells.rod,
    ...dropCells,
    cells.heading,
    cells.fabric,
    optional(own.verticalRepeat, house, chance),
    own.match ?? null,
    own.quantity,
    cells.draw,
    given ? ratioCell(sheer.fullness, chance) : blankOrNought(chance),
    chance.pick(['lined', 'blackout', 'unlined', null]),
  ];
  const widths = widthsOf(sheer, house);
  const halfDrop = own.match === 'half-drop' && own.verticalRepeat !== undefined;
  const length = (value: Exact): Figure => ({ as: 'length', unit: house.unit, value });
  tally.compare(
    'sheer',
    'SCHEDULE',
    [HEADERS, [row], OUTPUTS, house.rows],
    [
      length(drop),
      { as: 'count', value: widths },
      halfDrop ? undefined : length(longestCut(bareCut(drop, heading, house), own.verticalRepeat, house)),
      { as: 'cloth', value: yardageOf(sheer, own, house) },
      { as: 'cloth', value: NONE },
      { as: 'ratio', value: delivered(sheer, widths, house) },
    ],
    { ...window.about, layer, drop: is },
  );
}
