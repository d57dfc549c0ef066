/** An opening as a cell or a range has it: one width, or the straight parts of a bay or a corner. */
import { exact, type Length } from '../exact/length';
import { refuse } from './answer';
import { isBlank, oneCell, rowsOf, type CellIn, type Kind, type Place } from './fields';
import { SIZE } from './length-kinds';

/** Straight parts from left to right; between each two there is a bend. */
export interface Opening {
  readonly parts: readonly Length[];
  /** Whether it was written as parts, be it of one. */
  readonly inParts: boolean;
}

/** No bay that hangs on one rod has more. */
const MOST_PARTS = 8;

export const widthOf = (parts: readonly Length[]): Length => exact(parts.reduce((sum, one) => sum + one, 0));

const isWrittenInParts = (cell: CellIn): cell is string => typeof cell === 'string' && cell.includes('+');

/** One cell’s parts. A part of 0 is none, and a bay of it would have a bend too many. */
function partsOfCell(cell: CellIn, place: Place): readonly Length[] {
  const texts: readonly CellIn[] = isWrittenInParts(cell) ? cell.split('+') : [cell];
  return texts.map((text) => {
    // A plus with nothing behind it is read as the whole cell, and refused so.
    const part = isBlank(text) ? SIZE.read(cell, place) : SIZE.read(text, place);
    return part ?? refuse('partOfNothing', place.name, place.name);
  });
}

/** A width, `30 + 60 + 30`, or a range of parts, left to right; blank cells of a range are passed over. */
export const OPENING: Kind<Opening> = {
  quantity: 'length',
  noun: 'a length',
  shape: 'range',
  read(raw, place) {
    const cells = rowsOf(raw).flat();
    const one = cells.length === 1 ? oneCell(raw, place) : undefined;
    if (cells.length <= 1 && !isWrittenInParts(one)) {
      const width = SIZE.read(raw, place);
      return width === undefined ? undefined : { parts: [width], inParts: false };
    }
    const filled = cells.filter((cell) => !isBlank(cell));
    // Nothing but what empty cells become.
    if (filled.every((cell) => cell === 0)) return undefined;
    const parts = filled.flatMap((cell) => partsOfCell(cell, place));
    if (parts.length > MOST_PARTS)
      return refuse('tooManyParts', place.name, place.name, parts.length, MOST_PARTS);
    return { parts, inParts: true };
  },
};

/** The width of the whole opening, for whom its bends do not matter. */
export const OPENING_WIDTH: Kind<Length> = {
  ...SIZE,
  read(raw, place) {
    if (!isWrittenInParts(raw)) return SIZE.read(raw, place);
    const opening = OPENING.read(raw, place);
    return opening && widthOf(opening.parts);
  },
};

/** The straight parts of a bay written in one cell; undefined where it is a plain opening. */
export const bayIn = (raw: CellIn, place: Place): readonly Length[] | undefined =>
  isWrittenInParts(raw) ? OPENING.read(raw, place)?.parts : undefined;
