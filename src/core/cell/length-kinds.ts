/** Lengths as cells hold them: openings and drops, allowances, shifts, repeats, rolls. */
import { refuse } from './answer';
import { oneCell, readBack, type Kind, type Place } from './fields';
import { inches, toUnit, UNITS, type Length, type LengthUnit } from '../exact/length';
import { showLength, showYardage } from '../exact/unit';
import { readFigure, readWritten } from '../exact/written';

interface LengthLimits {
  readonly noun: string;
  readonly example: string;
  /** Whether 0 is a figure here or means blank, as an empty cell of some platforms does. */
  readonly zero: 'blank' | 'figure';
  readonly negative?: boolean;
  readonly most: Length;
  /** The unit of a bare number: of windows and cuts, or of yardage and rolls. */
  readonly scale: 'small' | 'large';
}

function lengthKind(limits: LengthLimits): Kind<Length> {
  const show = limits.scale === 'small' ? showLength : showYardage;
  return {
    quantity: limits.scale === 'small' ? 'length' : 'yardage',
    noun: limits.noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const unit: LengthUnit = place.unit[limits.scale];
      const length =
        typeof cell === 'number' ? lengthOfNumber(cell, unit) : lengthOfText(cell, unit, place, limits);
      if (length === undefined)
        return refuse('tooGreat', place.name, place.name, readBack(cell), show(limits.most, place.unit));
      if (length === 0 && limits.zero === 'blank') return undefined;
      if (length < 0 && limits.negative !== true) {
        return refuse(
          'tooSmall',
          place.name,
          place.name,
          readBack(cell),
          limits.zero === 'blank' ? 'above 0' : '0 or more',
        );
      }
      if (Math.abs(length) > limits.most)
        return refuse('tooGreat', place.name, place.name, readBack(cell), show(limits.most, place.unit));
      return length;
    },
    write: (value, unit) => toUnit(value, unit[limits.scale]),
  };
}

const lengthOfNumber = (cell: number, unit: LengthUnit): Length | undefined =>
  Number.isFinite(cell) ? readFigure(cell, unit) : undefined;

function lengthOfText(cell: string | boolean, unit: LengthUnit, place: Place, limits: LengthLimits): Length {
  const reading = typeof cell === 'string' ? readWritten(cell, unit) : { unreadable: true as const };
  if ('length' in reading) return reading.length;
  if ('doubt' in reading) return refuse('doubtful', place.name, place.name, readBack(cell), ...reading.doubt);
  return refuse('unreadable', place.name, place.name, readBack(cell), limits.noun, limits.example);
}

const WINDOW_MOST = inches(1_968);
const EXAMPLE = `84 1/2, 7' 6" or 214 cm`;

/** An opening, a rod, a drop: above nothing. */
export const SIZE = lengthKind({
  noun: 'a length',
  example: EXAMPLE,
  zero: 'blank',
  most: WINDOW_MOST,
  scale: 'small',
});
/** An extension, a return, an overlap, a hem: none is a figure too. */
export const ALLOWANCE = lengthKind({
  noun: 'a length',
  example: '3 1/2 or 9 cm',
  zero: 'figure',
  most: WINDOW_MOST,
  scale: 'small',
});
/** What a drop is taken up or let down by: may be below nothing. */
export const SHIFT = lengthKind({
  noun: 'a length, minus to shorten',
  example: '-1/2 or 2',
  zero: 'figure',
  negative: true,
  most: WINDOW_MOST,
  scale: 'small',
});
/** Whatever someone wrote down: an opening, a shift, or a whole roll. */
export const WRITTEN = lengthKind({
  noun: 'a length',
  example: EXAMPLE,
  zero: 'figure',
  negative: true,
  most: (10_000 * UNITS.yd) as Length,
  scale: 'small',
});
/** A pattern's repeat: 0 is no repeat. */
export const REPEAT = lengthKind({
  noun: 'a length',
  example: '25 1/4 or 64 cm',
  zero: 'blank',
  most: WINDOW_MOST,
  scale: 'small',
});
/** A roll or an order: yards, or metres in a centimetre house. */
export const YARDS = lengthKind({
  noun: 'a roll length',
  example: '58, 61 1/2 or 50 m',
  zero: 'blank',
  most: (10_000 * UNITS.yd) as Length,
  scale: 'large',
});
/** A step of yardage; 0 leaves it exact. */
export const YARD_STEP = lengthKind({
  noun: 'a part of a yard or metre',
  example: '1/8 or 0.1',
  zero: 'figure',
  most: (100 * UNITS.yd) as Length,
  scale: 'large',
});
