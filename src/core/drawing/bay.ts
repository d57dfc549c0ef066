/** A bay or a corner from above: its straight parts to scale, each with its length, and the bend between two. */
import type { Length } from '../exact/length';
import { digits } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { WindowWork } from '../window/job';
import { drawnFigure } from './laid-out';
import { EMPTY, near, place, wayOf, type Way, type Drawing, type Label, type Line } from './drawing';

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
const inDegrees = (bend: number | undefined): string =>
  bend === undefined ? 'to be measured' : `${digits(bend)}°`;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

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

/** Away from the room, of each part. */
const outwards = (corners: readonly Point[], at: number): Way => {
  const [[x1, y1], [x2, y2]] = sideOf(corners, at);
  return wayOf([y1 - y2, x2 - x1]);
};
const inwards = (corners: readonly Point[], at: number): Way => {
  const [right, up] = outwards(corners, at);
  return [-right, -up];
};

/** How far from its bend an angle is marked, to all that is straight. */
const ARC = 0.035;
const STEPS = 6;

/** A bend's angle from the one part to the next, on the room's side. */
function arcOf(corners: readonly Point[], at: number, radius: number): readonly Line[] {
  const [[x1, y1], [x, y]] = sideOf(corners, at);
  const [, [x2, y2]] = sideOf(corners, at + 1);
  const from = Math.atan2(y1 - y, x1 - x);
  const turn = Math.atan2(y2 - y, x2 - x) - from;
  const whole = turn <= 0 ? turn + 2 * Math.PI : turn;
  const points = Array.from({ length: STEPS + 1 }, (_, step) => {
    const angle = from + (whole * step) / STEPS;
    return place(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  });
  return points.slice(1).map((to, step) => ({ part: 'angle', from: points[step] ?? to, to }));
}

export function bayPlan(bay: BayPlan): Drawing {
  const corners = cornersOf(bay);
  const radius = ARC * bay.parts.reduce((sum, part) => sum + part, 0);
  const arcs = bay.bends.flatMap((_, at) => arcOf(corners, at, radius));
  const seen = [...corners, ...arcs.map(({ to }) => to)];
  const xs = seen.map(([x]) => x);
  const ys = seen.map(([, y]) => y);
  const walls = bay.parts.map((_, at): Line => {
    const [[x1, y1], [x2, y2]] = sideOf(corners, at);
    return { part: 'wall', from: place(x1, y1), to: place(x2, y2) };
  });
  const lengths = bay.parts.map((part, at): Label => {
    const [[x1, y1], [x2, y2]] = sideOf(corners, at);
    return {
      words: bay.show(part),
      at: place((x1 + x2) / 2, (y1 + y2) / 2),
      below: 0,
      clear: [outwards(corners, at)],
      silent: true,
    };
  });
  const bends = bay.bends.map((bend, at): Label => {
    const [x, y] = corners[at + 1] ?? ORIGIN;
    const ways = [inwards(corners, at), inwards(corners, at + 1)];
    const [right, up] = wayOf(...ways);
    return {
      words: bend === undefined ? '____°' : inDegrees(bend),
      at: place(x + right * radius, y + up * radius),
      below: 0,
      clear: ways,
      silent: true,
    };
  });
  const bottom = near(Math.min(...ys));
  const [left, right] = [near(Math.min(...xs)), near(Math.max(...xs))];
  const room: Label = {
    words: 'room',
    at: place((left + right) / 2, bottom),
    below: 0,
    clear: [[0, -1]],
    silent: true,
  };
  return {
    ...EMPTY,
    title: `Plan to scale, from above, the room below: ${bay.parts.map(bay.show).join(', ')}; bends ${bay.bends.map(inDegrees).join(', ')}`,
    left,
    right,
    bottom,
    top: near(Math.max(...ys)),
    lines: [...walls, ...arcs],
    labels: [...lengths, ...bends, room],
    notes: bay.bends.includes(undefined) ? ['An angle that is left open is measured on site.'] : [],
  };
}

/** The rod of a window in a bay or a corner, whose angles no row says; undefined where it is straight. */
export function rodFromAbove({ rodParts, rules }: WindowWork): Drawing | undefined {
  const unit = unitOf(rules);
  return (
    rodParts &&
    bayPlan({
      parts: rodParts,
      bends: rodParts.slice(1).map(() => undefined),
      show: (length) => drawnFigure(length, unit),
    })
  );
}
