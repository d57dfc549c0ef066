/** One row of a table through all its steps, where the face's cloth is known to each of them. */
import { blankCell, lengthCell, plain, wordCell, type Range } from './cells';
import { bareCut, yardageOf } from './cloth';
import { clothOf, wholeness, type Ground } from './compare-cloth';
import { listed, optional, type Window } from './windows';
import { layerYardage } from './lining';
import { stackOf } from './measure';
import { delivered, widthsOf } from './panel';
import type { Exact } from './figures';
import type { Figure } from './tally';

const HEADERS: Range = [
  [
    'rod width',
    'finished drop',
    'heading',
    'fabric width',
    'vertical repeat',
    'match',
    'horizontal repeat',
    'quantity',
    'draw',
    'fullness',
    'lining',
    'lining width',
  ],
];
const OUTPUTS = 'widths, yardage, lining yardage, interlining yardage, stack, delivered fullness';

export function compareRow(ground: Ground, window: Window): void {
  const { house, chance, tally } = ground;
  const { cells, heading, draw, rod } = window;
  const given = clothOf(ground);
  const lining = chance.pick(['unlined', 'lined', 'interlined'] as const);
  const sameBolt = chance.inHundred(50);
  const liningFabric = sameBolt ? window.fabric : listed(['54', '48', '60', '118'], house, chance);
  const row = [
    cells.rod,
    lengthCell(given.drop, house.unit, chance),
    cells.heading,
    cells.fabric,
    optional(given.verticalRepeat, house, chance),
    given.match === undefined ? blankCell(chance) : wordCell(given.match, chance),
    cells.horizontalRepeat,
    given.quantity,
    cells.draw,
    cells.fullness,
    lining,
    lining === 'unlined' ? blankCell(chance) : plain(liningFabric, house.unit),
  ];
  const widths = widthsOf(window, house);
  const layer = (name: 'lining' | 'interlining'): Figure => ({
    as: 'cloth',
    value: layerYardage(window, given, liningFabric, name, house),
  });
  const figure = (as: 'count' | 'cloth' | 'ratio', value: Exact): Figure => ({ as, value });
  tally.compare(
    'row',
    'SCHEDULE',
    [HEADERS, [row], OUTPUTS, house.rows],
    [
      figure('count', widths),
      figure('cloth', yardageOf(window, given, house)),
      lining === 'unlined' ? undefined : layer('lining'),
      lining === 'interlined' ? layer('interlining') : undefined,
      draw === 'stationary'
        ? undefined
        : { as: 'twice worked length', unit: house.unit, value: stackOf(rod, heading, draw, lining, house) },
      figure('ratio', delivered(window, widths, house)),
    ],
    {
      ...window.about,
      repeat: given.verticalRepeat === undefined ? 'none' : 'given',
      match: given.verticalRepeat === undefined ? 'none' : (given.match ?? 'straight'),
      lining,
      'bare cut': wholeness(bareCut(given.drop, heading, house)),
      bolt: liningFabric.equals(window.fabric) ? 'same' : 'other',
    },
  );
}
