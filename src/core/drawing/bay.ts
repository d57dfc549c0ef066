/** A bay or a corner from above: its straight parts to scale, each with its length, and the bend between two. */
import type { Length } from '../exact/length';
import { digits } from '../exact/unit';
import { EMPTY, near, place, type Drawing, type Label, type Line } from './drawing';

export interface BayPlan {
  /** Along the wall or the track, from left to right as seen from inside the room. */
  readonly parts: readonly Length[];
  /**
   * Between each two parts, seen from inside, in degrees: 180 is straight on, less turns towards the room
   * (a bay of three parts has two such bends), more turns away from it; undefined where it is still to be measured.
   */
  readonly bends: readonly (number | undefined)[];
  /** How the lengths are said. */
  readonly show: (length: Length) => string;
}

/** An angle that nobody measured is drawn as that of a corner, or of a bay of three parts and more. */
const angleOf = (bends: BayPlan['bends'], at: number): number => bends[at] ?? (bends.length > 1 ? 135 : 90);
const inDegrees = (bend: number | undefined): string => `${bend === undefined ? '____' : digits(bend)}°`;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

const mean = (figures: readonly number[]): number =>
  figures.reduce((sum, one) => sum + one, 0) / figures.length;

type Point = readonly [x: number, y: number];

/** The corners of the line, the first part turned so that the whole lies level. */
function cornersOf({ parts, bends }: BayPlan): readonly Point[] {
  const turns = parts.map((_, at) => (at === 0 ? 0 : 180 - angleOf(bends, at - 1)));
  // Half of all the turning lies to each side of straight on, so that a bay stands upright.
  let heading = turns.reduce((sum, turn) => sum + turn, 0) / 2;
  let [x, y] = [0, 0];
  const corners: Point[] = [[x, y]];
  parts.forEach((part, at) => {
    heading -= turns[at] ?? 0;
    x += part * Math.cos(radians(heading));
    y += part * Math.sin(radians(heading));
    corners.push([x, y]);
  });
  return corners;
}

const ORIGIN: Point = [0, 0];
const sideOf = (corners: readonly Point[], at: number): readonly [Point, Point] => [
  corners[at] ?? ORIGIN,
  corners[at + 1] ?? ORIGIN,
];

export function bayPlan(bay: BayPlan): Drawing {
  const corners = cornersOf(bay);
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const long = bay.parts.reduce((sum, part) => sum + part, 0);
  const lines = bay.parts.map((_, at): Line => {
    const [[x1, y1], [x2, y2]] = sideOf(corners, at);
    return { part: 'wall', from: place(x1, y1), to: place(x2, y2) };
  });
  // Beside its line, on the wall's side; a bend stands on the room's.
  const aside = long * 0.045;
  const middles = bay.parts.map((part, at): Label => {
    const [[x1, y1], [x2, y2]] = sideOf(corners, at);
    const [outX, outY] = [-(y2 - y1) / part, (x2 - x1) / part];
    return {
      words: bay.show(part),
      at: place((x1 + x2) / 2 + outX * aside, (y1 + y2) / 2 + outY * aside * 0.6),
      below: 0,
    };
  });
  const [midX, midY] = [mean(xs), mean(ys)];
  const bends = bay.bends.map((bend, at): Label => {
    const [x, y] = corners[at + 1] ?? ORIGIN;
    const far = Math.hypot(midX - x, midY - y) || 1;
    return {
      words: inDegrees(bend),
      at: place(x + ((midX - x) / far) * aside, y + ((midY - y) / far) * aside),
      below: 0,
    };
  });
  return {
    ...EMPTY,
    title: `Plan to scale, from above, the room below: ${bay.parts.map(bay.show).join(', ')}; bends ${bay.bends.map(inDegrees).join(', ')}`,
    left: near(Math.min(...xs) - 2 * aside),
    right: near(Math.max(...xs) + 2 * aside),
    bottom: near(Math.min(...ys)),
    top: near(Math.max(...ys) + aside),
    lines,
    labels: [...middles, ...bends],
    notes: bay.bends.includes(undefined) ? ['An angle that is left open is measured on site.'] : [],
  };
}
