/** Windows to compare: a house's headings and draws, rods as measured and rods on the brink of a width. */
import { blankCell, blankOrNought, lengthCell, plain, ratioCell, wordCell, type Cell } from './cells';
import type { Chance } from './chance';
import { centimetres, exact, inches, below, NONE, type Exact } from './figures';
import type { House } from './house';
import { saving, type Treatment } from './panel';
import { DRAWS, HEADINGS, type Draw, type Heading } from './words';

export interface Window extends Treatment {
  readonly cells: {
    readonly rod: Cell;
    readonly heading: Cell;
    readonly draw: Cell;
    readonly fullness: Cell;
    readonly fabric: Cell;
    readonly horizontalRepeat: Cell;
  };
  readonly about: Readonly<Record<string, string>>;
}

const FABRICS = ['54', '48', '36', '45', '50', '60', '72', '118', '54.5', '126'];
const FABRICS_CM = ['137', '140', '122', '150', '280', '300', '135.5', '90'];
const FULLNESSES = ['2', '2.5', '3', '1.5', '2.25', '2.7', '2.2', '1', '3.5'];
const REPEATS = ['27', '13.5', '18', '20', '26.6', '54', '9.75', '60'];

/** A length of the house's unit, to the eighth or to the millimetre. */
export function measured(from: number, to: number, house: House, chance: Chance): Exact {
  return house.unit === 'inches'
    ? inches(
        exact(from * 8 + chance.below((to - from) * 8))
          .div(8)
          .toFraction(),
      )
    : centimetres(
        exact(from * 25 + chance.below((to - from) * 25))
          .div(10)
          .toFraction(),
      );
}

/** A listed figure of inches, in a metric house about as long in whole millimetres. */
export const listed = (figures: readonly string[], house: House, chance: Chance): Exact => {
  const figure = chance.pick(figures);
  return house.unit === 'inches'
    ? inches(figure)
    : centimetres(exact(figure).mul(25).round().div(10).toFraction());
};

const fabricOf = (house: House, chance: Chance): Exact => {
  if (house.unit === 'inches') return inches(chance.pick(FABRICS));
  return centimetres(chance.pick(FABRICS_CM));
};

export const optional = (length: Exact | undefined, house: House, chance: Chance): Cell =>
  length === undefined ? blankOrNought(chance) : lengthCell(length, house.unit, chance);

/** The draw as a cell has it: a pair may be left out. */
const drawCell = (draw: Draw, chance: Chance): Cell =>
  draw === 'pair' && chance.inHundred(40) ? blankCell(chance) : wordCell(draw, chance);

function window(treatment: Treatment, given: boolean, house: House, chance: Chance): Window {
  const { heading, draw, rod, fabric, fullness, horizontalRepeat } = treatment;
  const fullnessCell = given ? ratioCell(fullness, chance) : blankOrNought(chance);
  return {
    ...treatment,
    cells: {
      rod: lengthCell(rod, house.unit, chance),
      heading: wordCell(heading, chance),
      draw: drawCell(draw, chance),
      fullness: fullnessCell,
      fabric: lengthCell(fabric, house.unit, chance),
      horizontalRepeat: optional(horizontalRepeat, house, chance),
    },
    about: {
      heading,
      draw,
      'horizontal repeat': horizontalRepeat === undefined ? 'none' : 'given',
      'fullness cell': typeof fullnessCell === 'number' && fullnessCell < 1 ? 'below 1' : 'as it should be',
    },
  };
}

/** The rods at which a width is saved, to the nanometre, and a nanometre more. */
function brinks(treatment: Treatment, house: House, chance: Chance): readonly Window[] {
  const saved = treatment.draw === 'stationary' ? undefined : saving(treatment, house);
  if (saved === undefined) return [];
  const brink = treatment.rod.sub(saved.rod).floor();
  return [0, 1].flatMap((more) => {
    const rod = brink.add(more);
    if (below(rod, inches(4)) || !below(NONE, rod)) return [];
    const at = window({ ...treatment, rod }, true, house, chance);
    return [{ ...at, cells: { ...at.cells, rod: plain(rod, house.unit) } }];
  });
}

const oneOf = (heading: Heading, draw: Draw, house: House, chance: Chance): readonly Window[] => {
  const given = chance.inHundred(60);
  const treatment: Treatment = {
    rod: measured(14, 260, house, chance),
    heading,
    draw,
    fullness: given ? exact(chance.pick(FULLNESSES)) : house.ratios[`fullness ${heading}`],
    fabric: fabricOf(house, chance),
    horizontalRepeat: chance.inHundred(75) ? undefined : listed(REPEATS, house, chance),
  };
  const own = window(treatment, given, house, chance);
  return chance.inHundred(35) ? [own, ...brinks({ ...treatment }, house, chance)] : [own];
};

/** Every heading with every draw, `times` over. */
export const windowsOf = (house: House, times: number, chance: Chance): readonly Window[] =>
  Array.from({ length: times }, () =>
    HEADINGS.flatMap((heading) => DRAWS.flatMap((draw) => oneOf(heading, draw, house, chance))),
  ).flat();
