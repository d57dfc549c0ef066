/**
 * A drawing as data, to scale: what stands where, in nanometres, and the figures that say so. x runs to the
 * right, y up. Who draws it adds nothing to it.
 */
import { exact, NO_LENGTH, type Length } from '../exact/length';

/** What a shape is of; who draws it gives each its look. */
export type Part =
  | 'opening'
  | 'rod'
  | 'bracket'
  | 'cloth'
  | 'overlap'
  | 'seam'
  | 'stack'
  | 'floor'
  | 'wall'
  | 'return'
  | 'pleat'
  | 'mark'
  | 'angle'
  | 'arrow'
  | 'cut'
  | 'spare'
  | 'start'
  | 'flaw';

/** A direction; its length is 1. */
export type Way = readonly [right: number, up: number];
export type Place = readonly [x: Length, y: Length];

export interface Box {
  readonly part: Part;
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
  /** Its edge that is only assumed, not known from the sheet. */
  readonly assumed?: 'top and bottom';
  /** Boxes of one number are alike, those of another are told apart by their look. */
  readonly alike?: number;
  /** Written in it, where there is room. */
  readonly words?: string;
  /** What it is, for whoever points at it. */
  readonly says?: string;
}
export interface Line {
  readonly part: Part;
  readonly from: Place;
  readonly to: Place;
}
/** A round mark: a grommet, a snap. */
export interface Round {
  readonly part: Part;
  readonly at: Place;
  readonly radius: Length;
}
/** Words about a place: on it where `below` is 0, else so many lines under it, above where it is negative. */
export interface Label {
  readonly words: string;
  readonly at: Place;
  readonly below: number;
  /** Beside it instead, clear of the lines there: of each, which way leads away from it. */
  readonly clear?: readonly Way[];
  /** Whether the title says it already. */
  readonly silent?: true;
}
export interface Dimension {
  readonly what: string;
  /** As it is said beside its line; the whole name where none is given. */
  readonly short?: string;
  readonly length: Length;
  /** across: between two x; up: between two y. */
  readonly runs: 'across' | 'up';
  readonly from: Length;
  readonly to: Length;
  /** Where its line stands; 1 is the nearest row. */
  readonly side: 'below' | 'above' | 'left' | 'right';
  readonly row: number;
  /** The x or y of what is measured, where the extension lines begin. */
  readonly at: Length;
  /** Where its figure goes when it does not fit between the two: the middle is said where nothing stands beside. */
  readonly narrow?: 'before' | 'after' | 'middle';
}
export interface Drawing {
  /** What it shows, as its text alternative begins. */
  readonly title: string;
  readonly left: Length;
  readonly right: Length;
  readonly bottom: Length;
  readonly top: Length;
  /** Where the height has a scale of its own: a roll is far longer than it is wide. */
  readonly flattened?: true;
  readonly boxes: readonly Box[];
  readonly lines: readonly Line[];
  readonly rounds: readonly Round[];
  readonly labels: readonly Label[];
  readonly dimensions: readonly Dimension[];
  /** What was assumed, where the sheet does not say. */
  readonly notes: readonly string[];
}

/** To the nearest nanometre: a mark, not a cut. */
export const near = (nm: number): Length => exact(Math.round(nm));
export const place = (x: number, y: number): Place => [near(x), near(y)];

/** Between all these. */
export function wayOf(...ways: readonly Way[]): Way {
  const [x, y] = [0, 1].map((at) => ways.reduce((sum, way) => sum + (way[at] ?? 0), 0)) as [number, number];
  const far = Math.hypot(x, y) || 1;
  return [x / far, y / far];
}

/** A dimension between two x. */
export const across = (
  what: string,
  [from, to]: readonly [number, number],
  where: Pick<Dimension, 'side' | 'row' | 'at'> & Partial<Dimension>,
): Dimension => ({ what, length: near(to - from), runs: 'across', from: near(from), to: near(to), ...where });

/** A dimension between two y. */
export const up = (
  what: string,
  [from, to]: readonly [number, number],
  where: Pick<Dimension, 'side' | 'row' | 'at'> & Partial<Dimension>,
): Dimension => ({ what, length: near(to - from), runs: 'up', from: near(from), to: near(to), ...where });

/** A drawing with nothing in it yet. */
export const EMPTY = {
  bottom: NO_LENGTH,
  boxes: [],
  lines: [],
  rounds: [],
  labels: [],
  dimensions: [],
  notes: [],
} as const satisfies Partial<Drawing>;

const APART = 0.05;

/** Two drawings of one scale, the other at the right of the one; neither may measure upwards. */
export function beside(one: Drawing, other: Drawing): Drawing {
  const by = one.right - other.left + (one.right - one.left) * APART;
  const moved = ([x, y]: Place): Place => [near(x + by), y];
  return {
    ...one,
    title: `${one.title}. ${other.title}`,
    right: near(other.right + by),
    bottom: near(Math.min(one.bottom, other.bottom)),
    top: near(Math.max(one.top, other.top)),
    boxes: [...one.boxes, ...other.boxes.map((box) => ({ ...box, x: near(box.x + by) }))],
    lines: [
      ...one.lines,
      ...other.lines.map((line) => ({ ...line, from: moved(line.from), to: moved(line.to) })),
    ],
    rounds: [...one.rounds, ...other.rounds.map((round) => ({ ...round, at: moved(round.at) }))],
    labels: [...one.labels, ...other.labels.map((label) => ({ ...label, at: moved(label.at) }))],
    dimensions: [
      ...one.dimensions,
      ...other.dimensions.map((dimension) => ({
        ...dimension,
        from: near(dimension.from + by),
        to: near(dimension.to + by),
      })),
    ],
    notes: [...one.notes, ...other.notes],
  };
}
