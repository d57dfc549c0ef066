/** Figures as cells hold them: fullness, shares, counts, weights, money. */
import { refuse } from './answer';
import { oneCell, readBack, type CellOut, type Kind, type Place, type Quantity } from './fields';
import { money, NOTHING, type Money } from '../exact/money';
import { ratio, toFigure, type Ratio } from '../exact/ratio';
import { digits } from '../exact/unit';
import { DIGITS, readDecimal } from '../exact/written';

/** What a few steps of binary arithmetic may leave, as a share of the figure. */
const RESIDUE = 4 * Number.EPSILON;

/** A cell's number by the digits a sheet keeps: 59.99999999999999 is 60, and 910.0499999999995 is 910.05. */
export function withoutResidue(figure: number): number {
  const short = Number(figure.toPrecision(14));
  return Math.abs(short - figure) <= RESIDUE * Math.abs(figure) ? short : Number(figure.toPrecision(15));
}

/** A plain number from a cell or from text with a decimal comma. */
function figureOf(
  cell: number | string | boolean,
  place: Place,
  noun: string,
  example: string,
  plain = (text: string): string => text,
): number {
  if (typeof cell === 'number' && Number.isFinite(cell)) return withoutResidue(cell);
  if (typeof cell === 'string') {
    const figure = readDecimal(DIGITS.test(cell) ? cell : plain(cell));
    if (typeof figure !== 'number')
      return refuse('doubtful', place.name, place.name, readBack(cell), figure[0], figure[1]);
    if (Number.isFinite(figure)) return figure;
  }
  return refuse('unreadable', place.name, place.name, readBack(cell), noun, example);
}

interface FigureLimits {
  readonly quantity: Quantity;
  readonly noun: string;
  readonly example: string;
  readonly zero: 'blank' | 'figure';
  readonly least: number;
  readonly most: number;
  /** Only whole multiples of this. */
  readonly steps?: number;
  readonly stepsNoun?: string;
  /** Text as it is written here, down to its figure. */
  readonly plain?: (text: string) => string;
}

function figureKind<T>(
  limits: FigureLimits,
  into: (figure: number) => T,
  out: (value: T) => CellOut,
): Kind<T> {
  return {
    quantity: limits.quantity,
    noun: limits.noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const figure = figureOf(cell, place, limits.noun, limits.example, limits.plain);
      if (figure === 0 && limits.zero === 'blank') return undefined;
      if (figure < limits.least)
        return refuse('tooSmall', place.name, place.name, readBack(cell), `${digits(limits.least)} or more`);
      if (figure > limits.most)
        return refuse('tooGreat', place.name, place.name, readBack(cell), digits(limits.most));
      const steps = limits.steps === undefined ? figure : Math.round(figure / limits.steps) * limits.steps;
      if (Math.abs(steps - figure) > 1e-9)
        return refuse('notWhole', place.name, place.name, readBack(cell), limits.stepsNoun ?? 'whole');
      return into(steps);
    },
    write: out,
  };
}

const plainFigure = (figure: number): number => figure;

const FULLNESS_FIGURE = figureKind<Ratio>(
  {
    quantity: 'fullness',
    noun: 'a fullness',
    example: '2.5',
    zero: 'blank',
    least: 1,
    most: 6,
    // “2.5x”, “2½ times”, “2.5:1” and “2.5 to 1” all say 2.5.
    plain: (text) => text.trim().replace(/\s*(?:[x×]|times|(?::|\bto\b) ?1)$/i, ''),
  },
  ratio,
  toFigure,
);
/** Fullness: 2.5, never 250 %, which some print for 2.5 and others for 3.5. */
export const FULLNESS: Kind<Ratio> = {
  ...FULLNESS_FIGURE,
  read(raw, place) {
    const cell = oneCell(raw, place);
    const percent = typeof cell === 'string' ? /^([\d.,]+) ?%$/.exec(cell.trim()) : null;
    const figure = percent === null ? undefined : readDecimal(percent[1] ?? '');
    if (typeof figure === 'number' && Number.isFinite(figure)) {
      return refuse(
        'doubtful',
        place.name,
        place.name,
        readBack(cell),
        `${digits(figure / 100)} times`,
        `${digits(figure / 100 + 1)} times`,
      );
    }
    return FULLNESS_FIGURE.read(raw, place);
  },
};

interface ShareLimits {
  readonly quantity: Quantity;
  readonly noun: string;
  readonly example: string;
  readonly least: number;
  readonly most: number;
}

/** A share of something: 0.03 or 3 %. */
function shareKind<T>(limits: ShareLimits, into: (figure: Money) => T, out: (value: T) => number): Kind<T> {
  return {
    quantity: limits.quantity,
    noun: limits.noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const percent = typeof cell === 'string' ? /^(-?[\d.,]+) ?%$/.exec(cell.trim()) : null;
      const written = money(figureOf(percent?.[1] ?? cell, place, limits.noun, limits.example));
      const figure = percent === null ? written : written.div(100);
      if (figure.lt(limits.least))
        return refuse('tooSmall', place.name, place.name, readBack(cell), `${digits(limits.least)} or more`);
      if (figure.gt(limits.most)) {
        // 8.25 was most likely meant as 8.25 %.
        const meant = percent === null && figure.lte(100 * limits.most);
        const example = meant ? `${digits(figure.toNumber())} %` : limits.example;
        return refuse('tooGreatShare', place.name, place.name, readBack(cell), digits(limits.most), example);
      }
      return into(figure);
    },
    write: out,
  };
}
const asRatio = (figure: Money): Ratio => ratio(figure.toNumber());
/** Of a length, below the whole: shrinkage. */
export const SHARE = shareKind(
  { quantity: 'share', noun: 'a share', example: '0.03 or 3 %', least: 0, most: 0.5 },
  asRatio,
  toFigure,
);
/** A proportion of a length: stack to rod. */
export const PROPORTION = shareKind(
  { quantity: 'share', noun: 'a proportion', example: '0.33', least: 0, most: 10 },
  asRatio,
  toFigure,
);
/** A part of an amount: tax, discount, deposit, spares; never more than the whole, and decimal, since 8.875 % is one too. */
export const PART = shareKind<Money>(
  { quantity: 'rate', noun: 'a rate', example: '0.0825 or 8.25 %', least: 0, most: 1 },
  (figure) => figure,
  (rate) => rate.toNumber(),
);
/** Of money, above the whole too: a markup. */
export const RATE = shareKind<Money>(
  { quantity: 'rate', noun: 'a rate', example: '0.45 or 45 %', least: 0, most: 20 },
  (figure) => figure,
  (rate) => rate.toNumber(),
);

export const COUNT = figureKind<number>(
  {
    quantity: 'count',
    noun: 'a whole number',
    example: '46',
    zero: 'figure',
    least: 0,
    most: 100_000,
    steps: 1,
    stepsNoun: 'a whole number',
  },
  plainFigure,
  plainFigure,
);
/** How many windows are alike, as a function is asked; 0 is what an empty cell is on some hosts, and no window. */
export const WINDOWS: Kind<number> = windowCount('noWindowGiven');
/** The same in a row of a table. */
export const WINDOWS_OF_ROW: Kind<number> = windowCount('noWindowInRow');

function windowCount(code: 'noWindowGiven' | 'noWindowInRow'): Kind<number> {
  return {
    ...COUNT,
    read(raw, place) {
      const count = COUNT.read(raw, place);
      return count === 0 ? refuse(code, place.name, place.name) : count;
    },
  };
}
export const PLEAT_COUNT = figureKind<number>(
  {
    quantity: 'count',
    noun: 'a number of pleats',
    example: '5',
    zero: 'blank',
    least: 1,
    most: 100,
    steps: 1,
    stepsNoun: 'whole pleats',
  },
  plainFigure,
  plainFigure,
);
/** What is ordered, in whatever unit its price list has. */
export const QUANTITY = figureKind<number>(
  { quantity: 'count', noun: 'a quantity', example: '120.5', zero: 'figure', least: 0, most: 1e9 },
  plainFigure,
  plainFigure,
);
/** The same asked by itself: 0 is what an empty cell is on some hosts, and nothing is ordered by it. */
export const ORDERED: Kind<number> = {
  ...QUANTITY,
  read(raw, place) {
    const quantity = QUANTITY.read(raw, place);
    return quantity === 0 ? refuse('nothingOrdered', place.name, place.name) : quantity;
  },
};
/** Widths of cloth: whole or half. */
export const WIDTH_COUNT = figureKind<number>(
  {
    quantity: 'count',
    noun: 'a number of widths',
    example: '5 or 2.5',
    zero: 'blank',
    least: 0.5,
    most: 10_000,
    steps: 0.5,
    stepsNoun: 'whole or half widths',
  },
  plainFigure,
  plainFigure,
);
/** Areal weight, oz/yd² or g/m² by the house's unit. */
export const AREAL_WEIGHT = figureKind<number>(
  {
    quantity: 'areal weight',
    noun: 'an areal weight',
    example: '12 (oz/yd²) or 400 (g/m²)',
    zero: 'blank',
    least: 0.001,
    most: 10_000,
  },
  plainFigure,
  plainFigure,
);
/** Pounds or kilograms. */
export const WEIGHT = figureKind<number>(
  { quantity: 'weight', noun: 'a weight', example: '18', zero: 'blank', least: 0.001, most: 100_000 },
  plainFigure,
  plainFigure,
);

/** An amount of money as people write it: $1,234.50, 12,50 €, (25.00) for a credit. */
function plainAmount(text: string): string {
  const bare = text.replace(/[\p{Sc}\s]|\b(USD|EUR|GBP|CAD|AUD)\b/giu, '').replace(/^\((.*)\)$/, '-$1');
  // A comma before exactly three digits parts thousands: no money has three decimals.
  return /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(bare) ? bare.replace(/,/g, '') : bare;
}

export const MONEY = figureKind<Money>(
  {
    quantity: 'money',
    noun: 'an amount',
    example: '12.50',
    zero: 'figure',
    least: -1e12,
    most: 1e12,
    plain: plainAmount,
  },
  money,
  (amount) => amount.toNumber(),
);
/** A price: not below nothing. */
export const PRICE = figureKind<Money>(
  {
    quantity: 'money',
    noun: 'a price',
    example: '12.50',
    zero: 'figure',
    least: 0,
    most: 1e9,
    plain: plainAmount,
  },
  money,
  (amount) => amount.toNumber(),
);

const NONE = /^\s*none\s*$/i;
/** An amount or a rate that may be written `none`, which is 0. */
export const orNone = (kind: Kind<Money>): Kind<Money> => ({
  ...kind,
  read: (raw, place) => {
    const cell = oneCell(raw, place);
    return typeof cell === 'string' && NONE.test(cell) ? NOTHING : kind.read(cell, place);
  },
});
/** A rule that must be set: 0, which an empty cell is on some hosts, is not set, and `none` says that nothing is charged. */
export const setOrNone = (kind: Kind<Money>): Kind<Money> => ({
  ...kind,
  read: (raw, place) => {
    const value = orNone(kind).read(raw, place);
    const cell = oneCell(raw, place);
    return value?.eq(0) === true && !(typeof cell === 'string' && NONE.test(cell)) ? undefined : value;
  },
  write: (value, unit) => (value.eq(0) ? 'none' : (kind.write?.(value, unit) ?? value.toNumber())),
});
