/** Prices, making, selling prices and tax; rolls and the cuts they give: against the exact ones. */
import { blankCell, lengthCell, ratioCell, residue, wordCell, type Cell, type Range } from './cells';
import type { Chance } from './chance';
import type { Ground } from './compare-cloth';
import { longestCut, patternStart } from './cloth';
import { METRE, NONE, YARD, below, exact, type Exact } from './figures';
import {
  CENT_ROUNDINGS,
  breakPrice,
  making,
  salesTax,
  sellPrice,
  type Basis,
  type Break,
  type CentRounding,
} from './money';
import { cutsOfRolls } from './rolls';
import type { Figure } from './tally';
import { listed, measured, optional } from './windows';
import { HEADINGS } from './words';

const money = (value: Exact): Figure => ({ as: 'money', value });
const cents = (chance: Chance, most: number): Exact => exact(chance.below(most)).div(100);

/** A figure as a number, at times with what binary arithmetic leaves. */
const figureCell = (figure: Exact, chance: Chance): Cell =>
  chance.inHundred(70) ? figure.valueOf() : residue(figure.valueOf(), chance);

/** Whether a cell holds more than the figure that was meant. */
const residueOf = (cells: readonly Cell[], figures: readonly Exact[]): string =>
  cells.every((cell, at) => typeof cell === 'string' || cell === figures[at]?.valueOf()) ? 'none' : 'some';

function compareBreaks({ chance, tally }: Ground): void {
  const breaks: Break[] = [];
  let from = chance.pick([NONE, exact(1), exact('0.5')]);
  for (let row = 0; row < 1 + chance.below(5); row += 1) {
    breaks.push({ from, price: cents(chance, 9000).add('0.01') });
    from = from.add(exact(1 + chance.below(60)).div(chance.pick([1, 2, 4])));
  }
  // Often just at a break, and just below it.
  const at = chance.pick(breaks).from;
  const quantity = chance.pick([at, at.add('0.125'), at.sub('0.125'), exact(1 + chance.below(800)).div(8)]);
  if (!below(NONE, quantity)) return;
  const cell = figureCell(quantity, chance);
  const price = breakPrice(quantity, breaks);
  const range: Range = breaks.map((one) => [one.from.valueOf(), one.price.valueOf()]);
  tally.compare(
    'break price',
    'BREAKPRICE',
    [cell, range],
    [price === undefined ? { as: 'refused' } : money(price)],
    { first: price === undefined ? 'below' : 'reached', residue: residueOf([cell], [quantity]) },
  );
}

const RATES = ['0.4', '0.5', '0.333', '0.25', '0.0725', '0.6', '0.15', '0'];

function compareSelling({ chance, tally }: Ground): void {
  const cost = cents(chance, 400_000);
  const rate = exact(chance.pick(RATES));
  const costCell = figureCell(cost, chance);
  const rateCell = ratioCell(rate, chance);
  const basis = chance.pick<Basis>(['markup on cost', 'margin on selling price']);
  tally.compare(
    'sell price',
    'SELLPRICE',
    [costCell, rateCell, wordCell(basis, chance)],
    [money(sellPrice(cost, rate, basis, 'half up'))],
    { basis, residue: residueOf([costCell, rateCell], [cost, rate]) },
  );
}

const TAXES = ['0.0725', '0.0825', '0.06', '0.05', '0.0663', '0.1', '0.19', '0.005'];

function compareTax({ chance, tally }: Ground): void {
  const amounts = Array.from({ length: 1 + chance.below(6) }, () =>
    cents(chance, chance.pick([2000, 90_000])),
  );
  const rate = exact(chance.pick(TAXES));
  const basis = chance.pick(['line', 'invoice'] as const);
  const rounding = chance.pick(CENT_ROUNDINGS);
  const cells = amounts.map((amount) => figureCell(amount, chance));
  const rateCell = chance.inHundred(80) ? ratioCell(rate, chance) : `${rate.mul(100).valueOf()} %`;
  tally.compare(
    'sales tax',
    'SALESTAX',
    [
      cells.map((cell) => [cell]),
      rateCell,
      basis === 'line' ? blankCell(chance) : basis,
      rounding === 'half up' ? blankCell(chance) : rounding,
    ],
    [money(salesTax(amounts, rate, basis, rounding))],
    { basis, rounding, residue: residueOf([...cells, rateCell], [...amounts, rate]) },
  );
}

interface Charges {
  readonly perWidth: Exact;
  readonly lined: Exact;
  readonly interlined: Exact;
  readonly blackout: Exact;
  readonly surcharge: Exact;
  readonly rounding: CentRounding;
}

const chargesOf = (chance: Chance): Charges => ({
  perWidth: cents(chance, 6000).add('0.01'),
  lined: cents(chance, 1500).add('0.01'),
  interlined: cents(chance, 2500).add('0.01'),
  blackout: cents(chance, 2500).add('0.01'),
  surcharge: exact(chance.pick(['0.1', '0.15', '0.125', '0.075'])),
  rounding: chance.pick(CENT_ROUNDINGS),
});

const chargeRows = (heading: string, charges: Charges): Range => [
  [`labor ${heading}`, charges.perWidth.valueOf()],
  ['labor lined', charges.lined.valueOf()],
  ['labor interlined', charges.interlined.valueOf()],
  ['labor blackout', charges.blackout.valueOf()],
  ['labor height surcharge', charges.surcharge.valueOf()],
  ['cent rounding', charges.rounding],
];

function compareMaking({ house, chance, tally }: Ground): void {
  const heading = chance.pick(HEADINGS);
  const charges = chargesOf(chance);
  const lining = chance.pick(['unlined', 'lined', 'interlined', 'blackout'] as const);
  const widths = exact(1 + chance.below(40)).div(chance.pick([1, 1, 2]));
  const high = house.lengths['labor height from'];
  const drop = chance.pick([high, high.add(1), measured(40, 150, house, chance)]);
  const dropCell =
    drop.d === 1n && !drop.equals(high.add(1))
      ? lengthCell(drop, house.unit, chance)
      : drop.div(house.unit === 'inches' ? 25_400_000 : 10_000_000).valueOf();
  const charge = making(
    {
      widths,
      perWidth: charges.perWidth,
      added: lining === 'unlined' ? NONE : charges[lining],
      surcharge: below(high, drop) ? charges.surcharge : NONE,
    },
    charges.rounding,
  );
  const rules = [...(house.rows ?? []), ...chargeRows(heading, charges)];
  tally.compare(
    'making',
    'LABOR',
    [widths.valueOf(), heading, dropCell, lining === 'unlined' ? blankCell(chance) : lining, rules],
    [money(charge)],
    { heading, lining, rounding: charges.rounding },
  );
}

/** Rolls in yards or metres: plain cloth, whose cuts are all bare, and cloth with a repeat, whose last one is. */
function compareRolls({ house, chance, tally }: Ground): void {
  const measure = house.unit === 'inches' ? YARD : METRE;
  const rolls = Array.from({ length: 1 + chance.below(5) }, () =>
    exact(20 + chance.below(400))
      .div(8)
      .mul(measure),
  );
  const bare = measured(30, 160, house, chance);
  const repeat = chance.inHundred(50)
    ? undefined
    : listed(['20', '25.25', '13.5', '4.5', '36'], house, chance);
  const start = patternStart(repeat, house);
  const meant = cutsOfRolls(rolls, { bare, repeated: longestCut(bare, repeat, house), start });
  const rollCells = rolls.map((roll) => [figureCell(roll.div(measure), chance)]);
  tally.compare(
    'roll cuts',
    'ROLLCUTS',
    [rollCells, lengthCell(bare, house.unit, chance), house.rows, optional(repeat, house, chance)],
    [{ as: 'count', value: meant }],
    { repeat: repeat === undefined ? 'none' : 'given' },
  );
}

export function compareMoney(ground: Ground): void {
  compareBreaks(ground);
  compareSelling(ground);
  compareTax(ground);
  compareMaking(ground);
  compareRolls(ground);
}
