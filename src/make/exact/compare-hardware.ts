/** Hardware by heading with its prices, on straight rods and in bays, against the exact ones. */
import { bendsOf, bracketsOfBay, piecesOfBay, rodParts } from './bay';
import { blankCell, lengthCell, plain, type Cell, type Range } from './cells';
import type { Ground } from './compare-cloth';
import { exact, inches, sumOf, type Exact } from './figures';
import { hardwareCost, piecesOfHardware, type Priced, type Prices } from './fittings';
import type { House } from './house';
import { extensionOf } from './measure';
import { widthsOf, type Treatment } from './panel';
import { laid, pleatsOf, type Panel } from './pleats';
import { snapsOf } from './heading';
import { measured, type Window } from './windows';
import { PLEATED } from './words';

const HEADERS: Range = [
  [
    'inside width',
    'left extension',
    'right extension',
    'finished drop',
    'heading',
    'fabric width',
    'draw',
    'hang on',
    'quantity',
  ],
];
const OUTPUTS = 'rod width, brackets, grommets in all, hardware cost';
/** Of the house, whatever its unit. */
const STOCK = ['48', '72', '96', '120', '144'].map(inches);
const PRICED: readonly Priced[] = ['ring', 'grommet', 'bracket', 'finial', 'end stop', 'wand', 'bend'];

function pricesOf({ chance }: Ground): Prices {
  const cents = (): Exact => exact(1 + chance.below(6000)).div(100);
  const some: [Priced, Exact][] = PRICED.flatMap((piece) =>
    chance.inHundred(85) ? [[piece, cents()] as [Priced, Exact]] : [],
  );
  const rod = chance.pick<readonly Priced[]>([
    ['rod piece'],
    ['rod metre'],
    ['rod foot'],
    [],
    ['rod piece', 'rod foot'],
    ['rod metre', 'rod foot'],
  ]);
  return Object.fromEntries([...some, ...rod.map((one): [Priced, Exact] => [one, cents()])]);
}

/** One part mostly; else a bay or a corner. */
function openingOf({ house, chance }: Ground): readonly Exact[] {
  const count = chance.pick([1, 1, 2, 3, 3, 4, 5]);
  return Array.from({ length: count }, () =>
    measured(count === 1 ? 24 : 14, count === 1 ? 180 : 80, house, chance),
  );
}

/** A bay in one cell, part for part, in the house's own unit. */
const written = (parts: readonly Exact[], house: House): Cell =>
  parts.map((part) => String(plain(part, house.unit))).join(' + ');

interface Fitted {
  /** The house as this window hangs in it. */
  readonly house: House;
  readonly hangOn: 'rings' | 'track' | 'none' | undefined;
  readonly parts: readonly Exact[];
  readonly left: Exact | undefined;
  readonly right: Exact | undefined;
  /** The rod's own straight parts. */
  readonly ends: readonly Exact[];
  readonly rod: Exact;
}

function fittedOf(ground: Ground): Fitted {
  const { chance } = ground;
  const hangOn = chance.pick([undefined, undefined, 'rings', 'track', 'none'] as const);
  const own = hangOn === undefined || hangOn === 'none' ? ground.house.words['hang on'] : hangOn;
  const house: House = { ...ground.house, words: { ...ground.house.words, 'hang on': own } };
  const parts = openingOf(ground);
  const side = (): Exact | undefined => (chance.inHundred(50) ? undefined : measured(0, 20, house, chance));
  const [left, right] = [side(), side()];
  const low = extensionOf(sumOf(parts), 'low', house);
  const ends = rodParts(parts, left ?? low, right ?? low);
  return { house, hangOn, parts, left, right, ends, rod: sumOf(ends) };
}

/** Whether the heading can be set out at all: fuller than it is finished, with a space between its marks. */
function canBeSetOut(panel: Panel, house: House): boolean {
  const { flat, finished } = laid(panel, house);
  if (flat.compare(finished) <= 0) return false;
  if (panel.heading === 'wave') return snapsOf(panel, house).count.compare(4) >= 0;
  return !PLEATED.includes(panel.heading) || pleatsOf(panel, house).space.compare(0) > 0;
}

export function compareHardwareCost(ground: Ground, window: Window): void {
  const { chance, tally } = ground;
  const { heading, draw, fabric, cells, about } = window;
  const { house, hangOn, parts, left, right, ends, rod } = fittedOf(ground);
  const treatment: Treatment = {
    ...{ rod, heading, draw, fabric, horizontalRepeat: undefined },
    fullness: house.ratios[`fullness ${heading}`],
  };
  const panel = { rod, heading, draw, fabric, widths: widthsOf(treatment, house) };
  if (!canBeSetOut(panel, house)) return;
  const wands = chance.inHundred(50);
  const prices = pricesOf(ground);
  const hardware = {
    length: rod,
    pieces: piecesOfBay(ends, STOCK),
    brackets: bracketsOfBay(ends, false, house),
    bends: bendsOf(parts),
  };
  const ordered = hangOn !== 'none';
  const pieces = piecesOfHardware(panel, hardware, { ordered, wands }, house);
  const quantity = chance.pick([1, 1, 2, 5]);
  const cell = (given: Exact | undefined): Cell =>
    given === undefined ? blankCell(chance) : lengthCell(given, house.unit, chance);
  const opening = parts.length === 1 ? cell(parts[0]) : written(parts, house);
  const row = [
    opening,
    cell(left),
    cell(right),
    100,
    cells.heading,
    cells.fabric,
    cells.draw,
    hangOn,
    quantity,
  ];
  const rules: Range = [
    ...(house.rows ?? []),
    ['wands', wands ? 'yes' : 'no'],
    ...Object.entries(prices).map(([piece, price]) => [`price per ${piece}`, price.valueOf()]),
  ];
  const cost = hardwareCost(pieces, ordered ? hardware : undefined, prices, house).mul(quantity);
  tally.compare(
    'hardware cost',
    'SCHEDULE',
    [HEADERS, [row], OUTPUTS, rules],
    [
      { as: 'length', unit: house.unit, value: rod },
      { as: 'count', value: hardware.brackets },
      { as: 'count', value: pieces.grommet },
      { as: 'money', value: cost },
    ],
    { ...about, 'hang on': hangOn ?? 'as the house', parts: parts.length === 1 ? 'one' : 'several' },
  );
  if (parts.length > 1)
    tally.compare(
      'bay',
      'RODWIDTH',
      [
        chance.inHundred(50) ? opening : [parts.map((part) => lengthCell(part, house.unit, chance))],
        cell(left),
        cell(right),
        house.rows,
      ],
      [{ as: 'length', unit: house.unit, value: rod }],
      { parts: 'several' },
    );
}
