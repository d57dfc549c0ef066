/** Exact figures written into cells in the many ways that people and programs write them. */
import type { Chance } from './chance';
import { CENTIMETRE, INCH, exact, type Exact } from './figures';

export type Unit = 'inches' | 'centimetres';
export type Cell = number | string | boolean | null | undefined;
export type Range = readonly (readonly Cell[])[];

export const unitOf = (unit: Unit): Exact => (unit === 'inches' ? INCH : CENTIMETRE);

/** A length as the plain number of the workbook's unit. */
export const plain = (length: Exact, unit: Unit): number => length.div(unitOf(unit)).valueOf();

/** What binary arithmetic leaves on a figure that should have been plain. */
export const residue = (figure: number, chance: Chance): number =>
  figure * (1 + chance.pick([-2, -1, 1, 2]) * Number.EPSILON);

const asInches = (length: Exact): string | undefined => {
  const all = length.div(INCH);
  const whole = all.floor();
  const part = all.sub(whole);
  if (part.d > 64n || 64n % part.d !== 0n) return undefined;
  const marks = part.equals(0) ? '' : part.toFraction();
  return `${whole.toFraction()} ${marks}`.trim();
};

/** Feet and inches, quotes straight and typographic, or inches with a fraction. */
function writtenInInches(length: Exact, chance: Chance): string | undefined {
  const feet = length.div(INCH.mul(12)).floor();
  const rest = asInches(length.sub(feet.mul(INCH.mul(12))));
  const all = asInches(length);
  if (rest === undefined || all === undefined) return undefined;
  return chance.pick([
    `${feet.toFraction()}' ${rest}"`,
    `${feet.toFraction()} ft ${rest}`,
    `${feet.toFraction()}’ ${rest}”`,
    `${all} in`,
    all,
  ]);
}

function writtenInCentimetres(length: Exact, chance: Chance): string | undefined {
  const millimetres = length.div(exact(1_000_000));
  if (millimetres.d !== 1n) return undefined;
  const figure = millimetres.div(10).valueOf();
  return chance.pick([
    `${figure} cm`,
    `${millimetres.toFraction()} mm`,
    `${millimetres.div(1000).valueOf()} m`,
  ]);
}

/** A length as a cell holds it: mostly a number, at times a residue or a text, at times in the other unit. */
export function lengthCell(length: Exact, unit: Unit, chance: Chance): Cell {
  const figure = plain(length, unit);
  if (chance.inHundred(80)) return figure;
  if (chance.inHundred(40)) return residue(figure, chance);
  const text = unit === 'inches' ? writtenInInches(length, chance) : writtenInCentimetres(length, chance);
  return text ?? figure;
}

/** A ratio or share; a residue at times. */
export const ratioCell = (ratio: Exact, chance: Chance): Cell =>
  chance.inHundred(85) ? ratio.valueOf() : residue(ratio.valueOf(), chance);

/** An empty cell, as each program hands it over. */
export const blankCell = (chance: Chance): Cell => chance.pick([undefined, null, '']);

/** Where 0 is no figure, an empty cell may also arrive as 0. */
export const blankOrNought = (chance: Chance): Cell => chance.pick([undefined, null, '', 0]);

/** A word without regard to case and outer spaces. */
export const wordCell = (word: string, chance: Chance): Cell =>
  chance.inHundred(90)
    ? word
    : chance.pick([word.toUpperCase(), ` ${word} `, `${word.charAt(0).toUpperCase()}${word.slice(1)}`]);
