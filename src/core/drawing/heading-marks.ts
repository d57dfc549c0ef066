/**
 * The heading of one panel to scale: pleats with the seams behind them along the finished heading, grommets
 * and snaps along the flat cloth. x runs from the panel's left edge.
 */
import { isPleated } from '../heading/pleats';
import { NO_LENGTH, UNITS } from '../exact/length';
import { digits, showLength } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { SetOut, WindowWork } from '../window/job';
import type { PanelMade } from '../window/panels';
import {
  across,
  beside,
  EMPTY,
  near,
  place,
  type Box,
  type Dimension,
  type Drawing,
  type Label,
  type Line,
  type Round,
} from './drawing';

/** As much of the panel's height as is drawn, to its width. */
const SHARE = 0.08;
/** How far the folds of a pleat open at its top. */
const OPENS = 0.6 * UNITS.in;
const TACKED = 0.7;

/** Pleats from the leading edge, at the middle of each. */
function pleatsFrom({ count, space = 0, first = 0, face = NO_LENGTH }: SetOut): readonly number[] {
  return Array.from({ length: count }, (_, at) => first + at * (space + face) + face / 2);
}

/** Seams from the leading edge along the finished heading: each lies behind the last pleat of its width. */
export function seamsBehindPleats(set: SetOut): readonly number[] {
  const all = pleatsFrom(set);
  let pleats = 0;
  return (set.byWidth ?? []).slice(0, -1).map((width) => all[(pleats += width.pleats) - 1] ?? 0);
}

interface Along {
  readonly long: number;
  /** From the leading edge. */
  readonly marks: readonly number[];
  readonly seams: readonly number[];
  /** From the panel's left edge. */
  readonly at: (fromLead: number) => number;
}

const seamsOfCloth = ({ widths }: PanelMade): readonly number[] => {
  let from = 0;
  return widths.slice(0, -1).map(({ flat }) => (from += flat));
};

function alongOf(work: WindowWork, panel: PanelMade, set: SetOut): Along {
  const pleated = isPleated(work.window.heading ?? 'pinch');
  const flat = panel.widths.reduce((sum, one) => sum + one.flat, 0);
  const long = pleated ? work.finishedWidth().value : flat;
  const apart = work.window.heading === 'wave' ? work.rules.snapSpacing : (set.space ?? 0);
  return {
    long,
    marks: pleated
      ? pleatsFrom(set)
      : (set.centres ?? Array.from({ length: set.count }, (_, at) => (set.first ?? 0) + at * apart)),
    seams: pleated ? seamsBehindPleats(set) : seamsOfCloth(panel),
    at: (fromLead) => (panel.leads === 'left' ? fromLead : long - fromLead),
  };
}

/** A pleat from the front: folds that open above where they are tacked. */
function pleatLines(x: number, deep: number): readonly Line[] {
  const tack = deep * (1 - TACKED);
  return [
    ...[-1, 0, 1].map((side): Line => ({
      part: 'pleat',
      from: place(x, tack),
      to: place(x + side * OPENS, deep),
    })),
    { part: 'pleat', from: place(x - OPENS / 2, tack), to: place(x + OPENS / 2, tack) },
  ];
}

/** A box pleat shows its face. */
const faceBox = (x: number, face: number, deep: number): Box => ({
  part: 'pleat',
  x: near(x - face / 2),
  y: NO_LENGTH,
  width: near(face),
  height: near(deep),
});

/** Of each width: its cut with the letter of its start, its half, and what it holds. */
function widthLabels(work: WindowWork, panel: PanelMade, set: SetOut, along: Along): readonly Label[] {
  const unit = unitOf(work.rules);
  const edges = [0, ...along.seams, along.long];
  return panel.widths.flatMap(({ cut, half }, width): Label[] => {
    const middle = along.at(((edges[width] ?? 0) + (edges[width + 1] ?? along.long)) / 2);
    const at = place(middle, 0);
    const named = `${cut.number}${cut.start ?? ''}${half === undefined ? '' : `, ${half} half`}`;
    const held = set.byWidth?.[width];
    const holds =
      held === undefined ? [] : [`${digits(held.pleats)} × ${showLength(near(toTape(held.takeUp)), unit)}`];
    return [named, ...holds].map((words, line) => ({ words, at, below: line + 1 }));
  });
}

/** A share as the tape is read: a sixteenth of an inch is fine enough for a mark. */
const toTape = (share: number): number => Math.round(share / (UNITS.in / 16)) * (UNITS.in / 16);

/** To the edges of a box pleat's face, to the middle of any other mark. */
function dimensionsOf(work: WindowWork, panel: PanelMade, along: Along, face: number): readonly Dimension[] {
  const { marks, at, long } = along;
  const pleated = isPleated(work.window.heading ?? 'pinch');
  const above = { side: 'above', row: 1, at: near(long * SHARE) } as const;
  const between = (
    what: string,
    [one, other]: readonly [number, number],
    narrow: Dimension['narrow'],
    row = 1,
  ): Dimension => {
    const [from, to] = [at(one), at(other)].sort((a, b) => a - b) as [number, number];
    return across(what, [from, to], { ...above, row, ...(narrow && { narrow }) });
  };
  const starts = marks.map((mark) => mark - face / 2);
  const ends = marks.map((mark) => mark + face / 2);
  // A figure wider than its place goes over the panel, not off it.
  const [toLead, toReturn] =
    panel.leads === 'left' ? (['after', 'before'] as const) : (['before', 'after'] as const);
  const middle = Math.floor((marks.length - 1) / 2);
  const found: Dimension[] = [];
  const [first, last] = [starts[0] ?? 0, ends.at(-1) ?? 0];
  if (first > 0) found.push(between('leading edge', [0, first], toLead));
  if (marks.length > 1) {
    const space = [ends[middle] ?? 0, starts[middle + 1] ?? 0] as const;
    // Over the figures of both edges, which leave no room between them.
    const row = first > 0 && last < long ? 2 : 1;
    found.push(between(pleated ? 'space' : 'centres', space, 'middle', row));
  }
  if (last < long) found.push(between('return edge', [last, long], toReturn));
  found.push(
    across(pleated ? 'finished width' : 'flat width', [0, long], {
      side: 'below',
      row: 2.2,
      at: NO_LENGTH,
      narrow: 'middle',
    }),
  );
  return found;
}

/** More widths than these two panels have no room beside each other for what is said of each. */
const MOST_BESIDE = 3;

/** The headings of one window's panels, two beside each other where they are narrow enough. */
export function headingsDrawn(work: WindowWork, panels: readonly PanelMade[]): readonly Drawing[] {
  const drawn = panels.flatMap((panel) => headingMarks(work, panel) ?? []);
  const [left, right] = drawn;
  const narrow = panels.every(({ widths }) => widths.length <= MOST_BESIDE);
  return left !== undefined && right !== undefined && narrow ? [beside(left, right)] : drawn;
}

/** The heading's marks of one panel; undefined where its heading has none. */
export function headingMarks(work: WindowWork, panel: PanelMade): Drawing | undefined {
  const set = work.setOut().value;
  if (set.count === 0) return undefined;
  const { window } = work;
  const heading = window.heading ?? 'pinch';
  const along = alongOf(work, panel, set);
  const pleated = isPleated(heading);
  const deep = along.long * SHARE;
  const tall = near(deep);
  const face = set.face ?? 0;
  const rounds = pleated
    ? []
    : along.marks.map((mark): Round => ({
        part: 'mark',
        at: place(along.at(mark), deep / 2),
        radius: near((heading === 'grommet' ? 0.8 : 0.3) * UNITS.in),
      }));
  return {
    ...EMPTY,
    title: `Heading of the ${panel.side} panel to scale, ${pleated ? 'finished' : 'flat'}, from the front: ${digits(set.count)} ${pleated ? 'pleats' : heading === 'wave' ? 'snaps' : 'grommets'}`,
    left: NO_LENGTH,
    right: near(along.long),
    top: tall,
    boxes: [
      { part: 'cloth', x: NO_LENGTH, y: NO_LENGTH, width: near(along.long), height: tall },
      ...(face > 0 ? along.marks.map((mark) => faceBox(along.at(mark), face, deep)) : []),
    ],
    lines: [
      ...along.seams.map((seam): Line => ({
        part: 'seam',
        from: place(along.at(seam), -deep * 0.5),
        to: place(along.at(seam), deep),
      })),
      ...(pleated && face === 0 ? along.marks.flatMap((mark) => pleatLines(along.at(mark), deep)) : []),
    ],
    rounds,
    labels: widthLabels(work, panel, set, along),
    dimensions: dimensionsOf(work, panel, along, face),
  };
}
