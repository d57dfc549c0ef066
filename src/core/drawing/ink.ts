/** How marks look on paper, black on white: told apart by line, dash and grey, never by colour. */
import type { Look } from './laid-out';

export interface Ink {
  /** In points; none without an outline. */
  readonly line?: number;
  readonly dash?: 'dashed' | 'dotted' | 'dash and dot';
  /** rrggbb; black where it is left out. */
  readonly ink?: string;
  /** A grey as rrggbb, or a pattern. */
  readonly fill?: string;
}

export const BLACK = '000000';

/** Of what is left over, of what goes to the pattern's start, and of what lies double. */
export const PATTERNS = ['rising', 'falling', 'dots'] as const;
export type Pattern = (typeof PATTERNS)[number];
export const isPattern = (fill: string): fill is Pattern => PATTERNS.some((one) => one === fill);

export const INKS: Readonly<Record<Look, Ink>> = {
  opening: { line: 0.75, dash: 'dashed', ink: '606060' },
  rod: { line: 1, fill: '404040' },
  bracket: { fill: BLACK },
  cloth: { line: 1 },
  overlap: { line: 0.5, dash: 'dotted', fill: 'dots' },
  seam: { line: 0.75, dash: 'dash and dot' },
  stack: { line: 0.5, fill: 'E4E4E4' },
  floor: { line: 1.5 },
  wall: { line: 1.5 },
  return: { line: 1.25 },
  pleat: { line: 0.75, fill: 'E4E4E4' },
  mark: { line: 1 },
  angle: { line: 0.5, ink: '505050' },
  arrow: { line: 1.25 },
  cut: { line: 0.75 },
  spare: { line: 0.5, fill: 'rising' },
  start: { line: 0.5, fill: 'falling' },
  flaw: { fill: BLACK },
  dimension: { line: 0.4, ink: '505050' },
};

/** Cut lengths are told apart by these greys, light enough to write on; the first is plain. */
const ALIKE = ['FFFFFF', 'E6E6E6', 'CECECE', 'F4F4F4', 'DADADA', 'C2C2C2'];

export const alikeFill = (alike: number): string => ALIKE[alike % ALIKE.length] ?? 'FFFFFF';
