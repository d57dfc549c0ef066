/** The hardware of one window by its heading: nothing stands in the list that the heading has no use for. */
import { isDrawn, panelsOf, type Draw, type Heading } from '../cell/treatment';
import type { WindowHangsOn } from '../cell/ways';
import { NOTHING, money, type Money } from '../exact/money';
import { exact, NO_LENGTH, UNITS, type Length } from '../exact/length';
import { unitOf, type Rules } from '../house/rules';

/** What the cloth hangs by. */
export type Hanging = 'rings' | 'track' | 'wave' | 'grommet' | 'rod pocket' | 'tab top';

export function hangingOf(heading: Heading, rules: Rules): Hanging {
  switch (heading) {
    case 'wave':
    case 'grommet':
    case 'rod pocket':
    case 'tab top':
      return heading;
    default:
      return rules.hangOn;
  }
}

/** Of one window. */
export interface Fittings {
  readonly rod: Length;
  readonly pieces: number;
  readonly brackets: number;
  /** On a rod its rings, on a track its carriers. */
  readonly rings: number;
  readonly grommets: number;
  readonly finials: number;
  readonly endStops: number;
  readonly wands: number;
  /** Of a bay: one fewer than its straight parts. */
  readonly bends: number;
}

export const NO_FITTINGS: Fittings = {
  rod: NO_LENGTH,
  pieces: 0,
  brackets: 0,
  rings: 0,
  grommets: 0,
  finials: 0,
  endStops: 0,
  wands: 0,
  bends: 0,
};

/** The pieces by the words they are listed under, each with the rule that prices it. */
const PIECES = [
  ['rings', 'rings and carriers', 'pricePerRing'],
  ['grommets', 'grommets', 'pricePerGrommet'],
  ['brackets', 'brackets', 'pricePerBracket'],
  ['finials', 'finials', 'pricePerFinial'],
  ['endStops', 'end stops', 'pricePerEndStop'],
  ['wands', 'wands', 'pricePerWand'],
  ['bends', 'bends', 'pricePerBend'],
] as const;
export type Piece = (typeof PIECES)[number][0];
export const PIECE_WORDS = PIECES.map(([key, what]) => [key, what] as const);

/** With the hardware of so many windows alike. */
export const withMore = (sum: Fittings, one: Fittings, windows: number): Fittings => ({
  rod: exact(sum.rod + one.rod * windows),
  pieces: sum.pieces + one.pieces * windows,
  brackets: sum.brackets + one.brackets * windows,
  rings: sum.rings + one.rings * windows,
  grommets: sum.grommets + one.grommets * windows,
  finials: sum.finials + one.finials * windows,
  endStops: sum.endStops + one.endStops * windows,
  wands: sum.wands + one.wands * windows,
  bends: sum.bends + one.bends * windows,
});

export interface Fitted {
  readonly heading: Heading;
  readonly draw: Draw | undefined;
  readonly hangOn: WindowHangsOn | undefined;
  readonly rod: Length;
  readonly bends?: number | undefined;
  /** Counted only where they are wanted. */
  readonly pieces: () => number;
  readonly brackets: () => number;
  readonly rings: () => number;
  /** On one panel. */
  readonly grommets: () => number;
}

const ENDS = 2;

/**
 * Rings and finials belong to rods, carriers and end stops to tracks, grommets to grommet headings. The
 * carriers and end stops of a wave come with its track; a rod pocket hides the ends of its rod.
 */
export function fittings(fitted: Fitted, rules: Rules): Fittings {
  const hanging = hangingOf(fitted.heading, rules);
  const panels = panelsOf(fitted.draw ?? 'pair');
  // Grommets are made into the cloth, whoever has the rod.
  const grommets = hanging === 'grommet' ? panels * fitted.grommets() : 0;
  if (fitted.hangOn === 'none') return { ...NO_FITTINGS, grommets };
  const throughTheCloth = hanging === 'rod pocket' || hanging === 'tab top';
  return {
    rod: fitted.rod,
    pieces: fitted.pieces(),
    brackets: fitted.brackets(),
    rings: hanging === 'rings' || hanging === 'track' ? fitted.rings() : 0,
    grommets,
    finials: hanging === 'rings' || hanging === 'grommet' || hanging === 'tab top' ? ENDS : 0,
    endStops: hanging === 'track' ? ENDS : 0,
    wands: rules.wands === 'yes' && !throughTheCloth && isDrawn(fitted.draw) ? panels : 0,
    bends: fitted.bends ?? 0,
  };
}

/** How the house buys its rods: by the piece, else by the metre, else by the foot. */
export function rodPrice(
  { rod, pieces }: Pick<Fittings, 'rod' | 'pieces'>,
  rules: Rules,
): { readonly quantity: number; readonly unit: string; readonly each: Money } | undefined {
  const { pricePerRodPiece, pricePerRodMetre, pricePerRodFoot } = rules;
  if (pricePerRodPiece !== undefined) return { quantity: pieces, unit: 'pieces', each: pricePerRodPiece };
  if (pricePerRodMetre !== undefined) return { quantity: rod / UNITS.m, unit: 'm', each: pricePerRodMetre };
  if (pricePerRodFoot === undefined) return undefined;
  // The same rule is the price of a metre in a centimetre house.
  const unit = unitOf(rules).large === 'yd' ? 'ft' : 'm';
  return { quantity: rod / UNITS[unit], unit, each: pricePerRodFoot };
}

/** Whether the house has more than one price for the same rod. */
export const rodPricedTwice = ({ pricePerRodPiece, pricePerRodMetre, pricePerRodFoot }: Rules): boolean =>
  [pricePerRodPiece, pricePerRodMetre, pricePerRodFoot].filter((one) => one !== undefined).length > 1;

export interface PricedFitting {
  readonly what: string;
  readonly quantity: number;
  readonly unit: string;
  readonly each: Money;
}

/** What is there and has a price. */
export function pricedFittings(fittings: Fittings, rules: Rules): readonly PricedFitting[] {
  const rod = rodPrice(fittings, rules);
  return [
    ...(rod === undefined || rod.quantity === 0 ? [] : [{ what: 'rods', ...rod }]),
    ...PIECES.flatMap(([key, what, rule]) => {
      const each = rules[rule];
      return fittings[key] > 0 && each !== undefined
        ? [{ what, quantity: fittings[key], unit: 'pieces', each }]
        : [];
    }),
  ];
}

/** Their cost, before any markup. */
export const costOf = (priced: readonly PricedFitting[]): Money =>
  priced.reduce((sum, { quantity, each }) => sum.plus(each.times(money(quantity))), NOTHING);
