/** Trims and bands of one row: along the edges of all its windows' panels. */
import { panelsOf } from '../cell/treatment';
import { bottomTrim, leadingTrim, type Edged } from '../cloth/trims';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import type { WindowWork } from './job';

/** The edges that a trim follows. */
export const TRIM_EDGES = ['leading edges', 'bottom edges', 'leading and bottom edges'] as const;
export type TrimEdges = (typeof TRIM_EDGES)[number];

const edged = (work: WindowWork, flat: number): Edged => ({
  panels: panelsOf(work.window.draw ?? 'pair'),
  drop: work.orderedDrop,
  flat,
});

/** In all the windows of the row. */
export function trimAlong(work: WindowWork, edges: TrimEdges): Length {
  const { rules, quantity } = work;
  const leading = edges === 'bottom edges' ? NO_LENGTH : leadingTrim(edged(work, 0), rules);
  const bottom = edges === 'leading edges' ? NO_LENGTH : bottomTrim(edged(work, work.counted().flat), rules);
  return exact(quantity * (leading + bottom));
}
